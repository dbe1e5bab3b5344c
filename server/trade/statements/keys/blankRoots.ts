import { aroundBlank } from '../blanks';
import { columnsNamedIn } from './namedColumns';

/** The end of the key range that goes for a root key that is left out. */
export interface BlankRoot {
  is: 'lokey' | 'hikey';
  /** The sentence that says so. */
  text: string;
}

const longest = 2000;
const longestSentence = 200;
const sentences = /[.!?;](?=\s|$)|[\n\r]/u;

/** What some texts say of rows without a root key: `if the root is empty it is the low key`; `undefined` where they say nothing of it. */
export function blankRootIn(texts: readonly string[]): BlankRoot | undefined {
  for (const whole of texts) {
    for (const sentence of whole.slice(0, longest).split(sentences)) {
      const around = sentence.length > longestSentence ? undefined : aroundBlank(sentence);
      if (!around) continue;
      const [before, behind] = [columnsNamedIn(around.before), columnsNamedIn(around.behind)];
      // The root may be named on either side: `an empty root means the low key`.
      const isOfRoot = before.has('pitch_keycenter') || behind.has('pitch_keycenter');
      const [low, high] = [behind.has('lokey'), behind.has('hikey')];
      if (isOfRoot && low !== high) return { is: low ? 'lokey' : 'hikey', text: sentence.trim() };
    }
  }
  return undefined;
}
