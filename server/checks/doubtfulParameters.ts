import { HeaderKind } from '../model/headerKinds';
import type { Instrument } from '../model/instrument';
import { parameterStride } from '../model/instrument';
import { NameMark, parameterFactsOf } from './parameterFacts';

/** The parameters that rules have to look at more closely, each list in the order of the text. */
export interface DoubtfulParameters {
  /** Names that are not in the format. */
  unknown: number[];
  /** Names in another spelling than the usual one. */
  otherSpellings: number[];
  /** Under headers that do not take them, or before any header. */
  misplaced: number[];
  /** Values that are neither numbers within bounds nor options as the format spells them. */
  values: number[];
  /** Ends of ranges that are not known to be in order, and the header that each of them stands in. */
  rangeEnds: number[];
  rangeHeaders: number[];
}

const known = new WeakMap<Instrument, DoubtfulParameters>();

/** The doubtful parameters of an instrument, found in one pass when they are first asked for. */
export function doubtfulParametersOf(instrument: Instrument): DoubtfulParameters {
  let doubtful = known.get(instrument);
  if (!doubtful) {
    doubtful = collect(instrument);
    known.set(instrument, doubtful);
  }
  return doubtful;
}

const valueMarks = NameMark.number | NameMark.whole | NameMark.option;
const headerBits = 0xffff;

function collect(instrument: Instrument): DoubtfulParameters {
  const found: DoubtfulParameters = {
    unknown: [],
    otherSpellings: [],
    misplaced: [],
    values: [],
    rangeEnds: [],
    rangeHeaders: [],
  };
  const { marks, least, greatest } = parameterFactsOf(instrument.names);
  const { cells, numbers } = instrument.parameters;
  const options = new UsedOptions(instrument);
  for (let header = 0; header < instrument.headers.count; header++) {
    const end = instrument.endParameter(header);
    const isBeforeAny = isNoHeader(instrument, header);
    const wanted = wantedMarks(instrument, header);
    for (let parameter = instrument.firstParameter(header); parameter < end; parameter++) {
      const name = cells[parameter * parameterStride] as number;
      const mark = marks[name] as number;
      if (isBeforeAny || (mark & wanted & headerBits) !== 0) found.misplaced.push(parameter);
      if ((mark & wanted) > headerBits) sortIn(found, mark & wanted, parameter, header);
      const check = mark & valueMarks;
      if (check === 0) continue;
      if (check === NameMark.option) {
        if (!options.isKnown(name, parameter)) found.values.push(parameter);
        continue;
      }
      const value = numbers[parameter] as number;
      // False for NaN, so that everything but a good number is doubtful.
      const isWithin = value >= (least[name] as number) && value <= (greatest[name] as number);
      if (!isWithin || (check === NameMark.whole && !Number.isInteger(value))) found.values.push(parameter);
    }
  }
  return found;
}

/** Stands for what is written before any header. */
function isNoHeader(instrument: Instrument, header: number): boolean {
  return instrument.kind(header) === HeaderKind.unknown && instrument.headerName(header) === '';
}

/** The marks that make a parameter of a header doubtful. Its keys and velocities the model has worked out already. */
function wantedMarks(instrument: Instrument, header: number): number {
  const keysInOrder = (instrument.lowKey[header] as number) <= (instrument.highKey[header] as number);
  const velocitiesInOrder =
    (instrument.lowVelocity[header] as number) <= (instrument.highVelocity[header] as number);
  return (
    (1 << instrument.kind(header)) |
    NameMark.unknown |
    NameMark.otherSpelling |
    NameMark.otherRange |
    (keysInOrder ? 0 : NameMark.keyRange) |
    (velocitiesInOrder ? 0 : NameMark.velocityRange)
  );
}

function sortIn(found: DoubtfulParameters, mark: number, parameter: number, header: number): void {
  if (mark & NameMark.unknown) found.unknown.push(parameter);
  if (mark & NameMark.otherSpelling) found.otherSpellings.push(parameter);
  if (mark & (NameMark.keyRange | NameMark.velocityRange | NameMark.otherRange)) {
    found.rangeEnds.push(parameter);
    found.rangeHeaders.push(header);
  }
}

/** Options spelt as the format does; mostly a name has the same one again and again. */
class UsedOptions {
  readonly #instrument: Instrument;
  readonly #latest: (string | undefined)[] = [];

  constructor(instrument: Instrument) {
    this.#instrument = instrument;
  }

  isKnown(name: number, parameter: number): boolean {
    const text = this.#instrument.valueText(parameter);
    if (text === this.#latest[name]) return true;
    const isOption = this.#instrument.names.opcode(name)?.facts.options.includes(text) === true;
    if (isOption) this.#latest[name] = text;
    return isOption;
  }
}
