import { loopWord } from '../languages/cellWords';
import type { CellWord } from '../languages/languageWords';
import type { Unit } from '../meaning';
import { rangeWords } from '../rangeWords';
import { meansFileEnd } from './fileEnds';
import type { NumberReading } from './numberReading';
import { readNumber } from './numberReading';

/** What the second number of a loop says: where it ends, how long it is, or either, as the sign leaves it open. */
export type SecondPoint = 'end' | 'length' | 'open';

/** What a cell says of a loop. */
export interface LoopReading {
  mode: 'no_loop' | 'one_shot' | 'loop_continuous' | 'loop_sustain' | undefined;
  /** The way back is played too, or the loop runs backwards; the open format names it `loop_type`. */
  type: 'alternate' | 'backward' | undefined;
  start: NumberReading | undefined;
  /** `undefined` beside a start: the loop ends with the file. */
  second: NumberReading | undefined;
  secondIs: SecondPoint;
}

const longest = 60;
const nothing: LoopReading = {
  mode: undefined,
  type: undefined,
  start: undefined,
  second: undefined,
  secondIs: 'end',
};
const signs: readonly (readonly [RegExp, SecondPoint])[] = [
  [/\s?(?:\+|\s(?:len|length|for)\.?\s)\s?/iu, 'length'],
  [
    new RegExp(
      String.raw`\s?(?:-|\u2013|\u2014|\u2212|\.{2,3}|\u2026|\u2192|~|\u301c|\s${rangeWords}\s)\s?`,
      'iu',
    ),
    'end',
  ],
  [/\s?[/;|:]\s?|,\s/u, 'open'],
];

/** How the numbers of a cell are read. */
type PointReader = (text: string) => NumberReading | undefined;

const asFrames: PointReader = (text) => readNumber(text, 'frames');

/**
 * Reads a loop cell: a switch (`on`, `off`, `0`, `1`, `✓`), a mode in words, `start-end` or `start+length` in frames, times or percent,
 * or two numbers as in `30000/8000`, or `start-end` with that word for the end of the file; or both: `sustain 1000-2000`; or that it is
 * the `whole file`. `numberOf` reads the numbers; counts of frames where it is left out.
 */
export function readLoop(text: string, numberOf: PointReader = asFrames): LoopReading | undefined {
  const word = text.trim();
  if (word === '' || word.length > longest) return undefined;
  const mode = modeOf(loopWord(word));
  if (mode) return mode;
  const points = readPoints(word, numberOf);
  if (points) return points;
  const parts =
    /^([^\d]+?)[\s:([]+(\d.*?)[)\]]?$/.exec(word) ?? /^(\d.*\d)[\s,([]+([^\d]+?)[)\]]?$/.exec(word);
  if (!parts) return undefined;
  const [first, second] = [parts[1], parts[2]];
  const said = modeOf(loopWord(first)) ?? modeOf(loopWord(second));
  const at = readPoints(first, numberOf) ?? readPoints(second, numberOf);
  return said && at && { ...at, mode: said.mode, type: said.type };
}

const firstFrame: NumberReading = { number: 0, unit: 'frames' };

function modeOf(word: CellWord | undefined): LoopReading | undefined {
  switch (word) {
    case 'no_loop':
    case 'one_shot':
    case 'loop_continuous':
    case 'loop_sustain':
      return { ...nothing, mode: word };
    case 'alternate':
    case 'backward':
      return { ...nothing, mode: 'loop_continuous', type: word };
    case 'whole':
      return { ...nothing, mode: 'loop_continuous', start: firstFrame };
    default:
      return undefined;
  }
}

/** Two points; for a unit that stands at the second only, as in `0.5-1.25 s`, it goes for both. */
function readPoints(text: string, numberOf: PointReader): LoopReading | undefined {
  for (const [pattern, secondIs] of signs) {
    const sign = pattern.exec(text);
    if (!sign || sign.index === 0) continue;
    const before = text.slice(0, sign.index);
    const behind = text.slice(sign.index + sign[0].length);
    const second = pointIn(behind, numberOf);
    const start = pointIn(before, isTime(second?.unit) ? asTime : numberOf);
    if (start && secondIs === 'end' && meansFileEnd(behind)) return { ...nothing, start };
    if (!start || !second) continue;
    // From 0 to 0 there is nothing to repeat.
    if (start.number === 0 && second.number === 0) return modeOf('no_loop');
    const first = start.unit || !second.unit ? start : { ...start, unit: second.unit };
    return { ...nothing, start: first, second, secondIs };
  }
  return undefined;
}

const pointUnits: ReadonlySet<Unit> = new Set(['s', 'ms', 'frames', 'percent']);

const asTime: PointReader = (text) => readNumber(text, 'time');

function isTime(unit: Unit | undefined): boolean {
  return unit === 's' || unit === 'ms';
}

/** A frame count, a time, or a share of the whole. */
function pointIn(text: string, numberOf: PointReader): NumberReading | undefined {
  const reading = numberOf(text);
  if (!reading || !(reading.number >= 0) || reading.number === Number.POSITIVE_INFINITY) return undefined;
  const { unit } = reading;
  return unit === undefined || pointUnits.has(unit) ? reading : undefined;
}
