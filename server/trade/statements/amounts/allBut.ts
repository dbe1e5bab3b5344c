import { audioEndingInText } from '../../../model/fileNames';
import { everyWords } from '../../everyWords';
import { turningWords } from '../../turningWords';
import { zoneWord } from './zoneWord';

/** A part of a sentence that speaks of all zones, and the files that it leaves out with what it says of them. */
interface AllBut {
  all: string;
  names: readonly string[];
  rest: string;
}

const longest = 400;
const everything =
  /(?<!\p{L})(?:everything|everyone|them all|all of (?:them|these|those)|alle davon|alles|tout|todo|tutto|tudo|allt|alt|kaikki\p{L}*|wszystko|v\u0161echno|v\u0161e|\u0432\u0441[\u0435\u0451]|mindent?|her \u015feyi?)(?!\p{L})|\u5168\u90e8|\u3059\u3079\u3066|\u5168\u3066|\u6240\u6709|\ubaa8\ub450|\uc804\ubd80/iu;
const every = new RegExp(everyWords, 'iu');
/** Words that may stand beside all and an amount and bound neither. */
const neutral = new RegExp(
  String.raw`^(?:${zoneWord}|turn|down|them|these|those|have|need|should|must|want|please|also|then|same|with|play|played|sind|sollen|bitte|auch|werden|kommen|sont|doivent|aussi|deben|est\u00e1n|tambi\u00e9n|sono|devono|anche|s\u00e3o|devem|zijn|moeten|level|levels|volume|gain|pegel|lautst\u00e4rke|niveau|volumen|livello|tune|tuned|tuning|raise|raised|lower|lowered|quieter|louder|leiser|lauter|down|stimm\p{L}*|gestimmt|accord\p{L}*|afina\p{L}*|intona\p{L}*|transpos\p{L}*|cent\p{L}*|semitones?|st\u00e4m\p{L}*|virit\p{L}*|stro[ij]\p{L}*|\u043d\u0430\u0441\u0442\u0440\p{L}*|\u0446\u0435\u043d\u0442\p{L}*)$`,
  'iu',
);
/** Words by which an amount says how far something is off. */
const off = /(?<!\p{L})(?:off|too|zu|trop|te|f\u00f6r|for|muy|flat|sharp)(?!\p{L})/iu;
const excepting = new RegExp(turningWords('except'), 'iu');
const file = new RegExp(
  String.raw`[^\s"'\u201c\u201d\u201e\u00ab\u00bb,;:()]{1,120}${audioEndingInText}(?![\p{L}\p{N}])`,
  'giu',
);
const mostFiles = 12;

/** Whether a clause speaks of all zones and of nothing else: `tune everything +10 cents`. */
function speaksOfAll(clause: string, all: RegExp): boolean {
  const found = all.exec(clause);
  if (!found || off.test(clause)) return false;
  const words = clause.replace(found[0], ' ').match(/\p{L}+/gu) ?? [];
  return words.every((word) => word.length < 4 || neutral.test(word));
}

/** The clauses of a text that speak of everything, without a word for zones. */
export function clausesOfEverything(text: string): string[] {
  const sentences = text.slice(0, 2000).split(/(?<!\d)[.!?](?=\s|$)|[\n\r;。！]/u);
  return sentences
    .filter((sentence) => !excepting.test(sentence) && everything.test(sentence))
    .flatMap((sentence) => sentence.split(/,(?!\d)|、|，/u))
    .filter((clause) => speaksOfAll(clause, everything))
    .map((clause) => clause.trim());
}

/** What a sentence says of all zones but those of the files that it names: `All of them at -6 dB, except a.wav, that one at -3 dB`. */
export function allButIn(sentence: string): AllBut | undefined {
  if (sentence.length > longest) return undefined;
  const found = excepting.exec(sentence);
  if (!found) return undefined;
  const all = sentence.slice(0, found.index);
  const behind = sentence.slice(found.index + found[0].length);
  if (/\d\s*$/.test(behind) || !/\d/.test(all)) return undefined;
  const names = Array.from(behind.matchAll(file), ([name]) => name);
  if (names.length === 0 || names.length > mostFiles || all.search(file) >= 0) return undefined;
  const isOfAll = speaksOfAll(all, every) || speaksOfAll(all, everything);
  return isOfAll ? { all: all.trim(), names, rest: behind.replace(file, ' ') } : undefined;
}
