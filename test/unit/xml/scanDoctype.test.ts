import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Parameter } from '../../../server/model/parameterNames';
import { readXml } from '../../../server/xml/read';
import { damagedDoctypeXml } from './anyDoctype';
import { eventsOf, problemsOf, remarksOf } from './events';

// What is well formed is judged by other readers, and by the documents of the W3C, in test/standards. This says where the
// findings stand, and what they say. XML 1.0 (W3C Recommendation, fifth edition) throughout.

/** Problems as `text at the span: message`. */
function messagesOf(text: string): string[] {
  return eventsOf(text)
    .filter((event) => event.kind === 'problem')
    .map(({ start, end, detail }) => `${text.slice(start, end)}: ${detail}`);
}

const inside = (declarations: string) => `<!DOCTYPE a [${declarations}]><a/>`;

describe('a fault in a declaration', () => {
  it.each([
    ['<!ELEMENT a>', '>: A space is missing before what the element holds.'],
    ['<!ELEMENT a none>', 'n: What the element holds is missing here: EMPTY, ANY or a group in brackets.'],
    ['<!ELEMENT a (b,c|d)>', '|: One group cannot have both "," and "|".'],
    ['<!ELEMENT a (b c)>', 'c: A ",", "|" or ")" is missing here.'],
    ['<!ELEMENT a ()>', '): The name of an element, or a group in brackets, is missing here.'],
    ['<!ELEMENT a (#PCDATA|b)>', '>: A group with #PCDATA and names ends with ")*".'],
    ['<!ELEMENT a EMPTY x>', 'x: A ">" is missing here: the declaration ends before this.'],
    ['<!ATTLIST a b WORD "1">', 'WORD: This is no type of an attribute, such as CDATA.'],
    ['<!ATTLIST a b CDATA 1>', '1: #REQUIRED, #IMPLIED or a value is missing here, in quotes.'],
    ['<!ATTLIST a b CDATA "<">', '<: A value cannot hold a bare "<". Write &lt;.'],
    ['<!ATTLIST a b (c d) "c">', 'd: A "|" or ")" is missing here.'],
    ['<!ENTITY e "50%">', '%: A "%" cannot stand in the text of an entity. Write &#37;.'],
    ['<!ENTITY e "a & b">', '&: A bare "&" cannot stand here. Write &amp;.'],
    ['<!ENTITY e SYSTEM x>', 'x: A path is missing here, in quotes.'],
    ['<!ENTITY e PUBLIC "é" "x">', 'é: This public name has a character that XML does not allow in one.'],
    [
      '<!ENTITY e "x>',
      '<!DOCTYPE: This document type declaration is not closed. Put ">" at its end, and close each quote and bracket in it.',
    ],
    ['<!NOTATION n "x">', '": SYSTEM or PUBLIC is missing here.'],
    ['<!-- a -- b -->', '--: A comment cannot hold "--", nor end with "--->".'],
    ['%e', '%e: A "%" stands before the name of an entity and ";".'],
    ['<!ELEMENT a ANY>\u0001', '\u0001: XML cannot hold the character U+0001. Remove it.'],
  ])('is told at its place: %s', (declaration, message) => {
    expect(messagesOf(inside(declaration))).toContain(message);
  });

  it('leaves those around it alone', () => {
    const text = '<!DOCTYPE a [<!ELEMENT a (b|)><!ENTITY e "x"><!ENTITY f y><!ELEMENT b ANY>]><a>&e;</a>';
    expect(problemsOf(text)).toEqual([')', 'y']);
    expect(remarksOf(text)).toEqual(['<!DOCTYPE', '&e;']);
  });

  it('in what a parameter entity stands for is told where that is referred to', () => {
    expect(messagesOf(inside('<!ENTITY % p "<!ELEMENT a >">%p;'))).toEqual([
      '%p;: %p; stands for declarations with a fault: What the element holds is missing here: EMPTY, ANY or a group in brackets.',
    ]);
  });
});

describe('a document type declaration', () => {
  it.each([
    ['<a/><!DOCTYPE a>', ['<!DOCTYPE']],
    ['<!DOCTYPE a><!DOCTYPE a><a/>', ['<!DOCTYPE']],
    ['<a><!DOCTYPE a></a>', ['<!DOCTYPE']],
    ['<!DOCTYPE><a/>', ['>']],
    ['<!DOCTYPE a b><a/>', ['b']],
    ['<!DOCTYPE a SYSTEM><a/>', ['>']],
    ['<!DOCTYPE a [<!ELEMENT a ANY>', ['<!DOCTYPE', '']],
    ['<!doctype a><a/>', ['<!doctype a>']],
  ])('is out of place or out of order: %s', (text, problems) => {
    expect(problemsOf(text)).toEqual(problems);
  });

  it('declares an entity once', () => {
    const text = '<!DOCTYPE a [<!ENTITY e "1"><!ENTITY e "2">]><a/>';
    expect(problemsOf(text)).toEqual([]);
    expect(eventsOf(text).filter((one) => one.kind === 'remark')[1]).toMatchObject({
      start: text.lastIndexOf('e "2"'),
    });
  });
});

describe('a reference to an entity', () => {
  const refer = (declarations: string, content: string) => `<!DOCTYPE a [${declarations}]><a>${content}</a>`;

  it.each([
    ['<!ENTITY e "&f;"><!ENTITY f "x&e;">', '&e;', '&e;: &e; cannot stand here: "e" refers to itself.'],
    [
      '<!ENTITY e "<b>">',
      '&e;',
      '&e;: &e; cannot stand here: "e" stands for "<b>", which is not well formed by itself.',
    ],
    [
      '<!ENTITY e "</a><a>">',
      '&e;',
      '&e;: &e; cannot stand here: "e" stands for "</a><a>", which is not well formed by itself.',
    ],
    [
      '<!ENTITY e "</e><e>">',
      '&e;',
      '&e;: &e; cannot stand here: "e" stands for "</e><e>", which is not well formed by itself.',
    ],
    [
      '<!ENTITY e "&#60;">',
      '<b c="&e;"/>',
      '&e;: &e; cannot stand here: "e" stands for "<", and a value cannot hold "<".',
    ],
    [
      '<!ENTITY e SYSTEM "x">',
      '<b c="&e;"/>',
      '&e;: &e; cannot stand here: "e" stands for another file, which a value cannot refer to.',
    ],
    [
      '<!ENTITY e SYSTEM "x" NDATA n>',
      '&e;',
      '&e;: &e; cannot stand here: "e" stands for data other than XML.',
    ],
    ['<!ENTITY e "&f;">', '&e;', '&e;: &e; cannot stand here: "e" refers to &f;, which is not declared.'],
  ])('that cannot be is told why: %s in %s', (declarations, content, message) => {
    expect(messagesOf(refer(declarations, content))).toEqual([message]);
  });

  it('that cannot be leads to the declaration', () => {
    const text = refer('<!ENTITY eel "<b>">', '&eel;');
    const { related } = eventsOf(text).find((one) => one.kind === 'problem') ?? {};
    expect(text.slice(related?.start, related?.end)).toBe('eel');
  });

  it('that is in order is remarked on once for each entity', () => {
    expect(remarksOf(refer('<!ENTITY e "x"><!ENTITY f SYSTEM "y">', '&e;&e;&f;<b c="&e;"/>'))).toEqual([
      '<!DOCTYPE',
      '&e;',
      '&f;',
    ]);
  });

  // Section 4.1, "Entity Declared".
  it.each([
    ['<a>&e;</a>', ['&e;']],
    ['<!DOCTYPE a><a>&e;</a>', ['&e;']],
    ['<!DOCTYPE a SYSTEM "x"><a>&e;</a>', []],
    ['<!DOCTYPE a [<!ENTITY % p "">%p;]><a>&e;</a>', []],
    ['<?xml version="1.0" standalone="yes"?><!DOCTYPE a SYSTEM "x"><a>&e;</a>', ['&e;']],
    ['<!DOCTYPE a [<!ATTLIST a b CDATA "&e;"><!ENTITY e "x">]><a/>', ['&e;']],
  ])('to none that is known is a fault unless other files may declare it: %s', (text, problems) => {
    expect(problemsOf(text)).toEqual(problems);
  });

  it('stays as it is written in the value that is read', () => {
    const text =
      '<!DOCTYPE instrument [<!ENTITY low "36">]><instrument><region sample="&low;.wav" lokey="&low;"/></instrument>';
    const instrument = readXml(text, { path: 'a.instrument.xml' });
    expect(instrument.findings.filter((one) => one.code === 'syntax-error')).toMatchObject([
      { severity: 'warning', start: 0, end: 9 },
      { severity: 'warning', start: text.indexOf('&low;') },
    ]);
    const [region = -1] = instrument.regions;
    expect(instrument.valueText(instrument.effective(region, Parameter.sample))).toBe('&low;.wav');
  });
});

describe('any document type declaration', () => {
  it('is read to its end, with findings that lie inside the text', () => {
    fc.assert(
      fc.property(damagedDoctypeXml, (text) => {
        const outside = eventsOf(text).filter(
          ({ start, end }) => !(start >= 0 && end >= start && end <= text.length),
        );
        expect(outside).toEqual([]);
      }),
      { numRuns: 2000 },
    );
  });
});
