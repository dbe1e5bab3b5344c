import { readHeading } from '../../headings/headings';
import type { ColumnMeaning } from '../../meaning';

/** So many words name a column. */
const mostWords = 3;

/** What columns the words of a text name. */
export function columnsNamedIn(text: string): Set<ColumnMeaning> {
  const words = text.match(/[\p{L}\p{N}]+/gu) ?? [];
  const found = new Set<ColumnMeaning>();
  for (let at = 0; at < words.length; at++) {
    for (let count = mostWords; count > 0; count--) {
      const reading = readHeading(words.slice(at, at + count).join(' '));
      if (!reading || reading.likeness || at + count > words.length) continue;
      found.add(reading.meaning);
      at += count - 1;
      break;
    }
  }
  return found;
}
