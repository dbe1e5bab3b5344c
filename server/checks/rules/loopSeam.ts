import type { Fix, TextEdit } from '../../model/finding';
import type { Instrument } from '../../model/instrument';
import { Parameter } from '../../model/parameterNames';
import { nameOf } from '../../model/paths';
import type { LoopSeam } from '../../model/samples';
import { columnInForce } from '../facts/parameters/columnsInForce';
import { fixOf, ofKind, valueEdits } from '../facts/parameters/parameterFixes';
import { ValueAnswers } from '../facts/parameters/valueAnswers';
import type { MeasuredSamples } from '../facts/samples/measuredSamples';
import { measuredSamplesOf } from '../facts/samples/measuredSamples';
import { sampleFactsOf } from '../facts/samples/sampleFacts';
import type { SampleUse } from '../facts/samples/sampleUse';
import { sampleUsesOf } from '../facts/samples/sampleUses';
import type { CheckContext, Rule } from '../rule';

/** A loop that a region plays. */
interface PlayedLoop {
  region: number;
  use: SampleUse;
  start: number;
  end: number;
  /** Parameters that set its ends, −1 where the file does. */
  startParameter: number;
  endParameter: number;
}

/** Finds loops whose end does not go on smoothly at their start. */
export const loopSeam: Rule = {
  code: 'loop-seam',
  severity: 'information',
  finds: 'The waveform jumps audibly where the loop closes. Better points nearby are offered.',
  check(context, report) {
    const measured = measuredSamplesOf(context);
    if (!measured) return;
    const { instrument } = context;
    const { uses, useOfRegion } = sampleUsesOf(context);
    const loops = new LoopsInForce(instrument);
    const seen = new Set<string>();
    for (let number = 0; number < instrument.regions.length; number++) {
      const use = uses[useOfRegion[number]];
      if (!use?.isFile) continue;
      const region = instrument.regions[number];
      if (loops.isSmooth(region, use, measured) || !loops.find(region, use)) continue;
      const { start, end, startParameter, endParameter } = loops;
      const seam = measured.audibleSeam(use, start, end);
      if (!seam || (start === 0 && end === use.lastFrame && isMeantWhole(seam, end))) continue;
      const loop = { region, use, start, end, startParameter, endParameter };
      const key = `${startParameter} ${endParameter} ${use.path}`;
      if (seen.has(key)) continue;
      seen.add(key);
      const place = endParameter >= 0 ? endParameter : startParameter >= 0 ? startParameter : use.parameter;
      report({
        ...instrument.valueSpan(place),
        message: `The loop of "${nameOf(use.path)}" ${jumpText(seam)} where it closes, from frame ${end} back to ${start}. ${adviceText(seam, loop)}`,
        fixes: () => fixesOf(context, loop, seam),
      });
    }
  },
};

/** A file so short, in frames, that is looped as a whole holds a period or a few of a wave (our choice). */
const longestWave = 2048;

/**
 * Whether a loop over a whole file is meant as it is: one period of a wave, whose edge is its own, or a rhythm that begins anew, without
 * a step in the waveform where it does.
 */
function isMeantWhole({ step, greatestStep }: LoopSeam, lastFrame: number): boolean {
  return lastFrame < longestWave || step <= greatestStep;
}

/** The loops of regions. The one that was found last stands in the fields, as checks go through thousands that are smooth. */
class LoopsInForce {
  start = 0;
  end = 0;
  startParameter = -1;
  endParameter = -1;
  readonly #instrument: Instrument;
  readonly #modes: Int32Array | undefined;
  readonly #starts: Int32Array | undefined;
  readonly #ends: Int32Array | undefined;
  readonly #crossfades: Int32Array | undefined;
  readonly #types: Int32Array | undefined;
  readonly #isLooped: ValueAnswers<boolean>;
  readonly #isForward: ValueAnswers<boolean>;

  constructor(instrument: Instrument) {
    this.#instrument = instrument;
    this.#modes = columnInForce(instrument, 'loop_mode');
    this.#starts = columnInForce(instrument, 'loop_start');
    this.#ends = columnInForce(instrument, 'loop_end');
    this.#crossfades = columnInForce(instrument, 'loop_crossfade');
    this.#types = columnInForce(instrument, 'loop_type');
    this.#isLooped = new ValueAnswers(instrument, (text) => text.toLowerCase().startsWith('loop_'));
    this.#isForward = new ValueAnswers(instrument, (text) => text.toLowerCase() === 'forward');
  }

  /** Whether the loop points of a region are known to close smoothly, so that it does not matter whether it is played. */
  isSmooth(region: number, use: SampleUse, measured: MeasuredSamples): boolean {
    const start = this.#starts ? this.#starts[region] : -1;
    const end = this.#ends ? this.#ends[region] : -1;
    if (start < 0 || end < 0) return false;
    return measured.isSmooth(use, this.#instrument.number(start), this.#instrument.number(end));
  }

  /** Finds the loop that is in force and closes without a crossfade; answers whether there is one for certain. */
  find(region: number, { state, lastFrame }: SampleUse): boolean {
    const instrument = this.#instrument;
    if (Number.isNaN(lastFrame)) return false;
    const ofFile = sampleFactsOf(state)?.loops[0];
    const looped = this.#modes && this.#isLooped.of(this.#modes[region]);
    if (!(looped ?? ofFile !== undefined)) return false;
    const crossfade = this.#crossfades ? this.#crossfades[region] : -1;
    if (crossfade >= 0 && instrument.number(crossfade) !== 0) return false;
    const forward = this.#types && this.#isForward.of(this.#types[region]);
    if (!(forward ?? (ofFile === undefined || ofFile.type === 'forward'))) return false;
    this.startParameter = this.#starts ? this.#starts[region] : -1;
    this.endParameter = this.#ends ? this.#ends[region] : -1;
    const start = this.startParameter >= 0 ? instrument.number(this.startParameter) : ofFile?.start;
    const end = this.endParameter >= 0 ? instrument.number(this.endParameter) : ofFile?.end;
    if (start === undefined || end === undefined) return false;
    this.start = start;
    this.end = end;
    return start >= 0 && end > start && end <= lastFrame;
  }
}

function jumpText(seam: LoopSeam): string {
  const { step, greatestStep, bend, greatestBend, spectrumChange, greatestSpectrumChange } = seam;
  const times = Math.max(ratioOf(step, greatestStep), ratioOf(bend, greatestBend));
  if (times >= 100) return 'jumps';
  if (times > 2) return `jumps (${times.toFixed(0)} times as sharply as the sound moves nearby)`;
  if (spectrumChange > 2 * greatestSpectrumChange) return 'suddenly changes in sound or level';
  return 'breaks off the movement of the sound';
}

function ratioOf(value: number, greatest: number): number {
  return greatest > 0 ? value / greatest : 0;
}

function adviceText({ better, crossfadeFrames }: LoopSeam, { start }: PlayedLoop): string {
  if (better && better.start === start) return `End it at frame ${better.end}, where it closes smoothly.`;
  if (better) return `Loop from frame ${better.start} to ${better.end}, where it closes smoothly.`;
  return crossfadeFrames === undefined
    ? 'Choose loop points where the sound is alike, or set loop_crossfade.'
    : 'No loop points nearby close it smoothly. Set loop_crossfade.';
}

function fixesOf(context: CheckContext, loop: PlayedLoop, { better, crossfadeFrames }: LoopSeam): Fix[] {
  const fixes: Fix[] = [];
  if (better) {
    const isSameStart = better.start === loop.start;
    const starts = pointEdits(context, loop, Parameter.loop_start, better.start);
    const ends = pointEdits(context, loop, Parameter.loop_end, better.end);
    const canMove = (isSameStart || starts.length > 0) && (better.end === loop.end || ends.length > 0);
    const title = isSameStart
      ? `End the loop at frame ${better.end}`
      : `Loop from frame ${better.start} to ${better.end}`;
    if (canMove)
      fixes.push(...ofKind('Loop where it closes smoothly', fixOf(title, [...starts, ...ends], false)));
  }
  const sampleRate = sampleFactsOf(loop.use.state)?.sampleRate;
  if (crossfadeFrames !== undefined && sampleRate) {
    const seconds = String(Number((crossfadeFrames / sampleRate).toFixed(4)));
    const edits = setEdits(context, loop.region, 'loop_crossfade', seconds);
    const title = `Close the loop with a crossfade of ${seconds} s`;
    fixes.push(...ofKind('Close loops with a crossfade', fixOf(title, edits, false)));
  }
  return fixes;
}

/** Edits that put an end of the loop elsewhere: where it is set, or in the region where the file sets it. */
function pointEdits(context: CheckContext, loop: PlayedLoop, name: number, frame: number): TextEdit[] {
  const isStart = name === Parameter.loop_start;
  const { startParameter, endParameter } = loop;
  const isThere = frame === (isStart ? loop.start : loop.end);
  if (isThere && (startParameter >= 0 || endParameter >= 0)) return [];
  const parameter = isStart ? startParameter : endParameter;
  return parameter < 0
    ? setEdits(context, loop.region, context.instrument.names.text(name), String(frame))
    : valueEdits(context, parameter, String(frame));
}

function setEdits(
  { instrument, notation }: CheckContext,
  header: number,
  name: string,
  value: string,
): TextEdit[] {
  return notation.edit(instrument, { kind: 'set', header, name, value }).edits;
}
