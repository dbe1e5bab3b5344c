import type { GateTable } from '../playing/playable/gateTable';
import type { PlayableInstrument } from '../playing/playable/playableInstrument';
import type { RenderSource } from '../sound/render/renderParts';
import { scopeSize } from './polyphonyScopes';
import { sameData } from './sameData';
import type { SameSamples, SampleOfRegion } from './sameSamples';
import type { SpokenValues } from './spokenValues';

/** A side of a comparison: all that its sound comes from, and what its text says. */
export interface ComparedSide extends RenderSource {
  spoken: SpokenValues;
}

/** Columns of a program that decide how a region sounds. */
export const soundColumns = [
  'rootKey',
  'tuneCents',
  'volumeDb',
  'panPercent',
  'offset',
  'end',
  'loopMode',
  'loopType',
  'loopStart',
  'loopEnd',
] as const;

/** What decides which voices end because of others, and how. */
export const endingColumns = [
  'offMode',
  'offTimeSeconds',
  'group',
  'offBy',
  'polyphony',
  'notePolyphony',
  'isSelfMasking',
] as const;

/** What decides how a region plays on and ends once it has started. */
export const lifecycleColumns = [
  ...endingColumns,
  'trigger',
  'loopMode',
  'ignoresNoteOff',
  'releasesOnly',
  'playsDead',
  'releaseDecayDb',
  'usesPreviousVelocity',
  'delaySeconds',
  'delayRandomSeconds',
] as const;

/** What decides whether a region starts. */
export const conditionColumns = [
  'lowKey',
  'highKey',
  'lowVelocity',
  'highVelocity',
  'sequenceLength',
  'sequencePosition',
  'lowRandom',
  'highRandom',
  'switchLow',
  'switchHigh',
  'switchDefault',
  'switchDown',
  'switchUp',
  'previousKey',
] as const;

/** Tells which regions of two sides sound alike by what their texts say and by the audio of their samples. */
export class RegionLikeness {
  readonly #a: ComparedSide;
  readonly #b: ComparedSide;
  readonly #samples: SameSamples;
  readonly #hasSameCurves: boolean;
  readonly #recipes = new Map<number, boolean>();

  constructor(a: ComparedSide, b: ComparedSide, samples: SameSamples) {
    this.#a = a;
    this.#b = b;
    this.#samples = samples;
    this.#hasSameCurves = sameData(a.program.curves, b.program.curves);
  }

  /** Whether a region of the first side sounds and ends as one of the second does once it is started. */
  async soundAlike(a: number, b: number): Promise<boolean> {
    const [one, other] = [this.#a, this.#b];
    return (
      soundColumns.every((name) => one.program[name][a] === other.program[name][b]) &&
      this.#hasSameCurves &&
      this.hasSameRecipe(a, b) &&
      lifecycleColumns.every((name) => one.playable[name][a] === other.playable[name][b]) &&
      sameData(lifecycleOf(one.playable, a), lifecycleOf(other.playable, b)) &&
      (await this.hasSameSample(a, b))
    );
  }

  hasSameRecipe(a: number, b: number): boolean {
    const [one, other] = [this.#a.program, this.#b.program];
    const pair = one.recipe[a] * other.recipes.length + other.recipe[b];
    let same = this.#recipes.get(pair);
    if (same === undefined) {
      same = sameData(one.recipes[one.recipe[a]], other.recipes[other.recipe[b]]);
      this.#recipes.set(pair, same);
    }
    return same;
  }

  async hasSameSample(a: number, b: number): Promise<boolean> {
    return this.#samples.areSame(sampleOf(this.#a, a), sampleOf(this.#b, b));
  }

  /** Whether two regions start under the same conditions. */
  haveSameConditions(a: number, b: number): boolean {
    const [one, other] = [this.#a.playable, this.#b.playable];
    return (
      conditionColumns.every((name) => one[name][a] === other[name][b]) &&
      sameData(gatesOf(one, a), gatesOf(other, b)) &&
      sameData(switchesOf(one, a), switchesOf(other, b))
    );
  }
}

/** The sample of a region of a side. */
export function sampleOf({ program, paths }: RenderSource, region: number): SampleOfRegion {
  const sample = program.sample[region];
  return sample < 0 ? sample : paths[sample];
}

export function lifecycleOf(playable: PlayableInstrument, region: number): unknown[] {
  const { delayControllers, releaseStages, pedal, pedals } = playable;
  const delays = sliceOf(delayControllers.start, region);
  const stages = sliceOf(releaseStages.start, region);
  return [
    delayControllers.controller.slice(...delays),
    delayControllers.depth.slice(...delays),
    releaseStages.decayDb.slice(...stages),
    releaseStages.endSeconds.slice(...stages),
    pedals[pedal[region]],
    ...countedTogether(playable, region),
  ];
}

/** What is counted together with a region, besides {@link endingColumns}. */
export function countedTogether(playable: PlayableInstrument, region: number): unknown[] {
  return [scopeSize(playable, region)];
}

export function gatesOf(playable: PlayableInstrument, region: number): unknown[] {
  const { controllerGates, otherGates, startGates, stopGates } = playable;
  return [controllerGates, otherGates, startGates, stopGates].map((table: GateTable) => {
    const part = sliceOf(table.start, region);
    return [table.subject.slice(...part), table.low.slice(...part), table.high.slice(...part)];
  });
}

function switchesOf({ switchZone, switchZones, switchLow }: PlayableInstrument, region: number): unknown {
  const zone = switchZone[region] * 128;
  return switchLow[region] < 0 ? undefined : switchZones.slice(zone, zone + 128);
}

function sliceOf(start: Int32Array, region: number): [from: number, to: number] {
  return [start[region], start[region + 1]];
}
