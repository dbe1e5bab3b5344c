import type { Cause } from '../../comparison/cause';
import type { Comparison, NoteDifference } from '../../comparison/compareInstruments';
import type { WordedComparison } from '../../comparison/page/comparisonWords';
import {
  causePlace,
  cellsOf,
  comparisonColumns,
  noBand,
  roundedTo,
  summaryOf,
} from '../../comparison/page/comparisonWords';
import type { Instrument } from '../../model/instrument';
import { parameterPlace, regionPlace } from '../input/regionPlaces';
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

/** The comparison with what finds its places. */
export function wordedOf({
  terminal,
  instruments,
  comparison,
  toleranceDb,
}: ComparisonTold): WordedComparison {
  return {
    comparison,
    toleranceDb,
    regionPlace: (side, region) => regionPlace(terminal, instruments[side], region),
    parameterPlace: (side, parameter) => parameterPlace(terminal, instruments[side], parameter),
  };
}

/** The comparison as JSON. */
export function comparisonJson(told: ComparisonTold): string {
  const { notes, rendered, worstDb, differences, unheard, notCompared } = told.comparison;
  const worded = wordedOf(told);
  const output = {
    equal: differences.length === 0,
    worstDb: decibels(worstDb),
    notes,
    rendered,
    differences: differences.map((one) => ({
      ...one.note,
      a: placeOf(told, 0, one.a),
      b: placeOf(told, 1, one.b),
      peakDb: decibels(one.peakDb),
      rmsDb: decibels(one.rmsDb),
      levelDb: roundedTo(one.levelDb, 2),
      loudnessLu: one.loudnessLu === null ? null : roundedTo(one.loudnessLu, 2),
      bands: one.bands.map(({ hertz, levelDb }) => ({ hertz, levelDb: roundedTo(levelDb, 1) })),
      pitchCents: roundedTo(one.pitchCents, 2),
      startMs: roundedTo(one.startMs, 2),
      lengthMs: roundedTo(one.lengthMs, 1),
      shapeDb: decibels(one.shapeDb),
      cause: causeWithPlaces(worded, one.cause),
    })),
    unheard: unheard.map(({ a, b, regions, cause }) => ({
      a: placeOf(told, 0, a),
      b: placeOf(told, 1, b),
      regions,
      cause: causeWithPlaces(worded, cause),
    })),
    notCompared,
  };
  return `${JSON.stringify(output, undefined, 2)}\n`;
}

function causeWithPlaces(worded: WordedComparison, cause: Cause) {
  return {
    ...cause,
    a: causePlace(worded, 0, cause) ?? null,
    b: causePlace(worded, 1, cause) ?? null,
  };
}

/** The comparison for a person to read: a list, or a page of Markdown. */
export function comparisonText(told: ComparisonTold, isMarkdown: boolean): string {
  const { names } = told;
  const { differences } = told.comparison;
  const worded = wordedOf(told);
  const lines = [...(isMarkdown ? [`# ${names[0]} and ${names[1]}`, ''] : []), ...summaryOf(worded), ''];
  if (isMarkdown && differences.length > 0)
    lines.push(`| ${comparisonColumns.join(' | ')} |`, `|${'---|'.repeat(comparisonColumns.length)}`);
  for (const one of differences.slice(0, mostShown)) lines.push(lineOf(worded, one, isMarkdown));
  const more = differences.length - mostShown;
  if (more > 0) lines.push('', `… and ${more} more.`);
  return `${lines.join('\n').trimEnd()}\n`;
}

function lineOf(worded: WordedComparison, one: NoteDifference, isMarkdown: boolean): string {
  const cells = cellsOf(worded, one);
  if (isMarkdown) return `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
  const [note, message, first, second, peak, level, loudness, pitch, start, length, band] = cells;
  const measures = `peak ${peak}, level ${level}, loudness ${loudness}, pitch ${pitch}, start ${start}, length ${length}`;
  return `${note} (${first}, ${second}): ${measures}${band === noBand ? '' : `, ${band}`}. ${message}`;
}

function placeOf({ terminal, instruments }: ComparisonTold, side: 0 | 1, region: number | undefined) {
  return region === undefined ? null : regionPlace(terminal, instruments[side], region);
}

function decibels(value: number | null): number | null {
  return value === null ? null : roundedTo(value, 1);
}
