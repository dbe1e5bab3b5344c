import type { GateTable } from './gateTable';
import { GateSubject } from './gateTable';
import { RegionLists } from './regionLists';
import type { ValuesInForce } from './valuesInForce';

/** The ranges of values that the regions of an instrument ask for. */
export interface RegionGates {
  controllers: GateTable;
  others: GateTable;
  starts: GateTable;
  stops: GateTable;
}

type Kind = keyof RegionGates;

interface Ends {
  kind: Kind;
  subject: number;
  /** What the values are multiplied by to be those of the subject. */
  scale: number;
  low?: Int32Array | undefined;
  high?: Int32Array | undefined;
}

const pattern = /^(on_|stop_)?(lo|hi)(?:(hd)?cc(\d+)|(chan|prog|bpm|timer|bend|chanaft|polyaft))$/;

const subjects: Readonly<Record<string, number>> = {
  chan: GateSubject.channel,
  prog: GateSubject.program,
  bpm: GateSubject.tempo,
  timer: GateSubject.timer,
  bend: GateSubject.bend,
  chanaft: GateSubject.channelPressure,
  polyaft: GateSubject.polyPressure,
};

/** Documented full ranges (public documentation of the open SFZ format); others are those of a controller, 0..127. */
const fullRanges: Readonly<Record<number, readonly [low: number, high: number]>> = {
  [GateSubject.channel]: [1, 16],
  [GateSubject.tempo]: [0, 500],
  [GateSubject.timer]: [0, Number.POSITIVE_INFINITY],
  [GateSubject.bend]: [-8192, 8191],
};

/**
 * Reads the ranges of controllers, channel, program, tempo, timer, bend and pressure of all regions. One end that is
 * not set is that of the full range; ranges that hold everything are left out, and those of a start or stop with an
 * end below 0, which turns them off.
 */
export function readGates(values: ValuesInForce): RegionGates {
  const ends = [...endsOf(values).values()].sort((a, b) => a.subject - b.subject);
  const table = (kind: Kind) => gateTable(values, kind, ends);
  return {
    controllers: table('controllers'),
    others: table('others'),
    starts: table('starts'),
    stops: table('stops'),
  };
}

function endsOf(values: ValuesInForce): Map<string, Ends> {
  const found = new Map<string, Ends>();
  for (const name of values.namesUsed()) {
    const text = values.instrument.names.text(name);
    const parts = pattern.exec(text);
    if (!parts) continue;
    const [, prefix = '', end, fine = '', controller, word] = parts;
    const subject = word === undefined ? Number(controller) : subjects[word];
    if (word !== undefined && prefix !== '') continue;
    const key = `${prefix}${fine}${subject}`;
    let ends = found.get(key);
    if (!ends) {
      const kind = prefix === 'on_' ? 'starts' : prefix === 'stop_' ? 'stops' : undefined;
      const plain = subject >= GateSubject.tempo ? 'others' : 'controllers';
      ends = { kind: kind ?? plain, subject, scale: fine === '' ? 1 : 127 };
      found.set(key, ends);
    }
    ends[end === 'lo' ? 'low' : 'high'] = values.parameters(name);
  }
  return found;
}

function gateTable(values: ValuesInForce, kind: Kind, all: readonly Ends[]): GateTable {
  const lists = new RegionLists<{ subject: number; low: number; high: number }>();
  const regionCount = values.instrument.regions.length;
  const isPlain = kind === 'controllers' || kind === 'others';
  for (const ends of all) {
    if (ends.kind !== kind) continue;
    const [fullLow, fullHigh] = fullRanges[ends.subject] ?? [0, 127];
    for (let region = 0; region < regionCount; region++) {
      const low = endOf(values, ends.low?.[region], ends.scale);
      const high = endOf(values, ends.high?.[region], ends.scale);
      if (low === undefined && high === undefined) continue;
      const gate = { subject: ends.subject, low: low ?? fullLow, high: high ?? fullHigh };
      if (isPlain && gate.low <= fullLow && gate.high >= fullHigh) continue;
      if (!isPlain && (gate.low < 0 || gate.high < 0)) continue;
      lists.add(region, gate);
    }
  }
  const { start, items } = lists.finish(regionCount);
  return {
    start,
    subject: Int32Array.from(items, ({ subject }) => subject),
    low: Float64Array.from(items, ({ low }) => low),
    high: Float64Array.from(items, ({ high }) => high),
  };
}

function endOf(values: ValuesInForce, parameter: number | undefined, scale: number): number | undefined {
  const value = parameter === undefined || parameter < 0 ? Number.NaN : values.instrument.number(parameter);
  return Number.isNaN(value) ? undefined : value * scale;
}
