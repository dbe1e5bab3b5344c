import { dynamicIn } from '../../../trade/dynamics';
import { dynamicsIn } from '../../../trade/dynamicsIn';
import { bareWord, wordsOf } from '../../../trade/languages/spelling';
import type { ColumnMeaning } from '../../../trade/meaning';
import { keyNumber, readKey } from '../../../trade/readings/keyReading';
import { startInTitle } from '../../../trade/readings/startInTitle';
import { switchInTitle } from '../../../trade/switchTitles';
import type { ColumnReading } from '../../columns/columnReading';
import { shortened } from '../../columns/columnReading';
import type { TableNotes } from '../../tableNotes';
import { hasVelocities } from '../layers/namedDynamics';
import type { ValueOptions } from '../zoneCells';
import type { ZoneList } from '../zoneList';
import { valueWords } from '../zoneList';

/** A name that says more is no name of a kind of zones. */
const mostWords = 4;
const velocities: readonly ColumnMeaning[] = ['lovel', 'hivel', 'velocity_range', 'dynamics'];

/**
 * Reads what the names of groups say of their zones: that they sound when the key is let go, and how loud they are played, where
 * no column says so. Answers whether dynamics were found. The zones of the table are those from number `first` on.
 */
export function readGroupNames(
  zones: ZoneList,
  first: number,
  columns: readonly ColumnReading[],
  notes: TableNotes,
  options: Pick<ValueOptions, 'keyShift' | 'naming' | 'statements'>,
): boolean {
  const used = new Set<number>();
  for (let zone = first; zone < zones.count; zone++) used.add(zones.groups[zone]);
  const names = [...used]
    .filter((group) => group > 0)
    .map((group) => [group, zones.groupNames[group]] as const);
  if (names.length === 0) return false;
  const has = (meaning: ColumnMeaning) =>
    columns.some((column) => column.meaning === meaning || column.side?.kind === meaning);
  if (!has('trigger')) {
    for (const [group, name] of names)
      if (startInTitle(name) === 'release' || options.statements.releases.has(bareWord(name)))
        setRelease(zones, first, group, notes);
  }
  if (!has('keyswitch')) setSwitches(zones, first, names, options, notes);
  if (velocities.some(has) || hasVelocities(zones, first)) return false;
  const dynamics = new Map(names.map(([group, name]) => [group, dynamicsOfName(name)]));
  const found = new Set([...dynamics.values()].flatMap(({ soft, loud }) => [soft, loud]));
  if (found.size < 2 || used.has(0) || found.has(-1)) return false;
  for (let zone = first; zone < zones.count; zone++) {
    const { soft, loud } = dynamics.get(zones.groups[zone]) ?? { soft: 0, loud: 0 };
    zones.setDynamic(zone, zones.groupCells[zone], soft, loud);
  }
  return true;
}

/** Key switches that names of groups give, as in `Plucked (keyswitch C1)`. */
function setSwitches(
  zones: ZoneList,
  first: number,
  names: readonly (readonly [group: number, name: string])[],
  { keyShift, naming, statements }: Pick<ValueOptions, 'keyShift' | 'naming' | 'statements'>,
  notes: TableNotes,
): void {
  const keys = new Map<number, number>();
  for (const [group, name] of names) {
    const found = switchInTitle(name);
    const key = found && readKey(found.key, naming);
    const number = keyNumber(key ?? undefined, keyShift);
    if (!found || !(number >= 0 && number <= 127)) continue;
    keys.set(group, number);
    if (found.name !== '') zones.groupNames[group] = found.name;
  }
  if (keys.size === 0) return;
  const [low, high] = [Math.min(...keys.values()), Math.max(...keys.values())];
  const said = statements.switches.start;
  const start = [...keys].find(
    ([group]) => said && bareWord(zones.groupNames[group] ?? '') === bareWord(said.name),
  )?.[1];
  let cell = -1;
  for (let zone = first; zone < zones.count; zone++) {
    const key = keys.get(zones.groups[zone]);
    if (key === undefined) continue;
    cell = zones.groupCells[zone];
    zones.column('sw_last').set(zone, cell, key);
    zones.column('sw_lokey').set(zone, cell, low);
    zones.column('sw_hikey').set(zone, cell, high);
    if (start !== undefined) zones.column('sw_default').set(zone, cell, start);
  }
  if (cell < 0) return;
  notes.row = -1;
  const span = { start: zones.cells.starts[cell], end: zones.cells.ends[cell] };
  const list = [...keys]
    .map(([group, key]) => `"${shortened(zones.groupNames[group] ?? '')}" by ${key}`)
    .join(', ');
  notes.add(
    'assumed',
    span,
    `The names of groups give key switches: ${list}. The key switches are taken to be ${low} to ${high}. ${start === undefined ? 'Nothing sounds before one is pressed: add sw_default to choose one.' : `${start} is the one to start with.`}`,
  );
}

/** The softest and the loudest dynamic that a name gives, alone or beside other words; −1 for none. */
function dynamicsOfName(name: string): { soft: number; loud: number } {
  const words = wordsOf(name);
  const whole = dynamicsIn(words.join(' ')) ?? dynamicsIn(name);
  const found = whole || words.length > mostWords ? [] : words.map(dynamicIn).filter((one) => one >= 0);
  const [one = -1, ...others] = found;
  return whole ?? (others.length > 0 ? { soft: -1, loud: -1 } : { soft: one, loud: one });
}

function setRelease(zones: ZoneList, first: number, group: number, notes: TableNotes): void {
  const { cells, groups, groupCells } = zones;
  const triggers = zones.column('trigger');
  let cell = -1;
  for (let zone = first; zone < zones.count; zone++) {
    if (groups[zone] !== group) continue;
    cell = groupCells[zone];
    triggers.set(zone, cell, valueWords.indexOf('release'));
  }
  if (cell < 0) return;
  const span = { start: cells.starts[cell], end: cells.ends[cell] };
  const name = shortened(zones.groupNames[group]);
  notes.row = -1;
  notes.add('assumed', span, `The zones of "${name}" are taken to sound when the key is released.`);
}
