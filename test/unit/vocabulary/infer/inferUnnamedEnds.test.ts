import { describe, expect, it } from 'vitest';
import { inferVocabulary } from '../../../../server/vocabulary/infer/inferVocabulary';
import { readInferred, valuesIn } from './inferred';

/** The messages of what was decided without being sure. */
function guesses(text: string): string {
  const { decisions } = readInferred(text);
  return decisions.flatMap(({ isGuess, message }) => (isGuess ? [message] : [])).join();
}

function crate(...inner: string[]): string {
  const tins = inner.map(
    (one, at) =>
      `<tin file="t${at}.wav" low="${40 + 5 * at}" high="${44 + 5 * at}" root="${42 + 5 * at}">${one}</tin>`,
  );
  return `<crate>${tins.join('')}</crate>`;
}

describe('the part of a sample that sounds while a key is held', () => {
  it.each([
    [
      'by start and length',
      (from: number, to: number) => `<hold start="${from}" length="${to - from + 1}"/>`,
    ],
    ['by start and end', (from: number, to: number) => `<sustain start="${from}" end="${to}"/>`],
    [
      'in elements',
      (from: number, to: number) => `<held-part/><hold><begin>${from}</begin><end>${to}</end></hold>`,
    ],
  ])('is a loop: %s', (_, part) => {
    expect(valuesIn(crate(part(9000, 12999), part(8000, 30000)), 'loop_start', 'loop_end')).toEqual([
      '9000 12999',
      '8000 30000',
    ]);
  });

  it('is none where its numbers are those of an envelope', () => {
    const text = crate('<hold start="0" length="120"/>', '<hold start="0" length="90"/>');
    expect(valuesIn(text, 'loop_start')).toEqual(['-', '-']);
  });
});

describe('the start of a loop under a name that nobody knows', () => {
  it.each(['since', 'aleph', 'kickin'])('is the one number below the end beside it: %s', (name) => {
    const loop = (from: number, to: number) => `<loop><${name}>${from}</${name}><until>${to}</until></loop>`;
    expect(valuesIn(crate(loop(900, 5000), loop(700, 6000)), 'loop_start', 'loop_end')).toEqual([
      '900 5000',
      '700 6000',
    ]);
  });

  it('is none where numbers lie above the end, or two places could be it', () => {
    const loop = (more: string) => `<loop ${more} end="5000"/>`;
    expect(valuesIn(crate(loop('aleph="900"'), loop('aleph="7000"')), 'loop_start')).toEqual(['-', '-']);
    expect(valuesIn(crate(loop('aleph="9" beth="7"'), loop('aleph="9" beth="8"')), 'loop_start')).toEqual([
      '-',
      '-',
    ]);
  });
});

describe('two bare numbers of a loop', () => {
  const loop = (from: number, to: number) => `<loop a="${from}" b="${to}"/>`;

  it('are a start and a length where the second one lies below the first', () => {
    expect(valuesIn(crate(loop(3000, 2000), loop(1000, 4000)), 'loop_start', 'loop_end')).toEqual([
      '3000 4999',
      '1000 4999',
    ]);
  });

  it('are two ends where none does', () => {
    expect(valuesIn(crate(loop(3000, 7000), loop(1000, 4000)), 'loop_start', 'loop_end')).toEqual([
      '3000 7000',
      '1000 4000',
    ]);
  });
});

describe('bare ends in an element that is named after a stroke', () => {
  const stroke = (file: string, low: number, high: number, root: number) =>
    `<hit file="${file}"><min>${low}</min><max>${high}</max><root>${root}</root></hit>`;

  it('are keys where each root lies within its own range', () => {
    const text = `<drum>${stroke('a.wav', 1, 30, 20)}${stroke('b.wav', 31, 50, 40)}${stroke('c.wav', 51, 88, 60)}</drum>`;
    expect(valuesIn(text, 'lokey', 'hikey', 'lovel')).toEqual(['1 30 -', '31 50 -', '51 88 -']);
  });

  it('are velocities where one root has several ranges, or lies beside its own', () => {
    const layers = `<drum>${stroke('a.wav', 1, 30, 20)}${stroke('b.wav', 31, 100, 20)}${stroke('c.wav', 101, 127, 20)}</drum>`;
    expect(valuesIn(layers, 'lovel', 'hivel')).toEqual(['1 30', '31 100', '101 127']);
    const beside = `<drum>${stroke('a.wav', 1, 30, 60)}${stroke('b.wav', 31, 100, 62)}${stroke('c.wav', 101, 127, 64)}</drum>`;
    expect(valuesIn(beside, 'lovel', 'hivel')).toEqual(['1 30', '31 100', '101 127']);
  });
});

describe('root keys that no place gives', () => {
  const strip = (low: number, high: number, more = '') =>
    `<strip file="s${low}.wav" low-key="${low}" high-key="${high}"${more}/>`;

  it('are told where regions play on several keys', () => {
    expect(guesses(`<roll>${strip(40, 44)}${strip(45, 49)}</roll>`)).toContain(
      'No place gives the root keys',
    );
  });

  it('are not missed where they are given, or each region plays on one key', () => {
    expect(
      guesses(`<roll>${strip(40, 44, ' root="42"')}${strip(45, 49, ' root="47"')}</roll>`),
    ).not.toContain('root keys');
    expect(guesses(`<roll>${strip(40, 40)}${strip(45, 45)}</roll>`)).not.toContain('root keys');
  });
});

describe('names of generated waves', () => {
  const patch = (...shapes: string[]) =>
    `<patch>${shapes.map((shape, at) => `<voice wave="${shape}" low="36" high="96" level="${90 - at}" cents="${at}"/>`).join('')}</patch>`;

  it.each([[['saw', 'square']], [['sine', 'white noise', 'pulse 2']], [['Sägezahn', 'Rechteck']]])(
    'are no samples: %s',
    (shapes) => {
      const told: string[] = [];
      expect(
        inferVocabulary(patch(...shapes), { path: 'a.xml', tell: (one) => told.push(one) }),
      ).toBeUndefined();
      expect(told.join()).toContain('shapes of waves');
    },
  );

  it('may be those of files', () => {
    expect(valuesIn(patch('saw.wav', 'square.wav'), 'sample')).toEqual(['saw.wav', 'square.wav']);
    expect(valuesIn(patch('saw', 'felt'), 'sample')).toEqual(['saw.wav', 'felt.wav']);
  });
});
