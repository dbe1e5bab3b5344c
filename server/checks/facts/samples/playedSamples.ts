import type { Fix } from '../../../model/finding';
import { nameOf } from '../../../model/paths';
import type { SampleFacts, SampleSurvey } from '../../../model/samples';
import type { CheckContext, RuleFinding } from '../../rule';
import { columnInForce } from '../parameters/columnsInForce';
import type { SampleQuestion } from './measuredSamples';
import { measuredSamplesOf } from './measuredSamples';
import { usableFactsOf } from './sampleFacts';
import { sampleSpan } from './samplePaths';
import type { SampleUse, SampleUses } from './sampleUse';
import { sampleUsesOf } from './sampleUses';

/** A sample file that sounding regions play. */
export class PlayedSample {
  readonly #all: PlayedSamples;

  /**
   * `number` is its position among the samples of the instrument, `use` the first use of the file in the text by a
   * sounding region.
   */
  constructor(
    all: PlayedSamples,
    readonly number: number,
    readonly use: SampleUse,
    readonly facts: SampleFacts,
  ) {
    this.#all = all;
  }

  /** The regions that play it, in the order of the text. */
  get regions(): readonly number[] {
    return this.#all.playersOf(this.number).regions;
  }

  /** All uses of the file but the first one. */
  get otherUses(): readonly SampleUse[] {
    return this.#all.playersOf(this.number).otherUses;
  }
}

interface Players {
  regions: number[];
  otherUses: SampleUse[];
}

/**
 * The sample files that regions play. Files that are cut short or cannot be read have findings of their own and are left
 * out, as are regions that `end=-1` keeps silent.
 */
export class PlayedSamples {
  readonly samples: readonly PlayedSample[];
  /** By the position in `Instrument.regions`: the file that the region plays; `undefined` where it plays none. */
  readonly ofRegion: readonly (PlayedSample | undefined)[];
  /** Whether something is not known yet of a file. */
  readonly isPending: boolean;
  readonly #uses: SampleUses;
  /** By the number of a sample; only findings ask for that, so it is worked out for the first of them. */
  #players: Players[] | undefined;

  /** `isSilent` says which regions of `Instrument.regions` are kept silent, by their position. */
  constructor(all: SampleUses, isSilent?: (number: number) => boolean) {
    this.#uses = all;
    const { uses, useOfRegion, regions, paths } = all;
    const samples: PlayedSample[] = [];
    const ofRegion = new Array<PlayedSample | undefined>(regions.length).fill(undefined);
    /** By the number of a path; `null` before it was looked at. */
    const ofPath = new Array<PlayedSample | undefined | null>(paths.size).fill(null);
    let isPending = false;
    for (let number = 0; number < regions.length; number++) {
      const use = uses[useOfRegion[number]];
      if (!use || isSilent?.(number)) continue;
      let sample = ofPath[use.number];
      if (sample === null) {
        if (use.isFile && use.state.kind === 'pending') isPending = true;
        const facts = use.isFile ? usableFactsOf(use.state) : undefined;
        sample = facts && new PlayedSample(this, samples.length, use, facts);
        if (sample) samples.push(sample);
        ofPath[use.number] = sample;
      }
      ofRegion[number] = sample;
    }
    this.samples = samples;
    this.ofRegion = ofRegion;
    this.isPending = isPending;
  }

  /** The regions that play the sample of a number, and its uses but the first. */
  playersOf(number: number): Players {
    this.#players ??= this.#collectPlayers();
    return this.#players[number];
  }

  #collectPlayers(): Players[] {
    const { uses, useOfRegion, regions: all } = this.#uses;
    const players = this.samples.map((): Players => ({ regions: [], otherUses: [] }));
    const seen = new Uint8Array(uses.length);
    for (const [number, region] of all.entries()) {
      const sample = this.ofRegion[number];
      if (!sample) continue;
      const { regions, otherUses } = players[sample.number];
      regions.push(region);
      const use = useOfRegion[number];
      if (seen[use] === 0 && uses[use] !== sample.use) otherUses.push(uses[use]);
      seen[use] = 1;
    }
    return players;
  }
}

/** What was measured in a sample file that has some sound in it. */
export interface SurveyedSample {
  sample: PlayedSample;
  survey: SampleSurvey;
}

/** Other uses that a finding points to; of more, none. */
const mostRelated = 5;

const knownSamples = new WeakMap<CheckContext, PlayedSamples>();
const knownSurveys = new WeakMap<CheckContext, readonly (SampleSurvey | null | undefined)[]>();
/** Of uses none of which is silent; mostly these are the same from one check to the next. */
const soundingSamples = new WeakMap<SampleUses, PlayedSamples>();

/** The sample files that regions play, looked up once in a check. */
export function playedSamplesOf(context: CheckContext): PlayedSamples {
  let played = knownSamples.get(context);
  if (!played) {
    played = collect(context);
    knownSamples.set(context, played);
  }
  return played;
}

function collect(context: CheckContext): PlayedSamples {
  const { instrument } = context;
  const uses = sampleUsesOf(context);
  const ends = columnInForce(instrument, 'end');
  const isSilent = (region: number) => {
    const end = ends ? ends[region] : -1;
    return end >= 0 && instrument.number(end) < 0;
  };
  if (ends && instrument.regions.some(isSilent)) {
    return new PlayedSamples(uses, (number) => isSilent(instrument.regions[number]));
  }
  let played = soundingSamples.get(uses);
  if (!played) {
    played = new PlayedSamples(uses);
    soundingSamples.set(uses, played);
  }
  return played;
}

/**
 * By the number of a sample, what was measured in it: `undefined` while that is not known, `null` where it cannot be.
 * Empty where nothing is measured.
 */
export function surveysOf(context: CheckContext): readonly (SampleSurvey | null | undefined)[] {
  let surveys = knownSurveys.get(context);
  if (!surveys) {
    const measured = measuredSamplesOf(context);
    surveys = measured?.givesSurveys
      ? playedSamplesOf(context).samples.map(({ use }) => measured.survey(use))
      : [];
    knownSurveys.set(context, surveys);
  }
  return surveys;
}

/**
 * The samples with some sound that answer a question about what was measured in them with yes. The same function is asked once
 * of a file, not in each check.
 */
export function samplesWhere(context: CheckContext, holds: SampleQuestion): SurveyedSample[] {
  const measured = measuredSamplesOf(context);
  if (!measured?.givesSurveys) return [];
  return measured.where(playedSamplesOf(context).samples, holds).map((sample) => ({
    sample,
    survey: measured.survey(sample.use) as SampleSurvey,
  }));
}

/** A finding about a sample file: at its first use, with the others beside it where they are few. */
export function sampleFinding(
  { instrument }: CheckContext,
  sample: PlayedSample,
  message: string,
  fixes?: () => Fix[],
): RuleFinding {
  const { use, otherUses } = sample;
  const related =
    otherUses.length > mostRelated
      ? []
      : otherUses.map((other) => ({
          ...sampleSpan(instrument, other),
          message: `"${nameOf(use.path)}" is used here too.`,
        }));
  return {
    ...sampleSpan(instrument, use),
    message,
    ...(related.length > 0 && { related }),
    ...(fixes && { fixes }),
  };
}
