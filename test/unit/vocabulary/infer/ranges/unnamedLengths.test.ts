import { describe, expect, it } from 'vitest';
import { valuesIn } from '../inferred';

const loops = (length: string) =>
  `<barn><beam wave="a.wav" low="40" high="45"><loop start="20000" flum="30000"/></beam>
  <beam wave="b.wav" low="46" high="50"><loop start="18000" flum="${length}"/></beam></barn>`;

describe('the length of a loop of an unknown name', () => {
  // A loop ends no earlier than it starts (RIFF, sampler chunk: dwStart and dwEnd).
  it('is read where a number lies below the start', () => {
    expect(valuesIn(loops('9000'), 'loop_end')).toEqual(['49999', '26999']);
  });

  it('is not read where all numbers could be ends', () => {
    expect(valuesIn(loops('44100'), 'loop_end')).toEqual(['-', '-']);
  });
});
