import { readHeading } from '../../headings/headings';
import type { ColumnMeaning } from '../../meaning';
import { aroundBlank } from '../blanks';

/** The end of the key range that goes for a root key that is left out. */
export interface BlankRoot {
  is: 'lokey' | 'hikey';
  /** The sentence that says so. */
  text: string;
}

const longest = 2000;
const longestSentence = 200;
/** So many words name a column. */
const mostWords = 3;
const sentences = /[.!?;](?=\s|$)|[\n\r]/u;

/** What some texts say of rows without a root key: `if the root is empty it is the low key`; `undefined` where they say nothing of it. */
export function blankRootIn(texts: readonly string[]): BlankRoot | undefined {
  for (const whole of texts) {
    for (const sentence of whole.slice(0, longest).split(sentences)) {
      const around = sentence.length > longestSentence ? undefined : aroundBlank(sentence);
      if (!around) continue;
      const [before, behind] = [columnsIn(around.before), columnsIn(around.behind)];
      // The root may be named on either side: `an empty root means the low key`.
      const isOfRoot = before.has('pitch_keycenter') || behind.has('pitch_keycenter');
      const [low, high] = [behind.has('lokey'), behind.has('hikey')];
      if (isOfRoot && low !== high) return { is: low ? 'lokey' : 'hikey', text: sentence.trim() };
    }
  }
  return undefined;
}

/** What columns the words of a text name. */
function columnsIn(text: string): Set<ColumnMeaning> {
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
