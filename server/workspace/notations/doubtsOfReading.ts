import type { Rule, RuleFinding } from '../../checks/rule';
import { randomHole } from '../../checks/rules/randomHole';
import { rangeOverlap } from '../../checks/rules/rangeOverlap';
import { sequenceHole } from '../../checks/rules/sequenceHole';
import { velocityGap } from '../../checks/rules/velocityGap';
import type { Instrument } from '../../model/instrument';
import type { ConversionNote } from '../../model/notes';
import type { SampleLookup } from '../../model/samples';
import type { Steps } from '../../model/steps';
import { spanIn } from '../../model/text/span';
import { sfzNotation } from '../../sfz/notation';
import { playedSwitches } from './playedSwitches';
import { stackedRegions } from './stackedRegions';

/** What a slip in the text that was read makes of an instrument, or a value that was read wrong. */
const rules: readonly Rule[] = [rangeOverlap, velocityGap, sequenceHole, randomHole];
/** So many doubts of one kind are told one by one (our choice). */
const mostOfOneKind = 6;
/** With more regions than this the command that checks looks for them (our choice): reading is not to take longer for it. */
const mostRegions = 20_000;
/** None of the rules asks for samples. */
const noSamples: SampleLookup = { state: () => ({ kind: 'pending' }), nearest: () => [] };

/**
 * Notes on what regions that were read out of a table, or out of XML in names that nobody explained, have in common with a slip: ranges that
 * overlap in part, holes between velocities and in turns, and switches among the keys that are played. The values stay as they were read.
 * In steps.
 */
export function* doubtsOfReading(instrument: Instrument): Steps<ConversionNote[]> {
  if (instrument.regions.length > mostRegions) return [];
  const notes: ConversionNote[] = [];
  const context = { instrument, samples: noSamples, notation: sfzNotation };
  for (const [at, rule] of rules.entries()) {
    const found: RuleFinding[] = [];
    const steps = rule.check(context, (one) => found.push(typeof one === 'function' ? one() : one));
    if (steps) while (!steps.next().done) yield at / rules.length;
    const [told, left] = [found.slice(0, mostOfOneKind), found.length - mostOfOneKind];
    for (const [place, one] of told.entries()) {
      const more = left > 0 && place === mostOfOneKind - 1 ? ` ${left} more like this.` : '';
      notes.push({ kind: 'assumed', ...spanIn(one.source, one.start, one.end), message: one.message + more });
    }
    yield (at + 1) / rules.length;
  }
  return [...notes, ...playedSwitches(instrument)];
}

/** As {@link doubtsOfReading}, of XML in names that nobody explained: regions that the same notes start are told too. */
export function* doubtsOfXml(instrument: Instrument): Steps<ConversionNote[]> {
  return [...stackedRegions(instrument), ...(yield* doubtsOfReading(instrument))];
}
