import type { MiddleC } from '../../model/keys';
import { Source } from '../../model/text/source';
import type { NoteNaming } from '../../trade/keyReading';
import type { TableCells } from '../cells/cells';
import type { TableRows } from '../cells/tableRows';
import type { ColumnReading } from '../columns/columnReading';
import { octaveShifts } from '../columns/octave';
import type { Steps } from '../steps';
import { TableNotes } from '../tableNotes';
import { shareVelocities } from './dynamicLayers';
import { SideZones } from './sideZones';
import { completeLayers } from './velocityLayers';
import { ZoneCells } from './zoneCells';
import type { ZoneList } from './zoneList';
import { NameReader } from './zoneNames';
import { readZoneValues } from './zoneValues';

/** After so many samples a step ends. */
const zonesInStep = 10_000;

/** How the zones of a text are read. */
export interface ZoneOptions {
  middleC: MiddleC | undefined;
  naming: NoteNaming;
  /** The path to write for a sample, by the name in the table. */
  resolveSample?: ((sample: string) => string | undefined) | undefined;
  /** Frames a second of a sample, by the name in the table. */
  rateOf?: ((sample: string) => number | undefined) | undefined;
}

/** One table of a text. */
export interface Table {
  rows: TableRows;
  /** The rows that may be zones. */
  data: number[];
  columns: ColumnReading[];
}

/** Reads the rows of a table that are zones into a list, in steps, and notes those that are not. */
export function* readZones(
  zones: ZoneList,
  { rows, columns }: Table,
  { middleC, naming, resolveSample, rateOf }: ZoneOptions,
  notes: TableNotes,
): Steps<void> {
  const first = zones.count;
  const firstNote = notes.count;
  const names = new NameReader(zones.cells, rows, columns, notes);
  const sides = new SideZones(zones.cells, rows, columns, notes);
  for (const { row, why } of rows.others) names.pass(row, why);
  for (const row of rows.data) {
    notes.row = row;
    if (sides.areGiven && sides.addZones(zones, row, names)) continue;
    const cell = names.sampleCell(row);
    if (cell >= 0) names.addZone(zones, row, cell);
  }
  yield 0.2;
  const options = { keyShift: octaveShifts[middleC ?? 'C4'], naming, rateOf };
  for (const share of readZoneValues(new ZoneCells(zones, first, columns, rows.data, notes, options)))
    yield 0.2 + share * 0.7;
  for (let zone = first; zone < zones.count; zone++) {
    const path = resolveSample?.(zones.sample(zone));
    if (path === undefined) names.noteEnding(zones, zone);
    else zones.setSample(zone, path);
    if (zone % zonesInStep === 0) yield 0.9 + (0.1 * zone) / zones.count;
  }
  notes.sortByRow(firstNote);
  completeLayers(zones, first, columns, notes);
  const telling = columns.find(({ meaning, side }) => meaning === 'dynamics' || side?.kind === 'dynamics');
  if (telling) {
    const cell = zones.dynamics?.cells.find((one) => one >= 0) ?? -1;
    const span = telling.headingSpan ?? {
      start: zones.cells.starts[cell] ?? 0,
      end: zones.cells.ends[cell] ?? 0,
    };
    shareVelocities(zones, first, span, notes);
  }
}

/** The sample names of the zones of a table, as {@link ZoneOptions.resolveSample} is given them. */
export function sampleNames(cells: TableCells, { rows, columns }: Table): string[] {
  const notes = new TableNotes(new Source('', cells.text));
  const names = new NameReader(cells, rows, columns, notes);
  const sides = new SideZones(cells, rows, columns, notes);
  return rows.data.flatMap((row) => {
    const beside = sides.areGiven ? sides.sampleCells(row) : [];
    const found = beside.length > 0 ? beside : [names.sampleCell(row)];
    return found.flatMap((cell) => (cell < 0 ? [] : [names.otherName(cell) ?? cells.value(cell)]));
  });
}
