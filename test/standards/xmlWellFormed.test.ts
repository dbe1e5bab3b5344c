import fc from 'fast-check';
import { XMLValidator } from 'fast-xml-parser';
import { SaxesParser } from 'saxes';
import { describe, expect, it } from 'vitest';
import { decodeXmlAttribute, encodeXmlAttribute } from '../../server/xml/scan/references';
import { damagedXml, wellFormedXml } from '../unit/xml/anyXml';
import { eventsOf, problemsOf } from '../unit/xml/events';

// Well-formedness as XML 1.0 (W3C Recommendation, fifth edition) defines it, judged by two parsers of other makers:
// saxes, which checks all of it, and the validator of fast-xml-parser, which checks part of it.

/** What saxes finds wrong with a text that it reads as XML 1.0. */
function saxesFaults(text: string): string[] {
  const faults: string[] = [];
  const parser = new SaxesParser({ defaultXMLVersion: '1.0', forceXMLVersion: true });
  parser.on('error', (error) => faults.push(error.message));
  parser.write(text).close();
  return faults;
}

/** The elements and attributes that saxes reads. */
function saxesElements(text: string): [string, [string, string][]][] {
  const elements: [string, [string, string][]][] = [];
  const parser = new SaxesParser({ defaultXMLVersion: '1.0', forceXMLVersion: true });
  parser.on('opentag', (tag) => elements.push([tag.name, Object.entries(tag.attributes)]));
  parser.write(text).close();
  return elements;
}

function ourElements(text: string): [string, [string, string][]][] {
  const elements: [string, [string, string][]][] = [];
  for (const event of eventsOf(text)) {
    if (event.kind === 'open') elements.push([event.detail as string, []]);
    if (event.kind === 'attribute' && event.value) {
      const value = decodeXmlAttribute(text.slice(event.value.start, event.value.end));
      elements.at(-1)?.[1].push([event.detail as string, value]);
    }
  }
  return elements;
}

/** saxes takes any two units for a character where the first is the first half of a surrogate pair. */
const loneSurrogate = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/;

/** saxes lets `?` end the name of a processing instruction anywhere; production [16] asks for white space or `?>` there. */
const looseInstruction = /<\?[^\s?]+\?(?!>)/;

describe('well-formedness as saxes judges it', () => {
  it('gives no problem for documents that are well formed', () => {
    fc.assert(
      fc.property(wellFormedXml, (text) => {
        expect(saxesFaults(text)).toEqual([]);
        expect(problemsOf(text)).toEqual([]);
      }),
      { numRuns: 1000 },
    );
  });

  it('gives a problem exactly where a damaged document is not well formed any more', () => {
    fc.assert(
      fc.property(damagedXml, (text) => {
        fc.pre(!text.includes('<!DOCTYPE') && !loneSurrogate.test(text) && !looseInstruction.test(text));
        expect({ text, wrong: problemsOf(text).length > 0 }).toEqual({
          text,
          wrong: saxesFaults(text).length > 0,
        });
      }),
      { numRuns: 1500 },
    );
  });

  it('reads the same elements, attributes and values', () => {
    fc.assert(
      fc.property(wellFormedXml, (text) => {
        const trimmed = saxesElements(text).map(([name, attributes]) => [
          name,
          attributes.map(([key, value]) => [key, value.trim()]),
        ]);
        const ours = ourElements(text).map(([name, attributes]) => [
          name,
          attributes.map(([key, value]) => [key, value.trim()]),
        ]);
        expect(ours).toEqual(trimmed);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('values that we write', () => {
  it('are read by saxes as they were', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (value) => {
        const { text, leftOut } = encodeXmlAttribute(value);
        fc.pre(leftOut.length === 0);
        expect(saxesElements(`<a b="${text}"/>`)).toEqual([['a', [['b', value]]]]);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('well-formedness as fast-xml-parser judges it', () => {
  it('finds a problem wherever its validator does', () => {
    fc.assert(
      fc.property(damagedXml, (text) => {
        // Its validator does not know names outside the Basic Multilingual Plane.
        fc.pre(!text.includes('<!DOCTYPE') && !/[\ud800-\udfff]/.test(text));
        if (XMLValidator.validate(text) !== true)
          expect({ text, problems: problemsOf(text).length }).not.toEqual({ text, problems: 0 });
      }),
      { numRuns: 1000 },
    );
  });
});
