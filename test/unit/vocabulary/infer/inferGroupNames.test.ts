import { describe, expect, it } from 'vitest';
import { readInferred } from './inferred';

function labels(text: string): (string | undefined)[] {
  return readInferred(text).regions.map((region) => /group_label=(.*?)(?= \w+=|$)/.exec(region)?.[1]);
}

const zones = (attribute: string, ...values: string[]) =>
  values
    .map((value, at) => `<slot wave="${at}.wav" low="40" high="47" root="44" ${attribute}="${value}"/>`)
    .join('');

describe('the name of a group', () => {
  it.each([
    [
      '<stands><stand tag="n" title="Near" gain="-1"/><stand tag="f" title="Far" gain="-4"/></stands>',
      'stand',
    ],
    ['<mikes><mike code="n" label="Near"/><mike code="f" label="Far"/></mikes>', 'mike'],
    [
      '<plätze><platz><kennung>n</kennung><name>Near</name></platz><platz><kennung>f</kennung><name>Far</name></platz></plätze>',
      'platz',
    ],
  ])('is that of the entry that regions refer to: %s', (list, reference) => {
    const text = `<dulcian>${list}${zones(reference, 'n', 'f')}</dulcian>`;
    expect(labels(text)).toEqual(['Near', 'Far']);
  });

  it('is what regions refer to where the entry has no other', () => {
    const list = '<mikes><mike name="desk" gain="-1"/><mike name="hall" gain="-4"/></mikes>';
    expect(labels(`<dulcian>${list}${zones('mike', 'desk', 'hall')}</dulcian>`)).toEqual(['desk', 'hall']);
  });

  it('is that of elements beside one another that hold regions', () => {
    const text = `<dulcian><close>${zones('x', '1')}</close><balcony>${zones('x', '1')}</balcony></dulcian>`;
    expect(labels(text)).toEqual(['close', 'balcony']);
  });

  it('is that of an element that names the file of one microphone', () => {
    const text =
      '<dulcian><slot low="40" high="47"><near>a.wav</near><far>b.wav</far></slot><slot low="48" high="55"><near>c.wav</near><far>d.wav</far></slot></dulcian>';
    expect(labels(text)).toEqual(['near', 'far', 'near', 'far']);
  });

  it('is none where elements around one another hold regions', () => {
    const text = `<dulcian>${zones('x', '1')}<balcony>${zones('x', '1')}</balcony></dulcian>`;
    expect(labels(text)).toEqual([undefined, undefined]);
  });
});

describe('the key of the outermost zone, where one end of the ranges is given', () => {
  const slots = (end: string, ...keys: string[]) =>
    keys.map((key, at) => `<slot wave="${at}.wav" ${end}="${key}"/>`).join('');
  it.each([
    ['Each slot begins above the one before, the first begins on key 36.', 'top', ['40', '47'], 'lokey=36'],
    ['La première commence à la touche 36', 'top', ['40', '47'], 'lokey=36'],
    ['The lowest slot starts at C2 (middle C is C4).', 'top', ['E2', 'B2'], 'lokey=36'],
    ["L'ultima zona finisce al tasto 60", 'low', ['40', '47'], 'hikey=60'],
  ])('%s', (said, end, keys, expected) => {
    const { regions } = readInferred(`<!-- ${said} --><rebec>${slots(end, ...keys)}</rebec>`);
    expect(regions[end === 'top' ? 0 : 1]).toContain(expected);
  });

  it('is left alone where what is said lies within the ranges', () => {
    const { regions } = readInferred(
      `<!-- the first begins on key 44 --><rebec>${slots('top', '40', '47')}</rebec>`,
    );
    expect(regions[0]).not.toContain('lokey=44');
  });
});

describe('ranges of velocities whatever they are called', () => {
  it('divide 1 to 127 among regions of the same keys; others have none', () => {
    const text =
      '<shawm><heap gusts="1-80"><slot wave="a.wav" low="40" high="47"/></heap><heap gusts="81-127"><slot wave="b.wav" low="40" high="47"/></heap><heap><slot wave="c.wav" low="48" high="55"/></heap></shawm>';
    const ends = readInferred(text).regions.map((region) => /lovel=\d+ hivel=\d+/.exec(region)?.[0]);
    expect(ends).toEqual(['lovel=1 hivel=80', 'lovel=81 hivel=127', undefined]);
  });

  it('are those of a bare range inside an element that gives the keys', () => {
    const text =
      '<shawm><heap low="40" high="47"><slot wave="a.wav" span="1-50"/><slot wave="b.wav" span="51-127"/></heap><heap low="48" high="55"><slot wave="c.wav" span="1-127"/></heap></shawm>';
    const { regions } = readInferred(text);
    expect(regions.map((region) => /lovel=\d+ hivel=\d+/.exec(region)?.[0])).toEqual([
      'lovel=1 hivel=50',
      'lovel=51 hivel=127',
      'lovel=1 hivel=127',
    ]);
    expect(regions[0]).toContain('lokey=40 hikey=47');
  });

  it('keys that lie around their own roots are none', () => {
    const text =
      '<kit><hit low="36" high="36" root="36" wave="a.wav"/><hit low="38" high="38" root="38" wave="b.wav"/></kit>';
    expect(readInferred(text).regions[0]).toContain('lokey=36 hikey=36');
  });
});
