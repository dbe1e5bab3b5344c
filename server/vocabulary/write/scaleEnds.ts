import type { ScaleEnd } from '../../model/notation';
import { decimalText } from '../../model/text/decimalText';
import { numberFormOf } from '../forms/numberFormOf';
import type { Vocabulary } from '../vocabulary';

/** Where the scale of a parameter ends in a vocabulary; `undefined` where it does not, or where another place of it goes on. */
export function scaleEndIn({ levels }: Vocabulary): (parameter: string) => ScaleEnd | undefined {
  return (parameter) => {
    const forms = levels.flatMap(({ parameters }) =>
      parameters.filter((one) => one.parameter === parameter).map(({ form }) => form),
    );
    const ends = forms.map((form): ScaleEnd | undefined => {
      const numbers = form.kind === 'level' ? numberFormOf(form, parameter) : undefined;
      if (numbers?.loudest === undefined) return undefined;
      const value = numbers.read(numbers.loudest, {
        parameter,
        sampleRate: undefined,
        frames: undefined,
        frameOf: () => 0,
      });
      return { value, written: decimalText(numbers.loudest) };
    });
    return ends.length === 1 ? ends[0] : undefined;
  };
}
