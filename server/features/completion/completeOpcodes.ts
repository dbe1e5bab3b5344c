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
  const { start, end, header, parameter } = place;
  const text = mainSource(document).text;
  const typed = text.slice(start, offset);
  const isFollowed = /^\s*=/.test(text.slice(end, end + 50));
  const kind = header < 0 ? HeaderKind.unknown : instrument.kind(header);
  const set = namesIn(document, header, parameter);
  const neighbours = header < 0 ? new Set<string>() : namesOfNeighbours(instrument, header);
  const controllers = typed.length < fewestLetters ? [] : namedControllers(instrument);
  const offers: CompletionOffer[] = [];
  const own = notation.parameters?.(kind, { text, start });
  const offer = (name: string, facts: OpcodeFacts, more: Partial<CompletionOffer>) => {
    const isSet = set.has(name);
    const spelled = notation.spelling.parameter(name, { text, start });
    const written = own ? writtenName(spelled[0]) : name;
    offers.push({
      kind: 'opcode',
      label: written,
      start,
      end,
      insert: isFollowed ? [written, ''] : spelled,
      ...(isSet ? { remark: 'set above' } : own && { remark: name }),
      detail: valueText(facts).replaceAll('`', ''),
      documented: facts.pattern,
      rank: isSet
        ? 9
        : neighbours.has(name)
          ? 0
          : common.has(facts.pattern)
            ? 1
            : facts.level === 'extension'
              ? 3
              : 2,
      goesOn: !isFollowed && !more.blanks && (facts.kind === 'option' || facts.kind === 'path'),
      ...more,
    });
    neighbours.delete(name);
  };
  if (own) {
    for (const name of own) {
      const facts = resolveOpcode(name)?.facts;
      if (facts) offer(name, facts, {});
    }
    return offers;
  }
  for (const facts of listOpcodes()) {
    if (facts.pattern.startsWith('#') || facts.pattern.includes('*')) continue;
    if (kind !== HeaderKind.unknown && !takesOpcode(kind, facts)) continue;
    const { name, blanks } = fitPattern(facts.pattern, typed);
    offer(name, facts, blanks.length > 0 ? { blanks } : {});
    for (const { controller, label } of controllers) {
      const of = withController(facts.pattern, typed, controller);
      if (of !== undefined && of !== name) offer(of, facts, { remark: label, rank: 1 });
    }
  }
  // What neighbours set with numbers in its name, such as one controller's range.
  for (const name of neighbours) {
    const facts = resolveOpcode(name)?.facts;
    if (facts && (kind === HeaderKind.unknown || takesOpcode(kind, facts))) offer(name, facts, {});
  }
  return offers;
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
