import { describe, expect, it } from 'vitest';
import { LineBuffer } from '../../../server/model/text/lineBuffer';
import { addPlainValue, encodedAttributeText, isAttributeName } from '../../../server/xml/attributeText';

/** XML 1.0 (fifth edition), 2.3 and 2.4: what an attribute between double quotes cannot hold is written as a reference. */
describe('a text as the value of an attribute', () => {
  it('has references for what cannot stand between quotes', () => {
    expect(encodedAttributeText([{ text: 'a & "b" <c>', literal: false }])).toEqual({
      text: 'a &amp; &quot;b&quot; &lt;c&gt;',
      leftOut: [],
    });
    expect(encodedAttributeText([{ text: 'plain', literal: true }]).text).toBe('plain');
  });

  it('has a reference for a sign that starts no variable', () => {
    expect(encodedAttributeText([{ text: '$x', literal: false }]).text).toBe('$x');
    expect(encodedAttributeText([{ text: '$x', literal: true }]).text).toBe('&#36;x');
    expect(
      encodedAttributeText([
        { text: '$a$', literal: false },
        { text: '$&b', literal: true },
        { text: 'c$d', literal: false },
      ]).text,
    ).toBe('$a$&#36;&amp;bc$d');
  });

  it('tells what no XML can hold', () => {
    expect(encodedAttributeText([{ text: 'a\u0007$b', literal: true }])).toEqual({
      text: 'a&#36;b',
      leftOut: ['U+0007'],
    });
  });
});

/** Namespaces in XML 1.0 (third edition), section 3: xmlns declares a namespace, and a colon parts a prefix. */
describe('a name that can be an attribute', () => {
  it.each(['volume', 'lfo01_freq', 'a.b', '_x', 'größe', 'xmlnsx'])('%s', (name) => {
    expect(isAttributeName(name)).toBe(true);
  });

  it.each(['', '1a', 'a b', 'a:b', 'xmlns', '-a', 'a=b'])('"%s" is none', (name) => {
    expect(isAttributeName(name)).toBe(false);
  });
});

describe('a value added from bytes', () => {
  const add = (text: string, from = 0, to = text.length) => {
    const lines = new LineBuffer('\n', 0);
    lines.add('x');
    const codes = Uint8Array.from(text, (sign) => sign.charCodeAt(0));
    return { is: addPlainValue(lines, codes, from, to), lines };
  };

  it('stands for itself where it needs no reference', () => {
    for (const text of ['plain', 'a b', '~', ' ', "'", '']) {
      const { is, lines } = add(text);
      expect(is).toBe(true);
      expect(lines.length).toBe(1 + text.length);
    }
    expect(add('abcdef', 2, 4).lines.length).toBe(3);
    expect(add('a&b', 0, 1).is).toBe(true);
  });

  it.each(['a&b', '<', '>', '"', '$x', 'a\tb', '\n', '\u007f', 'ä', '\u001f'])(
    'is left to others: %j',
    (text) => {
      const { is, lines } = add(text);
      expect(is).toBe(false);
      expect(lines.length).toBe(1);
    },
  );
});
