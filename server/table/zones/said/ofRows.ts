import type { Statements } from '../../../trade/statements/statements';
import type { ColumnReading } from '../../columns/columnReading';
import { shortened } from '../../columns/columnReading';
import type { TableNotes } from '../../tableNotes';
import type { ZoneList } from '../zoneList';
import { valueWords } from '../zoneList';
import { namesOfZones, RowsSaid } from './rowsSaid';

/** A sentence, and how many zones do what it says. */
type Tell = (text: string, some: readonly number[], what: string) => void;

/**
 * Lets zones sound when the key is let go, or play in turn, whose rows the text names by their place: `The last two take turns`; also all
 * of the same keys, where it says so. Values that columns give stay. The zones of the table are those from number `first` on.
 */
export function giveToRows(
  zones: ZoneList,
  first: number,
  columns: readonly ColumnReading[],
  { ofRows, turnsOfSameKeys }: Pick<Statements, 'ofRows' | 'turnsOfSameKeys'>,
  notes: TableNotes,
): void {
  if ((ofRows.length === 0 && turnsOfSameKeys === undefined) || zones.count === first) return;
  const said = new RowsSaid(zones, first, columns);
  const samples = zones.column('sample').cells;
  const tell: Tell = (text, some, what) => {
    const cell = samples[some[0] ?? first];
    notes.row = -2;
    const span = { start: zones.cells.starts[cell], end: zones.cells.ends[cell] };
    notes.add('assumed', span, `"${shortened(text)}": ${what}`);
  };
  const has = (name: 'trigger' | 'seq_position') =>
    columns.some(({ meaning, side }) => meaning === name || (name === 'trigger' && side?.kind === name));
  const isTurning = has('seq_position') || columns.some(({ side }) => side !== undefined);
  for (const { says, rows, before, text } of ofRows) {
    if (says === 'release' ? has('trigger') : isTurning) continue;
    const meant = said.zonesOf(rows, before);
    if (!meant) tell(text, [], 'nothing is done, as it stays open which rows are meant.');
    else if (says === 'turns') takeTurns(zones, meant, text, tell);
    else {
      const triggers = zones.column('trigger');
      for (const zone of meant) triggers.set(zone, samples[zone], valueWords.indexOf('release'));
      tell(
        text,
        meant,
        `${namesOfZones(zones, meant)} ${meant.length === 1 ? 'sounds' : 'sound'} when the key is let go.`,
      );
    }
  }
  const all = Array.from({ length: zones.count - first }, (_, at) => first + at);
  if (turnsOfSameKeys !== undefined && !isTurning && !ofRows.some(({ says }) => says === 'turns'))
    takeTurns(zones, all, turnsOfSameKeys, tell);
}

const conditions = ['key', 'lokey', 'hikey', 'lovel', 'hivel', 'trigger', 'sw_last'] as const;

/** Lets those of some zones that answer the same keys and velocities play in turn, in their order. */
function takeTurns(zones: ZoneList, some: readonly number[], text: string, tell: Tell): void {
  const columns = [...conditions.map((name) => zones.values(name)), zones.dynamics];
  const sets = new Map<string, number[]>();
  for (const zone of some) {
    const alike = `${zones.groups[zone]} ${columns.map((column) => column?.oneMore(zone) ?? 0).join(' ')}`;
    const set = sets.get(alike);
    if (set) set.push(zone);
    else sets.set(alike, [zone]);
  }
  const turning = [...sets.values()].filter((set) => set.length > 1);
  if (turning.length === 0) {
    tell(text, some, 'nothing is done, as no two of these rows have the same keys and velocities.');
    return;
  }
  const samples = zones.column('sample').cells;
  const positions = zones.column('seq_position');
  const lengths = zones.column('seq_length');
  for (const set of turning)
    for (const [at, zone] of set.entries()) {
      positions.set(zone, samples[zone], at + 1);
      lengths.set(zone, samples[zone], set.length);
    }
  tell(
    text,
    turning[0] ?? [],
    `${namesOfZones(zones, turning.flat())} play in turn, as many as have the same keys and velocities.`,
  );
}
