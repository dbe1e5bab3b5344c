import type { Steps } from '../steps';
import { readDynamicsColumn } from '../values/dynamicsColumn';
import { readFrameColumns } from '../values/frameColumns';
import { KeyColumns } from '../values/keyColumns';
import { LevelColumns } from '../values/levelColumns';
import { LoopColumns } from '../values/loopColumns';
import { PanColumn } from '../values/panColumn';
import { readSequenceColumns } from '../values/sequenceColumns';
import { TuningColumns } from '../values/tuningColumns';
import { VelocityColumns } from '../values/velocityColumns';
import type { ZoneCells } from './zoneCells';

/** Reads the values of zones, all but the sample and the group, one column after another; each step takes a few passes over the zones. */
export function* readZoneValues(table: ZoneCells): Steps<void> {
  yield 0.1;
  new KeyColumns(table).read();
  yield 0.3;
  new VelocityColumns(table).read();
  readDynamicsColumn(table);
  yield 0.5;
  new TuningColumns(table).read();
  new LevelColumns(table).read();
  yield 0.6;
  new PanColumn(table).read();
  yield 0.7;
  new LoopColumns(table).read();
  yield 0.9;
  readFrameColumns(table);
  readSequenceColumns(table);
  yield 1;
}
