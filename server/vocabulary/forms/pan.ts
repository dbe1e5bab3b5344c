import { readPan } from '../../trade/readings/panReading';
import type { ValueForm } from '../vocabulary';
import type { NumberForm } from './numberForm';
import { unitNames, unitsOf } from './numberForm';
import { readNumberText, toMillionths } from './numberText';

type Pan = Extract<ValueForm, { kind: 'pan' }>;

/**
 * Pan positions: linear from left (−100 in the open SFZ format) to the centre (0) and from there to right (100). Where letters
 * stand for the sides, the number beside one says how far out.
 */
export function panForm(form: Pan): NumberForm {
  const { left, centre, right } = form;
  const sign = right >= left ? 1 : -1;
  return {
    read(written) {
      const beyond = (written - centre) * sign;
      const side = Math.abs((beyond < 0 ? left : right) - centre);
      if (beyond === 0) return 0;
      const share = beyond / side;
      return Math.abs(share) <= 1 ? toMillionths(share * 100) : Number.NaN;
    },
    write(value) {
      if (Math.abs(value) > 100) return Number.NaN;
      return centre + ((value < 0 ? centre - left : right - centre) * value) / 100;
    },
    units: unitsOf([unitNames.percent, 1]),
    ...(form.sides && sidedTexts(form, form.sides)),
    unit: '%',
    needsSurroundings: false,
  };
}

function sidedTexts(
  { left, centre, right, sidesStand = 'behind' }: Pan,
  sides: NonNullable<Pan['sides']>,
): Pick<NumberForm, 'readText' | 'writeText'> {
  const toLeft = left < right ? -1 : 1;
  return {
    readText(text) {
      const found = /^([^\d\s.,+-]*)\s*([\d.,]*\s*%?)\s*([^\d\s.,+-]*)$/u.exec(text.trim());
      const [, before = '', amount = '', behind = ''] = found ?? [];
      const word = (before + behind).toLowerCase();
      if (found && word === '') return undefined;
      const number = amount.trim() === '' ? undefined : readNumberText(amount)?.number;
      if (word === sides.centre.toLowerCase())
        return number === undefined || number === 0 ? centre : Number.NaN;
      if (word === sides.left.toLowerCase()) return number === undefined ? left : centre + toLeft * number;
      if (word === sides.right.toLowerCase()) return number === undefined ? right : centre - toLeft * number;
      // Other words say it too; without a number they give a share of the way.
      const said = readPan(text);
      if (said === undefined) return undefined;
      return centre - toLeft * (/\d/.test(text) ? said : (said / 100) * Math.abs(right - centre));
    },
    writeText(written) {
      const beyond = (readNumberText(written)?.number ?? 0) - centre;
      if (beyond === 0) return sides.centre;
      const side = beyond * toLeft > 0 ? sides.left : sides.right;
      const amount = String(Math.abs(beyond)) + (/[^\d.+-].*$/.exec(written)?.[0] ?? '');
      return sidesStand === 'before' ? side + amount : amount + side;
    },
  };
}
