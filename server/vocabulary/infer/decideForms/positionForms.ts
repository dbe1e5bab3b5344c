import type { Assigned } from '../assign';
import type { Draft } from '../draft';
import { firstValueOf, otherForm, wordedPlace } from '../draft';
import type { SampleFiles } from '../samples/sampleFiles';
import type { XmlStatements } from '../stated/statements';
import { decideFirst } from './firstFrame';
import { decideLast } from './lastFrame';
import type { PositionForm } from './positionPlaces';
import { countedFrom, isAt, parameterOf } from './positionPlaces';
import { decideRate } from './positionRate';
import type { UnitReading } from './positionUnits';
import { fitsUnit, positionUnit, unitLabels, units } from './positionUnits';
import { unitTextOf } from './unitText';

/** The form of each place that holds a position, and the parameter that it gives. */
export interface PositionForms {
  formOf: (assigned: Assigned) => PositionForm;
  parameterOf: (assigned: Assigned) => string;
  drafts: Draft[];
}

/** A loop that is 0 long or ends at 0 is none; then it starts nowhere. */
function decideNone(positions: readonly Assigned[], forms: Map<Assigned, PositionForm>): void {
  const at = (target: string) => positions.find((one) => one.target === target);
  const end = at('loop_length') ?? at('loop_end');
  const start = at('loop_start');
  if (!end?.facts.numbers.some((number) => number === 0)) return;
  const isVoid = (row: number) => end.facts.numbers[row] === 0;
  forms.set(end, { ...(forms.get(end) as PositionForm), none: 0 });
  const zeros = start ? [...start.facts.numbers.keys()].filter((row) => start.facts.numbers[row] === 0) : [];
  if (start && zeros.length > 0 && zeros.every(isVoid))
    forms.set(start, { ...(forms.get(start) as PositionForm), none: 0 });
}

/** Decides unit, first number and whether ends are part of what is played, by the sample files where they tell. */
export function decidePositionForms(
  positions: readonly Assigned[],
  files: SampleFiles,
  idOf: (assigned: Assigned) => string,
  stated?: XmlStatements,
): PositionForms {
  const forms = new Map<Assigned, PositionForm>();
  const drafts: Draft[] = [];
  const readings = new Map(positions.map((one) => [one, positionUnit(one, files)]));
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
    const form: PositionForm = {
      kind: 'position',
      unit: reading.unit,
      ...(from && { from }),
      ...(reading.unit === 'frames' && assigned.facts.thousands && { thousands: assigned.facts.thousands }),
      ...unitTextOf(assigned.facts),
    };
    forms.set(assigned, form);
    drafts.push({
      id: `${idOf(assigned)}.unit`,
      message: `${wordedPlace(assigned)} is counted in ${unitLabels[reading.unit]}.`,
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
  decideNone(positions, forms);
  drafts.push(...decideRate(positions, forms, files, stated));
  drafts.push(...decideFirst(positions, forms, files, stated?.firstFrame));
  for (const assigned of positions)
    drafts.push(...decideLast(assigned, positions, forms, files, idOf, stated?.ends));
  return {
    formOf: (assigned) => forms.get(assigned) as PositionForm,
    parameterOf: ({ target }) => parameterOf[target] ?? target,
    drafts,
  };
}
