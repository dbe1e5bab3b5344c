import { describe, expect, it } from 'vitest';
import { regions, table } from '../tableRegions';

const ranges = (text: string) =>
  regions(text).map(({ lokey, hikey, pitch_keycenter: root }) =>
    [lokey ?? '-', root ?? '-', hikey ?? '-'].join(' '),
  );

describe('running numbers under a heading of ranges', () => {
  it.each([
    ['English', 'Split | Sample | Orig. key | Upper key'],
    ['German', 'Bereich | Datei | Grundton | Obere Taste'],
  ])('are no low keys beside high ones far above, in %s', (_, heading) => {
    const text = table(heading, '1 | a.wav | 35 | 40', '2 | b.wav | 45 | 49', '3 | c.wav | 54 | 60');
    expect(ranges(text)).toEqual(['- 35 40', '41 45 49', '50 54 60']);
  });

  it('leave the lowest key to what the text says of the first range', () => {
    const rows = table(
      'Split | Sample | Orig. key | Upper key',
      '1 | a.wav | 35 | 40',
      '2 | b.wav | 45 | 49',
      '3 | c.wav | 54 | 60',
    );
    const text = `The first split starts at key 24, each other one a key above the end of the one before.\n\n${rows}`;
    expect(ranges(text)[0]).toBe('24 35 40');
  });

  it('are no high keys below the low ones, and count no keys that do not meet', () => {
    const text = table(
      'Range | Sample | Root | Low key',
      '1 | a.wav | 35 | 30',
      '2 | b.wav | 45 | 41',
      '3 | c.wav | 54 | 50',
    );
    expect(ranges(text).slice(0, 2)).toEqual(['30 35 40', '41 45 49']);
  });

  it('count keys where each zone then ends below the next', () => {
    const text = table(
      'Keys | Sample | Root | Low key',
      '1 | a.wav | 36 | 36',
      '2 | b.wav | 37 | 37',
      '3 | c.wav | 39 | 39',
    );
    expect(ranges(text)).toEqual(['36 36 36', '37 37 38', '39 39 41']);
  });

  it('are low keys where the ranges that they make do not cross', () => {
    const text = table('Range | Sample | Upper key', '1 | a.wav | 1', '2 | b.wav | 2', '3 | c.wav | 3');
    expect(ranges(text)).toEqual(['1 1 1', '2 2 2', '3 3 3']);
  });
});
