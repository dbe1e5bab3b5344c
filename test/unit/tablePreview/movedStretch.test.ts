import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { movedStretch } from '../../../client/tablePreview/movedStretch';

describe('a stretch of a text that is edited', () => {
  it('moves with what grows before it and is lost when it is changed itself', () => {
    const change = (rangeOffset: number, rangeLength: number, text: string) => ({
      rangeOffset,
      rangeLength,
      text,
    });
    expect(movedStretch({ start: 5, end: 8 }, [change(0, 2, 'abcd')])).toEqual({ start: 7, end: 10 });
    expect(movedStretch({ start: 5, end: 8 }, [change(8, 1, 'abcd')])).toEqual({ start: 5, end: 8 });
    expect(movedStretch({ start: 5, end: 8 }, [change(6, 0, 'x')])).toBeUndefined();
    expect(movedStretch({ start: 5, end: 8 }, [change(4, 2, '')])).toBeUndefined();
    expect(movedStretch({ start: 5, end: 8 }, [change(9, 0, 'a'), change(1, 1, '')])).toEqual({
      start: 4,
      end: 7,
    });
  });

  it('holds the same text afterwards', () => {
    fc.assert(
      fc.property(
        fc.string({ maxLength: 20 }),
        fc.string({ minLength: 1, maxLength: 20 }),
        fc.string({ maxLength: 20 }),
        fc.nat(),
        fc.nat(),
        fc.string({ maxLength: 5 }),
        (before, held, after, at, length, text) => {
          const whole = before + held + after;
          const rangeOffset = at % (whole.length + 1);
          const rangeLength = length % (whole.length - rangeOffset + 1);
          const changed = whole.slice(0, rangeOffset) + text + whole.slice(rangeOffset + rangeLength);
          const stretch = { start: before.length, end: before.length + held.length };
          const moved = movedStretch(stretch, [{ rangeOffset, rangeLength, text }]);
          if (moved) expect(changed.slice(moved.start, moved.end)).toBe(held);
          else {
            expect(rangeOffset).toBeLessThan(stretch.end);
            expect(rangeOffset + rangeLength).toBeGreaterThan(stretch.start);
          }
        },
      ),
    );
  });
});
