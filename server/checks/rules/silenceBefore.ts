import type { Fix } from '../../model/finding';
import type { Instrument } from '../../model/instrument';
import { conditionsOf } from '../../model/overlaps/conditions';
import { PairNumbers } from '../../model/overlaps/pairNumbers';
import { rectangleCodesOf } from '../../model/overlaps/rectangles';
import { nameOf } from '../../model/paths';
import type { SampleFacts, SampleSurvey } from '../../model/samples';
import { ColumnsInForce } from '../facts/parameters/columnsInForce';
import { fixOfParts } from '../facts/parameters/parameterFixes';
import { parameterUsesOf } from '../facts/parameters/parameterUses';
import { situationText } from '../facts/regionNeighbours';
import type { PlayedSample, SurveyedSample } from '../facts/samples/playedSamples';
import { playedSamplesOf, sampleFinding, samplesWhere, surveysOf } from '../facts/samples/playedSamples';
import type { CheckContext, Rule } from '../rule';

/** Silence that makes a note late, in seconds: delays from about here on are felt when playing (common practice). */
const leastSeconds = 0.02;
/** What the fix leaves of the silence, in seconds, so that the start of the sound is not touched (our choice). */
const leftSeconds = 0.001;
/** A microphone in the room hears later than one nearby: by at most this long, some 35 m at 343 m/s (our choice). */
const mostRoomSeconds = 0.1;

const names = ['offset', 'offset_mode', 'delay', 'delay_samples', 'delay_beats', 'direction'] as const;

/** Finds silence at the start of samples that no offset skips, so that notes come late. */
export const silenceBefore: Rule = {
  code: 'silence-before',
  severity: 'information',
  ofSample: true,
  finds: 'Silence of 20 ms or more at the start of a sample that no offset skips.',
  check(context, report) {
    const found = samplesWhere(context, beginsLate);
    if (found.length === 0 || movesOffset(context)) return;
    const starts = new SampleStarts(context);
    for (const one of found) {
      const { sample, survey } = one;
      const late = starts.lateRegions(one);
      if (late.length === 0) continue;
      const { sampleRate } = sample.facts;
      const silence = survey.leadingSilenceFrames;
      const offset = Math.max(0, silence - Math.round(leftSeconds * sampleRate));
      const milliseconds = Math.round((1000 * silence) / sampleRate);
      report(() =>
        sampleFinding(
          context,
          sample,
          `"${nameOf(sample.use.path)}" begins with ${milliseconds} ms of silence (${silence} frames), so its notes come late. Set offset=${offset}, or cut the silence from the file.`,
          () => fixesOf(context, late, offset),
        ),
      );
    }
  },
};

function beginsLate({ leadingSilenceFrames }: SampleSurvey, { sampleRate }: SampleFacts): boolean {
  return leadingSilenceFrames >= leastSeconds * sampleRate;
}

/** Whether a controller or chance moves the offset, so that nobody can say where regions start. */
function movesOffset(context: CheckContext): boolean {
  const { names: table } = context.instrument;
  return [...parameterUsesOf(context).names].some((name) => /^offset_(?!mode$)/.test(table.text(name)));
}

/** Answers where in their samples regions start. */
class SampleStarts {
  readonly #instrument: Instrument;
  readonly #few: ColumnsInForce<(typeof names)[number]>;
  /** Conditions that hold at the same time, by the number of a set, and by what they are. */
  readonly #momentOfSet = new Map<number, number>();
  readonly #moments = new Map<string, number>();
  /** Moments with keys and velocities. */
  readonly #together: PairNumbers;
  /** Seconds of silence that are heard first, the least of all regions that sound together. */
  readonly #earliest: Float64Array;
  readonly #codes: Int32Array;

  constructor(context: CheckContext) {
    this.#instrument = context.instrument;
    this.#few = new ColumnsInForce(context.instrument, names);
    this.#codes = rectangleCodesOf(context.instrument);
    this.#together = new PairNumbers(this.#codes.length);
    this.#earliest = new Float64Array(this.#codes.length).fill(Number.POSITIVE_INFINITY);
    const surveys = surveysOf(context);
    for (const [number, sample] of playedSamplesOf(context).ofRegion.entries()) {
      const survey = sample && surveys[sample.number];
      if (!survey || survey.leadingSilenceFrames >= survey.frames) continue;
      const together = this.#togetherWith(number);
      const seconds = this.#heardSeconds(number, sample, survey.leadingSilenceFrames);
      this.#earliest[together] = Math.min(seconds, this.#earliest[together]);
    }
  }

  /** The regions that let too much of the silence of a sample be heard. */
  lateRegions({ sample, survey }: SurveyedSample): number[] {
    return sample.regions.filter((region) => {
      const number = this.#instrument.regionNumber(region);
      const seconds = this.#heardSeconds(number, sample, survey.leadingSilenceFrames);
      if (seconds < leastSeconds || this.#codes[number] < 0 || this.#isMeant(region)) return false;
      const earliest = this.#earliest[this.#togetherWith(number)];
      return earliest >= seconds || seconds > mostRoomSeconds;
    });
  }

  /** Whether a region starts late, backwards or when a key is released, so that silence is no fault. */
  #isMeant(region: number): boolean {
    const conditions = conditionsOf(this.#instrument);
    if (conditions.set(conditions.ofHeader[region]).onRelease) return true;
    const delayed = (['delay', 'delay_samples', 'delay_beats'] as const).some((name) => {
      const parameter = this.#few.of(region, name);
      return parameter >= 0 && this.#instrument.number(parameter) !== 0;
    });
    return (
      delayed ||
      this.#text(region, 'direction') === 'reverse' ||
      this.#text(region, 'offset_mode') === 'percent'
    );
  }

  #heardSeconds(number: number, { facts }: PlayedSample, silence: number): number {
    const parameter = this.#few.of(this.#instrument.regions[number], 'offset');
    const offset = parameter >= 0 ? this.#instrument.number(parameter) || 0 : 0;
    return Math.max(0, silence - offset) / facts.sampleRate;
  }

  /** Equal for regions that sound together, such as the microphones of one take. */
  #togetherWith(number: number): number {
    const conditions = conditionsOf(this.#instrument);
    const set = conditions.ofHeader[this.#instrument.regions[number]];
    let moment = this.#momentOfSet.get(set);
    if (moment === undefined) {
      const { sequenceLength, sequencePosition, lowRandom, highRandom } = conditions.set(set);
      const turn = `${sequenceLength} ${sequencePosition} ${lowRandom} ${highRandom}`;
      const text = `${turn} ${situationText(conditions.set(set))}`;
      moment = this.#moments.get(text) ?? this.#moments.size;
      this.#moments.set(text, moment);
      this.#momentOfSet.set(set, moment);
    }
    return this.#together.numberOf(moment, this.#codes[number]);
  }

  #text(region: number, name: (typeof names)[number]): string | undefined {
    const parameter = this.#few.of(region, name);
    return parameter < 0 ? undefined : this.#instrument.valueText(parameter).toLowerCase();
  }
}

function fixesOf({ instrument, notation }: CheckContext, regions: readonly number[], offset: number): Fix[] {
  const parts = regions.map(
    (header) =>
      notation.edit(instrument, { kind: 'set', header, name: 'offset', value: String(offset) }).edits,
  );
  return fixOfParts(`Skip the silence with offset=${offset}`, parts, false);
}
