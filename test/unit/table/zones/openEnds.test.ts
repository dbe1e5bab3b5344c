import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const ranges = (text: string) =>
  regions(text, { middleC: 'C4' }).map(({ lokey, hikey }) => `${lokey ?? '-'}..${hikey ?? '-'}`);
const under = (...rows: string[]) => table('File | Low key | High key | Root', ...rows);

// That zones of a keyboard meet is common practice; that an empty end is closed so is our choice.
describe('an end of a key range that a row leaves empty', () => {
  it('is closed by the next row, with a note', () => {
    const text = under('a.wav | 48 | 59 | 50', 'b.wav | 60 |  | 62', 'c.wav | 65 | 69 | 67');
    expect(ranges(text)).toEqual(['48..59', '60..64', '65..69']);
    expect(notesOf(text).join('\n')).toMatch(
      /assumed: Line 3, column "High key": the cell is empty; key 64 is taken/,
    );
  });

  it('is closed by the row below where it is the low one, in any order of rows', () => {
    const text = under('c.wav | 65 | 69 | 67', 'b.wav |  | 64 | 62', 'a.wav | 48 | 59 | 50');
    expect(ranges(text)).toEqual(['65..69', '60..64', '48..59']);
  });

  it('is that of a layer on the same keys', () => {
    const text = under('a.wav | 48 | 52 | 50', 'b.wav | 48 |  | 50', 'c.wav | 60 | 69 | 67');
    expect(ranges(text)).toEqual(['48..52', '48..52', '60..69']);
  });

  it('stays open where no zone follows, and is told of', () => {
    const text = under('a.wav | 48 | 59 | 50', 'b.wav | 60 |  | 62');
    expect(ranges(text)[1]).toMatch(/^60\.\.(?:-|127)$/);
    expect(notesOf(text).join('\n')).toMatch(/is empty and no zone lies above/);
  });

  it('is not told of where all are given', () => {
    const text = under('a.wav | 48 | 59 | 50', 'b.wav | 60 | 64 | 62');
    expect(notesOf(text).join('\n')).not.toMatch(/is empty/);
  });
});
