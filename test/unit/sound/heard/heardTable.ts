import type { HeardTable } from './ears';
import { filterTests } from './filterTests';
import { heardMoves } from './moves';
import { shapeTable } from './shapes';
import { singleTests } from './single';

/** The tests of all opcodes, by pattern. */
export function heardTable(): HeardTable {
  return { ...heardMoves(), ...singleTests, ...filterTests, ...shapeTable };
}
