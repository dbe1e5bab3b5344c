import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changedLines } from '../../../server/sfz/changedLines';

/** What changed, as the text of whole lines before and after. */
function changed(before: string, after: string): [string, string] {
  const { start, oldEnd, newEnd } = changedLines(before, after);
  return [before.slice(start, oldEnd), after.slice(start, newEnd)];
}

describe('lines that changed', () => {
  it.each([
    ['in the middle', 'a\nb\nc\n', 'a\nx\nc\n', 'b\n', 'x\n'],
    ['at the start', 'a\nb\n', 'x\nb\n', 'a\n', 'x\n'],
    ['at the end', 'a\nb', 'a\nx', 'b', 'x'],
    ['a letter of a longer line', 'a\nhello\nc', 'a\nhallo\nc', 'hello\n', 'hallo\n'],
    ['lines put in', 'a\nc\n', 'a\nb\nc\n', '', 'b\n'],
    ['lines taken out', 'a\nb\nc\n', 'a\nc\n', 'b\n', ''],
    ['a line of several alike', 'a\na\na\n', 'a\na\n', 'a\n', ''],
    ['all', 'a', 'b', 'a', 'b'],
    ['nothing', 'a\nb\n', 'a\nb\n', '', ''],
    ['from nothing', '', 'a\n', '', 'a\n'],
    ['to nothing', 'a\n', '', 'a\n', ''],
    ['with returns', 'a\rb\rc', 'a\rx\rc', 'b\r', 'x\r'],
    ['with both', 'a\r\nb\r\nc', 'a\r\nx\r\nc', 'b\r\n', 'x\r\n'],
    ['a line joined to the next', 'a\nb\nc\n', 'ab\nc\n', 'a\nb\n', 'ab\n'],
    ['a line parted', 'ab\nc\n', 'a\nb\nc\n', 'ab\n', 'a\nb\n'],
    // A line end of two characters that becomes one is the end of a line that changed.
    ['a line end', 'a\r\nb\n', 'a\rb\n', 'a\r\n', 'a\r'],
    ['a line end that grows', 'a\rb\n', 'a\r\nb\n', 'a\r', 'a\r\n'],
    ['a line end of another kind', 'a\nb\n', 'a\r\nb\n', 'a\n', 'a\r\n'],
  ])('are found: %s', (_, before, after, old, made) => {
    expect(changed(before, after)).toEqual([old, made]);
  });

  const text = fc
    .array(fc.constantFrom('a', 'b', '\n', '\r', '\r\n'), { maxLength: 12 })
    .map((pieces) => pieces.join(''));
  const endsLine = (one: string, at: number) => at === 0 || /\n$|\r$/.test(one.slice(0, at));
  const partsReturn = (one: string, at: number) => one[at - 1] === '\r' && one[at] === '\n';

  it('are whole lines of both texts, outside of which nothing differs', () => {
    fc.assert(
      fc.property(text, text, (before, after) => {
        const { start, oldEnd, newEnd } = changedLines(before, after);
        expect(before.slice(0, start)).toBe(after.slice(0, start));
        expect(before.slice(oldEnd)).toBe(after.slice(newEnd));
        expect(oldEnd).toBeGreaterThanOrEqual(start);
        expect(newEnd).toBeGreaterThanOrEqual(start);
        expect([oldEnd <= before.length, newEnd <= after.length]).toEqual([true, true]);
        for (const [one, end] of [
          [before, oldEnd],
          [after, newEnd],
        ] as const) {
          for (const at of [start, end]) {
            expect(partsReturn(one, at)).toBe(false);
            if (at < one.length) expect(endsLine(one, at)).toBe(true);
          }
        }
      }),
      { numRuns: 1000 },
    );
  });

  it('are few however long the text is', () => {
    const lines = Array.from({ length: 1000 }, (_, at) => `line ${at}\n`);
    const other = lines.with(700, 'changed\n');
    expect(changed(lines.join(''), other.join(''))).toEqual(['line 700\n', 'changed\n']);
  });
});
