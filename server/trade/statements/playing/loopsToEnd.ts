import { namesLoop } from '../../loopWords';
import { toFileEnd } from '../../readings/fileEnds';
import { turningWords } from '../../turningWords';

/** Words that set an end before that, or speak of some loops alone. */
const otherwise = new RegExp(
  String.raw`\d|${turningWords('not', 'none', 'except', 'only')}|(?<!\p{L})(?:before|short of|but|some|vor|manche|einige|avant|certain\p{L}*|antes|algun\p{L}*|prima|alcun\p{L}*|voor|f\u00f6re|f\u00f8r|ennen|przed|p\u0159ed|перед)(?!\p{L})|前|除`,
  'iu',
);
const longest = 2000;

/** The sentence that says that loops end with their files; `undefined` where none does. */
export function loopsToEndIn(texts: readonly string[]): string | undefined {
  for (const text of texts)
    for (const sentence of text.slice(0, longest).split(/[.!?;](?=\s|$)|[\n\r。；]+/u)) {
      const said = sentence.replace(/\s+/g, ' ').trim();
      if (saysLoopsGoToEnd(said)) return said;
    }
  return undefined;
}

/** Whether a sentence says that loops end with their files. */
export function saysLoopsGoToEnd(sentence: string): boolean {
  if (!toFileEnd.test(sentence) || otherwise.test(sentence)) return false;
  return namesLoop(sentence);
}
