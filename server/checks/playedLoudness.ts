import { FewInForce } from './fewInForce';
import type { PlayedSample } from './playedSamples';
import { playedSamplesOf, surveysOf } from './playedSamples';
import type { CheckContext } from './rule';

/** How loudly a region plays its sample at full velocity. */
export interface PlayedLoudness {
  sample: PlayedSample;
  /** The greatest momentary loudness in LUFS, the region's gain added. */
  loudness: number;
  /** The greatest magnitude in dB of full scale, the region's gain added. */
  peakDb: number;
}

/** By the position in `Instrument.regions`; `undefined` while it is not known, `null` where it cannot be told. */
export type PlayedLoudnesses = readonly (PlayedLoudness | null | undefined)[];

const volumes = ['volume', 'group_volume', 'master_volume', 'global_volume'] as const;
const known = new WeakMap<CheckContext, PlayedLoudnesses>();

/** How loudly regions play their samples, `volume` and `amplitude` counted in; worked out once in a check. */
export function playedLoudnessesOf(context: CheckContext): PlayedLoudnesses {
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
  if (surveys.length === 0) return [];
  const few = new FewInForce(instrument, [...volumes, 'amplitude']);
  const numberOf = (region: number, name: (typeof volumes)[number] | 'amplitude', unset: number) => {
    const parameter = few.of(region, name);
    return parameter < 0 ? unset : instrument.number(parameter);
  };
  return playedSamplesOf(context).ofRegion.map((sample, number) => {
    if (!sample) return null;
    const survey = surveys[sample.number];
    if (survey === undefined) return undefined;
    if (!survey || survey.momentaryLoudness === null) return null;
    const region = instrument.regions[number] as number;
    let gain = 20 * Math.log10(numberOf(region, 'amplitude', 100) / 100);
    for (const name of volumes) gain += numberOf(region, name, 0);
    // Values that are no numbers, and regions that are silent.
    if (!Number.isFinite(gain)) return null;
    return {
      sample,
      loudness: survey.momentaryLoudness + gain,
      peakDb: 20 * Math.log10(survey.peak) + gain,
    };
  });
}
