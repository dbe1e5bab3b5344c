import { audioEndingInText } from '../../model/fileNames';
import { everyWords } from '../everyWords';
import { bareWord } from '../languages/spelling';
import { turningWords } from '../turningWords';

/** The only audio file that texts name, as the one that zones may be pieces of. */
export interface OneRecording {
  name: string;
  /** The sentence that names it. */
  text: string;
  /** Whether the sentence says that all is in one file, or that it is in pieces. */
  isSaid: boolean;
}

const longest = 2000;
const longestSentence = 300;
/** The name of a file: in quotation marks, or without white space. */
const fileName = new RegExp(
  String.raw`["'\u201c\u201e\u00ab\u2018\x60]([^"'\u201c\u201d\u00bb\u2019\x60\n]{1,120}?${audioEndingInText})|([^\s"'\u201c\u201e\u00ab\u2018\x60()[\]{},;:=<>|]{1,120}?${audioEndingInText})`,
  'giu',
);
const every = new RegExp(
  String.raw`(?<!\p{L})(?:${everyWords}|everything|alles|tout|todo|tutto|tudo|alt|allt|kaikki|wszystko|vse|vsechno)(?!\p{L})`,
  'iu',
);
/** Words for one, for pieces and for being cut, without accents. */
const inOne =
  /(?<!\p{L})(?:one|single|same|ein(?:e[nmrs]?|zig\p{L}*)?|selben?|derselben|un|une|seule?|meme|una?|unic[oa]|sol[oa]|mism[oa]|stess[oa]|unico|mesm[oa]|een|enkele?|zelfde|samma|samme|yhdessa|sama\p{L}*|jedn\p{L}+|одн\p{L}+|bir|tek)(?!\p{L})/u;
const pieces =
  /(?<!\p{L})(?:slic\p{L}+|pieces?|parts?|segments?|cut\p{L}*|chopped|chops?|split|regions?|snippets?|excerpts?|stuck\p{L}*|abschnitt\p{L}*|teil\p{L}*|ausschnitt\p{L}*|zerschnitten|geschnitten|tranch\p{L}+|morceau\p{L}*|extraits?|decoup\p{L}+|trozos?|cort\p{L}+|fragment\p{L}*|pezz[io]|fett[ae]|taglia\p{L}*|pedac\p{L}+|stukken|stukjes|knip\p{L}*|klipp\p{L}*|bitar|stykk\p{L}*|udsnit|palo\p{L}*|viipale\p{L}*|kawalk\p{L}+|wycin\p{L}+|kousk\p{L}*|част\p{L}+|куск\p{L}+|фрагмент\p{L}*)(?!\p{L})/u;
const turning = new RegExp(turningWords('not', 'none', 'except', 'without'), 'iu');

/** Reads the one audio file that texts around a table name: `Everything is in one file: kit.wav`. `undefined` where there are none or several. */
export function oneRecordingIn(texts: readonly string[]): OneRecording | undefined {
  const names = new Set<string>();
  let found: OneRecording | undefined;
  for (const whole of texts)
    for (const sentence of whole.slice(0, longest).split(/[.!?](?=\s|$)|[\n\r;。]/u)) {
      const text = sentence.trim();
      for (const [, quoted, plain] of text.matchAll(fileName)) {
        const name = (quoted ?? plain ?? '').trim();
        names.add(name.toLowerCase());
        if (text.length > longestSentence || turning.test(text)) return undefined;
        const bare = bareWord(text.replace(name, ' '));
        const isSaid = every.test(bare) || inOne.test(bare) || pieces.test(bare);
        if (!found || isSaid) found = { name, text, isSaid };
      }
    }
  return names.size === 1 ? found : undefined;
}
