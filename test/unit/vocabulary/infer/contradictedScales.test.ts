import { describe, expect, it } from 'vitest';
import { valuesIn } from './inferred';

const bank = (first: string, own: string) =>
  `<bank>${first}<part name="soft"><cut snd="a.wav" keys="30-40"/><cut snd="b.wav" keys="41-50"/></part>
  <part name="hard" ${own}><cut snd="c.wav" keys="30-40"/><cut snd="d.wav" keys="41-50"/></part></bank>`;

describe('velocities that hold where there are no others', () => {
  const expected = ['1 90', '1 90', '91 127', '91 127'];

  it.each([
    '<defaults velocity="1-90"/>',
    '<preset-values velocity="1-90"/>',
    '<common velocity="1-90"/>',
    '<usual velocity="1..90"/>',
  ])('are no scale of those that lie outside of them: %s', (first) => {
    expect(valuesIn(bank(first, 'velocity="91-127"'), 'lovel', 'hivel')).toEqual(expected);
  });

  it('are none where others lie within them', () => {
    const text = bank('<defaults velocity="1-90"/>', 'velocity="20-60"');
    expect(valuesIn(text, 'lovel', 'hivel')).toEqual(['1 90', '1 90', '20 60', '20 60']);
  });
});
