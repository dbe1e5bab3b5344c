import { languages } from '../../languages/languages';
import { rangeWords } from '../../rangeWords';
import { turningWords } from '../../turningWords';

/** A key that a text calls by a note name, as both are written. */
export interface NamedKey {
  name: string;
  key: number;
}

/** Stems of words for calling, showing and meaning, by language; scripts without blanks last. */
const naming = [
  'call|name|show|display|label|reads?(?!\\p{L})|appear|correspond|match|means?(?!\\p{L})|stands? for|sounds? (?:like|as)|maps? to|comes? out|writ|print|refer|known|list|equal|denot|represent|number(?:s|ed)',
  'nenn|genannt|hei(?:ß|ss)|angezeigt|zeig|entspr|steht für|erschein|bezeichn|benannt|geschrieben|schreib|bedeut|beschrift|geführt|klingt',
  'appel|nomm|affich|apparaî|apparai|désign|not[ée](?!\\p{L})|écrit|vaut|signifi|montr|indiqu|équiva',
  'llam|muestr|mostr|aparec|denomin|escrib|nombr|equival|signific|indic',
  'chiam|visualizz|corrispond|appar|scriv|cham|exib|escrev|anomen|es diu|apareix',
  'heet|heten|noem|genoemd|toon|getoond|weergegeven|geeft|overeen|verschijn|staat voor|beteken',
  'kall|heter|hedder|kald|visa|vises?(?!\\p{L})|viser|motsvar|tilsvar|svarer|betyd|betyr|skriv|benämn|benævn',
  'kutsu|nimel|nimit|näky|näytt|vasta|merkit|tarkoit',
  'nazyw|nazwa|wyświetl|odpowiad|pokaz|oznacz|zapis|widnieje',
  'jmenuj|nazýv|nazv|zobraz|odpovíd|ukazuj|znač|označ',
  'nevez|hív|jelen|jelöl|mutat|felel|megfelel',
  'denir|der(?!\\p{L})|diye|adland|göster|görün|karşılık|anlam|olarak|yazıl',
  'назыв|назв|отобра|соответств|показ|обознач|знач|пиш',
  'ονομάζ|λέει|λέγεται|εμφανίζ|αντιστοιχ|δείχν|γράφ|σημαίν',
].join('|');
const names = new RegExp(
  `(?<!\\p{L})(?:${naming})|称|稱|叫|显示|顯示|对应|對應|标|標|表示|記|写|呼|相当|相當|意味|라고|부르|불리|표시|해당|나타|의미|표기`,
  'iu',
);
/** Words for keys and notes, which sentences inflect. */
const keyStems = languages
  .flatMap(({ parts }) => parts.key ?? [])
  .filter((word) => !word.includes(' ') && word.length > (/\p{Script=Latin}/u.test(word) ? 2 : 0))
  .map((word) => (word.length > 3 ? word.replace(/[aeioyаяыη]$/u, '') : word));
const keyWord = `(?:midi|numer|nummer|${[...new Set(keyStems)].join('|')})`;
const keyBefore = new RegExp(`${keyWord}[^\\d\\n]{0,14}$`, 'iu');
const keyBehind = new RegExp(`^(?:[-\\s]?\\p{L}{1,9})?[-\\s]{0,2}${keyWord}|^번|^番`, 'iu');
/** Before a number that stands for itself: nothing, or a small word such as `that`. */
const smallBefore = /^\s*$|[,:;"'“„«(]\s?$|(?<!\p{L})\p{L}{1,4}\s$|[\p{Script=Han}\p{Script=Hiragana}]$/u;
const counted =
  /(?<!\p{L})(?:vel|velo|bpm|tempo|take|track|file|page|line|row|zone|layer|from|von|de|da|od|van|fra|från|ab)\s$/iu;
const number =
  /(?<![\p{Script=Latin}\p{Script=Cyrillic}\p{Script=Greek}\d_.,#+])(\d{1,3})(?![\d\p{Script=Latin}_]|[.,]\d|\s?(?:%|ms\b|hz\b|khz\b|bpm\b|db\b|cents?\b))/giu;
const ranged = new RegExp(
  `^\\s*(?:[-\\u2010-\\u2015]|${rangeWords})\\s*\\d|\\d\\s*[-\\u2010-\\u2015]\\s*$`,
  'iu',
);
const farthest = 45;
const negated = new RegExp(turningWords('not', 'none'), 'iu');
/** In Swedish `not` is a note, and no sentence is denied by it. */
const swedishNote = /(?<!\p{L})not(?=\s\d)/giu;
const swedish = /(?<!\p{L})(?:kallas?|visa[rs]|heter|motsvarar|skrivs|betyder|är)(?!\p{L})/iu;

/** Keys that a text calls by name in a clause of words, as in `the unit calls note 60 "C3"`, where `note` finds note names. */
export function namedKeysIn(text: string, note: RegExp): NamedKey[] {
  return text
    .split(/[.!?;](?=\s|["'”»]|$)|[\n\r。；]/u)
    .filter((sentence) => names.test(sentence) && !isDenied(sentence))
    .map((sentence) =>
      [sentence, ...sentence.split(/,\s|:\s|，|、/u)].map((part) => namedKey(part, note)).find(Boolean),
    )
    .filter((found) => found !== undefined);
}

function isDenied(sentence: string): boolean {
  return negated.test(swedish.test(sentence) ? sentence.replace(swedishNote, '') : sentence);
}

function namedKey(clause: string, note: RegExp): NamedKey | undefined {
  if (!names.test(clause)) return undefined;
  const notes = Array.from(clause.matchAll(note));
  const name = notes.length === 1 ? notes[0]?.[1] : undefined;
  const at = notes[0]?.index ?? 0;
  if (name === undefined) return undefined;
  const rest = clause.slice(0, at) + '\u2022'.repeat(name.length) + clause.slice(at + name.length);
  const [found, ...others] = rest.matchAll(number);
  if (!found || others.length > 0) return undefined;
  const before = rest.slice(0, found.index);
  const behind = rest.slice(found.index + found[0].length);
  const gap = found.index > at ? found.index - at - name.length : at - found.index - found[0].length;
  if (gap > farthest || ranged.test(behind)) return undefined;
  const isKey = keyBefore.test(before) || keyBehind.test(behind);
  const isBare = smallBefore.test(before) && !counted.test(before) && gap <= 25;
  return isKey || isBare ? { name, key: Number(found[1]) } : undefined;
}
