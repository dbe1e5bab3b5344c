import type { SideLabel } from './sideSamples';

/** What a column of a zone table can hold. Names of the open SFZ format where it has one for the same thing. */
export type ColumnMeaning =
  | 'sample'
  | 'group'
  | 'pitch_keycenter'
  | 'key'
  | 'lokey'
  | 'hikey'
  | 'key_range'
  | 'lovel'
  | 'hivel'
  | 'velocity_range'
  | 'dynamics'
  | 'tune'
  | 'transpose'
  | 'volume'
  | 'attenuation'
  | 'pan'
  | 'loop'
  | 'loop_start'
  | 'loop_end'
  | 'loop_length'
  | 'offset'
  | 'end'
  | 'seq_position'
  | 'seq_length'
  | 'comment'
  | 'row_number'
  | 'unknown';

/** The meanings in words for people. */
export const meaningNames: Readonly<Record<ColumnMeaning, string>> = {
  sample: 'sample file',
  group: 'group',
  pitch_keycenter: 'root key',
  key: 'key',
  lokey: 'low key',
  hikey: 'high key',
  key_range: 'key range',
  lovel: 'low velocity',
  hivel: 'high velocity',
  velocity_range: 'velocity range',
  dynamics: 'dynamics',
  tune: 'fine tuning',
  transpose: 'coarse tuning',
  volume: 'level',
  attenuation: 'attenuation',
  pan: 'pan',
  loop: 'loop',
  loop_start: 'loop start',
  loop_end: 'loop end',
  loop_length: 'loop length',
  offset: 'sample start',
  end: 'sample end',
  seq_position: 'round robin position',
  seq_length: 'round robin length',
  comment: 'comment',
  row_number: 'row number',
  unknown: 'not understood',
};

/** The meanings of columns that hold keys. */
export const keyMeanings: readonly ColumnMeaning[] = [
  'pitch_keycenter',
  'key',
  'lokey',
  'hikey',
  'key_range',
];

/** Units that stand in a heading or behind a number. */
export type Unit = 'dB' | 'cents' | 'semitones' | 'percent' | 'linear' | 'frames' | 'ms' | 's' | 'Hz';

/** One column of a table as it was understood. */
export interface ColumnReading {
  /** Position of the column, from 0. */
  index: number;
  /** The heading as written; empty where there is none. */
  heading: string;
  /** Where the heading stands in the text; `undefined` where there is none. */
  headingSpan: { start: number; end: number } | undefined;
  meaning: ColumnMeaning;
  /** The unit that the heading gives. */
  unit: Unit | undefined;
  /** 0..1 */
  confidence: number;
  /** Why the column was taken for this, in sentences for people. */
  evidence: string[];
  /** The column that says the same thing and was taken instead of this one. */
  repeats: number | undefined;
  /** Of several columns of samples: what the heading says of the zones with samples of this one. */
  side?: SideLabel;
}

/** How a message names a column: its heading, or its number counted from 1. */
export function columnName(column: Pick<ColumnReading, 'heading' | 'index'>): string {
  return column.heading === '' ? `column ${column.index + 1}` : `column "${shortened(column.heading)}"`;
}

/** Text from a table as a message quotes it: on one line and not too long. */
export function shortened(text: string): string {
  const line = text.slice(0, 200).replace(/[\s\u0000-\u001f\u007f\u0085]+/g, ' ');
  return line.length > 60 ? `${line.slice(0, 57)}...` : line;
}
