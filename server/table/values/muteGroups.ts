import { saysNone } from '../../trade/languages/cellWords';
import { bareWord } from '../../trade/languages/spelling';
import { readSequence } from '../../trade/readings/numberReading';
import type { ColumnReading } from '../columns/columnReading';
import { columnName, shortened } from '../columns/columnReading';
import type { ZoneCells } from '../zones/zoneCells';

/**
 * Reads groups of zones that silence one another, as closed and open cymbals do: one column gives `group` and `off_by`; beside a
 * column of who is silenced by whom it gives `group` alone. A column of groups that a zone silences is told from their side.
 */
export function readMuteGroups(table: ZoneCells): void {
  const [own, offBy, mutes] = (['mute_group', 'off_by', 'mutes'] as const).map((one) => table.column(one));
  const numbers = new GroupNumbers(table, [own, offBy, mutes]);
  const groups = table.zones.column('group');
  const silencers = table.zones.column('off_by');
  if (own)
    numbers.each(own, (zone, cell, number) => {
      groups.set(zone, cell, number);
      if (!offBy && !mutes) silencers.set(zone, cell, number);
    });
  if (offBy) numbers.each(offBy, (zone, cell, number) => silencers.set(zone, cell, number));
  if (mutes && !own && !offBy && isNumbered(table, mutes)) readMutual(table, mutes, numbers);
  else if (mutes) readSilenced(table, mutes, numbers);
}

/** Where nothing else says who is in a group, those that silence the same number are its members. */
function readMutual(table: ZoneCells, column: ColumnReading, numbers: GroupNumbers): void {
  const [groups, silencers] = [table.zones.column('group'), table.zones.column('off_by')];
  numbers.each(column, (zone, cell, number) => {
    groups.set(zone, cell, number);
    silencers.set(zone, cell, number);
  });
  const message = `${columnName(column)} gives the groups that zones silence, but no column says which zones are in them. Zones with the same number are taken to silence each other.`;
  table.noteColumn(column, message);
}

function isNumbered(table: ZoneCells, column: ColumnReading): boolean {
  let isEach = true;
  table.each(column, (_, cell) => {
    const text = table.cells.plain(cell);
    isEach &&= saysNoGroup(text) || numberIn(text) !== undefined;
  });
  return isEach;
}

/** A zone that silences a group needs a group of its own, which the silenced ones name. */
function readSilenced(table: ZoneCells, column: ColumnReading, numbers: GroupNumbers): void {
  const { zones } = table;
  const [groups, silencers] = [zones.column('group'), zones.column('off_by')];
  const silencedBy = new Map<number, number>();
  const cells = new Map<number, number>();
  numbers.each(column, (zone, cell, silenced) => {
    const first = silencedBy.get(silenced);
    const given = groups.cells[zone] < 0 ? undefined : groups.numbers[zone];
    const number = first ?? (given === silenced ? undefined : given) ?? numbers.next();
    silencedBy.set(silenced, number);
    cells.set(silenced, cell);
    if (given === undefined) groups.set(zone, cell, number);
    else if (given !== number) silencers.set(zone, cell, number);
  });
  for (let zone = table.first; zone < table.end; zone++) {
    if (groups.cells[zone] < 0) continue;
    const number = silencedBy.get(groups.numbers[zone]);
    if (number !== undefined && number !== groups.numbers[zone])
      silencers.set(zone, groups.cells[zone], number);
  }
  if (silencedBy.size === 0) return;
  const said = [...silencedBy].map(([group, number]) => `group ${number} silences group ${group}`).join(', ');
  table.noteColumn(
    column,
    `${columnName(column)} says which group each zone silences. It is written at the zones that are silenced: ${said}.`,
  );
}

/** Numbers of groups; names are numbered in the order of the table. */
class GroupNumbers {
  readonly #named = new Map<string, number>();
  #most = 0;

  constructor(
    readonly table: ZoneCells,
    columns: readonly (ColumnReading | undefined)[],
  ) {
    for (const column of columns)
      if (column)
        table.each(column, (_, cell) => {
          this.#most = Math.max(this.#most, numberIn(table.cells.plain(cell)) ?? 0);
        });
  }

  /** A number that no group has. */
  next(): number {
    return ++this.#most;
  }

  /** Calls `read` for each zone with a group in a column; 0 is none. */
  each(column: ColumnReading, read: (zone: number, cell: number, number: number) => void): void {
    const { table } = this;
    const before = this.#named.size;
    table.each(column, (zone, cell) => {
      const text = table.cells.plain(cell);
      if (saysNoGroup(text)) return;
      const number = numberIn(text) ?? this.#numberOf(text);
      if (number > 0) read(zone, cell, number);
    });
    if (this.#named.size === before) return;
    const list = [...this.#named].map(([name, number]) => `"${shortened(name)}" is ${number}`).join(', ');
    table.noteColumn(column, `The groups in ${columnName(column)} have names, which are numbered: ${list}.`);
  }

  #numberOf(text: string): number {
    const name = bareWord(text);
    const known = this.#named.get(name);
    if (known !== undefined) return known;
    this.#named.set(name, this.next());
    return this.#most;
  }
}

function numberIn(text: string): number | undefined {
  return readSequence(text)?.position;
}

function saysNoGroup(text: string): boolean {
  return text.trim() === '0' || saysNone(text);
}
