import { describe, expect, it } from 'vitest';
import { regions, table } from '../tableRegions';

const spans = (text: string) =>
  regions(text).map(
    ({ lokey, hikey, pitch_keycenter: root }) => `${lokey ?? '-'} ${hikey ?? '-'} ${root ?? '-'}`,
  );

describe('headings that say by a verb where a zone starts and ends', () => {
  it.each([
    ['starts at key', 'ends at key', 'played note'],
    ['key it starts on', 'key it stops on', 'recorded at'],
    ['beginnt bei Taste', 'endet bei Taste', 'Grundton'],
    ['commence à la touche', 'finit à la touche', 'note jouée'],
  ])('are those of keys: "%s" and "%s"', (starts, ends, root) => {
    const text = table(
      `${starts} | file | ${root} | ${ends}`,
      '36 | saz one.wav | 40 | 41',
      '42 | saz two.wav | 44 | 47',
      '48 | saz three.wav | 51 | 55',
    );
    expect(spans(text)).toEqual(['36 41 40', '42 47 44', '48 55 51']);
  });

  it('go on to the next one where the text says so', () => {
    const text = `Each zone goes on until the next one begins, the last one up to 70.\n\n${table(
      'starts at key | wave | played note',
      '36 | saz one.wav | 40',
      '42 | saz two.wav | 44',
      '48 | saz three.wav | 51',
    )}`;
    expect(spans(text)).toEqual(['36 41 40', '42 47 44', '48 70 51']);
  });
});
