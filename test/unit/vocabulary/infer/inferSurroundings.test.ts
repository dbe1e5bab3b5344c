import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../../server/model/effectiveValues';
import { inferVocabulary } from '../../../../server/vocabulary/infer/inferVocabulary';
import { readVocabularyXml } from '../../../../server/vocabulary/read/readVocabularyXml';

/** What the regions of a text come to, with what stands around them. All texts are made up; the truth is theirs. */
function regionsOf(text: string): Record<string, unknown>[] {
  const inferred = inferVocabulary(text, { path: 'shop.xml' });
  if (!inferred) throw new Error('taken for no instrument');
  const instrument = readVocabularyXml(inferred.vocabulary)(text, { path: 'shop.xml' });
  return [...instrument.regions].map((region) => effectiveValues(instrument, region));
}

const cup = (file: string, low: number, high: number, more = '') =>
  `<cup file="${file}" low="${low}" high="${high}" root="${low}"${more}/>`;

describe('what stands beside the regions', () => {
  it.each([
    ['an effect with a gain', '<reverb gain="0.35" mix="20"/>'],
    ['an impulse response', '<space impulse="halls/long.wav" gain="0.35"/>'],
    ['a panel', '<panel><knob image="brass.png" gain="0.9" pan="10"/></panel>'],
    ['a picture under another word', '<front drawing="front.jpg" volume="-3"/>'],
  ])('says nothing of them: %s', (_, beside) => {
    const regions = regionsOf(`<shop>${beside}${cup('a.wav', 40, 49)}${cup('b.wav', 50, 59)}</shop>`);
    expect(regions).toHaveLength(2);
    expect(regions.map(({ sample }) => sample)).toEqual(['a.wav', 'b.wav']);
    for (const region of regions) {
      expect(region).not.toHaveProperty('volume');
      expect(region).not.toHaveProperty('pan');
    }
  });

  it('counts for them where it is neither effect nor panel', () => {
    const regions = regionsOf(
      `<shop><sound volume="-3"/>${cup('a.wav', 40, 49)}${cup('b.wav', 50, 59)}</shop>`,
    );
    expect(regions.map(({ volume }) => volume)).toEqual([-3, -3]);
  });

  it('is no region where it is an effect that names a file', () => {
    const echoes = '<echo file="x.wav" low="1" high="20"/><echo file="y.wav" low="1" high="20"/>';
    const regions = regionsOf(`<shop>${echoes}${cup('a.wav', 40, 49)}</shop>`);
    expect(regions.map(({ sample }) => sample)).toEqual(['a.wav']);
  });
});

describe('ranges that are told apart by an attribute', () => {
  const range = (what: string, from: number, to: number) => `<span of="${what}" from="${from}" to="${to}"/>`;
  const shelf = (file: string, ...inner: string[]) => `<cup><file>${file}</file>${inner.join('')}</cup>`;

  it('are read by its value, in any order', () => {
    const text = `<shop>${shelf('a.wav', range('key', 30, 44), range('velocity', 1, 72))}${shelf(
      'b.wav',
      range('velocity', 73, 127),
      range('key', 30, 44),
    )}${shelf('c.wav', range('key', 45, 60), range('velocity', 1, 127))}</shop>`;
    expect(regionsOf(text)).toEqual([
      { sample: 'a.wav', lokey: 30, hikey: 44, lovel: 1, hivel: 72 },
      { sample: 'b.wav', lokey: 30, hikey: 44, lovel: 73, hivel: 127 },
      { sample: 'c.wav', lokey: 45, hikey: 60, lovel: 1, hivel: 127 },
    ]);
  });
});

describe('a folder that an outer element names', () => {
  it('is put before the names of files in it', () => {
    const shelves = `<shelf folder="Audio/Low">${cup('a.wav', 40, 49)}${cup('b.wav', 50, 59)}</shelf><shelf folder="Audio/High/">${cup('c.wav', 60, 69)}</shelf>`;
    expect(regionsOf(`<shop>${shelves}</shop>`).map(({ sample }) => sample)).toEqual([
      'Audio/Low/a.wav',
      'Audio/Low/b.wav',
      'Audio/High/c.wav',
    ]);
  });
});

describe('times within the sample', () => {
  it('are no velocities', () => {
    const held = (from: string, until: string) => `<hold from="${from}" until="${until}"/>`;
    const drone = (file: string, low: number, inner: string) =>
      `<drone file="${file}" low="${low}" high="${low + 9}">${inner}</drone>`;
    const text = `<shop>${drone('a.wav', 40, held('0.5 s', '2.25 s'))}${drone('b.wav', 50, held('1 s', '1.75 s'))}</shop>`;
    for (const region of regionsOf(text)) {
      expect(region).not.toHaveProperty('lovel');
      expect(region).not.toHaveProperty('hivel');
    }
  });
});
