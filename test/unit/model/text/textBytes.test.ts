import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { beyondAscii, doubtful, withTextBytes } from '../../../../server/model/text/textBytes';

describe('the bytes of a text', () => {
  it('are its characters where these are ASCII, 128 or more elsewhere, and end as asked', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        withTextBytes(text, 10, (bytes) => {
          expect(bytes[text.length]).toBe(10);
          for (let at = 0; at < text.length; at++) {
            const unit = text.charCodeAt(at);
            if (unit < 128) expect(bytes[at]).toBe(unit);
            else expect([beyondAscii, doubtful]).toContain(bytes[at]);
          }
        });
      }),
    );
  });

  it('stay good while another text is read', () => {
    withTextBytes('outer', 0, (outer) => {
      withTextBytes('inner', 0, (inner) =>
        expect(String.fromCharCode(...inner.subarray(0, 5))).toBe('inner'),
      );
      expect(String.fromCharCode(...outer.subarray(0, 5))).toBe('outer');
    });
    withTextBytes('later', 0, (bytes) => expect(String.fromCharCode(...bytes.subarray(0, 5))).toBe('later'));
  });
});
