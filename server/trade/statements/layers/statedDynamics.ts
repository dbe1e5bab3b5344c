import { dynamicIn } from '../../dynamics';
import { rangeEndWords, rangeWords } from '../../rangeWords';
import { tellingSentence } from '../tellingSentence';

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

/** The ends that a text gives for one of the dynamics. */
interface Ends {
  low: number | undefined;
  high: number | undefined;
}

/** A word for one of the dynamics, or velocities, in a text. */
interface Token {
  start: number;
  end: number;
  is: { dynamic: number } | Ends;
}

const longest = 400;
const longestLine = 80;
/** So far from the word its velocities stand, with other words between: `soft layers use velocity 1-60`. */
const longestGap = 40;
const dynamicWord =
  /(?<![\p{L}\d])(?:(?:very|extra|medium|mid|mezzo|sehr|mittel|half|halb|tr[eè]s|muy|medio|molto|mezzo|muito|zeer|mycket|meget|bardzo|velmi|очень)[ -])?\p{L}{1,14}(?![\p{L}\d])/giu;
const ranged = new RegExp(
  String.raw`(?<![\p{L}\d.,-])(?:${rangeEndWords('opening')} ?)?(\d{1,3}) ?(?:[-\u2010-\u2015~\u2192]|\.{2,3}|\u2026|and|${rangeWords}|${rangeEndWords('upTo')}) ?(\d{1,3})(?!\d)`,
  'giu',
);
/** Behind a word of letters that are parted by blanks a blank stands: `Do4` is a note. */
const behindWord = String.raw`(?: |(?<![\p{Script=Latin}\p{Script=Cyrillic}\p{Script=Greek}]))`;
const until = new RegExp(
  String.raw`(?<!\p{L})(?:(?:${rangeEndWords('upTo')}|<=|\u2264)|(${rangeEndWords('below')}|<))${behindWord}(\d{1,3})(?!\d)(?! ?(?:[-\u2013]|${rangeWords}) ?\d)`,
  'giu',
);
const since = new RegExp(
  String.raw`(?<!\p{L})(?:(?:${rangeEndWords('from')}|>=|\u2265)|(${rangeEndWords('above')}|>))${behindWord}(\d{1,3})(?!\d)(?! ?(?:[-\u2013]|${rangeWords}) ?\d)`,
  'giu',
);
/** What other numbers than velocities are of. */
const otherThing =
  /(?<!\p{L})(?:keys?|notes?|tasten?|touches?|teclas?|tast[oi]|toets\p{L}*|dB|cents?|bars?|hz)(?!\p{L})/iu;

/**
 * Reads what velocities some texts give to dynamics, one text or several lines below one another: `soft 1-50, medium 51-100, loud from
 * 101`, `soft layers up to 50, loud above`, `1-40 is pp, 41-127 is ff`.
 */
export function statedDynamicsIn(texts: readonly string[]): StatedDynamics | undefined {
  for (const whole of texts) {
    const found = statedIn(whole);
    if (found) return found;
  }
  return statedIn(texts.filter(isLine).join(', '));
}

/** Whether a short line gives velocities for one of the dynamics, as a legend with a line for each does. */
function isLine(text: string): boolean {
  return text.length <= longestLine && /\d/.test(text) && dynamicsIn(text).length === 1;
}

function statedIn(whole: string): StatedDynamics | undefined {
  const text = whole.slice(0, longest).replace(/\s+/g, ' ');
  const ranges = /\d/.test(text) ? rangesIn(text) : undefined;
  return ranges && { ranges, text: tellingSentence(text, (one) => rangesIn(one)?.size === ranges.size) };
}

function rangesIn(text: string): Map<number, StatedRange> | undefined {
  const dynamics = dynamicsIn(text);
  if (new Set(dynamics.map(({ is }) => is.dynamic)).size < 2) return undefined;
  const velocities = velocitiesIn(text);
  const all: readonly Token[] = [...dynamics, ...velocities].sort((one, other) => one.start - other.start);
  const isBefore = all.length > 0 && !('dynamic' in all[0].is);
  // A velocity that is no range may stand before all.
  return rangesOf(text, dynamics, all, isBefore) ?? rangesOf(text, dynamics, all, !isBefore);
}

function rangesOf(
  text: string,
  dynamics: readonly (Token & { is: { dynamic: number } })[],
  all: readonly Token[],
  areBefore: boolean,
): Map<number, StatedRange> | undefined {
  const ends = paired(text, all, areBefore);
  // A letter alone may be another word: without velocities it counts beside letters that have them only.
  const areLetters = dynamics.some(({ start, end, is }) => end - start === 1 && ends.has(is.dynamic));
  for (const { start, end, is } of dynamics)
    if (!ends.has(is.dynamic) && (areLetters || end - start > 1))
      ends.set(is.dynamic, { low: undefined, high: undefined });
  return completed(ends);
}

/** The words for dynamics in a text. */
function dynamicsIn(text: string): (Token & { is: { dynamic: number } })[] {
  return Array.from(text.matchAll(dynamicWord), ({ index, 0: name }) => {
    const pair = dynamicIn(name);
    // `medium layers` are medium; of `very soft` both words count.
    const dynamic = pair < 0 ? dynamicIn(name.split(/[ -]/)[0] ?? '') : pair;
    return { start: index, end: index + name.length, is: { dynamic } };
  }).filter(({ is }) => is.dynamic >= 0);
}

/** The velocities in a text: ranges, and limits where no range stands. */
function velocitiesIn(text: string): (Token & { is: Ends })[] {
  const found: (Token & { is: Ends })[] = [];
  const add = (start: number, length: number, low: number | undefined, high: number | undefined) => {
    const isVelocity = (one: number | undefined) => one === undefined || one <= 127;
    const end = start + length;
    const isFree = found.every((one) => end <= one.start || start >= one.end);
    if (isFree && isVelocity(low) && isVelocity(high) && (low ?? 0) <= (high ?? 127))
      found.push({ start, end, is: { low, high } });
  };
  for (const { index, 0: all, 1: low, 2: high } of text.matchAll(ranged))
    add(index, all.length, Number(low), Number(high));
  for (const { index, 0: all, 1: below, 2: high } of text.matchAll(until))
    add(index, all.length, undefined, Number(high) - (below === undefined ? 0 : 1));
  for (const { index, 0: all, 1: above, 2: low } of text.matchAll(since))
    add(index, all.length, Number(low) + (above === undefined ? 0 : 1), undefined);
  return found;
}

/** The velocities of each of the dynamics: those behind its word, or before it. */
function paired(text: string, all: readonly Token[], areBefore: boolean): Map<number, Ends> {
  const ends = new Map<number, Ends>();
  for (const [at, token] of all.entries()) {
    if (!('dynamic' in token.is)) continue;
    const other = all[areBefore ? at - 1 : at + 1];
    if (!other || 'dynamic' in other.is) continue;
    const gap = areBefore ? text.slice(other.end, token.start) : text.slice(token.end, other.start);
    // Before velocities that stand first, a word says what they are.
    const lead = areBefore ? text.slice(all[at - 2]?.end ?? 0, other.start) : '';
    if (otherThing.test(lead)) continue;
    if (gap.length > longestGap || /[.;!?](?:\s|$)|\d/.test(gap) || otherThing.test(gap)) continue;
    const before = ends.get(token.is.dynamic);
    ends.set(token.is.dynamic, {
      low: before?.low ?? other.is.low,
      high: before?.high ?? other.is.high,
    });
  }
  return ends;
}

/** The ranges, an end that is not named being next to the other dynamics; `undefined` where they overlap or are too few. */
function completed(named: ReadonlyMap<number, Ends>): Map<number, StatedRange> | undefined {
  const given = [...named.values()].filter(({ low, high }) => low !== undefined || high !== undefined);
  if (given.length === 0 || named.size < 2) return undefined;
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
