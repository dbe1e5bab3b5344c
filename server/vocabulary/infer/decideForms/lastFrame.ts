import { byCount } from '../../../model/wording/counted';
import type { Statements } from '../../../trade/statements/statements';
import type { Assigned } from '../assign';
import type { Draft } from '../draft';
import { firstValueOf, otherForm, wordedPlace } from '../draft';
import type { SampleFiles } from '../samples/sampleFiles';
import { saysSo } from '../saysSo';
import type { PositionForm } from './positionPlaces';
import { countedFrom, framesOf, isAt, isEnd } from './positionPlaces';

type Last = 'included' | 'excluded';

/** How the values of a place lie to the ends that the sample files tell. */
interface LastFrameSigns {
  /** Loops that end where their sample files say, that frame being played or not. */
  included: number;
  excluded: number;
  /** Ends that are the last frame of the file, and those that are one behind it. */
  full: number;
  beyond: number;
}

/** Whether an end is the last frame or the one behind it; where it is not what the form means by itself, the form is changed. */
export function decideLast(
  assigned: Assigned,
  positions: readonly Assigned[],
  forms: Map<Assigned, PositionForm>,
  files: SampleFiles,
  idOf: (assigned: Assigned) => string,
  stated?: Statements['ends'],
): Draft[] {
  const isLength = countedFrom[assigned.target] !== undefined;
  if (!isEnd(assigned) && !isLength) return [];
  const signs = signsIn(assigned, positions, forms, files);
  const { last, confidence, reason } =
    (isLength ? undefined : lastAsStated(stated)) ??
    lastByFiles(signs) ??
    lastByTexts(assigned, positions, files, isLength) ??
    usualLast(isLength);
  const isDefault = last === (isLength ? 'excluded' : 'included');
  if (!isDefault) forms.set(assigned, { ...(forms.get(assigned) as PositionForm), last });
  if (isLength && isDefault) return [];
  const other = last === 'included' ? 'excluded' : 'included';
  return [
    {
      id: `${idOf(assigned)}.last`,
      message:
        last === 'included'
          ? `${wordedPlace(assigned)} names the last frame that is played.`
          : `${wordedPlace(assigned)} names the frame after the last one that is played.`,
      confidence,
      evidence: [reason],
      span: firstValueOf(assigned),
      isAbout: isAt(assigned),
      alternatives: [
        otherForm(
          other === 'included' ? 'it is the last frame that is played' : 'it is the frame after the last one',
          (old) => (old.kind === 'position' ? { ...old, last: other } : old),
        ),
      ],
    },
  ];
}

function signsIn(
  assigned: Assigned,
  positions: readonly Assigned[],
  forms: ReadonlyMap<Assigned, PositionForm>,
  files: SampleFiles,
): LastFrameSigns {
  const { target, facts } = assigned;
  const form = forms.get(assigned) as PositionForm;
  const isLoop = target === 'loop_end' || target === 'loop_length';
  const startTarget = countedFrom[target];
  const start = startTarget === undefined ? undefined : positions.find((one) => one.target === startTarget);
  const startForm = start && forms.get(start);
  const signs = { included: 0, excluded: 0, full: 0, beyond: 0 };
  for (const [row, known] of files.facts.entries()) {
    const value = facts.numbers[row];
    const startValue = start?.facts.numbers[row] ?? 0;
    if (!known || Number.isNaN(value) || Number.isNaN(startValue)) continue;
    let frame = Math.round(framesOf(value, form.unit, known)) - (form.first ?? 0);
    if (startForm) frame += Math.round(framesOf(startValue, startForm.unit, known)) - (startForm.first ?? 0);
    const loop = known.loops[0];
    if (isLoop && loop) {
      if (frame === loop.end) signs.included++;
      else if (frame === loop.end + 1) signs.excluded++;
    }
    if (known.frames > 0) {
      if (frame === known.frames) signs.beyond++;
      else if (frame === known.frames - 1) signs.full++;
    }
  }
  return signs;
}

interface DecidedLast {
  last: Last;
  confidence: number;
  reason: string;
}

function lastAsStated(stated: Statements['ends']): DecidedLast | undefined {
  return (
    stated && {
      last: stated.are === 'behind' ? 'excluded' : 'included',
      confidence: 0.96,
      reason: saysSo(stated.text),
    }
  );
}

function lastByFiles({ included, excluded, full, beyond }: LastFrameSigns): DecidedLast | undefined {
  const loops = included + excluded;
  if (loops > 0 && included !== excluded) {
    const most = Math.max(included, excluded);
    const last = excluded > included ? 'excluded' : 'included';
    const isSure = most / loops >= 0.9 && !(last === 'included' && beyond > 0);
    return {
      last,
      confidence: isSure ? 0.95 : 0.6,
      reason: `So ${most} of ${loops} loops end where their sample files say.`,
    };
  }
  if (beyond > 0)
    return {
      last: 'excluded',
      confidence: full > beyond ? 0.7 : 0.95,
      reason: `${beyond} of them ${byCount(beyond, 'is', 'are')} the number of frames of the sample file, one more than its last frame.`,
    };
  if (full > 0)
    return {
      last: 'included',
      confidence: full > 2 ? 0.93 : 0.85,
      reason: `${full} of them ${byCount(full, 'is', 'are')} the last frame of the sample file.`,
    };
  return undefined;
}

function lastByTexts(
  assigned: Assigned,
  positions: readonly Assigned[],
  files: SampleFiles,
  isLength: boolean,
): DecidedLast | undefined {
  if (!isLength && assigned.column.own.includes('last'))
    return { last: 'included', confidence: 0.85, reason: 'Its name speaks of the last one.' };
  if (assigned.column.own.includes('exclusive'))
    return { last: 'excluded', confidence: 0.95, reason: 'Its name says exclusive.' };
  if (assigned.column.own.includes('inclusive'))
    return { last: 'included', confidence: 0.95, reason: 'Its name says inclusive.' };
  const last = sharedEnds(assigned, positions, files);
  return (
    last && {
      last,
      confidence: 0.85,
      reason:
        last === 'excluded'
          ? 'Where parts of one sample follow each other, one ends where the next starts.'
          : 'Where parts of one sample follow each other, one ends a frame before the next starts.',
    }
  );
}

function usualLast(isLength: boolean): DecidedLast {
  if (isLength) return { last: 'excluded', confidence: 0.8, reason: 'A length counts frames.' };
  return {
    last: 'included',
    confidence: 0.55,
    reason:
      'Nothing in the text or the sample files says it; in the open SFZ format an end is the last frame that is played.',
  };
}

/** By parts of one sample that follow each other. */
function sharedEnds(
  assigned: Assigned,
  positions: readonly Assigned[],
  files: SampleFiles,
): 'included' | 'excluded' | undefined {
  if (assigned.target !== 'end') return undefined;
  const offset = positions.find((one) => one.target === 'offset');
  if (!offset) return undefined;
  const starts = new Set<string>();
  for (const [row, value] of offset.facts.numbers.entries()) starts.add(`${files.names[row]} ${value}`);
  let same = 0;
  let next = 0;
  for (const [row, value] of assigned.facts.numbers.entries()) {
    if (Number.isNaN(value)) continue;
    if (starts.has(`${files.names[row]} ${value}`)) same++;
    if (starts.has(`${files.names[row]} ${value + 1}`)) next++;
  }
  if (same > next * 3 && same > 1) return 'excluded';
  return next > same * 3 && next > 1 ? 'included' : undefined;
}
