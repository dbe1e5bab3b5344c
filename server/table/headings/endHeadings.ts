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

function isKnown(heading: string, meaning: ColumnMeaning): boolean {
  const read = readHeading(heading);
  return read?.meaning === meaning && !read.likeness;
}
