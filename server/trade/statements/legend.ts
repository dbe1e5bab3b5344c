import { readHeading } from '../headings/headings';
import { bareWord } from '../languages/spelling';
import { rangeEndWords, rangeWords } from '../rangeWords';

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
  String.raw`[,;.](?=\s|$)|[\n\r\u3001\u3002\u30fb]|\s\|\s|\s+(?=[\p{L}\p{N}]{1,12}\s?=\s?\d)|\s(?:and|und|et|y|e|en|och|og|i)\s(?=[^\s,;.]{1,20}(?: [^\s,;.]{1,20})?\s*${is})`,
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
  String.raw`^(?:vel\p{L}*\.?|anschl\p{L}*|aanslag\p{L}*|dynami\p{L}*)?\W{0,3}${rangeEndWords('opening')}?\s*(\d{1,3})\s*(?:[-\u2010-\u2015~\u2192]|\.{2,3}|\u2026|${rangeWords})\s*(\d{1,3})(?![\d.,]\d)(?:\s*vel\p{L}*\.?)?\W*$`,
  'iu',
);

const until = new RegExp(
  String.raw`^(?:vel\p{L}*\.?|anschl\p{L}*)?\W{0,3}(?:${rangeEndWords('upTo')}|<=|\u2264|(${rangeEndWords('below')}|<))\s*(\d{1,3})(?![\d.,]\d)\W*$`,
  'iu',
);
const since = new RegExp(
  String.raw`^(?:vel\p{L}*\.?|anschl\p{L}*)?\W{0,3}(?:${rangeEndWords('from')}|>=|\u2265|(${rangeEndWords('above')}|>))\s*(\d{1,3})(?:\s?\+|\s(?:up|on|onwards?|and up|aufw\u00e4rts))?(?![\d.,]\d)\W*$`,
  'iu',
);
const rest =
  /^(?:(?:is|are)\s)?(?:the rest|all the rest|everything (?:above|else|over)|all above|above|louder|anything (?:above|louder)|der rest|alles (?:dar\u00fcber|andere)|dar\u00fcber|le reste|au-dessus|el resto|lo dem\u00e1s|il resto|o resto|de rest|resten|reszta|zbytek|остальное)(?!\p{L})/iu;
const greatest = 127;

/** The velocities of layers that a text explains, by their bare names; ends that are left open meet the next layer. */
export function layersIn(legend: ReadonlyMap<string, LegendEntry>): ReadonlyMap<string, string> {
  const ends: { name: string; low: number | undefined; high: number | undefined }[] = [];
  for (const [name, { says }] of legend) {
    const short = says.replace(/[.!]$/u, '').trim();
    const [, first, last] = range.exec(short) ?? [];
    const [, below, most] = until.exec(short) ?? [];
    const [, above, least] = since.exec(short) ?? [];
    if (first !== undefined) ends.push({ name, low: Number(first), high: Number(last) });
    else if (most !== undefined)
      ends.push({
        name,
        low: undefined,
        high: Number(most) - (below === undefined ? 0 : 1),
      });
    else if (least !== undefined)
      ends.push({
        name,
        low: Number(least) + (above === undefined ? 0 : 1),
        high: undefined,
      });
    else if (rest.test(short)) ends.push({ name, low: undefined, high: undefined });
  }
  const at = ({ low, high }: { low: number | undefined; high: number | undefined }) =>
    low ?? high ?? greatest + 1;
  const order = [...ends].sort((a, b) => at(a) - at(b));
  const layers = new Map<string, string>();
  for (const [place, { name, low, high }] of order.entries()) {
    const before = order[place - 1];
    const next = order[place + 1];
    const from = low ?? (before ? (before.high ?? Number.NaN) + 1 : undefined);
    const to = high ?? (next ? (next.low ?? Number.NaN) - 1 : undefined);
    const isRange = (from ?? 0) < (to ?? greatest) && (to ?? 0) <= greatest;
    if (!isRange || (from === undefined && to === undefined)) continue;
    layers.set(name, from === undefined ? `<=${to}` : to === undefined ? `>=${from}` : `${from}-${to}`);
  }
  return layers;
}
