import { rangeWords } from './rangeWords';

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
