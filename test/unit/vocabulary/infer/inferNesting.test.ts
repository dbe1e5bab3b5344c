import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../../server/model/effectiveValues';
import { inferVocabulary } from '../../../../server/vocabulary/infer/inferVocabulary';
import { readVocabularyXml } from '../../../../server/vocabulary/read/readVocabularyXml';

/** The values in force in each region, as the vocabulary that was worked out reads them. */
function regionsOf(text: string): string[] {
  const inferred = inferVocabulary(text, { path: 'grove.xml' });
  if (!inferred) return ['none'];
  const instrument = readVocabularyXml(inferred.vocabulary)(text, { path: 'grove.xml' });
  return [...instrument.regions].map((region) =>
    Object.entries(effectiveValues(instrument, region))
      .map(([name, value]) => `${name}=${value}`)
      .join(' '),
  );
}

describe('one region is enough of an example', () => {
  it('with all in its attributes', () => {
    expect(regionsOf('<grove><birch wave="a.wav" bottom="36" top="40" home="38"/></grove>')).toEqual([
      'sample=a.wav lokey=36 hikey=40 pitch_keycenter=38',
    ]);
  });

  it('with all in child elements', () => {
    const text =
      '<grove><birch><reach low="36" high="40"/><touch from="1" to="80"/><tape>a.wav</tape></birch></grove>';
    expect(regionsOf(text)).toEqual(['lokey=36 hikey=40 lovel=1 hivel=80 sample=a.wav']);
  });

  it('with elements that name their values', () => {
    const text =
      '<grove><birch><leaf is="wave" v="a.wav"/><leaf is="lowNote" v="36"/><leaf is="highNote" v="40"/></birch></grove>';
    expect(regionsOf(text)).toEqual(['sample=a.wav lokey=36 hikey=40']);
  });

  it('in a group with values of its own', () => {
    const text = '<grove><stand gain="-3"><birch wave="a.wav" note="60" vel="1-64"/></stand></grove>';
    expect(regionsOf(text)).toEqual([
      'volume=-3 sample=a.wav lokey=60 hikey=60 pitch_keycenter=60 lovel=1 hivel=64',
    ]);
  });
});

describe('regions at several depths', () => {
  it('in a group and beside it', () => {
    const text =
      '<grove><birch wave="a.wav" note="59"/><stand gain="-6"><birch wave="b.wav" note="60"/></stand></grove>';
    expect(regionsOf(text)).toEqual([
      'sample=a.wav lokey=59 hikey=59 pitch_keycenter=59',
      'volume=-6 sample=b.wav lokey=60 hikey=60 pitch_keycenter=60',
    ]);
  });

  it('in groups that stand in groups of the same name', () => {
    const text =
      '<grove><stand gain="-6"><stand gain="-3"><birch wave="a.wav" note="59"/></stand><birch wave="b.wav" note="60"/></stand></grove>';
    expect(regionsOf(text)).toEqual([
      'volume=-3 sample=a.wav lokey=59 hikey=59 pitch_keycenter=59',
      'volume=-6 sample=b.wav lokey=60 hikey=60 pitch_keycenter=60',
    ]);
  });

  it('with the path in a child element', () => {
    const text =
      '<grove><birch note="59"><tape src="a.wav"/></birch><stand gain="-6"><birch note="60"><tape src="b.wav"/></birch></stand></grove>';
    expect(regionsOf(text)).toEqual([
      'lokey=59 hikey=59 pitch_keycenter=59 sample=a.wav',
      'volume=-6 lokey=60 hikey=60 pitch_keycenter=60 sample=b.wav',
    ]);
  });
});

describe('what stands around regions', () => {
  it('gives the key to several files of one key', () => {
    const text =
      '<grove><tree note="60"><tape file="a.wav" gain="-2"/><tape file="b.wav" gain="-4"/></tree><tree note="62"><tape file="c.wav" gain="-2"/></tree></grove>';
    expect(regionsOf(text).map((one) => one.replace(/ pitch.*? /, ' '))).toEqual([
      'lokey=60 hikey=60 sample=a.wav volume=-2',
      'lokey=60 hikey=60 sample=b.wav volume=-4',
      'lokey=62 hikey=62 sample=c.wav volume=-2',
    ]);
  });

  it('does not count where it is a list of something else', () => {
    const text =
      '<grove><seats><seat low="1" high="9"/><seat low="2" high="7"/></seats><birch wave="a.wav" note="59"/><birch wave="b.wav" note="60"/></grove>';
    expect(regionsOf(text)).toEqual([
      'sample=a.wav lokey=59 hikey=59 pitch_keycenter=59',
      'sample=b.wav lokey=60 hikey=60 pitch_keycenter=60',
    ]);
  });
});

describe('regions that refer to a list of samples', () => {
  it('may do so by numbers', () => {
    const text =
      '<yard><logs><log no="1" file="a.wav"/><log no="2" file="b.wav"/></logs><pile><plank log="2" lowKey="36" highKey="40"/><plank log="1" lowKey="41" highKey="45"/></pile></yard>';
    expect(regionsOf(text)[0]).toContain('sample=b.wav');
    expect(regionsOf(text)[1]).toContain('sample=a.wav');
  });
});

describe('a text that is not well formed', () => {
  it('is understood as far as it can be read', () => {
    const text = '<grove><birch wave="a.wav" bottom="36" top="40">\n<birch wave="b.wav" bottom="41" top="43"';
    expect(regionsOf(text)[0]).toContain('lokey=36 hikey=40');
  });
});
