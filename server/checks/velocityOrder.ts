import { unknownConditions } from '../model/conditionSets';
import { conditionsOf } from '../model/conditions';
import type { Instrument } from '../model/instrument';
import type { Rectangle } from '../model/overlaps';
import { rectangleCodesOf } from '../model/overlaps';
import { nameOf } from '../model/paths';
import { FewInForce } from './fewInForce';
import { parameterUsesOf } from './parameterUses';
import { playedLoudnessesOf } from './playedLoudness';
import type { PlayedSample } from './playedSamples';
import { keysText, velocitiesText } from './regionText';
import type { CheckContext, Rule, RuleFinding } from './rule';
import { placeInRegion } from './samplePaths';
import { rectangleOfCode } from './turns';

/**
 * A layer counts as softer than the one below it from here on, in dB of loudness and of peak. Samples that were all brought
 * to one peak differ in loudness by some dB, and those of one loudness in peak, which is no fault (common practice).
 */
const leastLoudnessDb = 6;
const leastPeakDb = 3;
/** Layers that share at least this part of the keys of both are compared. */
const leastShared = 0.5;
const mostRelated = 5;

/** What sounds on a rectangle of keys and velocities: one region, or several at a time. */
interface Layer {
  rectangle: Rectangle;
  region: number;
  sample: PlayedSample;
  regions: number;
  /** Sum of powers, and the greatest peak in dB. */
  power: number;
  peakDb: number;
}

/** A layer that is softer than the one below. */
interface Inversion {
  upper: Layer;
  lower: Layer;
  softerDb: number;
}

/** Finds layers for hard strokes that sound softer than the layer for softer ones. */
export const velocityOrder: Rule = {
  code: 'velocity-order',
  severity: 'information',
  finds: 'A velocity layer that is 6 dB or more softer than the layer below it on the same keys.',
  check(context, report) {
    const { names } = context.instrument;
    const hasCurves = [...parameterUsesOf(context).names].some((name) =>
      names.text(name).startsWith('amp_velcurve_'),
    );
    if (hasCurves) return;
    const gains = new VelocityGains(context.instrument);
    for (const layers of situationsOf(context)) {
      /** By the velocities of both layers. */
      const found = new Map<string, Inversion[]>();
      for (const inversion of inversionsIn(layers, gains)) {
        const { upper, lower } = inversion;
        const key = [upper, lower]
          .map(({ rectangle }) => `${rectangle.lowVelocity} ${rectangle.highVelocity}`)
          .join(' ');
        const list = found.get(key);
        if (list) list.push(inversion);
        else found.set(key, [inversion]);
      }
      for (const inversions of found.values()) report(findingOf(context, inversions));
    }
  },
};

/** The layers under each set of conditions of which there are several. */
function situationsOf(context: CheckContext): Layer[][] {
  const { instrument } = context;
  const conditions = conditionsOf(instrument);
  const codes = rectangleCodesOf(instrument);
  const situations = new Map<number, Map<number, Layer | undefined>>();
  for (const [number, played] of playedLoudnessesOf(context).entries()) {
    const region = instrument.regions[number] as number;
    const code = codes[number] as number;
    const set = conditions.ofHeader[region] as number;
    if (code < 0 || set === unknownConditions || conditions.set(set).onRelease) continue;
    let layers = situations.get(set);
    if (!layers) {
      layers = new Map();
      situations.set(set, layers);
    }
    if (!played) {
      layers.set(code, undefined);
      continue;
    }
    const power = 10 ** (played.loudness / 10);
    const layer = layers.get(code);
    if (layer) {
      layer.regions++;
      layer.power += power;
      layer.peakDb = Math.max(layer.peakDb, played.peakDb);
    } else if (!layers.has(code)) {
      const { sample, peakDb } = played;
      layers.set(code, { rectangle: rectangleOfCode(code), region, sample, regions: 1, power, peakDb });
    }
  }
  return [...situations.values()]
    .map((layers) => [...layers.values()].filter((layer) => layer !== undefined))
    .filter(({ length }) => length > 1);
}

/** Layers on a key by their highest velocity; shared by all situations, so emptied after each. */
const byEnd = new Array<Layer | undefined>(128 * 128);

function inversionsIn(layers: readonly Layer[], gains: VelocityGains): Inversion[] {
  const found: Inversion[] = [];
  const forEachKey = ({ rectangle }: Layer, act: (place: number) => void) => {
    for (let key = rectangle.lowKey; key <= rectangle.highKey; key++) act(rectangle.highVelocity * 128 + key);
  };
  for (const layer of layers) forEachKey(layer, (place) => (byEnd[place] ??= layer));
  for (const upper of layers) {
    const { lowKey, highKey, lowVelocity } = upper.rectangle;
    const middle = (lowKey + highKey) >> 1;
    let lower: Layer | undefined;
    for (let velocity = lowVelocity - 1; velocity > 0 && !lower; velocity--)
      lower = byEnd[velocity * 128 + middle];
    if (!lower || lower.regions !== upper.regions || lower.sample === upper.sample) continue;
    if (!shareKeys(upper.rectangle, lower.rectangle)) continue;
    // Both at the velocities where one takes over from the other.
    const gain = gains.of(upper.region, lowVelocity) - gains.of(lower.region, lower.rectangle.highVelocity);
    const softerDb = 10 * Math.log10(lower.power / upper.power) - gain;
    const peakSofterDb = lower.peakDb - upper.peakDb - gain;
    if (softerDb >= leastLoudnessDb && peakSofterDb >= leastPeakDb) found.push({ upper, lower, softerDb });
  }
  for (const layer of layers) forEachKey(layer, (place) => (byEnd[place] = undefined));
  return found;
}

function shareKeys(a: Rectangle, b: Rectangle): boolean {
  const shared = Math.min(a.highKey, b.highKey) - Math.max(a.lowKey, b.lowKey) + 1;
  const most = Math.max(a.highKey - a.lowKey, b.highKey - b.lowKey) + 1;
  return shared >= leastShared * most;
}

/** What velocity does to the level of regions. */
class VelocityGains {
  readonly #instrument: Instrument;
  readonly #few: FewInForce<'amp_veltrack'>;

  constructor(instrument: Instrument) {
    this.#instrument = instrument;
    this.#few = new FewInForce(instrument, ['amp_veltrack']);
  }

  /**
   * The gain of a velocity in dB, NaN where it cannot be told. The public documentation of the format gives
   * an attenuation of 20 log (127² / velocity²) at 100 %; less of it at less is how players commonly read it.
   */
  of(region: number, velocity: number): number {
    const parameter = this.#few.of(region, 'amp_veltrack');
    const part = parameter < 0 ? 1 : this.#instrument.number(parameter) / 100;
    return part >= 0 && part <= 1 ? 20 * Math.log10(1 - part + part * (velocity / 127) ** 2) : Number.NaN;
  }
}

function findingOf({ instrument }: CheckContext, inversions: readonly Inversion[]): RuleFinding {
  const [{ upper, lower, softerDb }, ...others] = inversions as [Inversion, ...Inversion[]];
  const titleOf = ({ sample, rectangle: { lowVelocity, highVelocity } }: Layer) =>
    `"${nameOf(sample.use.path)}" (${velocitiesText(lowVelocity, highVelocity)})`;
  const keys = keysText(upper.rectangle.lowKey, upper.rectangle.highKey);
  const more =
    others.length === 0
      ? ''
      : ` It is so in ${others.length} more ${others.length === 1 ? 'place' : 'places'} of these layers.`;
  const placed = (layer: Layer, message: string) => ({
    ...placeInRegion(instrument, layer.region),
    message,
  });
  return {
    ...placeInRegion(instrument, upper.region),
    message: `${titleOf(upper)} is ${softerDb.toFixed(0)} dB softer than ${titleOf(lower)} on ${keys}, volume and velocity counted in, though harder strokes play it.${more} Swap the samples or the velocities, or set volume.`,
    related: [
      placed(lower, 'The layer below is here.'),
      ...(others.length > mostRelated
        ? []
        : others.map((other) =>
            placed(other.upper, `${titleOf(other.upper)} is softer than the layer below too.`),
          )),
    ],
  };
}
