import type { Cause } from '../../comparison/cause';
import type { Comparison, NoteDifference } from '../../comparison/compareInstruments';
import type { BandDifference } from '../../comparison/soundDifference';
import type { Instrument } from '../../model/instrument';
import { keyText } from '../../model/wording/rangeWords';
import type { RegionPlace } from '../input/regionPlaces';
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

/** The comparison as JSON. */
export function comparisonJson(told: ComparisonTold): string {
  const { notes, rendered, worstDb, differences, notCompared } = told.comparison;
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
      loudnessLu: one.loudnessLu === null ? null : round(one.loudnessLu, 2),
      bands: one.bands.map(({ hertz, levelDb }) => ({ hertz, levelDb: round(levelDb, 1) })),
      pitchCents: round(one.pitchCents, 2),
      startMs: round(one.startMs, 2),
      lengthMs: round(one.lengthMs, 1),
      shapeDb: decibels(one.shapeDb),
      cause: { ...one.cause, a: causePlace(told, 0, one.cause), b: causePlace(told, 1, one.cause) },
    })),
    notCompared,
  };
  return `${JSON.stringify(output, undefined, 2)}\n`;
}

/** The comparison for a person to read: a list, or a page of Markdown. */
export function comparisonText(told: ComparisonTold, isMarkdown: boolean): string {
  const { names } = told;
  const { differences } = told.comparison;
  const lines = [...(isMarkdown ? [`# ${names[0]} and ${names[1]}`, ''] : []), ...summaryOf(told), ''];
  if (isMarkdown && differences.length > 0)
    lines.push(`| ${comparisonColumns.join(' | ')} |`, `|${'---|'.repeat(comparisonColumns.length)}`);
  for (const one of differences.slice(0, mostShown)) lines.push(lineOf(told, one, isMarkdown));
  const more = differences.length - mostShown;
  if (more > 0) lines.push('', `… and ${more} more.`);
  return `${lines.join('\n').trimEnd()}\n`;
}

/** What a comparison says as a whole, a sentence or two a line. */
export function summaryOf({ comparison, toleranceDb }: ComparisonTold): string[] {
  const { notes, rendered, worstDb, differences, notCompared } = comparison;
  const equal = `No difference above ${toleranceDb} dB${worstDb === null ? '' : `; the greatest is ${round(worstDb, 1)} dB`}.`;
  const unequal = `${countOf(differences.length, 'note')} ${differences.length === 1 ? 'differs' : 'differ'} by more than ${toleranceDb} dB, the worst first:`;
  return [
    `${countOf(notes, 'note')} on each side, so that every region that can sound does. ${renderedText(rendered)}`,
    ...(notCompared.length > 0
      ? [`Not compared, because it is not rendered: ${notCompared.map(({ opcode }) => opcode).join(', ')}.`]
      : []),
    differences.length === 0 ? equal : unequal,
  ];
}

function renderedText(rendered: number): string {
  return rendered === 0
    ? 'All are the same by what the texts say and by the audio of the samples, so none had to be rendered.'
    : `${countOf(rendered, 'set')} of regions ${rendered === 1 ? 'was' : 'were'} rendered; all else is the same by what the texts say and by the audio of the samples.`;
}

/** The headings of {@link cellsOf}. */
export const comparisonColumns = [
  'note',
  'first',
  'second',
  'peak',
  'level',
  'loudness',
  'pitch',
  'start',
  'length',
  'most in the band',
  'cause',
] as const;

/** A difference in words, column by column. */
export function cellsOf(told: ComparisonTold, one: NoteDifference): string[] {
  return [
    noteText(one),
    lineWords(told, 0, one),
    lineWords(told, 1, one),
    `${decibels(one.peakDb)} dB`,
    `${round(one.levelDb, 2)} dB`,
    one.loudnessLu === null ? 'silent' : `${round(one.loudnessLu, 2)} LU`,
    `${round(one.pitchCents, 2)} cents`,
    `${round(one.startMs, 2)} ms`,
    `${round(one.lengthMs, 1)} ms`,
    bandText(one.bands),
    one.cause.message,
  ];
}

function lineOf(told: ComparisonTold, one: NoteDifference, isMarkdown: boolean): string {
  const cells = cellsOf(told, one);
  if (isMarkdown) return `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
  const [note, first, second, peak, level, loudness, pitch, start, length, band, message] = cells;
  const measures = `peak ${peak}, level ${level}, loudness ${loudness}, pitch ${pitch}, start ${start}, length ${length}`;
  return `${note} (${first}, ${second}): ${measures}${band === '–' ? '' : `, ${band}`}. ${message}`;
}

/** How a note is played, for a person. */
function noteText({ note }: Pick<NoteDifference, 'note'>): string {
  const { key, velocity, strike = 1, keyswitch, controllers = [] } = note;
  return [
    `key ${keyText(key)}, velocity ${velocity}`,
    ...(strike > 1 ? [`strike ${strike}`] : []),
    ...(keyswitch === undefined ? [] : [`keyswitch ${keyText(keyswitch)}`]),
    ...controllers.map(({ controller, value }) => `controller ${controller} at ${round(value, 1)}`),
  ].join(', ');
}

/** The band in which most differs; differences of less than this are none (our choice). */
const heardInBandDb = 0.1;

function bandText(bands: readonly BandDifference[]): string {
  const most = bands.reduce<BandDifference | undefined>(
    (found, one) => (Math.abs(one.levelDb) > Math.abs(found?.levelDb ?? 0) ? one : found),
    undefined,
  );
  if (!most || Math.abs(most.levelDb) < heardInBandDb) return '–';
  return `${round(most.levelDb, 1)} dB at ${most.hertz} Hz`;
}

/** The line of what makes the difference, else that of the region. */
function lineWords(told: ComparisonTold, side: 0 | 1, one: NoteDifference): string {
  const place = causePlace(told, side, one.cause) ?? placeOf(told, side, side === 0 ? one.a : one.b);
  return place === null
    ? 'no region'
    : `line ${place.line}${place.file === undefined ? '' : ` of ${place.file}`}`;
}

function causePlace(told: ComparisonTold, side: 0 | 1, cause: Cause) {
  const parameter = side === 0 ? cause.a : cause.b;
  return parameter === undefined ? null : parameterPlace(told.terminal, told.instruments[side], parameter);
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
