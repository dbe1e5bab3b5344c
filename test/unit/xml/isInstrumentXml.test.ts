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
    [
      'a.xml',
      '<instrument><group><region><file>a.wav</file><keys low="1" high="9"/></region></group></instrument>',
      false,
    ],
    ['a.xml', '<instrument><region><name>kick</name><key>36</key></region></instrument>', false],
    ['a.txt', '<instrument><region wave="low a.flac" from="36" to="40"/></instrument>', false],
    ['a.xml', '<instrument><region><sample>a.wav</sample></region></instrument>', false],
    ['a.xml', '<instrument><group path="a.wav"/><region sample="b.wav"/></instrument>', true],
    ['a.xml', '<instrument><include path="b.xml"/><region file="a.wav"/></instrument>', true],
    ['a.xml', '<instrument><group sample="a.wav"><region key="60"/></group></instrument>', true],
    ['a.xml', '<instrument><region key="60"><!-- a.wav --></region> a </instrument>', true],
    ['a.xml', '<instrument><region sample="a.wav" span="36-40" pitch="38" gain="2"/></instrument>', false],
    [
      'a.xml',
      '<instrument><region sample="a.wav" lokey="36" hikey="40" notes="x" by="me" on="1"/></instrument>',
      true,
    ],
    ['a.xml', '<instrument><region sample="a.wav" key="36" roto="38"/></instrument>', true],
    ['a.instrument.xml', '<instrument><region sample="a.wav" span="36-40" from="1"/></instrument>', true],
    ['a.sfz', '<region> sample=a.wav', false],
    ['a.sfz', '// <instrument>', false],
    ['a.instrument.xml', '', true],
    ['a.Instrument.XML', '<instrument><regoin/></instrument>', true],
  ])('%s %j: %s', (path, text, is) => {
    expect(isInstrumentXml(text, path)).toBe(is);
  });
});
