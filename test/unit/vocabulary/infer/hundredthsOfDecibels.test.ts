import { describe, expect, it } from 'vitest';
import { valuesIn } from './inferred';

const harp = (around: string, level: (number: number) => string) =>
  `<harp>${around}${[-900, -150, 250]
    .map(
      (number, at) =>
        `<string wave="h${at}.wav" low="${40 + at * 4}" high="${43 + at * 4}">${level(number)}</string>`,
    )
    .join('')}</harp>`;
const attribute = (number: number) => `<mix level="${number}"/>`;

describe('levels in hundredths of a dB', () => {
  it.each([
    ['a table of units', '<units level="millibel"/>', attribute],
    ['its sign', '<units level="mB"/>', attribute],
    ['a German one', '<einheiten level="Millibel"/>', (n: number) => `<mix level="${n}"/>`],
    ['an attribute of an element around', '<settings level-unit="millibels"/>', attribute],
    ['the unit beside each', '', (n: number) => `<mix level="${n}" unit="millibel"/>`],
    ['the unit in the name', '', (n: number) => `<gain-millibel>${n}</gain-millibel>`],
  ])('are known by %s', (_, around, level) => {
    expect(valuesIn(harp(around, level), 'volume')).toEqual(['-9', '-1.5', '2.5']);
  });

  it('are not guessed', () => {
    expect(valuesIn(harp('', attribute), 'volume')).toEqual(['-', '-', '-']);
  });
});
