import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

describe('keys that are not certain', () => {
  const text = table(
    'File|Low|High|Root',
    'horn_a.wav|36|47|ca. 41',
    'horn_b.wav|48|57|~52',
    'horn_c.wav|58|64|61?',
    'horn_d.wav|65|70|66 or 67',
  );

  it('reads the one key that a cell names, and the first of two', () => {
    expect(regions(text).map(({ pitch_keycenter }) => pitch_keycenter)).toEqual(['41', '52', '61', '66']);
  });

  it('tells of both', () => {
    const notes = notesOf(text).join('\n');
    expect(notes).toContain('"ca. 41" is not certain of its key; 41 is taken');
    expect(notes).toMatch(/66 or 67/);
  });
});
