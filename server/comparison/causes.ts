import type { Cause, CauseKind } from './cause';
import type { ComparedSide, RegionLikeness } from './regionLikeness';
import type { SoundDifference } from './soundDifference';
import type { SpokenDifference } from './spokenValues';
import { spokenDifferences } from './spokenValues';

/** A pitch further apart than this is a difference of pitch, a level that of level (our choice). */
const heardCents = 0.5;
const heardDb = 0.01;
/** Where so little is left at equal starts and levels, these are all that differs (our choice). */
const sameShapeDb = -50;

/** Columns of a program with the kind of cause that they are, in the order in which they are looked at. */
const columns = [
  ['rootKey', 'root', 'Root keys differ'],
  ['tuneCents', 'tuning', 'Tunings in cents differ'],
  ['volumeDb', 'level', 'Levels in dB differ'],
  ['panPercent', 'pan', 'Pans differ'],
  ['offset', 'offset', 'First frames differ'],
  ['end', 'length', 'Last frames differ'],
  ['loopMode', 'loop', 'Loop modes differ'],
  ['loopType', 'loop', 'Kinds of loops differ'],
  ['loopStart', 'loop', 'Loop starts differ'],
  ['loopEnd', 'loop', 'Loop ends differ'],
] as const;

/** Two regions that answer the same note, by position. */
export interface RegionPair {
  a: number;
  b: number;
}

/** The first cause in the texts of a difference between two regions that answer the same note, by what was measured where the texts do not tell. */
export async function causeOf(
  sides: readonly [ComparedSide, ComparedSide],
  pair: RegionPair,
  likeness: RegionLikeness,
  measured: SoundDifference,
): Promise<Cause> {
  const spoken = spokenDifferences(sides[0].spoken, sides[1].spoken, pair);
  if (!(await likeness.hasSameSample(pair.a, pair.b))) return sampleCause(sides, pair, measured);
  const candidates = [...columnCauses(sides, pair, spoken), ...spoken.map(causeOfSpoken)];
  const heard = candidates.filter((one) => fits(one.kind, measured));
  const unconditional = heard.filter(({ kind }) => kind !== 'condition' && kind !== 'sample');
  const first = unconditional[0] ?? candidates.find(({ kind }) => kind !== 'sample');
  return first ?? measuredCause(measured) ?? { kind: 'other', message: 'The cause is not known.' };
}

/** Why a region that one side starts has no partner: it is not there, or the partner that is there does not answer. */
export async function missingCause(
  sides: readonly [ComparedSide, ComparedSide],
  region: { side: 0 | 1; number: number },
  likeness: RegionLikeness,
): Promise<Cause & { silent?: number }> {
  const { side, number } = region;
  const silent = await likeSounding(sides, region, likeness);
  const [here, there] = side === 0 ? ['first', 'second'] : ['second', 'first'];
  const own = sides[side].spoken.of(number).get('sample');
  const place = own === undefined ? {} : side === 0 ? { a: own } : { b: own };
  if (silent === undefined)
    return { kind: 'missing', message: `Only the ${here} side has a region that plays this.`, ...place };
  const pair = side === 0 ? { a: number, b: silent } : { a: silent, b: number };
  const condition = conditionDifference(sides, pair);
  const message = `The ${there} side has a region like it, but that one stays silent.`;
  if (!condition) return { kind: 'condition', message, silent, ...place };
  return {
    ...causeOfSpoken(condition),
    kind: 'condition',
    message: `${message} ${condition.message}`,
    silent,
  };
}

/** A region of the other side that sounds the same, whenever it does. */
async function likeSounding(
  sides: readonly [ComparedSide, ComparedSide],
  { side, number }: { side: 0 | 1; number: number },
  likeness: RegionLikeness,
): Promise<number | undefined> {
  const count = sides[1 - side].playable.regionCount;
  for (let other = 0; other < count; other++) {
    const pair = side === 0 ? ([number, other] as const) : ([other, number] as const);
    if (likeness.haveSameConditions(...pair)) continue;
    if (await likeness.soundAlike(...pair)) return other;
  }
  return undefined;
}

/** The first condition that two regions do not share, ranges that come to the same aside. */
function conditionDifference(
  [a, b]: readonly [ComparedSide, ComparedSide],
  pair: RegionPair,
): SpokenDifference | undefined {
  const [one, other] = [a.playable, b.playable];
  const hasSameKeys =
    one.lowKey[pair.a] === other.lowKey[pair.b] && one.highKey[pair.a] === other.highKey[pair.b];
  const isKeyRange = /^(key|lokey|hikey)$/;
  return spokenDifferences(a.spoken, b.spoken, pair).find(({ opcode, kind }) =>
    isKeyRange.test(opcode) ? !hasSameKeys : kind === 'condition',
  );
}

function sampleCause(
  sides: readonly [ComparedSide, ComparedSide],
  pair: RegionPair,
  measured: SoundDifference,
): Cause {
  const seen = measuredCause(measured);
  return {
    kind: seen?.kind ?? 'sample',
    message: seen ? `The samples are not the same. ${seen.message}` : 'The samples are not the same.',
    ...samplePlaces(sides, pair),
  };
}

/** Where the samples are named, which say what the texts do not. */
function samplePlaces(
  [a, b]: readonly [ComparedSide, ComparedSide],
  pair: RegionPair,
): Pick<Cause, 'opcode' | 'a' | 'b'> {
  const [one, other] = [a.spoken.of(pair.a).get('sample'), b.spoken.of(pair.b).get('sample')];
  return { opcode: 'sample', ...(one !== undefined && { a: one }), ...(other !== undefined && { b: other }) };
}

/** Columns that differ, with the opcode that says so where there is one of the kind. */
function columnCauses(
  [a, b]: readonly [ComparedSide, ComparedSide],
  pair: RegionPair,
  spoken: readonly SpokenDifference[],
): Cause[] {
  return columns.flatMap(([name, kind, words]) => {
    const [one, other] = [a.program[name][pair.a], b.program[name][pair.b]];
    if (one === other) return [];
    const said = spoken.find((difference) => difference.kind === kind);
    const message = `${words}: ${shown(one)} and ${shown(other)}.`;
    return [{ ...(said ? causeOfSpoken(said) : { kind, ...samplePlaces([a, b], pair) }), message }];
  });
}

/** Whether a cause of a kind can be one of what was measured. */
function fits(kind: CauseKind, { pitchCents, levelDb }: SoundDifference): boolean {
  if (Math.abs(pitchCents) > heardCents) return true;
  if (kind === 'root') return false;
  return kind !== 'level' || Math.abs(levelDb) > heardDb;
}

function causeOfSpoken({ opcode, kind, message, a, b }: SpokenDifference): Cause {
  return { kind, message, opcode, ...(a !== undefined && { a }), ...(b !== undefined && { b }) };
}

/** What the difference looks like where a change of pitch, level, start or sides alone explains it. */
function measuredCause(measured: SoundDifference): Cause | undefined {
  const { pitchCents, levelDb, startMs, shapeDb, isSwapped } = measured;
  if (isSwapped) return { kind: 'pan', message: 'Left and right are swapped.' };
  if (Math.abs(pitchCents) > heardCents)
    return {
      kind: 'tuning',
      message: `The second is ${away(pitchCents)} cents ${pitchCents > 0 ? 'higher' : 'lower'}.`,
    };
  if ((shapeDb ?? Number.NEGATIVE_INFINITY) >= sameShapeDb) return undefined;
  if (startMs !== 0)
    return {
      kind: 'offset',
      message: `The second starts ${away(startMs)} ms ${startMs > 0 ? 'later' : 'earlier'}.`,
    };
  if (levelDb !== 0)
    return {
      kind: 'level',
      message: `The second is ${away(levelDb)} dB ${levelDb > 0 ? 'louder' : 'softer'}.`,
    };
  return undefined;
}

function shown(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}

function away(value: number): string {
  return Math.abs(value).toFixed(2);
}
