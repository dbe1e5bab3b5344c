import { rangeWords } from '../rangeWords';

const scale = new RegExp(
  String.raw`[([{（]\s*([-\u2212+]?\d{1,3})\s*(?:\.{2,3}|\u2026|[-\u2010-\u2015~\u301c\u2192/:]|${rangeWords})\s*([-\u2212+]?\d{1,3})\s*%?\s*[)\]}）]`,
  'iu',
);

/** The least and greatest value that a heading states in brackets: `Pan (0..1)`, `Velocity (0–127)`, `Pan [-64..63]`. */
export function scaleIn(heading: string): { low: number; high: number } | undefined {
  const match = scale.exec(heading);
  if (!match) return undefined;
  const [low, high] = [match[1], match[2]].map((text) => Number(text?.replace('\u2212', '-')));
  return low !== undefined && high !== undefined && low < high ? { low, high } : undefined;
}

/** What a level or a tuning is that is left as it is. */
const unchanged = [
  '(?:the |that of the )?(?:original|recorded)|(?:the )?(?:level|loudness|volume) (?:of|in) the (?:recording|file|sample)|unchanged|unaltered|untouched|unity|as (?:recorded|(?:it|they) (?:is|are|was|were)|is)|no change|(?:the )?same',
  'wie aufgenommen|unver\u00e4ndert|gleich|im original',
  "(?:d['\u2019])?origin[ea]l?|tel(?:le)?s? quel(?:le)?s?|comme enregistr\u00e9|inchang\u00e9|sans (?:changement|modification)",
  String.raw`tal cual|como (?:grabad|gravad)\p{L}|sin (?:cambios?|modificar)|sense canvis|igual|inalterad\p{L}|sem altera\u00e7(?:\u00e3o|\u00f5es)|sem mudan\u00e7as?`,
  String.raw`come registrat\p{L}|invariat\p{L}|inalterat\p{L}|senza modifiche|zoals opgenomen|ongewijzigd|onveranderd|origine`,
  String.raw`of\u00f6r\u00e4ndra\p{L}|u\u00e6ndret|uendret|muuttumaton|ennallaan|alkuper\u00e4i`,
  'bez zmian|niezmienion|orygina\u0142|oryginaln|beze zm\u011bny|nezm\u011bn\u011bn|origin\u00e1l|p\u016fvodn|v\u00e1ltozatlan|eredeti',
  'без изменени[йя]|исходн|оригинал|как (?:есть|записано)|αμετάβλητ|αρχικ[όήά]|de\u011fi\u015fmez|de\u011fi\u015fmemi\u015f|oldu\u011fu gibi|orijinal',
  '変化なし|(?:元の?|その)まま|原音|無変更|不变|不變|无变化|原始|原样|그대로|원음|원본|변화 없음',
].join('|');
/** What says of a number what it means. */
const meaning = String.raw`\s*(?:=|:|\(|\u2013|\u2014|->?|\u2192|(?:is|means|(?:leaves|lets|l\u00e4sst|laisse|deja|lascia|deixa|laat)(?: \p{L}+){0,3}?|ist|bedeutet|hei\u00dft|est|signifie|es|significa|é|è|betekent|\u00e4r|er|betyder|on|to|oznacza|je|znamen\u00e1|означает|は|为|為|은|는)(?!\p{L}))?\s*`;
const one = '1(?:[.,]0+)?';

/** A number that a text says leaves something as it is, one of those of a pattern. */
function unchangedPattern(numbers: string): RegExp {
  const number = String.raw`(?<![\d.,])(${numbers})(?!\d|[.,]\d)\s*%?`;
  return new RegExp(
    String.raw`${number}${meaning}(?:${unchanged})|(?:${unchanged})\p{L}*${meaning}${number}`,
    'iu',
  );
}

const anyUnchanged = unchangedPattern(`${one}|100|127|255`);

/** The number at which a text says that a level is left as it is: `127 = unchanged`. */
export function unchangedAt(text: string): number | undefined {
  const [, before, behind] = anyUnchanged.exec(text.slice(0, 200)) ?? [];
  const found = before ?? behind;
  return found === undefined ? undefined : Number.parseInt(found, 10);
}

/** A text without what says at which number something is left as it is. */
export function withoutUnchanged(text: string): string {
  return text.replace(anyUnchanged, ' ');
}

/** Whether a text says that 1 leaves a level as it is: `1.0 = unchanged`. */
export function saysFactor(text: string): boolean {
  return unchangedAt(text) === 1;
}
