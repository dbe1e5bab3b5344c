import type { KeyReading } from '../../../trade/readings/keyReading';
import { saysNoSample } from '../../../trade/readings/noSample';
import type { TriggerValue } from '../../../trade/readings/triggers';
import type { TableCells } from '../../cells/cells';
import { namesAudioFile } from '../../cells/namesAudioFile';
import type { TableRows } from '../../cells/tableRows';
import type { ColumnReading, SideLabel } from '../../columns/columnReading';
import { columnName, shortened } from '../../columns/columnReading';
import type { TableNotes } from '../../tableNotes';
import type { ZoneList } from '../zoneList';
import { valueWords } from '../zoneList';
import type { NameReader } from '../zoneNames';

/** One of several columns of samples, and the cell of its heading. */
interface SideColumn {
  column: ColumnReading;
  side: SideLabel;
  heading: number;
}

/** Makes a zone of each sample in a row where columns of samples stand side by side. */
export class SideZones {
  readonly #sides: SideColumn[];

  constructor(
    readonly cells: TableCells,
    { headings }: TableRows,
    columns: readonly ColumnReading[],
    readonly notes: TableNotes,
    readonly keyShift = 0,
  ) {
    this.#sides = columns.flatMap((column) => {
      const { side, index } = column;
      return side ? [{ column, side, heading: headings[index]?.cell ?? -1 }] : [];
    });
  }

  /** Whether the table has such columns. */
  get areGiven(): boolean {
    return this.#sides.length > 0;
  }

  /** The cells of a row that name samples. */
  sampleCells(row: number): number[] {
    return this.#sides.flatMap(({ column }) => {
      const cell = this.cells.cell(row, column.index);
      return namesAudioFile(this.cells, cell) ? [cell] : [];
    });
  }

  /** Adds the zones of a row; answers whether there are any. What else stands in its cells for samples is noted. */
  addZones(zones: ZoneList, row: number, names: NameReader): boolean {
    if (this.sampleCells(row).length === 0) return false;
    for (const { column, side, heading } of this.#sides) {
      const cell = this.cells.cell(row, column.index);
      if (!namesAudioFile(this.cells, cell)) {
        this.#noteOther(cell, column);
        continue;
      }
      const zone = names.addZone(zones, row, cell);
      if (side.kind === 'velocity') setVelocities(zones, zone, cell, side);
      else if (side.kind === 'key') this.#setKeys(zones, zone, cell, side);
      else if (side.kind === 'dynamics') zones.setDynamic(zone, cell, side.dynamic);
      else if (side.kind === 'round_robin') zones.column('seq_position').set(zone, cell, side.position);
      else if (side.kind === 'pan') setPan(zones, zone, cell, side.pan);
      else if (side.kind === 'trigger') setTrigger(zones, zone, cell, side.trigger);
      else if (zones.groups[zone] === 0 && heading >= 0) {
        zones.groups[zone] = zones.groupOf(side.name);
        zones.groupCells[zone] = heading;
      }
    }
    return true;
  }

  #setKeys(
    zones: ZoneList,
    zone: number,
    cell: number,
    { low, high, root }: Extract<SideLabel, { kind: 'key' }>,
  ): void {
    const keyOf = (key: KeyReading) => key.number ?? (key.named ?? 0) + this.keyShift;
    const [from, to] = [keyOf(low), keyOf(high)];
    if (from < 0 || to > 127) return;
    if (root) zones.column('pitch_keycenter').set(zone, cell, keyOf(root));
    if (from === to) zones.column('key').set(zone, cell, from);
    else {
      zones.column('lokey').set(zone, cell, from);
      zones.column('hikey').set(zone, cell, to);
    }
  }

  #noteOther(cell: number, column: ColumnReading): void {
    const text = this.cells.value(cell);
    if (text === '' || saysNoSample(text, true)) return;
    const span = { start: this.cells.starts[cell], end: this.cells.ends[cell] };
    const message = `${this.notes.place(span.start)}, ${columnName(column)}: "${shortened(text)}" names no sample file; it is left out.`;
    this.notes.add('dropped', span, message, `dropped ${column.index}`);
  }
}

function setVelocities(
  zones: ZoneList,
  zone: number,
  cell: number,
  { low, high }: { low: number; high: number },
): void {
  if (low > 1) zones.column('lovel').set(zone, cell, low);
  if (high < 127) zones.column('hivel').set(zone, cell, high);
}

function setPan(zones: ZoneList, zone: number, cell: number, pan: number): void {
  if (pan !== 0) zones.column('pan').set(zone, cell, pan);
}

function setTrigger(zones: ZoneList, zone: number, cell: number, trigger: TriggerValue): void {
  if (trigger !== 'attack') zones.column('trigger').set(zone, cell, valueWords.indexOf(trigger));
}
