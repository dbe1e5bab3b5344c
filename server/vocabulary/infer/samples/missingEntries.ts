import { counted } from '../../../model/wording/counted';
import type { Draft } from '../draft';
import type { RegionElement } from '../elements/regionElement';
import type { Switches } from '../values/switches';
import type { SampleList } from './sampleList';

const mostNamed = 6;

/** Rows without the regions that refer to an entry that the list of samples does not have: nothing tells which file they play. */
export function withoutMissing(
  listed: { list: SampleList } | undefined,
  { pathAt, chain }: RegionElement,
  found: Switches,
): Switches {
  const level = chain.length - 1;
  const reference = found.rows.columns.find(
    (column) => column.at === pathAt && column.level === level && !column.listed,
  );
  if (!listed || !reference) return found;
  const { paths, place } = listed.list;
  const isMissing = (row: number) => {
    const text = reference.cells[row]?.text.trim();
    return text !== undefined && !paths.has(text);
  };
  const rows = Array.from({ length: found.rows.count }, (_, row) => row);
  const missing = rows.filter(isMissing);
  if (missing.length === 0 || missing.length === rows.length) return found;
  const words = [...new Set(missing.map((row) => reference.cells[row]?.text.trim() ?? ''))];
  const kept = rows.filter((row) => !isMissing(row));
  const key = place.key.startsWith('#') ? 'position' : place.key.replace(/^@/, '');
  const shown = words.slice(0, mostNamed).map((word) => `"${word}"`);
  const draft: Draft = {
    id: 'sample.missing',
    message: `No <${place.element}> has the ${key} ${shown.join(', ')}${words.length > mostNamed ? ' and others' : ''}: ${counted(missing.length, 'region is', 'regions are')} left out.`,
    confidence: 0.9,
    isGuess: true,
    isLost: true,
    evidence: ['Correct the reference or the list.'],
    span: reference.cells[missing[0]] ?? { start: 0, end: 0 },
    isAbout: () => false,
    alternatives: [],
  };
  return {
    off: [...found.off, { element: chain[level], at: reference.at, words }],
    drafts: [...found.drafts, draft],
    rows: {
      ...found.rows,
      count: kept.length,
      columns: found.rows.columns.map((column) => ({
        ...column,
        cells: kept.map((row) => column.cells[row]),
      })),
    },
  };
}
