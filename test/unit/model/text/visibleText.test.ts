import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { jsonText, visibleLines, visibleText } from '../../../../server/model/text/visibleText';

// ECMA-48 (5th edition, 5.2 and 5.3): control functions are the codes 0 to 31, 127 and 128 to 159.
const controls = [...Array(32).keys(), 127, ...Array.from({ length: 32 }, (_, at) => 128 + at)];
// Unicode Standard Annex #9 (revision 50, 2): the marks, embeddings, overrides and isolates.
const directions = [
  0x61c, 0x200e, 0x200f, 0x202a, 0x202b, 0x202c, 0x202d, 0x202e, 0x2066, 0x2067, 0x2068, 0x2069,
];

describe('text with signs that are not seen', () => {
  it('shows each as a picture or a number', () => {
    expect(visibleText('a\u001b[2Jb\u0007\r\n')).toBe('a␛[2Jb␇␍␊');
    expect(visibleText('\u007f\u009b1m\u202e')).toBe('␡<U+009B>1m<U+202E>');
    for (const code of [...controls, ...directions]) {
      const sign = String.fromCharCode(code);
      expect(visibleText(`x${sign}y`)).not.toContain(sign);
    }
  });

  it('is one line, and leaves other text as it is', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const seen = visibleText(text);
        expect(seen).not.toMatch(/[\n\r\u2028\u2029\u0085]/);
        if (/^[\p{L}\p{N}\p{P}\p{S} ]*$/u.test(text)) expect(seen).toBe(text);
      }),
    );
    expect(visibleLines('a\u001b\nb\n')).toBe('a␛\nb\n');
  });

  it('is escaped in JSON, which reads the same', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const json = jsonText({ text });
        expect(JSON.parse(json)).toEqual({ text });
        for (const code of [...controls, ...directions]) {
          if (code !== 10) expect(json).not.toContain(String.fromCharCode(code));
        }
      }),
    );
  });
});
