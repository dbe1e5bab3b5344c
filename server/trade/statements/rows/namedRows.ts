import { bareWord } from '../../languages/spelling';
import { numberOfWord, numberWords } from '../../numberWords';

/** Rows that a sentence names by their place: by their numbers, as the first or the last ones, or as all others than some. */
export type RowChoice =
  | { is: 'numbers'; numbers: readonly number[] }
  | { is: 'first' | 'last'; count: number }
  | { is: 'others'; than: RowChoice }
  | { is: 'rest' };

/** A clause with the rows that it names, and what it says of them. */
export interface RowClause {
  rows: RowChoice;
  /** The clause without the words that name the rows, and without accents. */
  says: string;
  /** The sentence. */
  text: string;
}

/** Words for a row or what it stands for, without accents, in the languages of the trade. */
const row =
  '(?:rows?|lines?|zones?|samples?|files?|entr(?:y|ies)|regions?|items?|zeilen?|reihen?|eintrage?n?|dateien?|lignes?|fichiers?|rangees?|echantillons?|filas?|lineas?|archivos?|muestras?|zonas?|righe?|riga|campion[ei]|linhas?|ficheiros?|amostras?|rijen|rij|regels?|bestanden|rader(?:na)?|raden|raekker(?:ne)?|linjer|filer(?:na|ne)?|rivi\\p{L}*|wiersz\\p{L}*|plik\\p{L}*|radk\\p{L}*|soubor\\p{L}*|строк\\p{L}*|файл\\p{L}*|sor(?:ok)?|satir\\p{L}*)';
const small =
  "(?:the|both|die|der|den|das|les?|las?|los|el|i|gli|l['’]|os|as|o|a|de|het|numbers?|nos?\\.?|nr\\.?|nummern?|#)";
const and = '(?:and|und|et|y|e|en|och|og|ja|i|a|и|ve|es|&|\\+)';
const to = '(?:-|–|\\.\\.\\.?|to|through|thru|bis|a|al|hasta|tot|till|til|do|до)';
const numbersBehind = new RegExp(
  `(?<!\\p{L})${row}(?: ${small})? ?((?:\\d{1,3})(?:(?: ?(?:,|${to}) ?| ?,? ?${and} )(?:${small} )?(?:${row} )?\\d{1,3})*)(?![\\p{L}\\d%]|[.,]\\d)`,
  'u',
);
const ordinalWords: readonly string[] = 'first second third fourth fifth sixth'.split(' ');
const ordinal = `(?:\\d{1,3}(?:st|nd|rd|th)|${ordinalWords.join('|')})`;
const ordinals = new RegExp(
  `(?<!\\p{L})(?:the )?(${ordinal}(?:(?:, ?| ${and} )(?:the )?${ordinal})*) ${row}(?!\\p{L})`,
  'u',
);
const firstWord =
  'first|top|erste[rns]?|obersten?|premiere?s?|primer[oa]s?|prim[oiae]|primeir[oa]s?|eerste|forsta|f(?:ø|o)rste|ensimmai\\p{L}+|pierwsz\\p{L}+|prvni\\p{L}*|перв\\p{L}+|elso|ilk';
const lastWord =
  'last|bottom|final|letzte[rns]?|untersten?|derniere?s?|ultim[oaie]s?|laatste|sista|sidste|siste|viimei\\p{L}+|ostatni\\p{L}*|posledni\\p{L}*|последн\\p{L}+|utolso|son';
const bothWord = '(?:beiden?|both|couple(?: of)?|pair(?: of)?|paar)';
const count = `(?:\\d{1,3}|${bothWord}|${numberWords
  .slice(1)
  .map(([words]) => words)
  .join('|')})`;
/** `the last two`, `die beiden letzten Zeilen`, `les deux derniers`, `the last row`. */
const ends = new RegExp(
  `(?<![\\p{L}\\d])(?:${small} )*(?:(?:(${firstWord})|(${lastWord})) (${count})(?: ${row})?|(${count}) (?:(${firstWord})|(${lastWord}))(?: ${row})?|(?:(${firstWord})|(${lastWord})) ${row})(?![\\p{L}\\d])`,
  'u',
);
const except =
  /(?:all|everything|alle|alles|tous?|toutes?|todos|todas|todo|tutt[ie]|tutto|alla|wszystk\p{L}*|vsechn\p{L}*|все)[ \p{L}]{0,24}?(?<!\p{L})(?:but|except(?: for)?|apart from|other than|ausser|bis auf|sauf|excepte|hormis|menos|salvo|excepto|tranne|eccetto|exceto|behalve|utom|undtagen|unntatt|oprocz|krome|кроме)\s*$/u;
const rest =
  /(?<!\p{L})(?:the (?:rest|others?|remaining \p{L}+)|all others|(?:der|den) rest|(?:die|alle) (?:anderen|ubrigen)|le reste|les autres|el resto|(?:los|las) demas|il resto|(?:gli|le) altr[ie]|o resto|(?:os|as) outr[oa]s|de rest|resten|de (?:overige|andere)n?|reszta|ostatni|остальные)(?!\p{L})/u;
const sentences = /[.!?](?=\s|$)|[;\n\r。！]/u;
const longest = 2000;
const longestSentence = 300;
const mostNumbers = 200;

/** The clauses of a text that name rows by their place. */
export function rowClausesIn(text: string): RowClause[] {
  return text
    .slice(0, longest)
    .split(sentences)
    .filter((one) => one.length <= longestSentence)
    .flatMap((sentence) => clausesWithRows(sentence.trim()));
}

/** A sentence as a whole, or clause by clause where commas part several choices of rows. */
function clausesWithRows(sentence: string): RowClause[] {
  const bare = bareWord(sentence);
  const parts = bare.split(/[,:](?=\s)|\s(?:while|but|whereas|wahrend|aber|tandis que|mientras|mentre)\s/u);
  const found = parts.map((part) => choiceIn(part));
  // A list of numbers has commas too.
  const isList = found.filter((one) => one !== undefined).length < 2;
  const pieces = isList ? [choiceIn(bare)] : found;
  return pieces.flatMap((one) => (one ? [{ ...one, text: sentence }] : []));
}

function choiceIn(bare: string): Omit<RowClause, 'text'> | undefined {
  const [match, choice] = matchIn(bare) ?? [];
  if (!match || !choice) return undefined;
  const before = bare.slice(0, match.index);
  const all = except.exec(before);
  const says = `${all ? before.slice(0, all.index) : before} ${bare.slice(match.index + match[0].length)}`;
  return { rows: all ? { is: 'others', than: choice } : choice, says: says.replace(/\s+/gu, ' ').trim() };
}

function matchIn(bare: string): readonly [RegExpExecArray, RowChoice] | undefined {
  const listed = numbersBehind.exec(bare);
  if (listed) return [listed, { is: 'numbers', numbers: numbersOf(listed[1] ?? '') }];
  const placed = ordinals.exec(bare);
  const numbers = (placed?.[1]?.match(new RegExp(ordinal, 'gu')) ?? []).map(ordinalNumber);
  // `The first file` is one of the ends too, with the same number.
  if (placed) return [placed, { is: 'numbers', numbers }];
  const end = ends.exec(bare);
  if (end) {
    const is = (end[1] ?? end[5] ?? end[7]) ? 'first' : 'last';
    return [end, { is, count: countOf(end[3] ?? end[4]) }];
  }
  const others = rest.exec(bare);
  return others ? [others, { is: 'rest' }] : undefined;
}

function ordinalNumber(text: string): number {
  const at = ordinalWords.indexOf(text);
  return at < 0 ? Number.parseInt(text, 10) : at + 1;
}

function countOf(text: string | undefined): number {
  if (text === undefined) return 1;
  if (/^\d+$/.test(text)) return Number(text);
  return numberOfWord(text) ?? 2;
}

/** The numbers of a list such as `3, 5-7 and 9`. */
function numbersOf(list: string): number[] {
  const numbers: number[] = [];
  const isRange = new RegExp(`^ ?${to} ?(?:${small} )?$`, 'u');
  let before = '';
  for (const part of list.split(/(\d{1,3})/u)) {
    if (!/^\d/.test(part)) {
      before = part;
      continue;
    }
    const number = Number(part);
    const from = numbers.at(-1);
    if (from !== undefined && isRange.test(before))
      for (let one = from + 1; one < number && numbers.length < mostNumbers; one++) numbers.push(one);
    numbers.push(number);
  }
  return numbers;
}
