import type { Steps } from '../../model/steps';
import { readDynamicsColumn } from '../values/dynamicsColumn';
import { readEnvelopeColumns } from '../values/envelopeColumns';
import { readFadeColumns } from '../values/fadeColumns';
import { KeyColumns } from '../values/keyColumns';
import { readKeySwitchColumn } from '../values/keySwitchColumn';
import { LevelColumns } from '../values/levelColumns';
import { LoopColumns } from '../values/loopColumns';
import { MergedRows } from '../values/mergedRows';
import { readMuteGroups } from '../values/muteGroups';
import { PanColumn } from '../values/panColumn';
import { Positions } from '../values/positions';
import { readRandomColumn } from '../values/randomColumn';
import { readRateColumn } from '../values/rateColumn';
import { readSequenceColumns } from '../values/sequenceColumns';
import { readTriggerColumn } from '../values/triggerColumn';
import { TuningColumns } from '../values/tuningColumns';
import { VelocityColumns } from '../values/velocityColumns';
import type { ZoneCells } from './zoneCells';

/** Reads the values of zones, all but the sample and the group, one column after another; each step takes a few passes over the zones. */
export function* readZoneValues(table: ZoneCells): Steps<void> {
  const merged = new MergedRows(table);
  merged.find();
  yield 0.1;
  const rootCents = new KeyColumns(table, merged).read();
  yield 0.3;
  new VelocityColumns(table, merged).read();
  readDynamicsColumn(table, merged);
  yield 0.5;
  new TuningColumns(table).read(rootCents);
  new LevelColumns(table).read();
  yield 0.6;
  new PanColumn(table).read();
  yield 0.7;
  const positions = new Positions(table, readRateColumn(table));
  new LoopColumns(table, positions).read();
  yield 0.9;
  positions.read();
  readSequenceColumns(table);
  readTriggerColumn(table);
  readMuteGroups(table);
  readKeySwitchColumn(table);
  readRandomColumn(table, merged);
  readFadeColumns(table);
  readEnvelopeColumns(table);
  yield 1;
}
