import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { characterCodes } from '../../../server/model/characterCodes';

describe('character codes', () => {
  it('are the characters where these are ASCII, 128 or more elsewhere, and end with a line feed', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        const codes = characterCodes(text);
        expect(codes.length).toBe(text.length + 1);
        expect(codes[text.length]).toBe('\n'.charCodeAt(0));
        for (let at = 0; at < text.length; at++) {
          const unit = text.charCodeAt(at);
          if (unit < 128) expect(codes[at]).toBe(unit);
          else expect(codes[at]).toBeGreaterThanOrEqual(128);
        }
      }),
    );
  });
});
