import { columnInForce } from '../facts/parameters/columnsInForce';
import { ofKind, removeFix } from '../facts/parameters/parameterFixes';

import { parameterUsesOf, usedName } from '../facts/parameters/parameterUses';
import { ValueAnswers } from '../facts/parameters/valueAnswers';
import { playedFramesOf } from '../facts/samples/playedFrames';
import type { CheckContext, Report, Rule } from '../rule';

/**
 * Finds opcodes that change nothing where they stand: written again later under the same header, loop points of
 * regions that do not loop, the decay of release samples that are none, the length of a fade that is not timed. What
 * has an effect in one of the regions that it is in force in is left alone.
 */
export const noEffect: Rule = {
  code: 'no-effect',
  severity: 'hint',
  finds: 'An opcode that changes nothing where it stands, such as a loop start under loop_mode=no_loop.',
  check(context, report) {
    reportRepeated(context, report);
    reportLoops(context, report);
    reportBound(context, report, {
      names: ['rt_decay', 'rt_dead'],
      by: 'trigger',
      isAlive: (value) => value === 'release' || value === 'release_key',
      reason: 'works only with trigger=release',
    });
    reportBound(context, report, {
      names: ['off_time'],
      by: 'off_mode',
      isAlive: (value) => value === 'time',
      reason: 'works only with off_mode=time',
    });
  },
};

function reportRepeated(context: CheckContext, report: Report): void {
  const { instrument } = context;
  for (const parameter of parameterUsesOf(context).repeated) {
    const name = instrument.canonicalName(parameter);
    if (!instrument.names.opcode(name)) continue;
    const later = instrument.own(instrument.headerOfParameter(parameter), name);
    const place = instrument.nameSpan(parameter);
    const laterPlace = instrument.nameSpan(later);
    // An included file can give values that the text around it changes, or be included twice.
    if (laterPlace.source !== place.source || laterPlace.start === place.start) continue;
    const text = instrument.names.text(instrument.name(parameter));
    report({
      ...instrument.nameSpan(parameter),
      message: `This ${text} has no effect: ${instrument.names.text(instrument.name(later))}=${instrument.valueText(later)} follows under the same header and replaces it. Remove one of the two.`,
      related: [{ ...instrument.nameSpan(later), message: 'This one counts.' }],
      fixes: () =>
        ofKind('Remove what is replaced', removeFix(context, parameter, `Remove the first ${text}`)),
    });
  }
}

function reportLoops(context: CheckContext, report: Report): void {
  const { instrument } = context;
  if (
    usedName(context, 'loop_mode') < 0 ||
    (usedName(context, 'loop_start') < 0 && usedName(context, 'loop_end') < 0)
  )
    return;
  const uses = new Uses();
  const deadModes = new ValueAnswers(instrument, (text) => /^(?:no_loop|one_shot)$/i.test(text));
  const frames = playedFramesOf(context);
  for (let at = 0; at < frames.count; at++) {
    const loopStart = frames.loopStart[at];
    const loopEnd = frames.loopEnd[at];
    if (loopStart < 0 && loopEnd < 0) continue;
    const loopMode = frames.loopMode[at];
    const isDead = deadModes.of(loopMode) === true;
    const own = instrument.firstParameter(frames.region[at]);
    for (const parameter of [loopStart, loopEnd]) {
      // Only what is inherited can have an effect elsewhere. Programs that write all values out give 0 for a loop that
      // is not there (common practice).
      if (parameter < 0 || (!isDead && parameter >= own) || instrument.number(parameter) === 0) continue;
      uses.add(parameter, isDead ? loopMode : -1);
    }
  }
  for (const [parameter, by] of uses.dead()) {
    reportDead(context, report, parameter, by, `does not loop with loop_mode=${instrument.valueText(by)}`);
  }
}

interface Bound {
  names: readonly string[];
  by: string;
  isAlive: (value: string) => boolean;
  reason: string;
}

/** Opcodes that work under one value of another opcode only. */
function reportBound(context: CheckContext, report: Report, { names, by, isAlive, reason }: Bound): void {
  const { instrument } = context;
  const numbers = names.map((name) => usedName(context, name)).filter((number) => number >= 0);
  if (numbers.length === 0) return;
  const columns = numbers.map((name) => columnInForce(instrument, name) as Int32Array);
  const governing = columnInForce(instrument, by);
  const alive = new ValueAnswers(instrument, (text) => isAlive(text.toLowerCase()));
  const uses = new Uses();
  for (const region of instrument.regions) {
    const isGoverned = governing && alive.of(governing[region]) === true;
    for (const column of columns) {
      const parameter = column[region];
      if (parameter >= 0) uses.add(parameter, isGoverned ? -1 : parameter);
    }
  }
  for (const [parameter] of uses.dead()) reportDead(context, report, parameter, -1, reason);
}

function reportDead(
  context: CheckContext,
  report: Report,
  parameter: number,
  by: number,
  reason: string,
): void {
  const { instrument } = context;
  const text = instrument.names.text(instrument.name(parameter));
  const subject =
    by >= 0 ? `${text} has no effect: a region ${reason}.` : `${text} ${reason}, so it has no effect.`;
  report({
    ...instrument.parameterSpan(parameter),
    message: `${subject} Remove it, or change what switches it off.`,
    ...(by >= 0 && { related: [{ ...instrument.parameterSpan(by), message: 'The mode is set here.' }] }),
    fixes: () => ofKind('Remove what has no effect', removeFix(context, parameter, `Remove ${text}`)),
  });
}

/** Parameters with what keeps them from having an effect, as long as no region shows one. */
class Uses {
  readonly #byParameter = new Map<number, number>();

  /** `by` is the parameter that keeps it from having an effect in a region, or −1 where it has one. */
  add(parameter: number, by: number): void {
    const known = this.#byParameter.get(parameter);
    if (known === undefined || by < 0) this.#byParameter.set(parameter, by);
  }

  *dead(): Iterable<[parameter: number, by: number]> {
    for (const entry of this.#byParameter) if (entry[1] >= 0) yield entry;
  }
}
