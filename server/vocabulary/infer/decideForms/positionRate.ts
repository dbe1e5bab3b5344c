import { byCount } from '../../../model/wording/counted';
import type { Assigned } from '../assign';
import type { Draft } from '../draft';
import { firstValueOf, otherForm } from '../draft';
import type { SampleFiles } from '../samples/sampleFiles';
import type { XmlStatements } from '../stated/statements';
import type { PositionForm } from './positionPlaces';

/**
 * Whether frames are counted at a sample rate that stands beside the sample where its file has another one; and the rate that the
 * document states for times in samples whose own rate is not known. Forms are changed.
 */
export function decideRate(
  positions: readonly Assigned[],
  forms: Map<Assigned, PositionForm>,
  files: SampleFiles,
  stated: XmlStatements | undefined,
): Draft[] {
  const { rates = [], sampleRate } = stated ?? {};
  // What stands beside all samples alike holds for those that are written anew, too.
  const [first] = rates;
  const rate = rates.every((one) => one === first) ? (first ?? sampleRate) : undefined;
  for (const one of positions) {
    const form = forms.get(one) as PositionForm;
    const isTime = form.unit === 'seconds' || form.unit === 'milliseconds';
    if (isTime && rate !== undefined) forms.set(one, { ...form, rate });
  }
  const counted = positions.filter((one) => forms.get(one)?.unit === 'frames');
  const { other, beyond, beyondScaled } = signsIn(counted, files, rates);
  // At the stated rate some would lie behind the end of their file: then they are its own frames.
  if (other === 0 || (beyondScaled > 0 && beyond === 0)) return [];
  for (const one of counted) forms.set(one, { ...(forms.get(one) as PositionForm), atRate: true });
  return [
    {
      id: 'positions.rate',
      message:
        'Frames are counted at the sample rate that stands beside the sample, not at that of its file.',
      confidence: beyond > 0 ? 0.9 : 0.6,
      isGuess: true,
      evidence: [
        `${other} of the sample files ${byCount(other, 'has', 'have')} another sample rate${beyond > 0 ? ', and otherwise some positions would lie past the end of their file' : ''}.`,
      ],
      span: firstValueOf(counted[0]),
      isAbout: ({ form }) => form.kind === 'position' && form.atRate === true,
      alternatives: [
        otherForm('frames of the file', (form) => {
          if (form.kind !== 'position') return form;
          const { atRate: _, ...rest } = form;
          return rest;
        }),
      ],
    },
  ];
}

/** Files whose rate is another one than the stated, and positions behind the ends of files as they are and scaled. */
function signsIn(
  counted: readonly Assigned[],
  files: SampleFiles,
  rates: readonly (number | undefined)[],
): { other: number; beyond: number; beyondScaled: number } {
  const signs = { other: 0, beyond: 0, beyondScaled: 0 };
  for (const [row, facts] of files.facts.entries()) {
    const rate = rates[row];
    if (!facts || rate === undefined || counted.length === 0 || facts.sampleRate === rate) continue;
    if (!(facts.sampleRate > 0)) continue;
    signs.other++;
    for (const { facts: column } of counted) {
      const frame = column.numbers[row];
      if (frame > facts.frames) signs.beyond++;
      if ((frame * facts.sampleRate) / rate > facts.frames + 1) signs.beyondScaled++;
    }
  }
  return signs;
}
