import type { Comparison, NoteDifference } from '../../comparison/compareInstruments';
import type { Instrument } from '../../model/instrument';
import { keyText } from '../../model/wording/rangeWords';
import type { RegionPlace } from '../input/regionPlaces';
import { regionPlace } from '../input/regionPlaces';
import type { Terminal } from '../terminal';

/** Everything that a comparison has to tell. */
export interface ComparisonTold {
  terminal: Terminal;
  names: readonly [a: string, b: string];
  instruments: readonly [a: Instrument, b: Instrument];
  comparison: Comparison;
  toleranceDb: number;
}

/** Differences that a person is shown one by one. */
const mostShown = 30;

/** The comparison as JSON. */
export function comparisonJson(told: ComparisonTold): string {
  const { notes, rendered, worstDb, differences } = told.comparison;
  const output = {
    equal: differences.length === 0,
    worstDb: worstDb === null ? null : round(worstDb, 1),
    notes,
    rendered,
    differences: differences.map((one) => ({
      ...one.note,
      a: placeOf(told, 0, one.a),
      b: placeOf(told, 1, one.b),
      peakDb: decibels(one.peakDb),
      rmsDb: decibels(one.rmsDb),
      levelDb: round(one.levelDb, 2),
      pitchCents: round(one.pitchCents, 2),
      startMs: round(one.startMs, 2),
      lengthMs: round(one.lengthMs, 1),
      cause: one.cause,
    })),
  };
  return `${JSON.stringify(output, undefined, 2)}\n`;
}

/** The comparison for a person to read: a list, or a page of Markdown. */
export function comparisonText(told: ComparisonTold, isMarkdown: boolean): string {
  const { names, comparison, toleranceDb } = told;
  const { notes, rendered, worstDb, differences } = comparison;
  const alike = notes - rendered;
  const lines = [
    ...(isMarkdown ? [`# ${names[0]} and ${names[1]}`, ''] : []),
    `${countOf(notes, 'note')} on each side, so that every region that can sound does: ${alike} the same by what the texts say, ${rendered} rendered.`,
    differences.length === 0
      ? `No difference above ${toleranceDb} dB${worstDb === null ? '' : `; the greatest is ${round(worstDb, 1)} dB`}.`
      : `${countOf(differences.length, 'note')} ${differences.length === 1 ? 'differs' : 'differ'} by more than ${toleranceDb} dB, the worst first:`,
    '',
  ];
  if (isMarkdown && differences.length > 0)
    lines.push('| note | first | second | peak | level | pitch | cause |', '|---|---|---|---|---|---|---|');
  for (const one of differences.slice(0, mostShown)) lines.push(lineOf(told, one, isMarkdown));
  const more = differences.length - mostShown;
  if (more > 0) lines.push(isMarkdown ? '' : '', `… and ${more} more.`);
  return `${lines.join('\n').trimEnd()}\n`;
}

function lineOf(told: ComparisonTold, one: NoteDifference, isMarkdown: boolean): string {
  const note = `key ${keyText(one.note.key)}, velocity ${one.note.velocity}${(one.note.strike ?? 1) > 1 ? `, strike ${one.note.strike}` : ''}`;
  const cells = [
    note,
    lineWords(placeOf(told, 0, one.a)),
    lineWords(placeOf(told, 1, one.b)),
    `${decibels(one.peakDb)} dB`,
    `${round(one.levelDb, 2)} dB`,
    `${round(one.pitchCents, 2)} cents`,
    one.cause.message,
  ];
  if (isMarkdown) return `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
  const [, first, second, peak, level, pitch, cause] = cells;
  return `${note} (${first}, ${second}): peak ${peak}, level ${level}, pitch ${pitch}. ${cause}`;
}

function lineWords(place: RegionPlace | null): string {
  return place === null ? 'no region' : `line ${place.line}`;
}

function placeOf(
  { terminal, instruments }: ComparisonTold,
  side: 0 | 1,
  region: number | undefined,
): RegionPlace | null {
  return region === undefined ? null : regionPlace(terminal, instruments[side], region);
}

function decibels(value: number | null): number | null {
  return value === null ? null : round(value, 1);
}

function round(value: number, digits: number): number {
  return Math.round(value * 10 ** digits) / 10 ** digits;
}

function countOf(count: number, word: string): string {
  return `${count} ${word}${count === 1 ? '' : 's'}`;
}
