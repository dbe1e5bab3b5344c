import { rounded } from '../../trade/decimal';
import { unitOf } from '../../trade/languages/cellWords';
import type { Unit } from '../../trade/meaning';
import type { NumberReading } from '../../trade/readings/numberReading';
import { readNumber } from '../../trade/readings/numberReading';
import { CellReadings } from '../cells/cellReadings';
import type { ColumnReading } from '../columns/columnReading';
import { columnName } from '../columns/columnReading';
import type { ZoneCells } from '../zones/zoneCells';

const stages = ['delay', 'attack', 'hold', 'decay', 'sustain', 'release'] as const;
type Stage = (typeof stages)[number];
const meanings = {
  delay: 'delay_time',
  attack: 'attack_time',
  hold: 'hold_time',
  decay: 'decay_time',
  sustain: 'sustain_level',
  release: 'release_time',
} as const;
const four: readonly Stage[] = ['attack', 'decay', 'sustain', 'release'];
/** No stage of an envelope is longer (the open SFZ format's documented bound). */
const longest = 100;
/** Times without a unit above this many are milliseconds (our choice). */
const likelySeconds = 20;

/** Reads the envelopes of the amplitude, in columns of their stages or in one: times in seconds, the sustain level in percent. */
export function readEnvelopeColumns(table: ZoneCells): void {
  const unit = guessedUnit(table);
  for (const stage of stages) {
    const column = table.column(meanings[stage]);
    if (!column) continue;
    const readings = new CellReadings(table.cells, (text) => readNumber(text, 'time'));
    table.each(column, (zone, cell) => {
      const reading = table.reading(readings, cell, column);
      if (!reading) table.drop(cell, column, 'is no number');
      else
        write(table, zone, cell, column, stage, {
          ...reading,
          unit: reading.unit ?? column.unit ?? unit.of(column),
        });
    });
  }
  const whole = table.column('envelope');
  if (whole) readWhole(table, whole);
}

/** The unit of times that none is given for: that of the text around, else by the greatest of all. */
function guessedUnit(table: ZoneCells): { of(column: ColumnReading): Unit | undefined } {
  const stated = table.options.statements.scales.get('offset')?.unit;
  const times = stages.flatMap((stage) => (stage === 'sustain' ? [] : (table.column(meanings[stage]) ?? [])));
  const open = times.filter(
    (column) => column.unit === undefined && table.numbersIn(column).unit === undefined,
  );
  if (stated === 's' || stated === 'ms') return { of: () => stated };
  const greatest = Math.max(0, ...open.map((column) => table.numbersIn(column).plain.greatest || 0));
  const unit: Unit = greatest > likelySeconds ? 'ms' : 's';
  const [first] = open;
  if (first && greatest > 0) {
    const [is, other] = unit === 's' ? ['seconds', 'milliseconds'] : ['milliseconds', 'seconds'];
    table.noteColumn(
      first,
      `${columnName(first)} gives no unit of its times: ${is} are assumed. If they are ${other}, say so in the heading, as in "Attack (${other === 'seconds' ? 's' : 'ms'})".`,
    );
  }
  return { of: () => unit };
}

function write(
  table: ZoneCells,
  zone: number,
  cell: number,
  column: ColumnReading,
  stage: Stage,
  { number, unit }: NumberReading,
): void {
  const value =
    stage === 'sustain' ? sustainOf(number, unit, isShare(table, column)) : secondsOf(number, unit);
  const most = stage === 'sustain' ? 100 : longest;
  if (!(value >= 0 && value <= most)) {
    table.drop(
      cell,
      column,
      stage === 'sustain' ? 'is not a share of the full level' : 'is not a time from 0 to 100 seconds',
    );
    return;
  }
  table.zones.column(`ampeg_${stage}`).set(zone, cell, rounded(value));
}

/** Whether the numbers of a column of levels lie from 0 to 1. */
function isShare(table: ZoneCells, column: ColumnReading): boolean {
  return column.meaning === 'sustain_level' && table.numbersIn(column).plain.greatest <= 1;
}

function sustainOf(number: number, unit: Unit | undefined, isShared: boolean): number {
  if (unit === 'dB') return number > 0 ? Number.NaN : 100 * 10 ** (number / 20);
  if (unit === 'linear' || ((unit === undefined || unit === 's') && isShared)) return number * 100;
  return unit === 'percent' || unit === undefined || unit === 's' || unit === 'ms' ? number : Number.NaN;
}

function secondsOf(number: number, unit: Unit | undefined): number {
  return unit === 'ms' ? number / 1000 : unit === 's' ? number : Number.NaN;
}

const part =
  /(?:(\p{L}[\p{L} ]*?)[ .:=]*)?([-+\u2212]?\d+(?:[.,]\d+)?|-inf)\s*(ms|msec|s|sec|dB|%)?(?![\p{L}\d])/giu;
const stageOf: Readonly<Record<string, Stage>> = {
  a: 'attack',
  h: 'hold',
  d: 'decay',
  s: 'sustain',
  r: 'release',
};

/** An envelope in one cell: `A 5 ms, D 0.4 s, S 80 %, R 0.75 s`, or four values in this order. */
function readWhole(table: ZoneCells, column: ColumnReading): void {
  table.each(column, (zone, cell) => {
    const parts = Array.from(table.cells.plain(cell).matchAll(part), ([, label, number = '', unit]) => ({
      label: label?.trim().toLowerCase(),
      number: Number(number.replace(',', '.').replace('\u2212', '-')),
      unit: unit === undefined ? undefined : unitOf(unit),
    }));
    const labelled = parts.map(({ label }) => (label ? stageNamed(label) : undefined));
    const isOrdered = parts.length === 4 && parts.every(({ label }) => label === undefined);
    if (!isOrdered && (parts.length === 0 || labelled.includes(undefined))) {
      table.drop(cell, column, 'does not say which of its values is which stage of the envelope');
      return;
    }
    for (const [at, { number, unit }] of parts.entries()) {
      const stage = isOrdered ? four[at] : labelled[at];
      const isTime = stage !== 'sustain';
      if (isTime && unit === undefined && number !== 0) {
        table.drop(cell, column, `gives no unit of the ${stage} time`);
        continue;
      }
      const share = !isTime && unit === undefined && number <= 1 ? 'linear' : unit;
      if (stage)
        write(table, zone, cell, column, stage, { number, unit: share ?? (isTime ? 's' : undefined) });
    }
  });
}

function stageNamed(label: string): Stage | undefined {
  return stageOf[label] ?? stages.find((stage) => label.length > 2 && stage.startsWith(label.slice(0, 7)));
}
