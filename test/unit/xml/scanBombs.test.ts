import { describe, expect, it } from 'vitest';
import { usualFormatStyle } from '../../../server/model/formatStyle';
import { mostFindings } from '../../../server/model/instrumentBuilder';
import { formatXml } from '../../../server/xml/format';
import { readXml } from '../../../server/xml/read';
import { countsOf } from './countedXml';

// Texts made to cost a reader far more than they are long. None is timed: what each makes the reader do is counted, and
// one that goes back over its text again and again would not come to an end here at all.

const million = 1_000_000;
const many = (count: number, one: (at: number) => string) =>
  Array.from({ length: count }, (_, at) => one(at)).join('');
const declared = (declarations: string, content: string) => `<!DOCTYPE a [${declarations}]><a>${content}</a>`;

describe('a text made to be costly', () => {
  it('may nest a million deep', () => {
    const { open, close, problem } = countsOf('<a>'.repeat(million) + '</a>'.repeat(million));
    expect([open, close, problem]).toEqual([million, million, 0]);
  });

  it('may leave a million elements open', () => {
    const { open, close } = countsOf('<a>'.repeat(million));
    expect([open, close]).toEqual([million, million]);
  });

  it('may hold a value of ten million characters', () => {
    const { attribute, longest } = countsOf(`<a b="${'x'.repeat(10 * million)}"/>`);
    expect([attribute, longest]).toEqual([1, 10 * million]);
  });

  it('may have a million attributes in one tag, each with a name of its own', () => {
    const { attribute, names, problem } = countsOf(`<a ${many(million, (at) => `n${at}="1" `)}/>`);
    expect([attribute, names, problem]).toEqual([million, million, 0]);
  });

  it('may have names that all have one hash', () => {
    // 31 · 65 + 97 = 31 · 66 + 66, so "Aa" and "BB" can change places.
    const name = (number: number) =>
      Array.from({ length: 16 }, (_, bit) => (number & (1 << bit) ? 'Aa' : 'BB')).join('');
    const { names, problem } = countsOf(`<a ${many(1 << 16, (at) => `${name(at)}="1" `)}/>`);
    expect([names, problem]).toEqual([1 << 16, 0]);
  });

  it('may hold fifty million "<"', () => {
    const { problem, characters } = countsOf(`<a>${'<'.repeat(50 * million)}`);
    expect(characters).toBe(1);
    expect(problem).toBe(2);
  });
});

describe('entities made to grow', () => {
  it.each([
    // Each refers ten times to the one before: 10^100 characters.
    [
      'tenfold',
      declared(
        `<!ENTITY e0 "ha">${many(100, (at) => `<!ENTITY e${at + 1} "${`&e${at};`.repeat(10)}">`)}`,
        '&e100;',
      ),
    ],
    [
      'in values',
      declared(
        `<!ENTITY e0 "ha">${many(100, (at) => `<!ENTITY e${at + 1} "${`&e${at};`.repeat(10)}">`)}`,
        '<b c="&e100;"/>',
      ),
    ],
    [
      'in a long line',
      declared(
        `<!ENTITY e0 "ha">${many(20_000, (at) => `<!ENTITY e${at + 1} "&e${at};&e${at};">`)}`,
        '&e20000;',
      ),
    ],
    [
      'from the last one on',
      declared(
        `${many(20_000, (at) => `<!ENTITY e${at} "<b>&e${at + 1};</b>">`)}<!ENTITY e20000 "">`,
        '&e0;',
      ),
    ],
    ['by length times number', declared(`<!ENTITY e "${'<b/>'.repeat(100_000)}">`, '&e;'.repeat(100_000))],
  ])('%s are read once and never put in', (_, text) => {
    const { remark, problem, characters, open } = countsOf(text);
    expect([remark, problem]).toEqual([2, 0]);
    expect(characters + open).toBeLessThanOrEqual(3);
  });

  it('of parameters are read once', () => {
    const growing = many(30, (at) => `<!ENTITY % p${at + 1} "&#37;p${at};&#37;p${at};">`);
    const { problem } = countsOf(declared(`<!ENTITY % p0 "<!ELEMENT a >">${growing}%p30;%p30;`, ''));
    expect(problem).toBe(1);
  });

  it('round in a circle are told', () => {
    const circle = many(1000, (at) => `<!ENTITY e${at} "&e${(at + 1) % 1000};">`);
    const { problem } = countsOf(
      declared(
        circle,
        many(1000, (at) => `&e${at};`),
      ),
    );
    expect(problem).toBe(1000);
  });

  it('may be two hundred thousand', () => {
    const count = 200_000;
    const text = declared(
      many(count, (at) => `<!ENTITY e${at} "x">`),
      many(count, (at) => `&e${at};`),
    );
    const { problem, remark } = countsOf(text);
    expect(problem).toBe(0);
    expect(remark).toBeLessThan(mostFindings);
  });
});

describe('declarations made to be costly', () => {
  it.each([
    ['groups a million deep', `<!ELEMENT a ${'('.repeat(million)}b${')'.repeat(million)}>`, 0],
    ['groups that stay open', `<!ELEMENT a ${'('.repeat(million)}>`, 1],
    ['a million choices', `<!ATTLIST a b (${many(million, (at) => `c${at}|`)}d) "d">`, 0],
    ['a million faults', '<!X>'.repeat(million), million],
  ])('%s', (_, declarations, problems) => {
    expect(countsOf(declared(declarations, '')).problem).toBe(problems);
  });

  it.each([
    ['document types', '<!DOCTYPE a ['],
    ['comments', '<!DOCTYPE a [<!-- '],
    ['instructions', '<!DOCTYPE a [<? '],
    ['quotes', '<!DOCTYPE a [<!ENTITY e "'],
  ])('%s that never end', (_, start) => {
    expect(countsOf(start.repeat(million)).problem).toBeGreaterThan(0);
  });
});

describe('findings', () => {
  it.each([
    ['faults', `<instrument>${'<region key=/>'.repeat(20_000)}</instrument>`],
    ['references', `<instrument>${'<region sample="&x;"/>'.repeat(20_000)}</instrument>`],
    ['open elements', '<instrument>'.repeat(20_000)],
  ])('of very many %s are no more than can be shown', (_, text) => {
    expect(readXml(text, { path: 'a.instrument.xml' }).findings).toHaveLength(mostFindings);
  });
});

describe('laying out', () => {
  it('indents a text that nests very deep no further than anybody reads', () => {
    const text = '<group>\n'.repeat(5000) + '</group>\n'.repeat(5000);
    const edits = formatXml(readXml(text, { path: 'a.instrument.xml' }), usualFormatStyle);
    expect(edits.length).toBeGreaterThan(5000);
    expect(Math.max(...edits.map((edit) => edit.newText.length))).toBeLessThan(1000);
  });

  it('looks at one long line once', () => {
    const text = '<instrument>'.repeat(100_000);
    expect(formatXml(readXml(text, { path: 'a.instrument.xml' }), usualFormatStyle)).toEqual([]);
  });
});
