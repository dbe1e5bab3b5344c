import { dynamicOf } from '../../trade/dynamics';
import { dynamicsIn } from '../../trade/dynamicsIn';
import type { Unit } from '../../trade/meaning';
import { outOfWords } from '../../trade/rangeWords';
import { meansFileEnd } from '../../trade/readings/fileEnds';
import { isLinedName, octaveMarkOf } from '../../trade/readings/keyReading';
import { meansAll } from '../../trade/readings/limits';
import { isMuteRemark } from '../../trade/readings/muteRemark';
import { readPan } from '../../trade/readings/panReading';
import { remarkIn } from '../../trade/readings/remark';
import type { TriggerValue } from '../../trade/readings/triggers';
import { triggerOf } from '../../trade/readings/triggers';
import { arePortions } from '../../trade/readings/velocityReading';
import type { TableCells } from '../cells/cells';
import { DistinctTexts } from '../cells/distinctTexts';
import { namesAudioFile } from '../cells/namesAudioFile';
import type { CellKind, CellLook } from './cellKinds';
import { lookAt } from './cellKinds';
import { areNoRanges, colonPairIn } from './colonPairs';

/** What stands in a column: how many of its cells look like what. */
export interface ColumnContents {
  /** Cells that hold something, among those looked at. */
  filled: number;
  counts: Record<CellKind, number>;
  units: Map<Unit, number>;
  /** Numbers without a fraction, 0..127, or note names. */
  keys: number;
  negative: number;
  fractional: number;
  /** Of the plain numbers; NaN where there is none. */
  least: number;
  greatest: number;
  /** Whether the numbers rise by one from 0 or 1, row by row. */
  counting: boolean;
  /** How many values differ, up to {@link mostDistinct}. */
  distinct: number;
  /** The number, or key of a note name (middle C = C4), of each row looked at; NaN for others. */
  values: Float64Array;
  /** Cells that are dynamics, one or several: letters such as `mf` and `p-mf`, and words such as `soft`. */
  dynamicLetters: number;
  dynamicWords: number;
  /** Cells that are portions, as velocities can be: in percent, or 0..1 with a fraction. */
  portions: number;
  /** Cells such as `<30`: 30 to the left, or below 30. */
  pointed: number;
  /** Cells such as `1/3`. */
  turns: number;
  /** Cells that are 0 or 1. */
  bits: number;
  /** Cells that say what starts a zone, and those of them that say letting the key go. */
  triggers: number;
  releases: number;
  /** Cells such as `choke 1`. */
  chokes: number;
  /** Ranges of whole numbers that reach beyond 127. */
  beyond: number;
  /** Cells that say all keys or velocities there are. */
  wholes: number;
  /** Cells that name the end of the file in place of a frame. */
  fileEnds: number;
  /** Cells that name a note and no octave, and notes whose octave is given by a mark. */
  unmarked: number;
  marked: number;
  /** Whether {@link values} come from note names. */
  named: boolean;
}

/** So many of its cells have to be of one kind to tell what a column holds (our choice). */
export const mostlyFilled = 0.9;
const mostDistinct = 256;
const equalsSign = 61;

/** What a text looks like besides its kind. */
interface Traits {
  /** Dynamics as letters, or as words. */
  isLetter: boolean;
  isWord: boolean;
  isPortion: boolean;
  isPointed: boolean;
  isTurn: boolean;
  isChoke: boolean;
  isAll: boolean;
  isFileEnd: boolean;
  isBeyond: boolean;
  colon: ReturnType<typeof colonPairIn>;
  mark: 'none' | 'mark' | undefined;
  trigger: TriggerValue | undefined;
}

interface Look extends CellLook {
  traits: Traits;
}

const noTraits: Traits = {
  isLetter: false,
  isWord: false,
  isPortion: false,
  isPointed: false,
  isTurn: false,
  isChoke: false,
  isAll: false,
  isFileEnd: false,
  isBeyond: false,
  colon: undefined,
  mark: undefined,
  trigger: undefined,
};
const portionTraits: Traits = { ...noTraits, isPortion: true };
const fileLook: Look = { kind: 'file', value: Number.NaN, unit: undefined, traits: noTraits };
/** Remarks that start with a sign; one that starts with a word may be part of a name. */
const signedRemark = /^[?!*<#/([※]/;
/** A sign that parts names too, as in `1 - soft`: only behind a note or a number that counts no layers it starts a remark. */
const dashedRemark = /^[-\u2010-\u2015\u2212:=]/;
/** The lowest key of organs, in the numbers of the MIDI standard; what is below may count layers (our choice). */
const leastKey = 12;
/** One of several turns: `1/3`, `2 of 4`, `RR2`. */
const turnOf = new RegExp(
  String.raw`^(?:rr|take)[ ._#-]?\d{1,2}$|^\d{1,2}\s?(?:/|${outOfWords})\s?\d{1,2}$`,
  'iu',
);

function lookInto(cells: TableCells, cell: number): Look {
  if (isPlainFile(cells, cell)) return fileLook;
  const number = cells.number(cell);
  if (!Number.isNaN(number)) {
    const traits = number > 0 && number < 1 ? portionTraits : noTraits;
    return { kind: 'number', value: number, unit: undefined, traits };
  }
  const text = cells.plain(cell);
  const look = lookWithoutRemark(text);
  const { value, unit } = look;
  const isLetter = look.kind === 'text' && dynamicOf(text) >= 0;
  const dynamics = !isLetter && (look.kind === 'text' || look.kind === 'pan') ? dynamicsIn(text) : undefined;
  const isWord = dynamics !== undefined && !dynamics.areLetters;
  const isPortion = look.kind !== 'file' && arePortions(text);
  // What is neither a number nor a range of whole ones is a range of portions.
  const kind = isPortion && look.kind === 'text' ? 'number-range' : look.kind;
  const isPointed = kind === 'number-range' && readPan(text) !== undefined;
  const trigger = kind === 'text' || kind === 'switch' ? triggerOf(text) : undefined;
  const traits = {
    isLetter: isLetter || dynamics?.areLetters === true,
    isWord,
    isPortion,
    isPointed,
    isTurn: turnOf.test(text),
    isChoke: kind === 'text' && isMuteRemark(text),
    isAll: kind === 'text' && meansAll(text),
    isFileEnd: kind === 'text' && meansFileEnd(text),
    isBeyond: kind === 'number-range' && /^\d{1,9}\D+\d{1,9}$/.test(text) && Number(/\d+$/.exec(text)) > 127,
    colon: kind === 'number-range' ? colonPairIn(text) : undefined,
    mark: isLinedName(text) ? 'mark' : octaveMarkOf(text),
    trigger,
  } as const;
  return { kind, value, unit, traits };
}

/** What a text looks like; with a remark behind a value, as the value. */
function lookWithoutRemark(text: string): CellLook {
  const look = lookAt(text);
  if (look.kind !== 'text') return look;
  const found = remarkIn(text);
  if (!found) return look;
  const value = lookAt(found.value);
  if (dashedRemark.test(found.remark)) {
    const isRange = value.kind === 'note-range' || value.kind === 'number-range';
    const isApart = value.value >= leastKey || value.value < 0 || value.unit !== undefined;
    return value.kind === 'note' || isRange || (value.kind === 'number' && isApart) ? value : look;
  }
  if (!signedRemark.test(found.remark)) return look;
  return value.kind === 'number' || value.kind === 'note' ? value : look;
}

/** Whether a cell is the name of an audio file in ASCII, which is nothing else. */
function isPlainFile(cells: TableCells, cell: number): boolean {
  const { starts, ends, codes } = cells;
  const start = starts[cell];
  const end = ends[cell];
  if (codes[start] === equalsSign || cells.isRewritten(cell) || !namesAudioFile(cells, cell)) return false;
  for (let at = start; at < end; at++) if (codes[at] > 126) return false;
  return true;
}

/** Looks at the cells of a column in some rows. */
export function columnContents(cells: TableCells, rows: readonly number[], column: number): ColumnContents {
  const contents = noContents(rows.length);
  const texts = new DistinctTexts(cells);
  const looks: Look[] = [];
  /** How many cells have each text. */
  const uses: number[] = [];
  let before = Number.NaN;
  for (let position = 0; position < rows.length; position++) {
    const cell = cells.cell(rows[position], column);
    if (cell < 0 || cells.starts[cell] === cells.ends[cell]) {
      contents.counts.empty++;
      continue;
    }
    const text = texts.numberOf(cell);
    if (text === looks.length) {
      looks.push(lookInto(cells, cell));
      uses.push(0);
    }
    uses[text]++;
    const { kind, value } = looks[text];
    if (kind === 'empty') continue;
    contents.values[position] = value;
    if (kind !== 'number' || (Number.isNaN(before) ? value !== 0 && value !== 1 : value !== before + 1))
      contents.counting = false;
    if (kind === 'number') before = value;
  }
  for (const [text, look] of looks.entries()) addLook(contents, look, uses[text]);
  const { counts } = contents;
  const pairs = looks.flatMap(({ traits: { colon } }, at) => (colon ? { ...colon, uses: uses[at] } : []));
  if (areNoRanges(pairs)) {
    const times = pairs.reduce((sum, pair) => sum + pair.uses, 0);
    counts['number-range'] -= times;
    counts.text += times;
  }
  contents.distinct = Math.min(texts.count, mostDistinct);
  contents.counting &&= counts.number >= 3;
  contents.named = counts.note > counts.number;
  return contents;
}

/** Counts some cells with the same text. */
function addLook(contents: ColumnContents, { kind, value, unit, traits }: Look, uses: number): void {
  contents.counts[kind] += uses;
  if (kind === 'empty') return;
  contents.filled += uses;
  if (traits !== noTraits) addTraits(contents, traits, uses);
  if (!traits.isPortion && (value === 0 || value === 1)) contents.bits += uses;
  if (kind === 'note') contents.keys += uses;
  if (kind !== 'number') return;
  if (unit) contents.units.set(unit, (contents.units.get(unit) ?? 0) + uses);
  if (Number.isInteger(value) && value >= 0 && value <= 127 && unit === undefined) contents.keys += uses;
  if (value < 0) contents.negative += uses;
  if (!Number.isInteger(value)) contents.fractional += uses;
  if (!(value >= contents.least)) contents.least = value;
  if (!(value <= contents.greatest)) contents.greatest = value;
}

function addTraits(contents: ColumnContents, traits: Traits, uses: number): void {
  if (traits.mark === 'mark') contents.marked += uses;
  else if (traits.mark === 'none') contents.unmarked += uses;
  if (traits.isLetter) contents.dynamicLetters += uses;
  if (traits.isWord) contents.dynamicWords += uses;
  if (traits.isPointed) contents.pointed += uses;
  if (traits.isTurn) contents.turns += uses;
  if (traits.isChoke) contents.chokes += uses;
  if (traits.isAll) contents.wholes += uses;
  if (traits.isFileEnd) contents.fileEnds += uses;
  if (traits.isBeyond) contents.beyond += uses;
  if (traits.trigger !== undefined) contents.triggers += uses;
  if (traits.trigger === 'release') contents.releases += uses;
  if (traits.isPortion) contents.portions += uses;
}

/** The contents of a column before anything of it was looked at. */
function noContents(rows: number): ColumnContents {
  const counts: Record<CellKind, number> = {
    empty: 0,
    file: 0,
    note: 0,
    'note-range': 0,
    number: 0,
    'number-range': 0,
    pan: 0,
    switch: 0,
    formula: 0,
    text: 0,
  };
  return {
    filled: 0,
    counts,
    units: new Map(),
    keys: 0,
    negative: 0,
    fractional: 0,
    least: Number.NaN,
    greatest: Number.NaN,
    counting: true,
    distinct: 0,
    values: new Float64Array(rows).fill(Number.NaN),
    dynamicLetters: 0,
    dynamicWords: 0,
    portions: 0,
    pointed: 0,
    turns: 0,
    chokes: 0,
    wholes: 0,
    fileEnds: 0,
    beyond: 0,
    bits: 0,
    triggers: 0,
    releases: 0,
    unmarked: 0,
    marked: 0,
    named: false,
  };
}

/** The share of the filled cells that look like one of some kinds; 0 for an empty column. */
export function shareOf(contents: ColumnContents, ...kinds: CellKind[]): number {
  if (contents.filled === 0) return 0;
  return kinds.reduce((sum, kind) => sum + contents.counts[kind], 0) / contents.filled;
}

/** Up to `most` of some rows or other items, spread evenly, the first and last among them. */
export function evenlySpread<Item>(rows: ArrayLike<Item>, most: number): Item[] {
  if (rows.length <= most) return Array.from(rows);
  return Array.from({ length: most }, (_, at) => rows[Math.floor((at * (rows.length - 1)) / (most - 1))]);
}
