import { readHeading } from '../headings';
import { bareWord } from '../languages/spelling';
import { rangeWords } from '../rangeWords';

/** A word that a text explains, as `held = loops while the key is down`. */
export interface LegendEntry {
  says: string;
  /** The text that it stands in. */
  text: string;
}

const longest = 1000;
const mostEntries = 200;
const is = String.raw`(?:=+>?|:(?!\/\/)|\u2192|->|\u2013|\b(?:is|are|means?|plays?|goes|stands for|ist|sind|hei\u00dft|bedeutet|spielt|est|sont|signifie|veut dire|es|son|significa|\u00e8|sono|vuol dire|\u00e9|geeft|betekent|betyder|znamená|oznacza|to)(?=\s))`;
const entry = new RegExp(
  String.raw`^(?:and|und|et|y|e|en|och|og|i|a)?\s*["'*_\u201c\u201e\u00ab\u2018\x60(]{0,3}([\p{L}\p{N}][\p{L}\p{N} +#/-]{0,20}?)["'*_\u201d\u201c\u00bb\u2019\x60)]{0,3}\s*${is}\s*(\S.*)$`,
  'iu',
);
const pieces = new RegExp(
  String.raw`[,;.](?=\s|$)|[\n\r]|\s\|\s|\s(?:and|und|et|y|e|en|och|og|i)\s(?=[^\s,;.]{1,20}(?: [^\s,;.]{1,20})?\s*${is})`,
  'iu',
);

/** The words that some texts explain, bare, each with its first explanation. */
export function legendIn(texts: readonly string[]): ReadonlyMap<string, LegendEntry> {
  const found = new Map<string, LegendEntry>();
  for (const whole of texts) {
    const text = whole.slice(0, longest);
    let open: LegendEntry | undefined;
    for (const piece of text.split(pieces)) {
      const [, word = '', says = ''] = entry.exec(lastClause(piece.trim())) ?? [];
      if (word === '') {
        if (open && piece.trim() !== '') open.says += `, ${piece.trim()}`;
        continue;
      }
      open = { says: says.trim(), text: text.trim() };
      // `Layer A` explains A too.
      const [lead = '', ...others] = word.split(' ');
      const short = others.length > 0 && readHeading(lead) ? [others.join(' ')] : [];
      for (const key of [word, ...short].map(bareWord))
        if (found.size < mostEntries && !found.has(key)) found.set(key, open);
    }
  }
  return found;
}

/** What stands behind the first colon of a list, as in `Loops: held = …`. */
function lastClause(piece: string): string {
  const list = /^[^:=]{1,40}:\s+(.*=.*)$/u.exec(piece);
  return list?.[1] ?? piece;
}

const range = new RegExp(
  String.raw`^(?:vel\p{L}*\.?|anschl\p{L}*|aanslag\p{L}*|dynami\p{L}*)?\W{0,3}(?:from|von|de|da|van)?\s*(\d{1,3})\s*(?:[-\u2010-\u2015~\u2192]|\.{2,3}|\u2026|to|${rangeWords})\s*(\d{1,3})(?![\d.,]\d)(?:\s*vel\p{L}*\.?)?\W*$`,
  'iu',
);

/** The velocities that an explanation names and nothing else: `1 to 60`, `velocity 61-127`. */
export function velocitiesIn(says: string): { low: number; high: number } | undefined {
  const [, low, high] = range.exec(says) ?? [];
  const found = { low: Number(low ?? Number.NaN), high: Number(high ?? Number.NaN) };
  return found.low < found.high && found.high <= 127 ? found : undefined;
}
