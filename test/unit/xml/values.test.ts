import { describe, expect, it } from 'vitest';
import type { OddVariable } from '../../../server/model/variables/variables';
import { Variables } from '../../../server/model/variables/variables';
import { attributeText, attributeValue } from '../../../server/xml/values';

function read(raw: string, defined: Record<string, string> = {}) {
  const variables = new Variables();
  for (const [name, value] of Object.entries(defined)) variables.define(name, value);
  const odd: OddVariable[] = [];
  return { value: attributeValue(raw, variables, (one) => odd.push(one)), odd };
}

/** XML 1.0 (fifth edition): 2.11 line ends, 3.3.3 white space of attributes is blanks, 4.1 references, 4.6 known entities. */
describe('the value of an attribute', () => {
  it.each([
    ['', ''],
    ['plain', 'plain'],
    ['a b', 'a b'],
    ['a\tb', 'a b'],
    ['a\nb', 'a b'],
    ['a\rb', 'a b'],
    ['a\r\nb', 'a b'],
    ['a\n\nb', 'a  b'],
    ['a\n\rb', 'a  b'],
    ['a&amp;b', 'a&b'],
    ['&lt;&gt;&quot;&apos;', '<>"\''],
    ['a&#10;b', 'a\nb'],
    ['a&#x41;b', 'aAb'],
    // What means nothing stays as it is written.
    ['a&b', 'a&b'],
    ['a&x;b', 'a&x;b'],
    ['a&;b', 'a&;b'],
    ['&&amp;', '&&'],
  ])('%j is %j', (raw, value) => {
    expect(read(raw)).toEqual({ value, odd: [] });
    expect(
      attributeText(raw)
        .map(({ text }) => text)
        .join(''),
    ).toBe(value);
  });

  it('has variables put in, but for those whose sign is written as a reference', () => {
    expect(read('a$x', { x: '1' }).value).toBe('a1');
    expect(read('a&#36;x', { x: '1' }).value).toBe('a$x');
    expect(read('$x&amp;$x', { x: '1' }).value).toBe('1&1');
    expect(read('$x\n$x', { x: '1' }).value).toBe('1 1');
  });

  it('tells of variables that are not there, where they stand', () => {
    const { value, odd } = read('a&amp;b$y');
    expect(value).toBe('a&b$y');
    expect(odd).toHaveLength(1);
    expect([odd[0]?.start, odd[0]?.end]).toEqual([7, 9]);
  });
});

describe('the text of an attribute before variables', () => {
  it('knows which signs start none', () => {
    expect(attributeText('a$x&#36;y\tz')).toEqual([
      { text: 'a$x', literal: false },
      { text: '$', literal: true },
      { text: 'y', literal: false },
      { text: ' ', literal: false },
      { text: 'z', literal: false },
    ]);
  });
});
