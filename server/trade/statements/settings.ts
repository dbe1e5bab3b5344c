import { dynamicIn } from '../dynamics';
import { unitOf } from '../languages/cellWords';
import { languages } from '../languages/languages';
import { rangeEndWords, rangeWords } from '../rangeWords';
import { saysOnRelease } from '../readings/startInTitle';
import type { SharedName } from './amounts/forAll';
import { valuesForAll } from './amounts/forAll';

/** What a line says of the zones below it, by parameters of the open SFZ format. */
export interface StatedSettings {
  values: ReadonlyMap<SettingName, number | string>;
  /** What the line names besides, as a group. */
  name: string;
  /** Whether numbers stand in it that are not among the values. */
  hasMore: boolean;
}

export type SettingName = SharedName | 'lovel' | 'hivel' | 'trigger' | 'ampeg_attack' | 'ampeg_release';

const longest = 300;
const greatestVelocity = 127;
const velocityWord = String.raw`(?<!\p{L})(?:vel\p{L}{0,10}|anschl\p{L}*|v\u00e9l\p{L}*|aanslag\p{L}*|anslag\p{L}*|dynami\p{L}*|dinam\p{L}*|din\u00e2m\p{L}*|\u00fahoz\p{L}*|сил\p{L}+ нажатия|ベロシティ|力度)\.?`;
const range = new RegExp(
  String.raw`${velocityWord}\W{0,3}(?:range|bereich|${rangeEndWords('opening')})?\W{0,2}(\d{1,3})\s*(?:[-\u2010-\u2015\u2212~\u2192]|\.{2,3}|\u2026|and|${rangeWords})\s*(\d{1,3})(?![\d%]|[.,]\d)`,
  'iu',
);
const until = new RegExp(
  String.raw`${velocityWord}\W{0,3}(?:${rangeEndWords('upTo', 'below')}|<=?|\u2264)\s*(\d{1,3})(?![\d%]|[.,]\d)`,
  'iu',
);
const since = new RegExp(
  String.raw`${velocityWord}\W{0,3}(?:${rangeEndWords('from', 'above')}|>=?|\u2265)\s*(\d{1,3})(?![\d%]|[.,]\d)`,
  'iu',
);
const bracketed = new RegExp(
  String.raw`^([\p{L} ]{1,30}?)\s*[([]\s*(\d{1,3})\s*(?:[-\u2010-\u2015]|\.{2,3}|${rangeWords})\s*(\d{1,3})\s*[)\]]`,
  'iu',
);
const levelWords = languages
  .flatMap(({ phrases }) => phrases.volume ?? [])
  .filter((phrase) => phrase.length > 2 && /^[\p{L} ]+$/u.test(phrase));
const share = new RegExp(
  String.raw`(?<!\p{L})(?:${levelWords.join('|')})(?!\p{L})[\s:=]{0,3}(\d{1,3}(?:[.,]\d+)?)\s?%`,
  'iu',
);
const time = String.raw`\s*(?:of|von|de|di|=|:)?\s*(\d+(?:[.,]\d+)?)\s*(ms|msec|s|secs?|seconds?|sek\p{L}*)(?!\p{L})`;
const releaseWords =
  'release(?: time)?|rilascio|rel[\u00e2a]chement|liberaci\u00f3n|relajaci\u00f3n|extinci\u00f3n|extinction|ausklang\\p{L}*|ausklingzeit|ausschwing\\p{L}*|nachklang|libera\u00e7\u00e3o|uitklink\\p{L}*|loslaattijd|utklang|efterklang|wybrzmi\\p{L}+|dozn\u011bn\u00ed|затухани\\p{L}+|リリース';
const attackWords =
  'attack(?: time)?|attacco|attaque|ataque|anstieg\\p{L}*|einschwing\\p{L}*|aanzet\\p{L}*|ans\u00e4ttning|атак\\p{L}+|アタック';
const stages = {
  ampeg_release: [releaseWords, new RegExp(String.raw`(?<!\p{L})(?:${releaseWords})${time}`, 'iu')],
  ampeg_attack: [attackWords, new RegExp(String.raw`(?<!\p{L})(?:${attackWords})${time}`, 'iu')],
} as const;
const timeFirst =
  /(\d+(?:[.,]\d+)?)\s*(ms|msec|s|secs?|seconds?|sek\p{L}*)\s+(?:of\s+)?(release|attack|ausklang|rilascio|attacco|rel\u00e2chement|attaque)(?!\p{L})/iu;
/** Reads what a heading line says of the zones below it: `Soft (velocity 1 to 50), release 1.2 s, everything tuned -5 cents`. */
export function statedSettings(whole: string): StatedSettings | undefined {
  if (whole.length > longest) return undefined;
  const bare = whole.replace(/^[\s#=*:<>_~-]+|[\s#=*:<>_~-]+$/gu, '');
  const text = /^\[[^[\]]*\]$/u.test(bare) ? bare.slice(1, -1) : bare;
  const values = new Map<SettingName, number | string>(valuesForAll(text));
  const level = values.has('volume') ? undefined : shareIn(text);
  if (level !== undefined) values.set('volume', level);
  let rest = text;
  const take = (found: RegExpExecArray | null) => {
    if (found) rest = rest.replace(found[0], ' ');
    return found;
  };
  takeVelocities(text, values, take);
  for (const [name, [, pattern]] of Object.entries(stages) as [
    keyof typeof stages,
    (typeof stages)['ampeg_attack'],
  ][]) {
    const found = take(pattern.exec(rest));
    if (found) values.set(name, secondsOf(found[1], found[2]));
  }
  const first = take(timeFirst.exec(rest));
  if (first) {
    const name = new RegExp(`^(?:${attackWords})$`, 'iu').test(first[3] ?? '')
      ? 'ampeg_attack'
      : 'ampeg_release';
    if (!values.has(name)) values.set(name, secondsOf(first[1], first[2]));
  }
  if (saysOnRelease(text)) values.set('trigger', 'release');
  if (values.size === 0) return undefined;
  if (level !== undefined) rest = rest.replace(share, ' ');
  const numbers = rest.match(/\d+(?:[.,]\d+)?/gu) ?? [];
  const written = new Set(
    [...values.values()].map((one) => (typeof one === 'number' ? Math.abs(one) : Number.NaN)),
  );
  const hasMore = numbers.some((one) => !written.has(Number(one.replace(',', '.'))));
  return { values, name: nameOf(text), hasMore };
}

/** A level that is given as a share of the full amplitude: `volume 80%`. */
function shareIn(text: string): number | undefined {
  const percent = Number(share.exec(text)?.[1]?.replace(',', '.') ?? Number.NaN);
  return percent > 0 ? Math.round(2000 * Math.log10(percent / 100)) / 100 : undefined;
}

function takeVelocities(
  text: string,
  values: Map<SettingName, number | string>,
  take: (found: RegExpExecArray | null) => RegExpExecArray | null,
): void {
  const set = (low: number | undefined, high: number | undefined) => {
    if (
      (low ?? 0) > greatestVelocity ||
      (high ?? 0) > greatestVelocity ||
      (low ?? 0) > (high ?? greatestVelocity)
    )
      return;
    if (low !== undefined) values.set('lovel', low);
    if (high !== undefined) values.set('hivel', high);
  };
  const layer = bracketed.exec(text);
  const isLayer = layer !== null && dynamicIn(layer[1] ?? '') >= 0;
  const both = take(range.exec(text)) ?? (isLayer ? take(layer) : null);
  if (both) {
    const [low, high] = both.slice(-2).map(Number);
    set(low, high);
    return;
  }
  const most = take(until.exec(text));
  if (most) set(undefined, Number(most[1]) - (/below|under|<(?!=)/i.test(most[0]) ? 1 : 0));
  const least = most ? null : take(since.exec(text));
  if (least) set(Number(least[1]) + (/above|over|>(?!=)|\u00fcber/i.test(least[0]) ? 1 : 0), undefined);
}

function secondsOf(number = '', unit = ''): number {
  const value = Number(number.replace(',', '.'));
  return unitOf(unit) === 'ms' || /^ms/i.test(unit) ? value / 1000 : value;
}

/** What stands before the first value: the name of a group. */
function nameOf(text: string): string {
  const name =
    text
      .split(/\s*(?:[([:;,|]|\s[-\u2013\u2014]\s|\b(?:vel|release|level|tune|pan)\w*\s*[=\d])/iu)[0]
      ?.trim() ?? '';
  return /\d/.test(name) && name.length > 30 ? '' : name;
}
