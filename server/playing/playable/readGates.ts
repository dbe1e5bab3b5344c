import { fullGateRange } from '../../model/overlaps/gateRanges';
import type { GateTable } from './gateTable';
import { GateSubject } from './gateTable';
import type { ValuesInForce } from './valuesInForce';

/** The ranges of values that the regions of an instrument ask for. */
export interface RegionGates {
  controllers: GateTable;
  others: GateTable;
  starts: GateTable;
  stops: GateTable;
}

type Kind = keyof RegionGates;

/** One range of all regions: the parameters that set its ends. */
class Range {
  readonly kind: Kind;
  readonly subject: number;
  low: Int32Array | undefined;
  high: Int32Array | undefined;
  readonly #numbers: Float64Array;
  /** What the values are multiplied by to be those of the subject. */
  readonly #scale: number;
  readonly #fullLow: number;
  readonly #fullHigh: number;

  constructor(
    kind: Kind,
    subject: number,
    scale: number,
    full: readonly [number, number],
    numbers: Float64Array,
  ) {
    this.kind = kind;
    this.subject = subject;
    this.#scale = scale;
    this.#numbers = numbers;
    [this.#fullLow, this.#fullHigh] = full;
  }

  /** The ends of a region, NaN where one is not set. */
  lowOf(region: number): number {
    return this.low ? this.#valueOf(this.low[region]) : Number.NaN;
  }

  highOf(region: number): number {
    return this.high ? this.#valueOf(this.high[region]) : Number.NaN;
  }

  #valueOf(parameter: number): number {
    return parameter < 0 ? Number.NaN : this.#numbers[parameter] * this.#scale;
  }

  /** The ends of a region, those of the full range where one is not set. */
  lowOrFull(region: number): number {
    const low = this.lowOf(region);
    return Number.isNaN(low) ? this.#fullLow : low;
  }

  highOrFull(region: number): number {
    const high = this.highOf(region);
    return Number.isNaN(high) ? this.#fullHigh : high;
  }

  /** Whether a region asks for it: it is narrower than the full range; that of a start or stop is set and not turned off. */
  isAskedBy(region: number): boolean {
    const low = this.lowOf(region);
    const high = this.highOf(region);
    if (this.kind === 'controllers' || this.kind === 'others')
      return low > this.#fullLow || high < this.#fullHigh;
    return !(low < 0 || high < 0) && !(Number.isNaN(low) && Number.isNaN(high));
  }
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

/**
 * Reads the ranges of controllers, channel, program, tempo, timer, bend and pressure of all regions. One end that is
 * not set is that of the full range; ranges that hold everything are left out, and those of a start or stop with an
 * end below 0, which turns them off.
 */
export function readGates(values: ValuesInForce): RegionGates {
  const ranges = [...rangesOf(values)].sort((a, b) => a.subject - b.subject);
  const table = (kind: Kind) =>
    gateTable(
      ranges.filter((range) => range.kind === kind),
      values.instrument.regions.length,
    );
  return {
    controllers: table('controllers'),
    others: table('others'),
    starts: table('starts'),
    stops: table('stops'),
  };
}

function rangesOf(values: ValuesInForce): Iterable<Range> {
  const found = new Map<string, Range>();
  const { names, parameters } = values.instrument;
  for (const name of values.namesUsed()) {
    const parts = pattern.exec(names.text(name));
    if (!parts) continue;
    const [, prefix = '', end, fine = '', controller, word] = parts;
    const subject = word === undefined ? Number(controller) : subjects[word];
    if (word !== undefined && prefix !== '') continue;
    const key = `${prefix}${fine}${subject}`;
    let range = found.get(key);
    if (!range) {
      const triggered = prefix === 'on_' ? 'starts' : prefix === 'stop_' ? 'stops' : undefined;
      const kind = triggered ?? (subject >= GateSubject.tempo ? 'others' : 'controllers');
      range = new Range(
        kind,
        subject,
        fine === '' ? 1 : 127,
        fullGateRange(word ?? 'cc'),
        parameters.numbers,
      );
      found.set(key, range);
    }
    range[end === 'lo' ? 'low' : 'high'] = values.parameters(name);
  }
  return found.values();
}

function gateTable(ranges: readonly Range[], regionCount: number): GateTable {
  const start = new Int32Array(regionCount + 1);
  for (const range of ranges) {
    for (let region = 0; region < regionCount; region++) if (range.isAskedBy(region)) start[region + 1]++;
  }
  for (let region = 0; region < regionCount; region++) start[region + 1] += start[region];
  const count = start[regionCount];
  const table = {
    start,
    subject: new Int32Array(count),
    low: new Float64Array(count),
    high: new Float64Array(count),
  };
  const next = start.slice();
  for (const range of ranges) {
    for (let region = 0; region < regionCount; region++) {
      if (!range.isAskedBy(region)) continue;
      const at = next[region]++;
      table.subject[at] = range.subject;
      table.low[at] = range.lowOrFull(region);
      table.high[at] = range.highOrFull(region);
    }
  }
  return table;
}
