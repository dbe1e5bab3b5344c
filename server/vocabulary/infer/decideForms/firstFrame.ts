import type { Statements } from '../../../trade/statements/statements';
import type { ValueForm, VocabularyParameter } from '../../vocabulary';
import type { Assigned } from '../assign';
import type { Draft } from '../draft';
import { firstValueOf } from '../draft';
import type { SampleFiles } from '../samples/sampleFiles';
import { saysSo } from '../saysSo';
import type { PositionForm } from './positionPlaces';

/** What the values of places that are counted in frames say of the number of the first one. */
interface FirstFrameSigns {
  /** Loops that start where their sample files say, counted from 0 and from 1. */
  fromZero: number;
  fromOne: number;
  hasZero: boolean;
  /** Starts of samples and loops, how many of them are 1, and how many differ. */
  starts: number;
  ones: number;
  differentStarts: number;
  /** Whether an end is the number of frames of its sample. */
  isEndAtFrames: boolean;
  /** The offsets, where all of them are 1; else 0. */
  offsetsOfOne: number;
}

/** Whether the first frame is 0 or 1: the same for all positions that are counted in frames, whose forms are set. */
export function decideFirst(
  positions: readonly Assigned[],
  forms: Map<Assigned, PositionForm>,
  files: SampleFiles,
  stated?: Statements['firstFrame'],
): Draft[] {
  const counted = positions.filter((one) => {
    const form = forms.get(one);
    return form?.unit === 'frames' && form.from === undefined;
  });
  if (counted.length === 0) return [];
  const signs = signsIn(counted, files);
  const decided = stated
    ? { first: stated.is, confidence: 0.96, reason: saysSo(stated.text) }
    : firstBy(signs);
  // Frames are counted from 0 in most formats.
  if (!decided) return [];
  const { first, confidence, reason } = decided;
  if (first === 1) {
    for (const one of counted) forms.set(one, { ...(forms.get(one) as PositionForm), first });
  }
  return [
    {
      id: 'positions.first',
      message: `The first frame of a sample has the number ${first}.`,
      confidence,
      evidence: [reason],
      span: firstValueOf(counted[0]),
      isAbout: ({ form }) => form.kind === 'position' && form.unit === 'frames' && form.from === undefined,
      alternatives: [
        {
          label: `the first frame has the number ${1 - first}`,
          change: (parameter) => ({
            ...parameter,
            form: countedFromOther(parameter, first, signs.isEndAtFrames),
          }),
        },
      ],
    },
  ];
}

function signsIn(counted: readonly Assigned[], files: SampleFiles): FirstFrameSigns {
  const signs = { fromZero: 0, fromOne: 0, hasZero: false, starts: 0, ones: 0, isEndAtFrames: false };
  const isVoid = voidLoops(counted);
  const distinct = new Set<number>();
  for (const { target, facts } of counted) {
    const isStart = target === 'loop_start' || target === 'offset';
    for (const [row, value] of facts.numbers.entries()) {
      if (Number.isNaN(value) || isVoid(target, row)) continue;
      if (value === 0) signs.hasZero = true;
      if (isStart) {
        signs.starts++;
        if (value === 1) signs.ones++;
        distinct.add(value);
      }
      if (target === 'end' && value === files.facts[row]?.frames) signs.isEndAtFrames = true;
      const loop = files.facts[row]?.loops[0];
      if (target !== 'loop_start' || !loop) continue;
      if (value === loop.start) signs.fromZero++;
      else if (value === loop.start + 1) signs.fromOne++;
    }
  }
  const offset = counted.find(({ target }) => target === 'offset')?.facts;
  const offsetsOfOne = offset?.isConstant && offset.greatest === 1 ? offset.numeric : 0;
  return { ...signs, differentStarts: distinct.size, offsetsOfOne };
}

/** The number of the first frame, and why; `undefined` where nothing tells. */
function firstBy({
  fromZero,
  fromOne,
  hasZero,
  starts,
  ones,
  differentStarts,
  isEndAtFrames,
  offsetsOfOne,
}: FirstFrameSigns): { first: 0 | 1; confidence: number; reason: string } | undefined {
  const loops = fromZero + fromOne;
  if (loops > 0 && fromZero !== fromOne) {
    const most = Math.max(fromZero, fromOne);
    const first = fromOne > fromZero ? 1 : 0;
    const isSure = most / loops >= 0.9;
    return {
      first,
      confidence: first === 1 && hasZero ? 0.5 : isSure ? 0.95 : 0.6,
      reason: `So ${most} of ${loops} loops start where their sample files say.`,
    };
  }
  if (hasZero) return { first: 0, confidence: 0.95, reason: 'The number 0 occurs.' };
  if (offsetsOfOne > 0)
    return { first: 1, confidence: offsetsOfOne > 3 ? 0.85 : 0.7, reason: 'Every sample starts at 1.' };
  if (starts > 3 && ones * 2 > starts)
    return { first: 1, confidence: 0.8, reason: `${ones} of ${starts} samples start at 1, and none at 0.` };
  // Counted from 0, with ends behind the last frame, the same ends would be meant.
  if (ones > 0 && differentStarts >= 10 && isEndAtFrames)
    return {
      first: 1,
      confidence: 0.65,
      reason: 'The least place where a sample starts is 1, and the greatest end is the number of its frames.',
    };
  return undefined;
}

/** Loops of no length from 0 on say that there is none. */
function voidLoops(positions: readonly Assigned[]): (target: string, row: number) => boolean {
  const loops = positions.filter(({ target }) => target.startsWith('loop_'));
  const lengths = loops.filter(({ target }) => target !== 'loop_start');
  return (target, row) =>
    target.startsWith('loop_') && lengths.length > 0 && loops.every(({ facts }) => !(facts.numbers[row] > 0));
}

/** An end that is the number of frames stays the last frame when the count starts elsewhere. */
function countedFromOther(
  { parameter, form }: VocabularyParameter,
  counts: 0 | 1,
  isEndAtFrames: boolean,
): ValueForm {
  if (form.kind !== 'position') return form;
  const { first: _, last, ...rest } = form;
  const first = counts === 0 ? { first: 1 as const } : {};
  if (parameter !== 'end' || !isEndAtFrames) return { ...rest, ...first, ...(last && { last }) };
  return { ...rest, ...first, ...(counts === 1 && { last: 'excluded' as const }) };
}
