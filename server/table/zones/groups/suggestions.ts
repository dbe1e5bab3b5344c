import type { ColumnMeaning } from '../../../trade/meaning';
import { nameKinds, partsOfFileName } from '../../../trade/names/nameParts';
import { evenlySpread } from '../../columns/columnContents';
import type { ColumnReading, SideLabel } from '../../columns/columnReading';
import type { GroupedZones } from './sharedValues';
import { inGroupOrder } from './sharedValues';

const mostLooks = 300;

/** A way to group or name regions that the table itself does not state: to offer, not to impose. */
export interface Suggestion {
  kind: 'layers' | 'articulations' | 'microphones' | 'releases' | 'round_robins' | 'sections';
  /** What it is, in one sentence for people. */
  message: string;
  /** The parts, each with its regions as positions in `Instrument.regions`. */
  parts: { label: string; regions: number[] }[];
}

/**
 * Finds parts of file names that recur (`_p_`, `rr2`, `rel`, `stac`, names of microphones) and sections between blank
 * lines, where the table has no column that says the same. `afterBlank` lists rows that a blank line stands before.
 */
export function suggestGroups(
  { zones, groups }: GroupedZones,
  columns: readonly ColumnReading[],
  afterBlank: ReadonlySet<number>,
): Suggestion[] {
  const order = inGroupOrder(groups);
  const wordsOf = (zone: number) => partsOfFileName(zones.sample(zone));
  // Names that tell something do so all over the table.
  const looked = evenlySpread(order, mostLooks).map(wordsOf);
  const telling = nameKinds.filter(
    ({ column, labelOf }) =>
      columns.every(({ meaning, side }) => meaning !== column && !(side && saysSame(side, column))) &&
      !(column === 'hivel' && columns.some(({ meaning }) => meaning === 'dynamics')) &&
      looked.some((words) => words.some((word) => labelOf(word) !== undefined)),
  );
  const names = telling.length === 0 ? [] : Array.from(order, wordsOf);
  const suggestions: Suggestion[] = [];
  for (const { kind, what, labelOf } of telling) {
    const parts = new Map<string, number[]>();
    for (const [region, words] of names.entries()) {
      const label = words.map(labelOf).find((one) => one !== undefined);
      if (label !== undefined) addTo(parts, label, region);
    }
    const marked = [...parts.values()].reduce((sum, regions) => sum + regions.length, 0);
    // A mark on all regions alike parts nothing.
    if (parts.size === 0 || (parts.size === 1 && marked === zones.count)) continue;
    const labels = [...parts.keys()].slice(0, 8).join(', ');
    suggestions.push({
      kind,
      message: `The sample names of ${marked} regions give their ${what}: ${labels}.`,
      parts: [...parts].map(([label, regions]) => ({ label, regions })),
    });
  }
  const sections = sectionsOf({ zones, groups }, afterBlank);
  if (sections.length > 1) {
    const message = `Blank lines divide the table into ${sections.length} sections.`;
    const parts = sections.map((regions, at) => ({ label: `Section ${at + 1}`, regions }));
    suggestions.push({ kind: 'sections', message, parts });
  }
  return suggestions;
}

/** Whether columns of samples side by side tell what a column of some meaning does. */
function saysSame({ kind }: SideLabel, meaning: ColumnMeaning): boolean {
  if (kind === 'dynamics') return meaning === 'hivel';
  return kind === 'round_robin' ? meaning === 'seq_position' : meaning === 'group';
}

/** Regions between blank lines, where no group is named. */
function sectionsOf({ zones, groups }: GroupedZones, afterBlank: ReadonlySet<number>): number[][] {
  if (groups.length !== 1 || groups[0]?.name !== '') return [];
  const sections: number[][] = [[]];
  for (const [region, zone] of groups[0].zones.entries()) {
    if (afterBlank.has(zones.rows[zone]) && sections.at(-1)?.length !== 0) sections.push([]);
    sections.at(-1)?.push(region);
  }
  return sections;
}

function addTo(parts: Map<string, number[]>, label: string, region: number): void {
  const list = parts.get(label);
  if (list) list.push(region);
  else parts.set(label, [region]);
}
