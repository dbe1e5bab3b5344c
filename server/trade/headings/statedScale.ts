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

const isOne = String.raw`(?<![\d.,])1(?:[.,]0+)?(?!\d|[.,]\d)`;
const unchanged =
  'unchanged|unity|original|as recorded|as it is|as is|no change|wie aufgenommen|tel quel|comme enregistr\u00e9|tal cual|como grabad\\p{L}|come registrat\\p{L}|zoals opgenomen|unver\u00e4ndert|original|inchang\u00e9|sans changement|sin cambios?|igual|invariat\\p{L}|inalterad\\p{L}|sem altera\u00e7\u00e3o|ongewijzigd|of\u00f6r\u00e4ndra\\p{L}|u\u00e6ndret|uendret|muuttumaton|ennallaan|bez zmian|beze zm\u011bny|без изменений|変化なし|そのまま|原音|不变|不變|그대로|원음';
const one = new RegExp(
  String.raw`${isOne}\s*(?:=|:|is|means|ist|est|es|è|é|は|为|為)?\s*(?:${unchanged})|(?:${unchanged})\s*(?:=|:|is|ist|est|es|è|é)?\s*${isOne}`,
  'iu',
);

const fullLevels = String.raw`(?<![\d.,])(1(?:[.,]0+)?|100|127|255)\s*%?(?!\d|[.,]\d)`;
const anyNumber = new RegExp(
  String.raw`${fullLevels}\s*(?:=|:|is|means|ist|est|es|è|é)?\s*(?:${unchanged})|(?:${unchanged})\s*(?:=|:|is|ist|est|es|è|é)?\s*${fullLevels}`,
  'iu',
);

/** The number at which a text says that a level is left as it is: `127 = unchanged`. */
export function unchangedAt(text: string): number | undefined {
  const [, before, behind] = anyNumber.exec(text.slice(0, 200)) ?? [];
  const found = before ?? behind;
  return found === undefined ? undefined : Number.parseInt(found, 10);
}

/** Whether a text says that 1 leaves a level as it is: `1.0 = unchanged`. */
export function saysFactor(text: string): boolean {
  return one.test(text.slice(0, 200));
}
