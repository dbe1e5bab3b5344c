import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const notes = (...rows: string[]) => notesOf(table('Sample | Low | High | Root', ...rows)).join('\n');
const near = ['spinet_C3.wav | 46 | 49 | 48', 'spinet_E3.wav | 50 | 53 | 52', 'spinet_G3.wav | 54 | 57 | 55'];

describe('a root far outside of its keys', () => {
  it('is told and kept where the other roots lie among theirs, with the root that the name gives', () => {
    const rows = [...near, 'spinet_B3.wav | 58 | 61 | 9'];
    expect(notes(...rows)).toContain(
      'Line 5: the root key 9 lies 49 keys below its keys 58–61; the name of its sample says 59. It is kept. Check it.',
    );
    expect(regions(table('Sample | Low | High | Root', ...rows))[3]?.pitch_keycenter).toBe('9');
  });

  it('is told where no name gives a root', () => {
    expect(notes('s1.wav | 30 | 34 | 32', 's2.wav | 35 | 39 | 37', 's3.wav | 40 | 40 | 73')).toMatch(
      /Line 4: the root key 73 lies 33 keys above its key 40, unlike those of the other rows/,
    );
  });

  it('is what is meant within two octaves, or where most lie so', () => {
    expect(notes(...near, 'spinet_B3.wav | 83 | 99 | 59')).not.toMatch(/keys (?:below|above)/);
    const drums = [
      'd1.wav | 26 | 26 | 60',
      'd2.wav | 27 | 27 | 60',
      'd3.wav | 28 | 28 | 60',
      'd4.wav | 60 | 60 | 60',
    ];
    expect(notes(...drums)).not.toMatch(/keys (?:below|above)/);
  });
});
