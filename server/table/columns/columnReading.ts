import type { ColumnMeaning, Unit } from '../../trade/meaning';
import type { KeyReading } from '../../trade/readings/keyReading';
import type { TriggerValue } from '../../trade/readings/triggers';
import type { StatedSettings } from '../../trade/statements/settings';

/** What the heading of one of several columns of samples says of the zones that it names. */
export type SideLabel =
  | { kind: 'dynamics'; dynamic: number }
  /** The velocities that a heading gives in numbers. */
  | { kind: 'velocity'; low: number; high: number }
  /** The key, or the keys, that a heading names, and the root key beside them. */
  | { kind: 'key'; low: KeyReading; high: KeyReading; root?: KeyReading }
  | { kind: 'round_robin'; position: number }
  | { kind: 'pan'; pan: number }
  | { kind: 'trigger'; trigger: TriggerValue }
  /** A place of microphones or a way of playing, or what the heading leaves open: a group of its own. */
  | { kind: 'group'; isKnown: boolean; name: string };

/** How the numbers of a column are counted, and what else a person may choose. */
export interface ColumnScale {
  /** The id of the one that was taken. */
  taken: string;
  /** Why, in a sentence for people; empty where it was set by hand. */
  reason: string;
  options: readonly { id: string; label: string }[];
}

/** Why a scale was taken that nobody had to find. */
export const statedReason = 'The heading, the cells or the text around say so.';

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
  /** The column of samples, one of several side by side, that this one gives values for; `undefined` where it does for all. */
  owner?: number;
  /** Values that the heading of a column of samples gives for them, as a level. */
  settings?: StatedSettings;
  /** Of pitches as they were found: the column of those that are meant, which has `isAim` set. */
  aim?: number;
  isAim?: true;
  /** Set for a column whose cells are read with the samples of their rows: folders before them, marks. */
  isUsed?: true;
  /** Set for a second point of loops that may be their end or their length. */
  isEndOrLength?: true;
  /** Set when the values were read, for columns of numbers whose scale may be open. */
  scale?: ColumnScale;
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
