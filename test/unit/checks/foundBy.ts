import type { Rule, RuleFinding } from '../../../server/checks/rule';
import { finish } from '../../../server/model/steps';
import { sfzNotation } from '../../../server/sfz/notation';
import { readSfz } from '../../../server/sfz/read';
import type { CheckOptions } from './markedText';
import { applyFix, samplesInMemory } from './markedText';

/** What one rule finds by itself: the texts that it marks, what it says of them, and the text after each of its fixes. */
export interface Found {
  marks: string[];
  messages: string[];
  /** What stands at the related places of each finding, and what is said of them. */
  related: string[][];
  fixed: string[][];
  titles: string[][];
  /** Whether each fix may be made without a person looking at it. */
  safe: boolean[];
}

/** Asks a rule alone about an SFZ text. */
export function foundBy(rule: Rule, text: string, options: CheckOptions = {}): Found {
  const instrument = readSfz(text, { path: 'test.sfz' });
  const context = { instrument, samples: options.samples ?? samplesInMemory(), notation: sfzNotation };
  const findings: RuleFinding[] = [];
  const steps = rule.check(context, (found) => findings.push(typeof found === 'function' ? found() : found));
  if (steps) finish(steps);
  const fixes = findings.map((one) => one.fixes?.() ?? []);
  return {
    marks: findings.map(({ start, end }) => `${start}:${text.slice(start, end)}`),
    messages: findings.map(({ message }) => message),
    related: findings.map(({ related = [] }) =>
      related.map(({ start, end, message }) => `${text.slice(start, end)}: ${message}`),
    ),
    fixed: fixes.map((list) => list.map((fix) => applyFix(text, fix))),
    titles: fixes.map((list) => list.map(({ title }) => title)),
    safe: fixes.flat().map(({ safe }) => safe),
  };
}

/** The marked texts alone. */
export function markedBy(rule: Rule, text: string, options: CheckOptions = {}): string[] {
  return foundBy(rule, text, options).marks.map((mark) => mark.slice(mark.indexOf(':') + 1));
}
