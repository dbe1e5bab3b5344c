import { audioEndings } from '../../model/fileNames';
import { everyWords } from '../everyWords';
import { languages } from '../languages/languages';
import { bareWord } from '../languages/spelling';
import { isUnspaced, wordsInText } from '../languages/wordPattern';
import { turningWords } from '../turningWords';

/** The ending that a text gives for the names of all files. */
export interface StatedEnding {
  /** With its dot. */
  is: string;
  text: string;
}

const longest = 600;
const kinds = [...audioEndings].join('|');
/** An ending by itself or behind a name, with its dot. */
const dotted = new RegExp(String.raw`([\p{L}\p{N}_#)\]-]*)\.(${kinds})(?![\p{L}\p{N}])`, 'giu');
/** The name of a kind of file as a word. */
const kindWord = new RegExp(String.raw`(?<![\p{L}\p{N}._])(${kinds})s?(?![\p{L}\p{N}])`, 'giu');
const filesOrEnding = new RegExp(
  wordsInText(languages.flatMap(({ files, endings }) => [...files, ...endings, ...files.map(bareWord)])),
  'iu',
);
const ending = new RegExp(
  wordsInText(languages.flatMap(({ endings }) => [...endings, ...endings.map(bareWord)])),
  'iu',
);
const samples =
  /(?<!\p{L})(?:samples?|recordings?|names?|everything|aufnahmen|namen|alles|muestras|nombres|noms|nomi|campioni|nomes|amostras|namn|prover)(?!\p{L})/iu;
const every = new RegExp(
  `${everyWords}|(?<!\\p{L})(?:everything|alles|tout|todo|tutto|allt|alt)(?!\\p{L})`,
  'iu',
);
const andSoOn =
  /(?<!\p{L})(?:etc|and so on|and so forth|usw|u\. ?s\. ?w|und so weiter|et cetera|et ainsi de suite|y as[ií] sucesivamente|e cos[iì] via|e assim por diante|enz|enzovoort|osv|o\.s\.v|itd|atd|и т\.? ?д|jne|stb|vb|κ\.?λ\.?π)(?!\p{L})|など|等|등/iu;
const negated = new RegExp(turningWords('not', 'except', 'only'), 'iu');

/**
 * Reads the ending that a text gives for files whose names are written without: `all samples are .flac`, `files are a_1.wav etc.`,
 * `extension: wav`. `isName` tells the names of the table. Nothing where sentences give different ones.
 */
export function statedEndingIn(
  texts: readonly string[],
  isName: (text: string) => boolean,
): StatedEnding | undefined {
  const found: StatedEnding[] = [];
  for (const whole of texts)
    for (const sentence of whole.slice(0, longest).split(/[!?;\n](?=\s|$)|(?<!etc)\.(?=\s|$)/iu)) {
      const is = endingIn(sentence, isName);
      if (is !== undefined) found.push(...is.map((one) => ({ is: one, text: sentence.trim() })));
    }
  return new Set(found.map(({ is }) => is)).size === 1 ? found[0] : undefined;
}

/** The endings that a sentence gives to all files; `undefined` where it says nothing of all of them. */
function endingIn(sentence: string, isName: (text: string) => boolean): string[] | undefined {
  const text = sentence.replaceAll(/[`*"'\u201c\u201d\u201e]/g, '');
  const written = [...text.matchAll(dotted)];
  const isAll = every.test(text) && (filesOrEnding.test(text) || samples.test(text));
  const isExample = written.some(([, name = '']) => name !== '' && isName(name)) && andSoOn.test(text);
  if (negated.test(text)) return undefined;
  if (written.length > 0) {
    const alone = written.some(([, name = '']) => name === '' || isUnspaced(name.slice(-1)));
    if (!isExample && !(alone && (isAll || ending.test(text) || isOfFiles(text)))) return undefined;
    return written.map(([, , kind = '']) => `.${kind}`);
  }
  if (!isAll && !ending.test(text)) return undefined;
  const words = Array.from(text.matchAll(kindWord), ([, kind = '']) => `.${kind.toLowerCase()}`);
  return words.length > 0 ? words : undefined;
}

/** Whether a sentence says of files, and of nothing named, what they are: `files are .wav`. */
function isOfFiles(text: string): boolean {
  return filesOrEnding.test(text) || samples.test(text);
}
