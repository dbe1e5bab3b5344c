import { nameOf } from '../../../model/paths';
import type { SampleFacts } from '../../../model/samples';
import { counted } from '../../../model/wording/counted';
import type { CheckContext, RuleFinding } from '../../rule';
import type { PlayedSample } from './playedSamples';
import { playedSamplesOf } from './playedSamples';
import { sampleSpan } from './samplePaths';

/** Further odd samples that a finding points to; of more, none. */
const mostRelated = 5;

/**
 * One finding about samples that have another number of something than most of an instrument, at the first of them;
 * `undefined` where all have the same or not all is known yet. A number of 0 stands for none. Where two numbers are equally
 * many, the first in the text is taken for the rule.
 */
export function unlikeSamplesFinding(
  context: CheckContext,
  numberOf: (facts: SampleFacts) => number,
  textOf: (number: number) => string,
  advice: string,
): RuleFinding | undefined {
  const { samples, isPending } = playedSamplesOf(context);
  if (isPending) return undefined;
  if (haveOne(samples, numberOf)) return undefined;
  const groups = new Map<number, PlayedSample[]>();
  for (const sample of samples) {
    const number = numberOf(sample.facts);
    if (!(number > 0)) continue;
    const group = groups.get(number);
    if (group) group.push(sample);
    else groups.set(number, [sample]);
  }
  const ordered = [...groups].sort(([, a], [, b]) => b.length - a.length);
  const usual = ordered[0]?.[0];
  const odd = samples.filter(({ facts }) => numberOf(facts) > 0 && numberOf(facts) !== usual);
  const first = odd[0];
  const others = ordered.flatMap(([number, { length }]) => {
    const count = number === numberOf(first.facts) ? length - 1 : length;
    return count > 0 ? [`${counted(count, 'other is', 'others are')} ${textOf(number)}`] : [];
  });
  const { instrument } = context;
  const related =
    odd.length - 1 > mostRelated
      ? []
      : odd.slice(1).map(({ use, facts }) => ({
          ...sampleSpan(instrument, use),
          message: `"${nameOf(use.path)}" is ${textOf(numberOf(facts))}.`,
        }));
  return {
    ...sampleSpan(instrument, first.use),
    message: `"${nameOf(first.use.path)}" is ${textOf(numberOf(first.facts))}; ${others.join(', ')}. ${advice}`,
    ...(related.length > 0 && { related }),
  };
}

/** Whether all samples that have a number have the same. */
function haveOne(samples: readonly PlayedSample[], numberOf: (facts: SampleFacts) => number): boolean {
  let one = 0;
  for (const { facts } of samples) {
    const number = numberOf(facts);
    if (!(number > 0) || number === one) continue;
    if (one > 0) return false;
    one = number;
  }
  return true;
}
