import { HeaderKind } from '../../../model/headerKinds';
import type { Instrument } from '../../../model/instrument';
import { parameterStride } from '../../../model/instrumentParts';
import { NameMark, parameterFactsOf } from './parameterFacts';

/** Parameters of one name that are listed; of commoner names not even all, since rules ask for those of rare ones. */
export const fewUses = 64;

/** What one pass over all parameters finds for the rules: mostly lists of those that have to be looked at more closely. */
export interface ParameterSurvey {
  /** The canonical numbers of the names that occur, in the order of their first use. */
  names: number[];
  /** The first and the last parameter of each canonical number, or −1. */
  first: Int32Array;
  last: Int32Array;
  /** By parameter the one of the same canonical name before it, or −1. */
  before: Int32Array;
  /** By canonical number the first parameters of it: all of them where they are fewer than {@link fewUses}. */
  few: (number[] | undefined)[];
  /** Parameters of global, master, group and region in whose place a later one of their header counts. */
  repeated: number[];
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

const known = new WeakMap<Instrument, ParameterSurvey>();

/** The survey of an instrument's parameters, made when it is first asked for. */
export function parameterSurveyOf(instrument: Instrument): ParameterSurvey {
  let survey = known.get(instrument);
  if (!survey) {
    survey = collect(instrument);
    known.set(instrument, survey);
  }
  return survey;
}

const valueMarks = NameMark.number | NameMark.whole | NameMark.option;
const headerBits = 0xffff;

function collect(instrument: Instrument): ParameterSurvey {
  // Looking the names up can add some, so that the first use comes after it.
  const facts = parameterFactsOf(instrument.names);
  const found: ParameterSurvey = {
    names: [],
    first: new Int32Array(instrument.names.size).fill(-1),
    last: new Int32Array(instrument.names.size).fill(-1),
    before: new Int32Array(instrument.parameters.count),
    few: [],
    repeated: [],
    unknown: [],
    otherSpellings: [],
    misplaced: [],
    values: [],
    rangeEnds: [],
    rangeHeaders: [],
  };
  const { names, first, last, few, repeated } = found;
  const counts = new Int32Array(first.length);
  const { marks, canonical, least, greatest } = facts;
  const { cells, numbers } = instrument.parameters;
  const options = new UsedOptions(instrument);
  for (let header = 0; header < instrument.headers.count; header++) {
    const start = instrument.firstParameter(header);
    const end = instrument.endParameter(header);
    const kind = instrument.kind(header);
    const canRepeat = kind >= HeaderKind.global && kind <= HeaderKind.region;
    const isBeforeAny = isNoHeader(instrument, header);
    const wanted = wantedMarks(instrument, header);
    for (let parameter = start; parameter < end; parameter++) {
      const name = cells[parameter * parameterStride];
      const canonicalName = canonical[name];
      const before = last[canonicalName];
      found.before[parameter] = before;
      if (before < 0) {
        first[canonicalName] = parameter;
        names.push(canonicalName);
      } else if (before >= start && canRepeat) repeated.push(before);
      last[canonicalName] = parameter;
      if (counts[canonicalName] < fewUses) {
        counts[canonicalName]++;
        list(few, canonicalName, parameter);
      }
      const mark = marks[name];
      if (isBeforeAny || (mark & wanted & headerBits) !== 0) found.misplaced.push(parameter);
      if ((mark & wanted) > headerBits) sortIn(found, mark & wanted, parameter, header);
      const check = mark & valueMarks;
      if (check === 0) continue;
      if (check === NameMark.option) {
        if (!options.isKnown(name, parameter)) found.values.push(parameter);
        continue;
      }
      const value = numbers[parameter];
      // False for NaN, so that everything but a good number is doubtful.
      const isWithin = value >= least[name] && value <= greatest[name];
      if (!isWithin || (check === NameMark.whole && !Number.isInteger(value))) found.values.push(parameter);
    }
  }
  return found;
}

function list(lists: (number[] | undefined)[], name: number, parameter: number): void {
  const known = lists[name];
  if (known) known.push(parameter);
  else lists[name] = [parameter];
}

/** Stands for what is written before any header. */
function isNoHeader(instrument: Instrument, header: number): boolean {
  return instrument.kind(header) === HeaderKind.unknown && instrument.headerName(header) === '';
}

/** The marks that make a parameter of a header doubtful. Its keys and velocities the model has worked out already. */
function wantedMarks(instrument: Instrument, header: number): number {
  const keysInOrder = instrument.lowKey[header] <= instrument.highKey[header];
  const velocitiesInOrder = instrument.lowVelocity[header] <= instrument.highVelocity[header];
  return (
    (1 << instrument.kind(header)) |
    NameMark.unknown |
    NameMark.otherSpelling |
    NameMark.otherRange |
    (keysInOrder ? 0 : NameMark.keyRange) |
    (velocitiesInOrder ? 0 : NameMark.velocityRange)
  );
}

function sortIn(found: ParameterSurvey, mark: number, parameter: number, header: number): void {
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
