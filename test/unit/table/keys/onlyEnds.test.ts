import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const ranges = (text: string) =>
  regions(text, { middleC: 'C4' }).map(({ lokey, hikey }) => `${lokey ?? '-'}..${hikey ?? '-'}`);

// That zones of a keyboard meet is common practice.
describe('ranges that give one end alone', () => {
  it.each(['up to ', '<=', 'bis '])('begin above the next lower one: %s', (word) => {
    const text = table(
      'File | Root | Keys',
      `a.wav | 40 | ${word}42`,
      `b.wav | 45 | ${word}47`,
      `c.wav | 50 | ${word}55`,
    );
    expect(ranges(text)).toEqual(['-..42', '43..47', '48..55']);
    expect(notesOf(text).join('\n')).toContain(
      'assumed: The table gives no low keys: each zone begins one above the next lower one in column "Keys".',
    );
  });

  it('end below the next higher one', () => {
    const text = table('File | Root | Keys', 'a.wav | 40 | >=38', 'b.wav | 45 | >=43', 'c.wav | 50 | >=48');
    expect(ranges(text)).toEqual(['38..42', '43..47', '48..-']);
  });

  it('are those of layers on the same keys, and start where the text says', () => {
    const text = `The lowest zone starts at 36.\n${table('File | Root | Keys | Velocity', 'a.wav | 40 | <=42 | 1-70', 'b.wav | 40 | <=42 | 71-127', 'c.wav | 45 | <=47 | 1-70', 'd.wav | 45 | <=47 | 71-127')}`;
    expect(ranges(text)).toEqual(['36..42', '36..42', '43..47', '43..47']);
  });

  it('stay as they are where a root lies elsewhere', () => {
    const text = table('File | Root | Keys', 'a.wav | 40 | <=42', 'b.wav | 39 | <=47', 'c.wav | 50 | <=55');
    expect(ranges(text)).toEqual(['-..42', '-..47', '-..55']);
  });
});
