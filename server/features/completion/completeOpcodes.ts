import { HeaderKind } from '../../model/headerKinds';
import { takesOpcode } from '../../model/opcodes/headerMask';
import type { OpcodeFacts } from '../../model/opcodes/opcode';
import { listOpcodes, resolveOpcode } from '../../model/opcodes/resolve';
import { namedControllers } from '../controllers';
import { valueText } from '../opcodeText';
import type { ReadDocument } from '../readDocument';
import { mainSource } from '../readDocument';
import type { CompletionOffer } from './completionOffer';
import { fitPattern } from './fitPattern';
import { namesOfNeighbours } from './neighbours';

/** What regions are made of, offered first. */
const common: ReadonlySet<string> = new Set([
  'sample',
  'key',
  'lokey',
  'hikey',
  'pitch_keycenter',
  'lovel',
  'hivel',
  'tune',
  'volume',
  'pan',
  'loop_mode',
  'loop_start',
  'loop_end',
  'offset',
  'end',
  'seq_length',
  'seq_position',
  'trigger',
]);

/** Letters from which on names with the controllers that the instrument names are offered. */
const fewestLetters = 3;

/**
 * The opcodes that the header at a place takes: first those that its neighbours set, last those that it has already. `parameter` is the one whose
 * name is being changed, or −1.
 */
export function opcodeOffers(
  document: ReadDocument,
  place: { start: number; end: number; header: number; parameter: number },
  offset: number,
): CompletionOffer[] {
  const { instrument, notation } = document;
  const { start, header } = place;
  const text = mainSource(document).text;
  const typed = text.slice(start, offset);
  const kind = header < 0 ? HeaderKind.unknown : instrument.kind(header);
  const own = notation.parameters?.(kind, { text, start });
  const offers = new OpcodeOffers(document, place, own !== undefined);
  if (own) {
    for (const name of own) {
      const facts = resolveOpcode(name)?.facts;
      if (facts) offers.add(name, facts, {});
    }
    return offers.all;
  }
  const takes = (facts: OpcodeFacts) => kind === HeaderKind.unknown || takesOpcode(kind, facts);
  const controllers = typed.length < fewestLetters ? [] : namedControllers(instrument);
  for (const facts of listOpcodes()) {
    if (facts.pattern.startsWith('#') || facts.pattern.includes('*') || !takes(facts)) continue;
    const { name, blanks } = fitPattern(facts.pattern, typed);
    offers.add(name, facts, blanks.length > 0 ? { blanks } : {});
    for (const { controller, label } of controllers) {
      const of = withController(facts.pattern, typed, controller);
      if (of !== undefined && of !== name) offers.add(of, facts, { remark: label, rank: 1 });
    }
  }
  // What neighbours set with numbers in its name, such as one controller's range.
  for (const name of offers.neighbours) {
    const facts = resolveOpcode(name)?.facts;
    if (facts && takes(facts)) offers.add(name, facts, {});
  }
  return offers.all;
}

/** Offers of opcodes at one place. */
class OpcodeOffers {
  readonly all: CompletionOffer[] = [];
  /** What neighbours set and is not offered yet. */
  readonly neighbours: Set<string>;
  readonly #place: { text: string; start: number; end: number };
  readonly #spelling: ReadDocument['notation']['spelling'];
  /** Whether names are those of the document's own notation, not of the format. */
  readonly #hasOwnNames: boolean;
  readonly #isFollowed: boolean;
  readonly #set: ReadonlySet<string>;

  constructor(
    document: ReadDocument,
    { start, end, header, parameter }: { start: number; end: number; header: number; parameter: number },
    hasOwnNames: boolean,
  ) {
    const { text } = mainSource(document);
    this.#place = { text, start, end };
    this.#spelling = document.notation.spelling;
    this.#hasOwnNames = hasOwnNames;
    this.#isFollowed = /^\s*=/.test(text.slice(end, end + 50));
    this.#set = namesIn(document, header, parameter);
    this.neighbours = header < 0 ? new Set() : namesOfNeighbours(document.instrument, header);
  }

  add(name: string, facts: OpcodeFacts, more: Partial<CompletionOffer>): void {
    const { start, end } = this.#place;
    const isSet = this.#set.has(name);
    const spelled = this.#spelling.parameter(name, this.#place);
    const written = this.#hasOwnNames ? writtenName(spelled[0]) : name;
    this.all.push({
      kind: 'opcode',
      label: written,
      start,
      end,
      insert: this.#isFollowed ? [written, ''] : spelled,
      ...(isSet ? { remark: 'set above' } : this.#hasOwnNames && { remark: name }),
      detail: valueText(facts).replaceAll('`', ''),
      documented: facts.pattern,
      rank: isSet ? 9 : this.neighbours.has(name) ? 0 : usualRank(facts),
      goesOn: !this.#isFollowed && !more.blanks && (facts.kind === 'option' || facts.kind === 'path'),
      ...more,
    });
    this.neighbours.delete(name);
  }
}

function usualRank({ pattern, level }: OpcodeFacts): number {
  if (common.has(pattern)) return 1;
  return level === 'extension' ? 3 : 2;
}

/** In a notation in which parameters can be elements of their own, those that can start where a tag is being typed. */
export function elementOffers(
  document: ReadDocument,
  { start, end, header: typed }: { start: number; end: number; header: number },
  offset: number,
): CompletionOffer[] {
  const { instrument, notation } = document;
  if (!notation.parameters || typed >= 0) return [];
  let header = instrument.headerAt(0, start);
  while (header >= 0 && instrument.bodySpan(header).end < end) header = instrument.parent(header);
  return header < 0 ? [] : opcodeOffers(document, { start, end, header, parameter: -1 }, offset);
}

/** The words of an attribute or element without the signs around them, as a person looks for them. */
function writtenName(spelled: string): string {
  return spelled.replace(/^</, '').replace(/(?:=["']?|>)$/, '');
}

/** The name of a pattern that ends in a controller, with its number put in, where what is typed leads to it. */
function withController(pattern: string, typed: string, controller: number): string | undefined {
  const before = /^([^NXYZ]*cc)[NXYZ]$/.exec(pattern)?.[1];
  if (before === undefined || before === 'label_cc') return undefined;
  const name = before + controller;
  return name.startsWith(typed) ? name : undefined;
}

/** The canonical names of the opcodes that a header has itself. */
function namesIn({ instrument }: ReadDocument, header: number, except: number): Set<string> {
  const names = new Set<string>();
  if (header < 0) return names;
  const end = instrument.endParameter(header);
  for (let parameter = instrument.firstParameter(header); parameter < end; parameter++) {
    if (parameter !== except) names.add(instrument.names.text(instrument.canonicalName(parameter)));
  }
  return names;
}
