import { describe, expect, it } from 'vitest';
import { isInstrumentXml } from '../../../server/xml/isInstrumentXml';

describe('whether XML is an instrument', () => {
  it.each([
    ['a.xml', '<instrument><region/></instrument>', true],
    [
      'a.xml',
      '\ufeff<?xml version="1.0"?>\n<!-- x --><!DOCTYPE y [<!ENTITY z "<q>">]>\n<instrument a="1"/>',
      true,
    ],
    ['a.xml', '<instrument>\n  <!-- none -->\n</instrument>', true],
    ['a.xml', '<instrument><include path="b.xml"/></instrument>', true],
    ['a.xml', '<instrument><region', true],
    ['a.xml', '<instrument><name>Oboe</name><region/></instrument>', false],
    ['a.xml', '<instrument xmlns="http://example.org/x"><region/></instrument>', false],
    ['a.xml', '<instruments><region/></instruments>', false],
    ['a.xml', '<project><instrument><region/></instrument></project>', false],
    ['a.xml', '', false],
    ['a.sfz', '<region> sample=a.wav', false],
    ['a.sfz', '// <instrument>', false],
    ['a.instrument.xml', '', true],
    ['a.Instrument.XML', '<instrument><regoin/></instrument>', true],
  ])('%s %j: %s', (path, text, is) => {
    expect(isInstrumentXml(text, path)).toBe(is);
  });
});
