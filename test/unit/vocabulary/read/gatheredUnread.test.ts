import { describe, expect, it } from 'vitest';
import { readInferred } from '../infer/inferred';

const text = (outer: string, inner: (at: number) => string) =>
  `<box ${outer}>${[40, 41, 42].map((key, at) => `<item wav="${key}.wav" key="${key}" ${inner(at)}/>`).join('')}</box>`;

describe('values that are not read', () => {
  it('are told once for all elements of a name', () => {
    const { unread } = readInferred(text('', (at) => `shelf="${'xyz'[at]}"`));
    expect(unread).toHaveLength(1);
    expect(unread[0]).toMatch(
      /^shelf="x" of <item> is not read:.* 2 more values of <item> are not read either\.$/,
    );
  });

  it('are told together for the places of one element', () => {
    const { unread } = readInferred(text('maker="A" year="1900"', () => ''));
    expect(unread).toHaveLength(1);
    expect(unread[0]).toMatch(/^maker="A" and year="1900" of <box> are not read:/);
  });

  it('are counted where there are many places', () => {
    const { unread } = readInferred(text('maker="A" year="1900" town="B" street="C" house="D"', () => ''));
    expect(unread).toHaveLength(1);
    expect(unread[0]).toContain('town="B" and 2 more places of <box>');
  });
});
