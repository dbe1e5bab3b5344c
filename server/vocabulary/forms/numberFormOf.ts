import type { ValueForm } from '../vocabulary';
import { countForm } from './count';
import { levelForm } from './level';
import type { NumberForm } from './numberForm';
import { panForm } from './pan';
import { plainForm, timeForm } from './plain';
import { positionForm } from './position';
import { tuningForm } from './tuning';
import { velocityForm } from './velocity';

/** The forms of values that are numbers in the text and in the open SFZ format. */
export type NumericValueForm = Extract<
  ValueForm,
  { kind: 'velocity' | 'level' | 'pan' | 'tuning' | 'count' | 'position' | 'time' | 'number' }
>;

const made = new WeakMap<NumericValueForm, Map<string, NumberForm>>();

/** How a form's numbers and those of a parameter of the open SFZ format follow from one another. */
export function numberFormOf(form: NumericValueForm, parameter: string): NumberForm {
  let byParameter = made.get(form);
  if (!byParameter) {
    byParameter = new Map();
    made.set(form, byParameter);
  }
  let numbers = byParameter.get(parameter);
  if (!numbers) {
    numbers = makeNumberForm(form, parameter);
    byParameter.set(parameter, numbers);
  }
  return numbers;
}

function makeNumberForm(form: NumericValueForm, parameter: string): NumberForm {
  switch (form.kind) {
    case 'velocity':
      return velocityForm(form, parameter);
    case 'level':
      return levelForm(form, parameter);
    case 'pan':
      return panForm(form);
    case 'tuning':
      return tuningForm(form, parameter);
    case 'count':
      return countForm(form, parameter);
    case 'position':
      return positionForm(form, parameter);
    case 'time':
      return timeForm(form);
    case 'number':
      return plainForm(form);
  }
}
