import { transposeBounds, tuneBounds, volumeBounds } from '../../../trade/bounds';
import { rounded } from '../../../trade/decimal';
import type { SettingName, StatedSettings } from '../../../trade/statements/settings';
import { statedSettings } from '../../../trade/statements/settings';
import type { ColumnReading } from '../../columns/columnReading';
import { shortened } from '../../columns/columnReading';
import type { TableNotes } from '../../tableNotes';
import type { ValueWord, ZoneList } from '../zoneList';
import { valueWords } from '../zoneList';

const bounds: Readonly<Partial<Record<SettingName, { least: number; most: number }>>> = {
  volume: volumeBounds,
  transpose: transposeBounds,
  tune: tuneBounds,
  pan: { least: -100, most: 100 },
  ampeg_attack: { least: 0, most: 100 },
  ampeg_release: { least: 0, most: 100 },
};

/**
 * Gives zones what the title of their section says of them, such as `Soft (velocity 1 to 50), release 1.2 s`; what a row gives itself
 * counts before that. `sections` are the cells of titles by row; the zones of the table are those from number `first` on.
 */
export function giveSectionSettings(
  zones: ZoneList,
  first: number,
  sections: ReadonlyMap<number, number>,
  notes: TableNotes,
): void {
  if (sections.size === 0) return;
  const { cells } = zones;
  const known = new Map<number, StatedSettings | undefined>();
  for (let zone = first; zone < zones.count; zone++) {
    const title = sections.get(zones.rows[zone]);
    if (title === undefined) continue;
    if (!known.has(title)) {
      const settings = statedSettings(cells.plain(title));
      known.set(title, settings);
      if (settings)
        noteSettings(
          cells.value(title),
          { start: cells.starts[title], end: cells.ends[title] },
          settings,
          notes,
        );
    }
    for (const [name, value] of known.get(title)?.values ?? []) give(zones, zone, title, name, value);
  }
}

/**
 * Gives zones what the heading of their column of samples says, such as `Room, mixed at -6 dB`; a level is added to that of the row.
 * The zones of the table are those from number `first` on.
 */
export function giveColumnSettings(
  zones: ZoneList,
  first: number,
  columns: readonly ColumnReading[],
  notes: TableNotes,
): void {
  const telling = columns.filter(({ settings }) => settings !== undefined);
  const { cells, rows } = zones;
  const samples = zones.column('sample').cells;
  for (const { index, heading, headingSpan, settings } of telling) {
    if (!settings || !headingSpan) continue;
    const heads = headingSpan;
    let used = false;
    for (let zone = first; zone < zones.count; zone++) {
      const cell = samples[zone];
      if (cell - cells.rowFirst[rows[zone]] !== index) continue;
      used = true;
      giveBeside(zones, zone, cell, settings);
    }
    if (used) noteSettings(heading, heads, settings, notes, 'the zones of its column');
  }
}

/** Gives a zone what is said of it besides its row: a level is added to that of the row, all else counts where the row says nothing. */
export function giveBeside(zones: ZoneList, zone: number, cell: number, settings: StatedSettings): void {
  for (const [name, value] of settings.values) {
    const level = name === 'volume' && typeof value === 'number' ? zones.values('volume') : undefined;
    const own = level && level.cells[zone] >= 0 ? level.numbers[zone] : undefined;
    if (own !== undefined && level) level.set(zone, level.cells[zone], rounded(own + Number(value)));
    else give(zones, zone, cell, name, value);
  }
}

function give(zones: ZoneList, zone: number, cell: number, name: SettingName, value: number | string): void {
  const written = typeof value === 'number' ? rounded(value) : valueWords.indexOf(value as ValueWord);
  if (!isWithin(name, value) || (typeof value === 'string' && written < 0)) return;
  const column = zones.column(name);
  if (column.cells[zone] < 0) column.set(zone, cell, written);
}

function isWithin(name: SettingName, value: number | string): boolean {
  const bound = bounds[name];
  return typeof value === 'string' || !bound || (value >= bound.least && value <= bound.most);
}

function noteSettings(
  title: string,
  span: { start: number; end: number },
  { values, hasMore }: StatedSettings,
  notes: TableNotes,
  whose = 'the zones below it',
): void {
  const taken = [...values].filter(([name, value]) => isWithin(name, value));
  const left = [...values].filter(([name, value]) => !isWithin(name, value));
  const list = taken.map(([name, value]) => `${name}=${value}`).join(', ');
  const beyond = left.map(([name, value]) => ` ${name}=${value} is out of bounds and left out.`).join('');
  const more = hasMore ? ' What else it says is not used.' : '';
  notes.row = -2;
  notes.add(
    'assumed',
    span,
    `${notes.place(span.start)}, "${shortened(title)}", goes for ${whose}: ${list}.${beyond}${more}`,
  );
}
