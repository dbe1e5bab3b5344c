import { saysOf } from '../../../trade/phrases/toldWords';
import { readKeyRange } from '../../../trade/readings/keyReading';
import { letterNote } from '../../../trade/readings/notePatterns';
import type { PlacedValue } from './clauseReader';

const key = String.raw`(?:${letterNote}-?\d{1,2}|\d{1,3})(?![\p{L}\p{N}]|\.[\p{L}\p{N}])`;
const range = String.raw`(?<![\p{L}\p{N}.#@-])${key}(?:(?:[ ]?[-\u2013\u2014\u2192~][ ]?|[ ]?\.{2,3}[ ]?|[ ]to[ ])${key})?`;
const rooted = new RegExp(
  String.raw`(${range})([\])]?[ \u00a0]{0,4})([([@][ ]?(\p{L}{0,12}?)[ \u00a0:=]{0,2}(${key})[ ]?[)\]]?)`,
  'u',
);

/** A line without the root that stands in brackets behind its range, and that root. */
export interface RootInBrackets {
  /** The line with blanks in place of the brackets, so that places stay as they are. */
  line: string;
  root: PlacedValue;
}

/**
 * The root in brackets, or behind `@`, right behind the key or the range that it lies in: `36-40 (38) a.wav`, `a.wav C2-E2 [root D2]`. `undefined` for
 * a number that lies outside, or that another word names. `start` is where the line stands in the text.
 */
export function rootInBrackets(line: string, start: number): RootInBrackets | undefined {
  const found = rooted.exec(line);
  if (!found) return undefined;
  const [, keys, between, brackets, word, written] = found;
  if (word !== '' && !/^r$/iu.test(word) && !saysOf(word, 'root')) return undefined;
  const [ends, root] = [readKeyRange(keys), readKeyRange(written)];
  const [low, high, at] = [ends?.low, ends?.high, root?.low].map((one) => one?.number ?? one?.named);
  if (low === undefined || high === undefined || at === undefined || at < low || at > high) return undefined;
  if ((ends?.low.number === undefined) !== (root?.low.number === undefined)) return undefined;
  const from = found.index + keys.length + between.length;
  const place = from + brackets.lastIndexOf(written);
  const blank = ' '.repeat(brackets.length);
  return {
    line: (line.slice(0, from) + blank + line.slice(from + brackets.length)).trimEnd(),
    root: {
      meaning: 'pitch_keycenter',
      text: written,
      isNamed: true,
      start: start + place,
      end: start + place + written.length,
    },
  };
}
