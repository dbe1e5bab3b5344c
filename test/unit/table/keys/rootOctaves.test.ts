import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const heading = 'Sample | Root | Low | High';
const roots = (...rows: string[]) =>
  regions(table(heading, ...rows)).map(({ pitch_keycenter }) => Number(pitch_keycenter));
const notes = (...rows: string[]) => notesOf(table(heading, ...rows)).join('\n');
const upper = ['bell c | A#2 | 44 | 48', 'bell d | D#3 | 49 | 53', 'bell e | G#3 | 54 | 58'];
const lower = ['bell a | C1 | 34 | 38', 'bell b | F1 | 39 | 43'];

describe('names of roots that count octaves in two ways', () => {
  it('are read in the octave that lies within the keys, which are numbers', () => {
    expect(roots(...lower, ...upper)).toEqual([36, 41, 46, 51, 56]);
    expect(notes(...lower, ...upper)).toContain(
      'The names of root keys count octaves in two ways. Only an octave apart from the others these lie within the keys of their rows, and are read so: line 2 (C1 as 36), line 3 (F1 as 41). Check them.',
    );
  });

  it('are so beside a row that lies elsewhere, which is told', () => {
    const rows = [...lower, ...upper, 'bell f | E4 | 59 | 62'];
    expect(roots(...rows)).toEqual([36, 41, 46, 51, 56, 64]);
    expect(notes(...rows)).toMatch(
      /Line 7: the root key 64 \(E4\) lies 2 keys above its keys 59 \(B3\) to 62 \(D4\)/,
    );
  });

  it('are left as they stand where a layer lies an octave off, or names of samples say the same', () => {
    const layer = ['pipe c | A#1 | 44 | 48', 'pipe d | D#2 | 49 | 53'];
    expect(roots(...upper, ...layer)).toEqual([46, 51, 56, 34, 39]);
    const named = ['bell_C1.wav | C1 | 34 | 38', 'bell_A#2.wav | A#2 | 44 | 48'];
    expect(roots(...named, ...upper.slice(1), 'bell f | B3 | 59 | 62')).toEqual([24, 46, 51, 56, 59]);
  });
});
