import type { SampleFacts } from '../../../model/samples';
import type { ValueForm, VocabularyParameter } from '../../vocabulary';
import type { Assigned } from '../assign';
import type { Draft } from '../draft';
import { firstValueOf, otherForm, placeName } from '../draft';
import type { SampleFiles } from '../sampleFiles';
import { unitTextOf } from './unitText';

type Position = Extract<ValueForm, { kind: 'position' }>;
type PositionUnit = Position['unit'];

const units: readonly PositionUnit[] = ['frames', 'seconds', 'milliseconds', 'fraction', 'percent'];
const unitLabels: Readonly<Record<PositionUnit, string>> = {
  frames: 'frames',
  seconds: 'seconds',
  milliseconds: 'milliseconds',
  fraction: 'a fraction of the sample',
  percent: 'percent of the sample',
};
const nameUnits: Readonly<Record<string, PositionUnit>> = {
  frames: 'frames',
  s: 'seconds',
  ms: 'milliseconds',
  percent: 'percent',
  ratio: 'fraction',
};
/** Of targets whose number is a length. */
const countedFrom: Readonly<Record<string, 'offset' | 'loop_start'>> = {
  loop_length: 'loop_start',
  sample_length: 'offset',
};
const parameterOf: Readonly<Record<string, string>> = { loop_length: 'loop_end', sample_length: 'end' };

/** The form of each place that holds a position, and the parameter that it gives. */
export interface PositionForms {
  formOf: (assigned: Assigned) => Position;
  parameterOf: (assigned: Assigned) => string;
  drafts: Draft[];
}

interface UnitReading {
  unit: PositionUnit;
  confidence: number;
  reason: string;
}

/** Decides unit, first number and whether ends are part of what is played, by the sample files where they tell. */
export function decidePositionForms(
  positions: readonly Assigned[],
  files: SampleFiles,
  idOf: (assigned: Assigned) => string,
): PositionForms {
  const forms = new Map<Assigned, Position>();
  const drafts: Draft[] = [];
  const readings = new Map(positions.map((one) => [one, unitOf(one, files)]));
  const surest = [...readings.values()].sort((one, other) => other.confidence - one.confidence)[0];
  for (const assigned of positions) {
    let reading = readings.get(assigned) as UnitReading;
    if (
      surest &&
      reading.confidence < 0.75 &&
      surest.confidence >= 0.75 &&
      fitsUnit(assigned, surest.unit, files)
    ) {
      reading = {
        unit: surest.unit,
        confidence: Math.max(0.76, surest.confidence - 0.12),
        reason: 'Other positions are written so.',
      };
    }
    const from = countedFrom[assigned.target];
    const form: Position = {
      kind: 'position',
      unit: reading.unit,
      ...(from && { from }),
      ...(reading.unit === 'frames' && assigned.facts.thousands && { thousands: assigned.facts.thousands }),
      ...unitTextOf(assigned.facts),
    };
    forms.set(assigned, form);
    drafts.push({
      id: `${idOf(assigned)}.unit`,
      message: `${placeName(assigned)} is counted in ${unitLabels[reading.unit]}.`,
      confidence: reading.confidence,
      evidence: [reading.reason],
      span: firstValueOf(assigned),
      isAbout: isAt(assigned),
      alternatives: units
        .filter((unit) => unit !== reading.unit && fitsUnit(assigned, unit, files))
        .map((unit) =>
          otherForm(unitLabels[unit], (old) => (old.kind === 'position' ? { ...old, unit } : old)),
        ),
    });
  }
  drafts.push(...decideFirst(positions, forms, files));
  for (const assigned of positions) drafts.push(...decideLast(assigned, positions, forms, files, idOf));
  return {
    formOf: (assigned) => forms.get(assigned) as Position,
    parameterOf: ({ target }) => parameterOf[target] ?? target,
    drafts,
  };
}

function isAt(assigned: Assigned): Draft['isAbout'] {
  const parameter = parameterOf[assigned.target] ?? assigned.target;
  return (one) => one.parameter === parameter && one.at === assigned.column.at;
}

function unitOf(assigned: Assigned, files: SampleFiles): UnitReading {
  const { facts, unit } = assigned;
  const written = facts.unit && nameUnits[facts.unit];
  if (written)
    return {
      unit: written,
      confidence: 0.98,
      reason: `The numbers are followed by "${facts.unitText?.trim()}".`,
    };
  const named = unit && nameUnits[unit];
  if (named && fitsUnit(assigned, named, files)) {
    return { unit: named, confidence: 0.95, reason: `The name says ${unitLabels[named]}.` };
  }
  const fitting = units.filter((one) => fitsUnit(assigned, one, files));
  const byLoop = unitByLoops(assigned, fitting, files);
  if (byLoop) return byLoop;
  const isKnown = files.facts.some((one, row) => one && !Number.isNaN(assigned.facts.numbers[row]));
  if (fitting.length === 1 && isKnown) {
    return {
      unit: fitting[0],
      confidence: 0.92,
      reason: 'In any other unit some would lie behind the end of their sample.',
    };
  }
  const { greatest } = facts;
  const isFractional = facts.whole < facts.numeric;
  const said = `The greatest is ${greatest}`;
  if (greatest <= 0) return { unit: 'frames', confidence: 0.5, reason: 'Only 0 occurs.' };
  if (!isFractional) {
    if (greatest > 2000)
      return { unit: 'frames', confidence: 0.92, reason: `${said}, and all are whole numbers.` };
    return { unit: 'frames', confidence: 0.65, reason: `${said}, and all are whole numbers.` };
  }
  const reaches1 = greatest === 1 && isEnd(assigned);
  if (greatest <= 1 && fitting.includes('fraction')) {
    return {
      unit: 'fraction',
      confidence: reaches1 ? 0.85 : fitting.includes('seconds') ? 0.6 : 0.85,
      reason: `All lie from ${facts.least} to ${greatest}.`,
    };
  }
  if (greatest < 60 && fitting.includes('seconds')) {
    return { unit: 'seconds', confidence: 0.85, reason: `${said}, with fractions.` };
  }
  if (fitting.includes('milliseconds'))
    return { unit: 'milliseconds', confidence: 0.8, reason: `${said}, with fractions.` };
  return { unit: fitting[0] ?? 'frames', confidence: 0.4, reason: `${said}.` };
}

function isEnd({ target }: Assigned): boolean {
  return target === 'end' || target === 'loop_end';
}

function framesOf(value: number, unit: PositionUnit, facts: SampleFacts): number {
  switch (unit) {
    case 'frames':
      return value;
    case 'seconds':
      return value * facts.sampleRate;
    case 'milliseconds':
      return (value * facts.sampleRate) / 1000;
    case 'fraction':
      return value * facts.frames;
    case 'percent':
      return (value * facts.frames) / 100;
  }
}

/** Loops of no length from 0 on say that there is none. */
function voidLoops(positions: readonly Assigned[]): (one: Assigned, row: number) => boolean {
  const loops = positions.filter(({ target }) => target.startsWith('loop_'));
  const lengths = loops.filter(({ target }) => target !== 'loop_start');
  return ({ target }, row) =>
    target.startsWith('loop_') && lengths.length > 0 && loops.every(({ facts }) => !(facts.numbers[row] > 0));
}

const timeWords = /^(?:time|times|zeit|temps|tiempo|tempo|moment)$/;
/** The least frame that the greatest of several positions is likely to reach. */
const leastReach = 8;
/** Frames a second where no file tells. */
const usualRate = 44_100;

/** Whether no value is impossible in a unit, nor all of them too small to be heard. */
function fitsUnit({ facts, column }: Assigned, unit: PositionUnit, files: SampleFiles): boolean {
  if (unit !== 'seconds' && unit !== 'milliseconds' && column.own.some((word) => timeWords.test(word)))
    return false;
  if (unit === 'milliseconds' && facts.greatest > 0 && (facts.greatest * usualRate) / 1000 < leastReach)
    return false;
  if (unit === 'frames' && facts.whole < facts.numeric) return false;
  if (unit === 'fraction' && facts.greatest > 1) return false;
  if (unit === 'percent' && facts.greatest > 100) return false;
  for (const [row, known] of files.facts.entries()) {
    const value = facts.numbers[row];
    if (!known || known.frames === 0 || Number.isNaN(value)) continue;
    if (framesOf(value, unit, known) > known.frames + 1) return false;
  }
  return true;
}

/** The unit in which most loops are those of their files. */
function unitByLoops(
  assigned: Assigned,
  fitting: readonly PositionUnit[],
  files: SampleFiles,
): UnitReading | undefined {
  if (!['loop_start', 'loop_end', 'loop_length'].includes(assigned.target)) return undefined;
  let best: { unit: PositionUnit; hits: number; rows: number } | undefined;
  for (const unit of fitting) {
    let hits = 0;
    let rows = 0;
    for (const [row, known] of files.facts.entries()) {
      const value = assigned.facts.numbers[row];
      const loop = known?.loops[0];
      if (!known || !loop || Number.isNaN(value)) continue;
      const wanted =
        assigned.target === 'loop_start'
          ? loop.start
          : assigned.target === 'loop_end'
            ? loop.end
            : loop.end - loop.start + 1;
      rows++;
      if (wanted > 4 && Math.abs(framesOf(value, unit, known) - wanted) <= 1.51) hits++;
    }
    if (rows > 0 && hits * 2 > rows && (!best || hits > best.hits)) best = { unit, hits, rows };
  }
  return (
    best && {
      unit: best.unit,
      confidence: 0.95,
      reason: `So ${best.hits} of ${best.rows} loops are those of their sample files.`,
    }
  );
}

/** Whether the first frame is 0 or 1: the same for all positions that are counted in frames. */
function decideFirst(
  positions: readonly Assigned[],
  forms: Map<Assigned, Position>,
  files: SampleFiles,
): Draft[] {
  const counted = positions.filter((one) => {
    const form = forms.get(one);
    return form?.unit === 'frames' && form.from === undefined;
  });
  if (counted.length === 0) return [];
  const votes = [0, 0];
  let hasZero = false;
  let starts = 0;
  let ones = 0;
  let isEndAtFrames = false;
  const isVoid = voidLoops(counted);
  const distinct = new Set<number>();
  for (const one of counted) {
    const isStart = one.target === 'loop_start' || one.target === 'offset';
    for (const [row, value] of one.facts.numbers.entries()) {
      if (Number.isNaN(value) || isVoid(one, row)) continue;
      if (value === 0) hasZero = true;
      if (isStart) starts++;
      if (isStart && value === 1) ones++;
      if (isStart) distinct.add(value);
      if (one.target === 'end' && value === files.facts[row]?.frames) isEndAtFrames = true;
      const loop = files.facts[row]?.loops[0];
      if (one.target !== 'loop_start' || !loop) continue;
      if (value === loop.start) votes[0] = votes[0] + 1;
      else if (value === loop.start + 1) votes[1] = votes[1] + 1;
    }
  }
  const offset = counted.find(({ target }) => target === 'offset');
  const offsets = offset?.facts.numeric ?? 0;
  const everyOffsetIsOne = offset?.facts.isConstant === true && offset.facts.greatest === 1;
  const [zero = 0, first = 0] = votes;
  let counts: 0 | 1 = 0;
  let confidence = 0.8;
  let reason = 'Nothing tells otherwise; frames are counted from 0 in most formats.';
  if (zero + first > 0 && zero !== first) {
    counts = first > zero ? 1 : 0;
    const share = Math.max(zero, first) / (zero + first);
    confidence = share >= 0.9 ? 0.95 : 0.6;
    reason = `So ${Math.max(zero, first)} of ${zero + first} loops start where their sample files say.`;
    if (counts === 1 && hasZero) confidence = 0.5;
  } else if (hasZero) {
    confidence = 0.95;
    reason = 'The number 0 occurs.';
  } else if (everyOffsetIsOne) {
    counts = 1;
    confidence = offsets > 3 ? 0.85 : 0.7;
    reason = 'Every sample starts at 1.';
  } else if (starts > 3 && ones * 2 > starts) {
    counts = 1;
    confidence = 0.8;
    reason = `${ones} of ${starts} samples start at 1, and none at 0.`;
  } else if (ones > 0 && distinct.size >= 10 && isEndAtFrames) {
    // Counted from 0, with ends behind the last frame, the same ends would be meant.
    counts = 1;
    confidence = 0.65;
    reason = 'The least place where a sample starts is 1, and the greatest end is the number of its frames.';
  }
  if (counts === 1) {
    for (const one of counted) forms.set(one, { ...(forms.get(one) as Position), first: 1 });
  } else if (confidence >= 0.8 && reason.startsWith('Nothing')) return [];
  return [
    {
      id: 'positions.first',
      message: `The first frame of a sample has the number ${counts}.`,
      confidence,
      evidence: [reason],
      span: firstValueOf(counted[0]),
      isAbout: ({ form }) => form.kind === 'position' && form.unit === 'frames' && form.from === undefined,
      alternatives: [
        {
          label: `the first frame has the number ${1 - counts}`,
          change: (parameter) => ({ ...parameter, form: countedFromOther(parameter, counts, isEndAtFrames) }),
        },
      ],
    },
  ];
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

/** Whether an end is the last frame or the one behind it. */
function decideLast(
  assigned: Assigned,
  positions: readonly Assigned[],
  forms: Map<Assigned, Position>,
  files: SampleFiles,
  idOf: (assigned: Assigned) => string,
): Draft[] {
  const { target, facts } = assigned;
  const isLength = countedFrom[target] !== undefined;
  if (!isEnd(assigned) && !isLength) return [];
  const form = forms.get(assigned) as Position;
  const startOf = isLength ? positions.find((one) => one.target === countedFrom[target]) : undefined;
  const startForm = startOf && forms.get(startOf);
  let included = 0;
  let excluded = 0;
  let full = 0;
  let beyond = 0;
  for (const [row, known] of files.facts.entries()) {
    const value = facts.numbers[row];
    if (!known || Number.isNaN(value)) continue;
    let frame = Math.round(framesOf(value, form.unit, known)) - (form.first ?? 0);
    if (isLength) {
      const start = startOf?.facts.numbers[row] ?? 0;
      if (Number.isNaN(start)) continue;
      frame += startForm ? Math.round(framesOf(start, startForm.unit, known)) - (startForm.first ?? 0) : 0;
    }
    const loop = known.loops[0];
    const isLoop = target === 'loop_end' || target === 'loop_length';
    if (isLoop && loop) {
      if (frame === loop.end) included++;
      else if (frame === loop.end + 1) excluded++;
    }
    if (known.frames > 0) {
      if (frame === known.frames) beyond++;
      else if (frame === known.frames - 1) full++;
    }
  }
  const slices = sharedEnds(assigned, positions, files);
  let last: 'included' | 'excluded' = isLength ? 'excluded' : 'included';
  let confidence = isLength ? 0.8 : 0.55;
  let reason = isLength
    ? 'A length counts frames.'
    : 'Nothing in the text or the sample files tells; in the open SFZ format an end is the last frame that is played.';
  if (included + excluded > 0 && included !== excluded) {
    last = excluded > included ? 'excluded' : 'included';
    const share = Math.max(included, excluded) / (included + excluded);
    confidence = share >= 0.9 && beyond * (last === 'included' ? 1 : 0) === 0 ? 0.95 : 0.6;
    reason = `So ${Math.max(included, excluded)} of ${included + excluded} loops end where their sample files say.`;
  } else if (beyond > 0) {
    last = 'excluded';
    confidence = full > beyond ? 0.7 : 0.95;
    reason = `${beyond} of them ${beyond === 1 ? 'is' : 'are'} the number of frames of the sample file, one more than its last frame.`;
  } else if (full > 0) {
    last = 'included';
    confidence = full > 2 ? 0.93 : 0.85;
    reason = `${full} of them ${full === 1 ? 'is' : 'are'} the last frame of the sample file.`;
  } else if (!isLength && assigned.column.own.includes('last')) {
    last = 'included';
    confidence = 0.85;
    reason = 'Its name speaks of the last one.';
  } else if (slices) {
    last = slices;
    confidence = 0.85;
    reason =
      slices === 'excluded'
        ? 'Where parts of one sample follow each other, one ends where the next starts.'
        : 'Where parts of one sample follow each other, one ends a frame before the next starts.';
  }
  const isDefault = last === (isLength ? 'excluded' : 'included');
  if (!isDefault) forms.set(assigned, { ...form, last });
  if (isLength && isDefault) return [];
  const other = last === 'included' ? 'excluded' : 'included';
  return [
    {
      id: `${idOf(assigned)}.last`,
      message:
        last === 'included'
          ? `${placeName(assigned)} names the last frame that is played.`
          : `${placeName(assigned)} names the frame behind the last one that is played.`,
      confidence,
      evidence: [reason],
      span: firstValueOf(assigned),
      isAbout: isAt(assigned),
      alternatives: [
        otherForm(
          other === 'included'
            ? 'it is the last frame that is played'
            : 'it is the frame behind the last one',
          (old) => (old.kind === 'position' ? { ...old, last: other } : old),
        ),
      ],
    },
  ];
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
