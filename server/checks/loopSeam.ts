import type { Fix, TextEdit } from '../model/finding';
import type { Instrument } from '../model/instrument';
import { Parameter } from '../model/parameterNames';
import { nameOf } from '../model/paths';
import type { LoopSeam } from '../model/samples';
import { FewInForce } from './fewInForce';
import { fixOf, valueEdits } from './parameterFixes';
import type { CheckContext, Rule } from './rule';
import type { SampleUse } from './sampleUses';
import { factsOf, sampleUsesOf } from './sampleUses';

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

const loopNames = ['loop_mode', 'loop_start', 'loop_end', 'loop_crossfade', 'loop_type'] as const;
type LoopsInForce = FewInForce<(typeof loopNames)[number]>;

/** Finds loops whose end does not go on smoothly at their start. */
export const loopSeam: Rule = {
  code: 'loop-seam',
  severity: 'information',
  finds: 'The waveform jumps audibly where the loop closes; better points nearby are offered.',
  check(context, report) {
    const { measures } = context.samples;
    if (!measures) return;
    const { instrument } = context;
    const { uses, useOfRegion } = sampleUsesOf(context);
    const inForce = new FewInForce(instrument, loopNames);
    const seen = new Set<string>();
    for (let number = 0; number < instrument.regions.length; number++) {
      const use = uses[useOfRegion[number] as number];
      if (!use?.isFile) continue;
      const region = instrument.regions[number] as number;
      const loop = playedLoop(instrument, inForce, region, use);
      if (!loop) continue;
      const { start, end, startParameter, endParameter } = loop;
      const seam = measures.loopSeam(use.path, start, end);
      if (!seam?.isAudible) continue;
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

/** The loop that is in force and closes without a crossfade; `undefined` where there is none, or not for certain. */
function playedLoop(
  instrument: Instrument,
  inForce: LoopsInForce,
  region: number,
  use: SampleUse,
): PlayedLoop | undefined {
  const facts = factsOf(use.state);
  if (!facts) return undefined;
  const ofFile = facts.loops[0];
  const mode = inForce.of(region, 'loop_mode');
  const loops =
    mode >= 0 ? instrument.valueText(mode).toLowerCase().startsWith('loop_') : ofFile !== undefined;
  if (!loops) return undefined;
  const crossfade = inForce.of(region, 'loop_crossfade');
  if (crossfade >= 0 && instrument.number(crossfade) !== 0) return undefined;
  const type = inForce.of(region, 'loop_type');
  const isForward =
    type >= 0 ? instrument.valueText(type).toLowerCase() === 'forward' : ofFile?.type !== 'alternating';
  if (!isForward || (type < 0 && ofFile?.type === 'backward')) return undefined;
  const startParameter = inForce.of(region, 'loop_start');
  const endParameter = inForce.of(region, 'loop_end');
  const start = startParameter >= 0 ? instrument.number(startParameter) : ofFile?.start;
  const end = endParameter >= 0 ? instrument.number(endParameter) : ofFile?.end;
  if (start === undefined || end === undefined || !(start >= 0 && end > start && end < facts.frames))
    return undefined;
  return { region, use, start, end, startParameter, endParameter };
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
  if (better && better.start === start) return `It closes smoothly with its end at frame ${better.end}.`;
  if (better) return `It closes smoothly from frame ${better.start} to ${better.end}.`;
  return crossfadeFrames === undefined
    ? 'Choose points at which the sound is alike, or set a loop_crossfade.'
    : 'No points nearby close it smoothly, but a crossfade does.';
}

function fixesOf(context: CheckContext, loop: PlayedLoop, { better, crossfadeFrames }: LoopSeam): Fix[] {
  const fixes: Fix[] = [];
  if (better) {
    const edits = [
      ...pointEdits(context, loop, Parameter.loop_start, better.start),
      ...pointEdits(context, loop, Parameter.loop_end, better.end),
    ];
    const title =
      better.start === loop.start
        ? `End the loop at frame ${better.end}`
        : `Loop from frame ${better.start} to ${better.end}`;
    fixes.push(...fixOf(title, edits, false));
  }
  const sampleRate = factsOf(loop.use.state)?.sampleRate;
  if (crossfadeFrames !== undefined && sampleRate) {
    const seconds = String(Number((crossfadeFrames / sampleRate).toFixed(4)));
    const edits = setEdits(context, loop.region, 'loop_crossfade', seconds);
    fixes.push(...fixOf(`Close the loop with a crossfade of ${seconds} s`, edits, false));
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
