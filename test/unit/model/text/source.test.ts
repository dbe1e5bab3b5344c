import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Source } from '../../../../server/model/text/source';
import { mainSpan } from '../../../../server/model/text/span';
import { lineEndOf, wholeLine } from '../../../../server/model/text/textLines';

describe('positions', () => {
  it('count from 1, with LF, CR and CRLF as line ends', () => {
    const source = new Source('a.sfz', 'ab\nc\rd\r\ne');
    const at = (offset: number) => source.positionAt(offset);
    expect(at(0)).toEqual({ line: 1, column: 1 });
    expect(at(2)).toEqual({ line: 1, column: 3 });
    expect(at(3)).toEqual({ line: 2, column: 1 });
    expect(at(5)).toEqual({ line: 3, column: 1 });
    expect(at(6)).toEqual({ line: 3, column: 2 });
    expect(at(8)).toEqual({ line: 4, column: 1 });
    expect(at(9)).toEqual({ line: 4, column: 2 });
    expect(source.lineStarts).toEqual([0, 3, 5, 8]);
  });

  it('are those of the lines before an offset', () => {
    const text = fc.string({ unit: fc.constantFrom('a', 'é', '\r', '\n', '\r\n'), maxLength: 30 });
    fc.assert(
      fc.property(text, fc.nat(60), (content, any) => {
        const offset = Math.min(any, content.length);
        fc.pre(!(content[offset - 1] === '\r' && content[offset] === '\n'));
        const before = content.slice(0, offset).split(/\r\n|\r|\n/);
        expect(new Source('a', content).positionAt(offset)).toEqual({
          line: before.length,
          column: (before.at(-1) as string).length + 1,
        });
      }),
    );
  });
});

describe('line ends', () => {
  it.each([
    ['a\nb', '\n'],
    ['a\r\nb\nc', '\r\n'],
    ['\na\r\n', '\n'],
    ['a', '\n'],
    ['', '\n'],
  ])('of %j are %j', (text, lineEnd) => {
    expect(lineEndOf(text)).toBe(lineEnd);
  });

  it.each([
    ['a\n  [b]  \nc', '  b  \n'],
    ['a\r\n[b]\r\nc', 'b\r\n'],
    ['a\n[b]', 'b'],
    ['[b]\rc', 'b\r'],
    ['[b] c\n', 'b'],
    ['c [b]\n', 'b'],
  ])('go with a span of whole lines: %j', (marked, taken) => {
    const text = marked.replace(/[[\]]/g, '');
    const line = wholeLine(text, mainSpan(marked.indexOf('['), marked.indexOf(']') - 1));
    expect(text.slice(line.start, line.end)).toBe(taken);
  });
});
