import { headerNames } from '../../model/headerKinds';
import type { ReadDocument } from '../readDocument';
import { mainSource } from '../readDocument';
import type { CompletionOffer } from './completionOffer';

/** The headers that can be written where a tag is being typed. */
export function headerOffers(document: ReadDocument, start: number, end: number): CompletionOffer[] {
  const { spelling, headers } = document.notation;
  const { text } = mainSource(document);
  const rest = text.slice(end, end + 1000);
  // Editors put first what agrees with more of the typed text, so all that is offered here takes the sign of the tag along.
  const sign = text[start - 1] === '<' ? '<' : '';
  return (headers ?? headerNames).map((name) => {
    const [before, after, taken = 0] = spelling.header(name, rest);
    // Where a notation has its own words for headers, these are what people look for.
    const label = headers ? before.replace(/[\s>]+$/, '') : name;
    return {
      kind: 'header',
      label,
      start: start - sign.length,
      end: end + taken,
      insert: [sign + before, after],
      ...(sign !== '' && { filter: sign + label }),
      ...(headers && { remark: name }),
      documented: name,
      rank: order[headerNames.indexOf(name)] ?? 9,
    };
  });
}

/** The headers that can be written where an opcode could start; none in a notation where they cannot. */
export function headerOffersAmongNames(
  document: ReadDocument,
  start: number,
  end: number,
): CompletionOffer[] {
  const { headerAmongNames } = document.notation.spelling;
  if (!headerAmongNames) return [];
  return headerNames.map((name, rank) => ({
    kind: 'header',
    label: headerAmongNames(name),
    start,
    end,
    insert: [headerAmongNames(name), ''],
    documented: name,
    rank: order[rank] ?? 9,
  }));
}

/** Ranks of the headers in the order of their kinds: what is written most comes first. */
const order = [2, 3, 4, 1, 0, 5, 6, 7, 8] as const;
