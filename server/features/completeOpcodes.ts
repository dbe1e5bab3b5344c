import { HeaderKind } from '../model/headerKinds';
import { takesOpcode } from '../model/opcodes/headerMask';
import { listOpcodes } from '../model/opcodes/resolve';
import type { CompletionOffer } from './completionOffer';
import { fitPattern } from './fitPattern';
import { valueText } from './opcodeText';
import type { ReadDocument } from './readDocument';
import { mainSource } from './readDocument';

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

/**
 * The opcodes that the header at a place takes; those that it has already come last. `parameter` is the one whose
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
  const offers: CompletionOffer[] = [];
  for (const facts of listOpcodes()) {
    if (facts.pattern.startsWith('#') || facts.pattern.includes('*')) continue;
    if (kind !== HeaderKind.unknown && !takesOpcode(kind, facts)) continue;
    const { name, blanks } = fitPattern(facts.pattern, typed);
    const isSet = set.has(name);
    offers.push({
      kind: 'opcode',
      label: name,
      start,
      end,
      insert: isFollowed ? [name, ''] : notation.spelling.parameter(name),
      ...(blanks.length > 0 && { blanks }),
      ...(isSet && { remark: 'set above' }),
      detail: valueText(facts).replaceAll('`', ''),
      documented: facts.pattern,
      rank: isSet ? 9 : common.has(facts.pattern) ? 1 : facts.level === 'extension' ? 3 : 2,
      goesOn: !isFollowed && blanks.length === 0 && (facts.kind === 'option' || facts.kind === 'path'),
    });
  }
  return offers;
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
