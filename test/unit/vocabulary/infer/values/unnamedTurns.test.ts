import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from '../inferred';

const clacks = (name: string, ...numbers: (readonly [key: number, number: number])[]) =>
  `<rack>${numbers.map(([key, number], at) => `<clack wav="c${at}.wav" key="${key}" ${name}="${number}"/>`).join('')}</rack>`;

describe('numbers that count the regions of the same keys', () => {
  it('are turns of a round robin, which is told', () => {
    const text = clacks('nth', [60, 1], [60, 2], [60, 3], [61, 2], [61, 1], [62, 1]);
    expect(valuesIn(text, 'seq_position', 'seq_length')).toEqual(['1 3', '2 3', '3 3', '2 2', '1 2', '1 -']);
    const told = readInferred(text).decisions.find(({ id }) => id === 'seq_position');
    expect(told?.confidence).toBeLessThan(0.75);
  });

  it('are none where they do not start anew, or speak of something else', () => {
    const [running, repeated] = [
      clacks('nth', [60, 1], [60, 2], [61, 3], [61, 4]),
      clacks('nth', [60, 1], [60, 1], [61, 1], [61, 2]),
    ];
    for (const text of [running, repeated, clacks('output', [60, 1], [60, 2], [61, 1], [61, 2])])
      expect(valuesIn(text, 'seq_position')).toEqual(['-', '-', '-', '-']);
  });
});
