import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from '../inferred';

const levels = (first: string, second: string) =>
  `<barn><beam wave="a.wav" key="40" volume="${first}"/><beam wave="b.wav" key="41" volume="${second}"/></barn>`;

describe('levels that cannot be in dB', () => {
  // Our choice, for the sake of hearing: nothing is raised by 40 dB or more.
  it.each([
    ['-3', '70'],
    ['-3 dB', '40 dB'],
  ])('are left out and told: %s beside %s', (first, second) => {
    const text = levels(first, second);
    expect(valuesIn(text, 'volume')).toEqual(['-', '-']);
    expect(
      readInferred(text)
        .decisions.map(({ message }) => message)
        .join(),
    ).toMatch(/cannot all be in dB/);
  });

  it('are read below that', () => {
    expect(valuesIn(levels('-3', '6'), 'volume')).toEqual(['-3', '6']);
  });
});
