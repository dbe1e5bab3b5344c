import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from './inferred';

/** Bells whose loops are given by two places, at 44,100 frames a second, with something more in each region. */
const bells = (places: readonly string[], said = '') =>
  `<glockenturm>${said && `<!-- ${said} -->`}${places
    .map(
      (place, at) =>
        `<glocke datei="g${at}.wav" tiefste="${40 + 5 * at}" höchste="${44 + 5 * at}" grundton="${42 + 5 * at}" ${place}/>`,
    )
    .join('')}</glockenturm>`;
const loops = (text: string) => valuesIn(text, 'loop_start', 'loop_end');

// A comma is the decimal sign of many languages (ISO 80000-1:2009, 7.3.2). A second of an audio CD has 44,100 frames (IEC 60908).
describe('commas in positions of loops', () => {
  it('stand before decimals where a sentence tells of a start and a length and each has its place', () => {
    const text = `<tour><!-- Boucle : début et durée en secondes -->
      <cloche fichier="a.wav" de="40" à="44"><boucle début="0,5" durée="1,2"/></cloche>
      <cloche fichier="b.wav" de="45" à="49"><boucle début="0,25" durée="2,0"/></cloche></tour>`;
    expect(loops(text)).toEqual(['22050 74969', '11025 99224']);
  });

  it('stand before decimals where names say seconds, also before three of them', () => {
    const places = [
      'schleifeStartSek="1,250" schleifeEndeSek="2,500"',
      'schleifeStartSek="3" schleifeEndeSek="4,125"',
    ];
    expect(loops(bells(places))[0]?.split(' ')[0]).toBe('55125');
    expect(loops(bells(places))[1]?.split(' ')[0]).toBe('132300');
  });

  it('stand before decimals where the text says seconds', () => {
    const places = [
      'schleifenstart="1,250" schleifenende="2,500"',
      'schleifenstart="3" schleifenende="4,125"',
    ];
    const text = bells(places, 'schleifenstart und schleifenende in Sekunden');
    expect(loops(text)[0]?.split(' ')[0]).toBe('55125');
  });

  it('stand before decimals where other places have some', () => {
    const places = [
      'schleifenstart="1,250" schleifenende="2,500" pegel="-1,5 dB"',
      'schleifenstart="3" schleifenende="4,125" pegel="-2,0 dB"',
    ];
    expect(loops(bells(places))[0]?.split(' ')[0]).toBe('55125');
  });

  it('stand between thousands where numbers have two, or nothing has decimals', () => {
    const places = [
      'schleifenstart="12,250" schleifenende="1,022,500"',
      'schleifenstart="300" schleifenende="44,125"',
    ];
    expect(loops(bells(places))).toEqual(['12250 1022500', '300 44125']);
    const small = [
      'schleifenstart="12,250" schleifenende="22,500"',
      'schleifenstart="300" schleifenende="44,125"',
    ];
    expect(loops(bells(small))).toEqual(['12250 22500', '300 44125']);
  });
});

describe('commas in levels', () => {
  it('stand before decimals where pairs of numbers go up and down', () => {
    const { regions } = readInferred(bells(['pegel="-4,5"', 'pegel="-6,2"', 'pegel="-3,0"']));
    expect(regions.map((region) => /volume=\S+/.exec(region)?.[0])).toEqual([
      'volume=-4.5',
      'volume=-6.2',
      'volume=-3',
    ]);
  });
});
