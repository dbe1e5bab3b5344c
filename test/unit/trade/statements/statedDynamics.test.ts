import { describe, expect, it } from 'vitest';
import { dynamicLetters } from '../../../../server/trade/dynamics';
import { statedDynamicsIn } from '../../../../server/trade/statements/layers/statedDynamics';

function ranges(...texts: string[]): string | undefined {
  const found = statedDynamicsIn(texts)?.ranges;
  return found && [...found].map(([at, { low, high }]) => `${dynamicLetters[at]} ${low}-${high}`).join(', ');
}

describe('velocities that a text gives to dynamics', () => {
  // MIDI 1.0: a note that sounds has a velocity of 1 to 127.
  it.each([
    ['Soft layers use velocity 1-50, the loud ones 51-127.', 'p 1-50, f 51-127'],
    ['1-30 pp, 31-80 mf, 81-127 ff', 'pp 1-30, mf 31-80, ff 81-127'],
    ['Anschlag 1 bis 70 ist leise, ab 71 laut', 'p 1-70, f 71-127'],
    ['p up to 45, mf 46-99, f above', 'p 1-45, mf 46-99, f 100-127'],
    ['las suaves van de 1 a 55 y las fuertes de 56 a 127', undefined],
    ['la suave va de 1 a 55 y la fuerte de 56 a 127', 'p 1-55, f 56-127'],
    ['very soft below 30, soft 30-60, loud above 60', 'pp 1-29, p 30-60, f 61-127'],
    ['soft samples on keys 36-59, loud ones on keys 60-72', undefined],
    ['Do4 = do central. Dinâmica: p = 1-40, f = 41-127', 'p 1-40, f 41-127'],
    ['Velocities run up to 127: p 1-40, f 41-127', 'p 1-40, f 41-127'],
    ['soft 1-80, loud 60-127', undefined],
  ])('%s', (text, expected) => {
    expect(ranges(text)).toBe(expected);
  });

  it('may stand on a line for each', () => {
    expect(ranges('Legend', 'pp = 1-40', 'mf: 41-90', 'ff: 91-127')).toBe('pp 1-40, mf 41-90, ff 91-127');
  });

  it('are told by the sentence that gives them', () => {
    const said = statedDynamicsIn(['My harp. Soft is 1 to 60, loud is 61 to 127. Have fun!']);
    expect(said?.text).toBe('Soft is 1 to 60, loud is 61 to 127.');
  });
});
