import { describe, expect, it } from 'vitest';
import { regions, table } from '../tableRegions';

const read = (sentence: string) =>
  regions(
    `${table('File|Low|High', 'log_a.wav|30|', 'log_b.wav|33|36', 'log_c.wav|41|')}\n\n${sentence}\n`,
  ).map(({ lokey, hikey, pitch_keycenter }) => [lokey, hikey, pitch_keycenter ?? '-'].join(' '));

describe('what the text says of empty ends of ranges and of roots', () => {
  it.each([
    ['HIGH left blank = one key only, same as LOW. Root is always LOW.'],
    ['If High is empty the zone is a single key. The root key is the low key.'],
    ['Blank high = low. Roots are always the lowest key of the zone.'],
    ['Leere Zelle bei High = nur eine Taste. Grundton ist immer die tiefste Taste.'],
    ['Empty cells mean the same key as Low. Root = Low'],
  ])('%s', (sentence) => {
    expect(read(sentence)).toEqual(['30 30 30', '33 36 33', '41 41 41']);
  });

  it('does not take what a sentence denies or bounds', () => {
    expect(read('Root is not the low key.')[1]).toBe('33 36 -');
    expect(read('Root is the low key except for log_b.wav.')[1]).toBe('33 36 -');
    expect(read('An empty high means the zone goes up to the next one.')[0]).toBe('30 32 -');
  });
});
