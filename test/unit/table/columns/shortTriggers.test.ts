import { describe, expect, it } from 'vitest';
import { regions, table } from '../tableRegions';

function starts(text: string): string[] {
  return regions(text).map(({ sample, trigger }) => `${sample} ${trigger ?? 'attack'}`);
}

describe('short words for what starts zones', () => {
  it.each([
    ['Type', 'sus', 'rel'],
    ['Zone kind', 'att.', 'rel.'],
    ['Sorte', 'Anschl.', 'Losl.'],
    ['Tipo', 'sost', 'ril'],
    ['What', 'ATK', 'RLS'],
    ['Part', 'sust', 'rel'],
    ['Trigger', 'sus', 'rel'],
    ['Type', 'on', 'off'],
    ['Event', 'On', 'Off'],
  ])('reads them under "%s" as "%s" and "%s"', (heading, held, released) => {
    const text = table(
      `${heading} | Sample | Low | High | Root`,
      `${held} | vib1.wav | 30 | 39 | 35`,
      `${held} | vib2.wav | 40 | 49 | 45`,
      `${released} | vib3.wav | 30 | 39 | 35`,
      `${released} | vib4.wav | 40 | 49 | 45`,
    );
    expect(starts(text)).toEqual([
      'vib1.wav attack',
      'vib2.wav attack',
      'vib3.wav release',
      'vib4.wav release',
    ]);
  });

  it.each([
    ['Vibrato', 'on', 'off'],
    ['Damper', 'on', 'off'],
    ['Playing', 'sus', 'stac'],
    ['Loop', 'sus', 'rel'],
  ])('leaves what is said under "%s" as "%s" and "%s"', (heading, one, other) => {
    const text = table(
      `${heading} | Sample | Low | High | Root`,
      `${one} | vib1.wav | 30 | 39 | 35`,
      `${one} | vib2.wav | 40 | 49 | 45`,
      `${other} | vib3.wav | 30 | 39 | 35`,
      `${other} | vib4.wav | 40 | 49 | 45`,
    );
    expect(starts(text).join()).not.toMatch(/release/);
  });
});
