import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LineBuffer } from '../../../../server/model/text/lineBuffer';

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

  it('knows where each piece of a line comes to stand', () => {
    const pieces = fc.array(fc.oneof(fc.string(), fc.string({ unit: 'binary' }), fc.constant('\n')));
    fc.assert(
      fc.property(pieces, (texts) => {
        const buffer = new LineBuffer('\r\n', 0);
        const starts = texts.map((text) => {
          const { position } = buffer;
          if (text === '\n') buffer.endLine();
          else buffer.add(text);
          return position;
        });
        const whole = buffer.finish();
        expect(whole).toBe(texts.map((text) => (text === '\n' ? '\r\n' : text)).join(''));
        texts.forEach((text, at) => {
          expect(whole.startsWith(text === '\n' ? '\r\n' : text, starts[at])).toBe(true);
        });
      }),
    );
  });

  it('gives a long text in pieces, of which none is much of it', () => {
    const buffer = new LineBuffer('\n', 50_000_000);
    const lines = Array.from({ length: 200_000 }, (_, at) => `line ${at} of a long text`);
    for (const [at, line] of lines.entries()) {
      buffer.ascii(`${line.slice(0, 3)}?`);
      buffer.dropLine();
      buffer.line(at % 70_000 === 0 ? `${line}é` : line);
    }
    const pieces = buffer.pieces();
    const whole = lines.map((line, at) => `${line}${at % 70_000 === 0 ? 'é' : ''}\n`).join('');
    expect(buffer.position).toBe(whole.length);
    expect(pieces.join('')).toBe(whole);
    expect(Math.max(...pieces.map(({ length }) => length))).toBeLessThan(whole.length / 3);
    expect(buffer.room(10).length).toBeLessThan(whole.length / 3);
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
