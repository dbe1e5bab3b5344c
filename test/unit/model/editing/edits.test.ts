import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { joinEdits, puttingBefore, puttingBehind, replacing } from '../../../../server/model/editing/edits';
import type { TextEdit } from '../../../../server/model/finding';
import { spanIn } from '../../../../server/model/text/span';

const edit = (start: number, end: number, newText: string, source = 0): TextEdit =>
  replacing(spanIn(source, start, end), newText);
const shown = (edits: TextEdit[]) =>
  edits.map(({ source, start, end, newText }) => `${source}: ${start}-${end} "${newText}"`);

describe('an edit', () => {
  it('puts a text in the place of a span, before it or behind it', () => {
    expect(shown([replacing(spanIn(1, 3, 5), 'x')])).toEqual(['1: 3-5 "x"']);
    expect(shown([puttingBefore(spanIn(1, 3, 5), 'x')])).toEqual(['1: 3-3 "x"']);
    expect(shown([puttingBehind(spanIn(1, 3, 5), 'x')])).toEqual(['1: 5-5 "x"']);
  });
});

describe('edits made one', () => {
  it.each<[string, TextEdit[], string[]]>([
    ['none', [], []],
    ['in the order of the text', [edit(8, 9, 'b'), edit(1, 2, 'a')], ['0: 1-2 "a"', '0: 8-9 "b"']],
    ['file by file', [edit(1, 2, 'b', 1), edit(8, 9, 'a')], ['0: 8-9 "a"', '1: 1-2 "b"']],
    ['joined where both take the same out', [edit(1, 5, 'a'), edit(3, 8, 'b')], ['0: 1-8 "ab"']],
    ['joined where one holds the other', [edit(1, 9, 'a'), edit(3, 4, 'b')], ['0: 1-9 "ab"']],
    ['joined at one place', [edit(3, 3, 'a'), edit(3, 3, 'b')], ['0: 3-3 "ab"']],
    ['added where text is taken out', [edit(3, 3, 'a'), edit(3, 8, '')], ['0: 3-8 "a"']],
    ['added within what is taken out', [edit(1, 8, ''), edit(3, 3, 'a')], ['0: 1-8 "a"']],
    [
      'apart where one starts behind the other',
      [edit(1, 3, 'a'), edit(3, 5, 'b')],
      ['0: 1-3 "a"', '0: 3-5 "b"'],
    ],
    ['apart in two files', [edit(1, 5, 'a'), edit(3, 8, 'b', 1)], ['0: 1-5 "a"', '1: 3-8 "b"']],
    ['apart at one place of two files', [edit(3, 3, 'a'), edit(3, 3, 'b', 1)], ['0: 3-3 "a"', '1: 3-3 "b"']],
  ])('are %s', (_, edits, expected) => {
    expect(shown(joinEdits(edits))).toEqual(expected);
  });

  it('leave those that were given as they were', () => {
    const given = [edit(1, 5, 'a'), edit(3, 8, 'b')];
    joinEdits(given);
    expect(shown(given)).toEqual(['0: 1-5 "a"', '0: 3-8 "b"']);
  });

  it('never lie over each other, and keep every text', () => {
    const any = fc
      .tuple(fc.nat(20), fc.nat(5), fc.constantFrom('a', 'b', ''), fc.nat(1))
      .map(([start, length, text, source]) => edit(start, start + length, text, source));
    fc.assert(
      fc.property(fc.array(any, { maxLength: 8 }), (edits) => {
        const joined = joinEdits(edits);
        for (const [at, one] of joined.entries()) {
          const before = joined[at - 1];
          if (before?.source === one.source) expect(one.start).toBeGreaterThanOrEqual(before.end);
        }
        const letters = (list: TextEdit[]) =>
          [...list.map(({ newText }) => newText).join('')].sort().join('');
        expect(letters(joined)).toBe(letters(edits));
      }),
    );
  });
});
