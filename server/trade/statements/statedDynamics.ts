import { dynamicIn } from '../dynamics';
import { rangeEndWords, rangeWords } from '../rangeWords';

/** Velocities of dynamics, and whether the text names the lowest itself. */
export interface StatedRange {
  low: number;
  high: number;
  isLowGiven: boolean;
}

/** The velocities that a text names for dynamics, by their positions among them. */
export interface StatedDynamics {
  ranges: ReadonlyMap<number, StatedRange>;
  text: string;
}

const longest = 400;
const word = String.raw`(?<!\p{L})((?:(?:very|medium|mid|mezzo|sehr|mittel|tr[eè]s|muy|molto|muito|zeer)[ -])?\p{L}{1,12})`;
const link = String.raw`["'\u201d\u00bb]? ?(?:[:=,(]|(?:is|are|means?|goes|layers?|plays?|ist|sind|geht|gilt|est|va|es|son|\u00e8)\b)? ?(?:velocit(?:y|ies)|vel\.?|anschlag|v\u00e9locit\u00e9s?|velocidad(?:es)?)? ?`;
const ranged = new RegExp(
  String.raw`${word}${link}${rangeEndWords('opening')}? ?(\d{1,3}) ?(?:[-\u2010-\u2015~\u2192]|\.{2,3}|\u2026|and|${rangeWords}|${rangeEndWords('upTo')}) ?(\d{1,3})(?!\d)`,
  'giu',
);
const until = new RegExp(
  String.raw`${word}${link}(?:${rangeEndWords('upTo')}|<=|\u2264|(${rangeEndWords('below')}|<)) ?(\d{1,3})(?!\d)(?! ?(?:[-\u2013]|${rangeWords}) ?\d)`,
  'giu',
);
const since = new RegExp(
  String.raw`${word}${link}(?:${rangeEndWords('from')}|>=|\u2265|(${rangeEndWords('above')}|>)) ?(\d{1,3})(?!\d)(?! ?(?:[-\u2013]|${rangeWords}) ?\d)`,
  'giu',
);

/** Reads what velocities a text gives to dynamics: `soft 1-50, medium 51-100, loud from 101`, `soft up to 50, loud above`. */
export function statedDynamicsIn(texts: readonly string[]): StatedDynamics | undefined {
  for (const whole of texts) {
    const text = whole.slice(0, longest).replace(/\s+/g, ' ');
    if (!/\d/.test(text) || !namesSeveral(text)) continue;
    const ends = new Map<number, { low: number | undefined; high: number | undefined }>();
    const set = (name: string, low: number | undefined, high: number | undefined) => {
      const whole = dynamicIn(name);
      const dynamic = whole < 0 ? dynamicIn(name.split(/[ -]/)[0] ?? '') : whole;
      const isVelocity = (one: number | undefined) => one === undefined || (one >= 0 && one <= 127);
      if (dynamic < 0 || !isVelocity(low) || !isVelocity(high)) return;
      if (low !== undefined && high !== undefined && low > high) return;
      const before = ends.get(dynamic);
      ends.set(dynamic, { low: before?.low ?? low, high: before?.high ?? high });
    };
    for (const [, name = '', low, high] of text.matchAll(ranged)) set(name, Number(low), Number(high));
    for (const [, name = '', below, high] of text.matchAll(until))
      set(name, undefined, Number(high) - (below === undefined ? 0 : 1));
    for (const [, name = '', above, low] of text.matchAll(since))
      set(name, Number(low) + (above === undefined ? 0 : 1), undefined);
    const ranges = completed(ends, text);
    if (ranges) return { ranges, text: text.trim() };
  }
  return undefined;
}

/** Whether at least two words of a text are dynamics. */
function namesSeveral(text: string): boolean {
  const words = new Set(text.match(/\p{L}+/gu));
  return [...words].filter((one) => dynamicIn(one) >= 0).length > 1;
}

/** The ranges, an end that is not named being next to the other dynamics; `undefined` where they overlap or are too few. */
function completed(
  ends: ReadonlyMap<number, { low: number | undefined; high: number | undefined }>,
  text: string,
): Map<number, StatedRange> | undefined {
  const named = new Map(ends);
  for (const [, name = ''] of text.matchAll(new RegExp(word, 'giu'))) {
    const dynamic = dynamicIn(name);
    // `loud above`, `the rest is loud`: a dynamic without numbers beside others takes what is left.
    if (dynamic >= 0 && name.length > 1 && !named.has(dynamic))
      named.set(dynamic, { low: undefined, high: undefined });
  }
  if (ends.size === 0 || named.size < 2) return undefined;
  const order = [...named.keys()].sort((a, b) => a - b);
  const ranges = new Map<number, StatedRange>();
  let before = 0;
  for (const [at, dynamic] of order.entries()) {
    const { low, high } = named.get(dynamic) ?? { low: undefined, high: undefined };
    const next = named.get(order[at + 1] ?? -1);
    const isLast = at === order.length - 1;
    const range = {
      low: Math.max(1, low ?? before + 1),
      isLowGiven: low !== undefined,
      high: high ?? (isLast ? 127 : next?.low === undefined ? Number.NaN : next.low - 1),
    };
    if (!(range.high >= range.low) || range.low <= before) return undefined;
    ranges.set(dynamic, range);
    before = range.high;
  }
  return ranges;
}
