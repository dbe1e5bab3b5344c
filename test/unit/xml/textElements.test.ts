import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { anyText, damagedXml } from './anyXml';
import type { TextElement } from './events';
import { eventsOf } from './events';

const name = fc.constantFrom('a', 'b', 'loop-start', 'p:q', 'ü', 'a1');
const content = fc.constantFrom(
  ...['12', '-3.50', '+7', '.5', '5.', '-', '.', '1e3', '1 2', ' 12 ', '\n12\n', 'two words', '  x', ''],
  ...[
    'ü',
    '🎵',
    'a &amp; b',
    '&#49;',
    ']]>',
    ']',
    '>',
    '\u0001',
    '\ufffe',
    '<b/>',
    '<!-- c -->',
    '</b>',
    '< 1',
  ],
  ...['123456789012345', '1234567890123456', '<![CDATA[12]]>', '12</a', '12<'],
);
const end = fc.constantFrom('>', ' >', '', ' x>', '/>');
const one = fc
  .tuple(name, content, fc.option(name, { freq: 8 }), end, fc.constantFrom('', '\n'))
  .map(([opened, text, closed, close, gap]) => `<${opened}>${text}</${closed ?? opened}${close}${gap}`);
const elements = fc.array(one, { maxLength: 6 }).map((list) => `<all>${list.join('')}</all>`);

describe('elements that hold a plain text', () => {
  test('are told of as a whole, with the number that they hold', () => {
    const wholes: TextElement[] = [];
    eventsOf(
      '<all><low>36</low><name> Far Mill </name><gain>-1.5</gain><text>a &amp; b</text></all>',
      wholes,
    );
    expect(wholes).toEqual([
      { text: '36', number: 36 },
      { text: 'Far Mill', number: Number.NaN },
      { text: '-1.5', number: -1.5 },
    ]);
  });

  test('say what the same elements say piece by piece', () => {
    fc.assert(
      fc.property(fc.oneof(elements, damagedXml, anyText), (text) => {
        expect(eventsOf(text, [])).toEqual(eventsOf(text));
      }),
      { numRuns: 400 },
    );
  });

  test('hold the number that the language reads in them', () => {
    fc.assert(
      fc.property(elements, (text) => {
        const wholes: TextElement[] = [];
        eventsOf(text, wholes);
        for (const whole of wholes) {
          const isPlain = /^[+-]?(\d+\.?\d*|\.\d+)$/.test(whole.text);
          const isShort = whole.text.replace(/\D/g, '').length <= 15;
          expect(whole.number).toBe(isPlain && isShort ? Number(whole.text) : Number.NaN);
        }
      }),
    );
  });
});
