import { readHeading } from '../../trade/headings/headings';
import { pairedHeadings } from '../../trade/headings/pairedHeadings';
import type { ColumnMeaning } from '../../trade/meaning';
import type { TableRows } from '../cells/tableRows';
import { shortened } from '../columns/columnReading';
import type { Glossary } from './glossary';

const mostColumns = 40;
const meanings = {
  keys: ['lokey', 'hikey'],
  velocities: ['lovel', 'hivel'],
} as const satisfies Record<string, readonly [ColumnMeaning, ColumnMeaning]>;

/** Settles headings that say only beside each other that they give the two ends of ranges; see {@link pairedHeadings}. */
export function useEndHeadings(tables: readonly TableRows[], glossary: Glossary): void {
  for (const { headings } of tables) {
    completeEnds(headings);
    const texts = headings.slice(0, mostColumns).map(({ text }) => text);
    for (const [at, low] of texts.entries()) {
      const high = texts[at + 1];
      const subject = high === undefined || low === '' ? undefined : pairedHeadings(low, high);
      if (!subject || high === undefined) continue;
      const [lower, upper] = meanings[subject];
      if (isKnown(low, lower) && isKnown(high, upper)) continue;
      const both = `${shortened(low)} – ${shortened(high)}`;
      glossary.settle(low, lower, both);
      glossary.settle(high, upper, both);
    }
  }
}

const upperEnds: Readonly<Partial<Record<ColumnMeaning, ColumnMeaning>>> = {
  lokey: 'hikey',
  lovel: 'hivel',
  loop_start: 'loop_end',
};
/** What one word may mean that stands for an end, whatever it is the end of. */
const endMeanings: ReadonlySet<ColumnMeaning> = new Set(['end', 'hikey', 'hivel', 'key_range']);

/** Gives a heading of one word what the one in front of it names the other end of: `Vel from` and `to`, `Loop start` and `end`. */
function completeEnds(headings: TableRows['headings']): void {
  const looked = headings.slice(0, mostColumns);
  const known = looked.map(({ text }) => (text === '' ? undefined : readHeading(text)?.meaning));
  for (const [at, { text: low }] of looked.entries()) {
    const upper = known[at] && upperEnds[known[at]];
    const high = looked[at + 1]?.text ?? '';
    if (!upper || !/^\p{L}+\.?$/u.test(high)) continue;
    const own = known[at + 1];
    if ((own !== undefined && !endMeanings.has(own)) || own === upper) continue;
    if (known.some((one, other) => other !== at + 1 && one === upper)) continue;
    const words = low.split(/\s+/);
    const whole = words
      .map((_, left) => [...words.slice(0, left), ...words.slice(left + 1), high].join(' '))
      .find((text) => words.length > 1 && isKnown(text, upper));
    if (whole !== undefined) headings[at + 1].text = whole;
  }
}

function isKnown(heading: string, meaning: ColumnMeaning): boolean {
  const read = readHeading(heading);
  return read?.meaning === meaning && !read.likeness;
}
