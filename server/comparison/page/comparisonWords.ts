import { counted } from '../../model/wording/counted';
import { keyText } from '../../model/wording/rangeWords';
import type { Cause } from '../cause';
import type { Comparison, NoteDifference } from '../compareInstruments';
import type { BandDifference } from '../soundDifference';

/** Where something stands, for a person. */
export interface ShownLine {
  line: number;
  /** The file, where it is not the instrument's own. */
  file?: string;
}

/** A comparison with what tells where regions and parameters of either side stand. */
export interface WordedComparison {
  comparison: Comparison;
  toleranceDb: number;
  regionPlace(side: 0 | 1, region: number): ShownLine;
  parameterPlace(side: 0 | 1, parameter: number): ShownLine;
}

/** What a comparison says as a whole, a sentence or two a line. */
export function summaryOf(worded: WordedComparison): string[] {
  const { comparison, toleranceDb } = worded;
  const { notes, rendered, worstDb, differences, notCompared } = comparison;
  if (notes === 0)
    return ['No region on either side can sound, so nothing was compared.', ...unheardLines(worded)];
  const equal = `No difference above ${toleranceDb} dB${worstDb === null ? '' : `; the largest is ${roundedTo(worstDb, 1)} dB`}.`;
  const unequal = `${counted(differences.length, 'note differs', 'notes differ')} by more than ${toleranceDb} dB, the worst first:`;
  return [
    `${counted(notes, 'note')} on each side, so that every region that can sound does. ${renderedText(rendered)}`,
    ...(notCompared.length > 0
      ? [`Not compared, because it is not rendered: ${notCompared.map(({ opcode }) => opcode).join(', ')}.`]
      : []),
    ...unheardLines(worded),
    differences.length === 0 ? equal : unequal,
  ];
}

/** Statements about what is not heard that are shown one by one. */
const mostUnheard = 10;

function unheardLines(worded: WordedComparison): string[] {
  const { unheard } = worded.comparison;
  const lines = unheard.slice(0, mostUnheard).map(({ a, b, regions, cause }) => {
    const place = (side: 0 | 1, region: number) =>
      placeText(causePlace(worded, side, cause) ?? worded.regionPlace(side, region));
    const more = regions > 1 ? ` The same holds for ${counted(regions, 'region')}.` : '';
    return `The texts differ, but no played note makes it audible (${place(0, a)}, ${place(1, b)}): ${cause.message}${more}`;
  });
  const more = unheard.length - mostUnheard;
  return more > 0 ? [...lines, `… and ${more} more of this kind.`] : lines;
}

function renderedText(count: number): string {
  return count === 0
    ? 'Texts and samples show that all sound the same, so nothing had to be rendered.'
    : `${counted(count, 'set of regions was', 'sets of regions were')} rendered; texts and samples show that all others sound the same.`;
}

/** The headings of {@link cellsOf}. */
export const comparisonColumns = [
  'note',
  'cause',
  'first',
  'second',
  'peak',
  'level',
  'loudness',
  'pitch',
  'start',
  'length',
  'most in the band',
] as const;

/** A difference in words, column by column. */
export function cellsOf(worded: WordedComparison, one: NoteDifference): string[] {
  return [
    noteText(one),
    one.cause.message,
    lineWords(worded, 0, one),
    lineWords(worded, 1, one),
    one.peakDb === null ? 'none' : `${roundedTo(one.peakDb, 1)} dB`,
    `${roundedTo(one.levelDb, 2)} dB`,
    one.loudnessLu === null ? 'silent' : `${roundedTo(one.loudnessLu, 2)} LU`,
    `${roundedTo(one.pitchCents, 2)} cents`,
    `${roundedTo(one.startMs, 2)} ms`,
    `${roundedTo(one.lengthMs, 1)} ms`,
    bandText(one.bands),
  ];
}

/** How a note is played, for a person. */
function noteText({ note }: Pick<NoteDifference, 'note'>): string {
  const { key, velocity, strike = 1, keyswitch, controllers = [], followedBy = [] } = note;
  const [next] = followedBy;
  const times = followedBy.length > 1 ? `, ${followedBy.length} times` : '';
  return [
    `key ${keyText(key)}, velocity ${velocity}`,
    ...(next ? [`then key ${keyText(next.key)}, velocity ${next.velocity}${times}, while it is held`] : []),
    ...(strike > 1 ? [`strike ${strike}`] : []),
    ...(keyswitch === undefined ? [] : [`keyswitch ${keyText(keyswitch)}`]),
    ...controllers.map(({ controller, value }) => `controller ${controller} at ${roundedTo(value, 1)}`),
  ].join(', ');
}

/** The band in which most differs; differences of less than this are none (our choice). */
const heardInBandDb = 0.1;
/** What stands where no band differs. */
export const noBand = '–';

function bandText(bands: readonly BandDifference[]): string {
  const most = bands.reduce<BandDifference | undefined>(
    (found, one) => (Math.abs(one.levelDb) > Math.abs(found?.levelDb ?? 0) ? one : found),
    undefined,
  );
  if (!most || Math.abs(most.levelDb) < heardInBandDb) return noBand;
  return `${roundedTo(most.levelDb, 1)} dB at ${most.hertz} Hz`;
}

/** The line of what makes the difference, else that of the region. */
function lineWords(worded: WordedComparison, side: 0 | 1, one: NoteDifference): string {
  const region = side === 0 ? one.a : one.b;
  const place =
    causePlace(worded, side, one.cause) ??
    (region === undefined ? undefined : worded.regionPlace(side, region));
  return place ? placeText(place) : 'no region';
}

function placeText({ line, file }: ShownLine): string {
  return `line ${line}${file === undefined ? '' : ` of ${file}`}`;
}

/** Where a side says what makes a difference; `undefined` where it does not. */
export function causePlace(worded: WordedComparison, side: 0 | 1, cause: Cause): ShownLine | undefined {
  const parameter = side === 0 ? cause.a : cause.b;
  return parameter === undefined ? undefined : worded.parameterPlace(side, parameter);
}

/** A number with so many digits behind the point at the most. */
export function roundedTo(value: number, digits: number): number {
  return Math.round(value * 10 ** digits) / 10 ** digits;
}
