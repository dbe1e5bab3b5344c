import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LineBuffer } from '../../../server/model/lineBuffer';

describe('a text put together line by line', () => {
  it('keeps all lines, in order, whatever characters they hold', () => {
    const lines = fc.array(
      fc.oneof(fc.string(), fc.string({ unit: 'binary' }), fc.constant('x'.repeat(5000))),
    );
    fc.assert(
      fc.property(lines, fc.constantFrom('\n', '\r\n'), (texts, lineEnd) => {
        const buffer = new LineBuffer(lineEnd, 0);
        for (const text of texts) buffer.line(text);
        expect(buffer.isEmpty).toBe(texts.length === 0);
        expect(buffer.finish()).toBe(texts.map((text) => text + lineEnd).join(''));
      }),
    );
  });

  it('leaves out a line that is not gone on with', () => {
    const buffer = new LineBuffer('\n', 0);
    buffer.line('one');
    expect(buffer.ascii('two')).toBe(true);
    expect(buffer.ascii('drei ü')).toBe(false);
    buffer.dropLine();
    buffer.line('three');
    expect(buffer.finish()).toBe('one\nthree\n');
  });
});
