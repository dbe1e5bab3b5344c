/** The generators of the format by name (SoundFont Technical Specification 2.04, section 8.1.3). */
export const Generator = {
  startOffset: 0,
  endOffset: 1,
  loopStartOffset: 2,
  loopEndOffset: 3,
  startCoarseOffset: 4,
  modulationLfoToPitch: 5,
  vibratoLfoToPitch: 6,
  modulationEnvelopeToPitch: 7,
  filterCutoff: 8,
  filterResonance: 9,
  modulationLfoToCutoff: 10,
  modulationEnvelopeToCutoff: 11,
  endCoarseOffset: 12,
  modulationLfoToVolume: 13,
  chorusSend: 15,
  reverbSend: 16,
  pan: 17,
  modulationLfoDelay: 21,
  modulationLfoFrequency: 22,
  vibratoLfoDelay: 23,
  vibratoLfoFrequency: 24,
  modulationDelay: 25,
  modulationAttack: 26,
  modulationHold: 27,
  modulationDecay: 28,
  modulationSustain: 29,
  modulationRelease: 30,
  keyToModulationHold: 31,
  keyToModulationDecay: 32,
  volumeDelay: 33,
  volumeAttack: 34,
  volumeHold: 35,
  volumeDecay: 36,
  volumeSustain: 37,
  volumeRelease: 38,
  keyToVolumeHold: 39,
  keyToVolumeDecay: 40,
  instrument: 41,
  keyRange: 43,
  velocityRange: 44,
  loopStartCoarseOffset: 45,
  forcedKey: 46,
  forcedVelocity: 47,
  attenuation: 48,
  loopEndCoarseOffset: 50,
  coarseTune: 51,
  fineTune: 52,
  sample: 53,
  sampleModes: 54,
  scaleTuning: 56,
  exclusiveClass: 57,
  rootKey: 58,
} as const;

/** What the format says of one generator. */
export interface GeneratorFacts {
  /** The number that stands in files. */
  operator: number;
  low: number;
  high: number;
  default: number;
  /** `both`: a preset's value is added to the instrument's. `instrument`: presets cannot have it. */
  level: 'both' | 'instrument';
}

type Row = readonly [number, number, number, number, GeneratorFacts['level']];

const g = Generator;
const shortest = -12000;

/**
 * Number, lowest and highest value, default and level of every generator that is a value (SoundFont Technical
 * Specification 2.04, sections 8.1.2 and 8.1.3); those that name a range, an instrument or a sample are not among them.
 */
const rows: readonly Row[] = [
  [g.startOffset, 0, 32767, 0, 'instrument'],
  [g.endOffset, -32768, 0, 0, 'instrument'],
  [g.loopStartOffset, -32768, 32767, 0, 'instrument'],
  [g.loopEndOffset, -32768, 32767, 0, 'instrument'],
  [g.startCoarseOffset, 0, 32767, 0, 'instrument'],
  [g.endCoarseOffset, -32768, 0, 0, 'instrument'],
  [g.loopStartCoarseOffset, -32768, 32767, 0, 'instrument'],
  [g.loopEndCoarseOffset, -32768, 32767, 0, 'instrument'],
  [g.modulationLfoToPitch, -12000, 12000, 0, 'both'],
  [g.vibratoLfoToPitch, -12000, 12000, 0, 'both'],
  [g.modulationEnvelopeToPitch, -12000, 12000, 0, 'both'],
  [g.filterCutoff, 1500, 13500, 13500, 'both'],
  [g.filterResonance, 0, 960, 0, 'both'],
  [g.modulationLfoToCutoff, -12000, 12000, 0, 'both'],
  [g.modulationEnvelopeToCutoff, -12000, 12000, 0, 'both'],
  [g.modulationLfoToVolume, -960, 960, 0, 'both'],
  [g.chorusSend, 0, 1000, 0, 'both'],
  [g.reverbSend, 0, 1000, 0, 'both'],
  [g.pan, -500, 500, 0, 'both'],
  [g.modulationLfoDelay, shortest, 5000, shortest, 'both'],
  [g.modulationLfoFrequency, -16000, 4500, 0, 'both'],
  [g.vibratoLfoDelay, shortest, 5000, shortest, 'both'],
  [g.vibratoLfoFrequency, -16000, 4500, 0, 'both'],
  [g.modulationDelay, shortest, 5000, shortest, 'both'],
  [g.modulationAttack, shortest, 8000, shortest, 'both'],
  [g.modulationHold, shortest, 5000, shortest, 'both'],
  [g.modulationDecay, shortest, 8000, shortest, 'both'],
  [g.modulationSustain, 0, 1000, 0, 'both'],
  [g.modulationRelease, shortest, 8000, shortest, 'both'],
  [g.keyToModulationHold, -1200, 1200, 0, 'both'],
  [g.keyToModulationDecay, -1200, 1200, 0, 'both'],
  [g.volumeDelay, shortest, 5000, shortest, 'both'],
  [g.volumeAttack, shortest, 8000, shortest, 'both'],
  [g.volumeHold, shortest, 5000, shortest, 'both'],
  [g.volumeDecay, shortest, 8000, shortest, 'both'],
  [g.volumeSustain, 0, 1440, 0, 'both'],
  [g.volumeRelease, shortest, 8000, shortest, 'both'],
  [g.keyToVolumeHold, -1200, 1200, 0, 'both'],
  [g.keyToVolumeDecay, -1200, 1200, 0, 'both'],
  [g.forcedKey, 0, 127, -1, 'instrument'],
  [g.forcedVelocity, 0, 127, -1, 'instrument'],
  [g.attenuation, 0, 1440, 0, 'both'],
  [g.coarseTune, -120, 120, 0, 'both'],
  [g.fineTune, -99, 99, 0, 'both'],
  [g.sampleModes, 0, 3, 0, 'instrument'],
  [g.scaleTuning, 0, 1200, 100, 'both'],
  [g.exclusiveClass, 0, 127, 0, 'instrument'],
  [g.rootKey, 0, 127, -1, 'instrument'],
];

/** The generators that are values, by their number. */
export const generatorFacts: ReadonlyMap<number, GeneratorFacts> = new Map(
  rows.map(([operator, low, high, byDefault, level]) => [
    operator,
    { operator, low, high, default: byDefault, level },
  ]),
);

/** The value of a generator where nothing is said. */
export function defaultOf(operator: number): number {
  return generatorFacts.get(operator)?.default ?? 0;
}

/** A value brought within what the format allows for its generator. */
export function withinRange(operator: number, value: number): number {
  const facts = generatorFacts.get(operator);
  return facts ? Math.max(facts.low, Math.min(facts.high, value)) : value;
}
