import type { CheckContext } from '../../rule';
import { columnInForce } from '../parameters/columnsInForce';
import { playedSamplesOf, surveysOf } from './playedSamples';

/** How loudly regions play their samples at full velocity, by the position in `Instrument.regions`. */
export interface PlayedLoudnesses {
  /** The greatest momentary loudness in LUFS, the region's gain added; NaN where it is not known or cannot be told. */
  loudness: Float64Array;
  /** The gain of the region alone, in dB. */
  gain: Float64Array;
  /** 1 where the loudness is not known yet. */
  isPending: Uint8Array;
}

const volumes = ['volume', 'group_volume', 'master_volume', 'global_volume'] as const;
const known = new WeakMap<CheckContext, PlayedLoudnesses>();

/**
 * How loudly regions play their samples, `volume` and `amplitude` counted in, worked out once in a check; `undefined`
 * where nothing is measured.
 */
export function playedLoudnessesOf(context: CheckContext): PlayedLoudnesses | undefined {
  if (surveysOf(context).length === 0) return undefined;
  let loudnesses = known.get(context);
  if (!loudnesses) {
    loudnesses = collect(context);
    known.set(context, loudnesses);
  }
  return loudnesses;
}

function collect(context: CheckContext): PlayedLoudnesses {
  const { instrument } = context;
  const surveys = surveysOf(context);
  const { ofRegion } = playedSamplesOf(context);
  const set = volumes.map((name) => columnInForce(instrument, name)).filter((column) => column !== undefined);
  const amplitudes = columnInForce(instrument, 'amplitude');
  const loudness = new Float64Array(ofRegion.length).fill(Number.NaN);
  const gain = new Float64Array(ofRegion.length);
  const isPending = new Uint8Array(ofRegion.length);
  for (let number = 0; number < ofRegion.length; number++) {
    const sample = ofRegion[number];
    if (!sample) continue;
    const survey = surveys[sample.number];
    if (survey === undefined) isPending[number] = 1;
    if (!survey || survey.momentaryLoudness === null) continue;
    const region = instrument.regions[number];
    let decibels = 0;
    for (const column of set) {
      const parameter = column[region];
      if (parameter >= 0) decibels += instrument.number(parameter);
    }
    const amplitude = amplitudes ? amplitudes[region] : -1;
    if (amplitude >= 0) decibels += 20 * Math.log10(instrument.number(amplitude) / 100);
    // Values that are no numbers, and regions that are silent.
    if (!Number.isFinite(decibels)) continue;
    gain[number] = decibels;
    loudness[number] = survey.momentaryLoudness + decibels;
  }
  return { loudness, gain, isPending };
}
