import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isXmlCharacter } from '../../../../server/xml/scan/characters';
import {
  decodeXmlAttribute,
  decodeXmlText,
  encodeXmlAttribute,
  encodeXmlComment,
} from '../../../../server/xml/scan/references';
import { problemsOf } from '../events';

// XML 1.0 (W3C Recommendation, fifth edition): 2.2 characters, 2.5 comments, 3.3.3 attribute values, 4.1 and 4.6 references.
describe('references', () => {
  it.each([
    ['a &amp;&lt;&gt;&quot;&apos; b', `a &<>"' b`],
    ['&#233;&#xE9;&#Xe9;&#x1F3B5;', 'éé&#Xe9;🎵'],
    ['&amp;amp;', '&amp;'],
    ['&#65', '&#65'],
    ['none', 'none'],
  ])('%j reads %j', (written, read) => {
    expect(decodeXmlText(written)).toBe(read);
  });

  it('that mean nothing stay, and are told with their place', () => {
    const told: string[] = [];
    const text = 'a &b; & &#0; &#xFFFE; &lt';
    expect(decodeXmlText(text, (start, end) => told.push(text.slice(start, end)))).toBe(text);
    expect(told).toEqual(['&b;', '&', '&#0;', '&#xFFFE;', '&lt']);
  });
});

describe('attribute values', () => {
  it('have blanks for white space, one for CRLF, but not for references', () => {
    expect(decodeXmlAttribute('a\tb\nc\r\nd\re&#10;f')).toBe('a b c d e\nf');
  });

  it('read back as they were, whatever they hold', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (value) => {
        const { text, leftOut } = encodeXmlAttribute(value);
        const held = [...value].filter((one) => isXmlCharacter(one.codePointAt(0) as number));
        expect(decodeXmlAttribute(text)).toBe(held.join(''));
        expect(leftOut).toHaveLength([...value].length - held.length);
        expect(problemsOf(`<a b="${text}"/>`)).toEqual([]);
      }),
      { numRuns: 2000 },
    );
  });

  it('say which characters could not be held', () => {
    expect(encodeXmlAttribute('a\u0007b\ufffe\ud800')).toEqual({
      text: 'ab',
      leftOut: ['U+0007', 'U+FFFE', 'U+D800'],
    });
  });
});

describe('comments', () => {
  it('can hold any text', () => {
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom('-', '>', 'a', '\u0001', '--', '<!--', ' '), { maxLength: 8 }),
        (parts) => {
          expect(problemsOf(`<!-- ${encodeXmlComment(parts.join(''))} --><a/>`)).toEqual([]);
        },
      ),
    );
  });
});
