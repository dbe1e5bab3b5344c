import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { code } from '../../../server/features/hover/sampleText';
import { plainFromMarkdown } from '../../../server/features/plainText';
import { escaped } from '../../../server/features/sampleReport/markdown';

describe('plain text of Markdown', () => {
  it('leaves the words', () => {
    expect(plainFromMarkdown('**volume**, the same as **gain**\n\nHere: `-6`')).toBe(
      'volume, the same as gain\n\nHere: -6',
    );
    expect(plainFromMarkdown('from [the group in line 1](<file:///a.sfz#L1>).')).toBe(
      'from the group in line 1.',
    );
    expect(plainFromMarkdown('one\n\n![part](data:image/svg+xml;base64,AA==|width=1)\n\ntwo')).toBe(
      'one\n\ntwo',
    );
  });

  it('gives escaped text and code back', () => {
    const line = fc.string({ minLength: 1, maxLength: 20 }).map((text) => `a${text.replace(/\s+/g, '-')}z`);
    fc.assert(
      fc.property(line, (text) => {
        const seen = plainFromMarkdown(code(text));
        expect(plainFromMarkdown(`${escaped(text)}`)).toBe(seen);
      }),
    );
  });
});
