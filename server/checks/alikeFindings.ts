import type { Finding, Severity } from '../model/finding';
import { spanIn } from '../model/text/span';
import { rules } from './rules';

/** So many findings of one code about samples in one file are told as one (our choice). */
const fewestAlike = 5;

const ofSamples: ReadonlySet<string> = new Set(rules.filter((one) => one.ofSample).map(({ code }) => code));

/** Findings that say the same of many samples, in the order of the text; `others` is empty for one that stands alone. */
export interface Alike<One> {
  first: One;
  others: One[];
}

/** Puts the findings of one file that say the same of many samples together, where the first of them stands. */
export function alikeIn<One extends { code: string; severity: Severity }>(
  findings: readonly One[],
): Alike<One>[] {
  const byCode = new Map<string, One[]>();
  for (const one of findings) {
    if (!ofSamples.has(one.code)) continue;
    const list = byCode.get(one.code);
    if (list) list.push(one);
    else byCode.set(one.code, [one]);
  }
  return findings.flatMap((first) => {
    const list = byCode.get(first.code);
    if (!list || list.length < fewestAlike) return [{ first, others: [] }];
    return list[0] === first ? [{ first, others: list.slice(1) }] : [];
  });
}

/** The message for what is found in so many samples, by that of the first. */
export function alikeMessage(count: number, first: string): string {
  return `${count} samples are like this; here is the first. ${first}`;
}

/** The findings of one file with those that say the same of many samples as one, which leads to the others. */
export function joinAlike(findings: readonly Finding[]): Finding[] {
  return alikeIn(findings).map(({ first, others }) => {
    if (others.length === 0) return first;
    const related = others.map((other) => ({
      ...spanIn(other.source, other.start, other.end),
      message: other.message,
    }));
    const message = alikeMessage(others.length + 1, first.message);
    return { ...first, message, related: [...(first.related ?? []), ...related] };
  });
}
