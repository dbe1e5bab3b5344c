import type { Fix } from '../model/finding';
import type { Instrument } from '../model/instrument';
import { Parameter } from '../model/parameterNames';
import { nameOf } from '../model/paths';
import type { LoopSeam } from '../model/samples';
import { InForce } from './inForce';
import { fixOf, valueFix } from './parameterFixes';
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
    const inForce = new InForce(instrument);
    const seen = new Set<string>();
    for (let number = 0; number < instrument.regions.length; number++) {
      const use = uses[useOfRegion[number] as number];
      if (!use?.isFile) continue;
      const region = instrument.regions[number] as number;
      const loop = playedLoop(instrument, inForce, region, use);
      if (!loop) continue;
      const { start, end, startParameter, endParameter } = loop;
      const seam = measures.loopSeam(use.path, start, end);
      const key = `${startParameter} ${endParameter} ${use.path}`;
      if (!seam?.isAudible || seen.has(key)) continue;
      seen.add(key);
      const place = endParameter >= 0 ? endParameter : startParameter >= 0 ? startParameter : use.parameter;
      report({
        ...instrument.valueSpan(place),
        message: `The loop of "${nameOf(use.path)}" ${jumpText(seam)} where it closes, from frame ${end} back to ${start}. ${adviceText(seam)}`,
        fixes: () => fixesOf(context, loop, seam),
      });
    }
  },
};

/** The loop that is in force and closes without a crossfade; `undefined` where there is none, or not for certain. */
function playedLoop(
  instrument: Instrument,
  inForce: InForce,
  region: number,
  use: SampleUse,
): PlayedLoop | undefined {
  const facts = factsOf(use.state);
  if (!facts) return undefined;
  const named = (text: string) =>
    inForce.effective(region, instrument.names.canonical(instrument.names.idOf(text)));
  const ofFile = facts.loops[0];
  const mode = inForce.effective(region, Parameter.loop_mode);
  const loops =
    mode >= 0 ? instrument.valueText(mode).toLowerCase().startsWith('loop_') : ofFile !== undefined;
  if (!loops) return undefined;
  const crossfade = named('loop_crossfade');
  if (crossfade >= 0 && instrument.number(crossfade) !== 0) return undefined;
  const type = named('loop_type');
  const isForward =
    type >= 0 ? instrument.valueText(type).toLowerCase() === 'forward' : ofFile?.type !== 'alternating';
  if (!isForward || (type < 0 && ofFile?.type === 'backward')) return undefined;
  const startParameter = inForce.effective(region, Parameter.loop_start);
  const endParameter = inForce.effective(region, Parameter.loop_end);
  const start = startParameter >= 0 ? instrument.number(startParameter) : ofFile?.start;
  const end = endParameter >= 0 ? instrument.number(endParameter) : ofFile?.end;
  if (start === undefined || end === undefined || !(start >= 0 && end > start && end < facts.frames))
    return undefined;
  return { region, use, start, end, startParameter, endParameter };
}

function jumpText({ step, greatestStep, bend, greatestBend }: LoopSeam): string {
  const times = Math.max(ratioOf(step, greatestStep), ratioOf(bend, greatestBend));
  if (times >= 100) return 'jumps';
  if (times > 2) return `jumps (${times.toFixed(0)} times as sharply as the sound moves nearby)`;
  return 'breaks off the movement of the sound';
}

function ratioOf(value: number, greatest: number): number {
  return greatest > 0 ? value / greatest : 0;
}

function adviceText({ betterEnd }: LoopSeam): string {
  return betterEnd === undefined
    ? 'Choose points at which the sound is alike, or set a loop_crossfade.'
    : `It closes smoothly with its end at frame ${betterEnd}.`;
}

function fixesOf(context: CheckContext, loop: PlayedLoop, { betterEnd }: LoopSeam): Fix[] {
  if (betterEnd === undefined) return [];
  const { instrument, notation } = context;
  const title = `End the loop at frame ${betterEnd}`;
  if (loop.endParameter >= 0) return valueFix(context, loop.endParameter, String(betterEnd), title, false);
  const set = (name: number, value: number) =>
    notation.edit(instrument, {
      kind: 'set',
      header: loop.region,
      name: instrument.names.text(name),
      value: String(value),
    }).edits;
  const edits = loop.startParameter < 0 ? set(Parameter.loop_start, loop.start) : [];
  return fixOf(title, [...edits, ...set(Parameter.loop_end, betterEnd)], false);
}
