import type { ReadTarget } from './targets';

/** A parameter with all that the builder is told of it. */
export interface ReadEntry {
  target: ReadTarget;
  nameStart: number;
  nameEnd: number;
  valueStart: number;
  valueEnd: number;
  number: number;
  isNumber: boolean;
  text: string | undefined;
  isUnscaled: boolean;
}

/** An attribute of a tag whose attributes decide what it is. */
export interface HeldAttribute {
  attribute: number;
  nameStart: number;
  nameEnd: number;
  valueStart: number;
  valueEnd: number;
  number: number;
  marks: number;
}

/** Values that stand behind later headers than their own, by the position of their header. */
export type LateValues = ReadonlyMap<number, readonly ReadEntry[]>;
