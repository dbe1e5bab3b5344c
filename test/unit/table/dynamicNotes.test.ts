import { describe, expect, it } from 'vitest';
import { notesOf, table } from './tableRegions';

/** What is noted of velocities where a table has words for how hard zones are played. */
function noteOn(...rows: string[]): string | undefined {
  return notesOf(table('File | Key | Dynamics', ...rows)).find((note) => note.includes('no velocities'));
}

describe('the note on dynamics without velocities', () => {
  it('names them as the table does', () => {
    expect(noteOn('fen.wav | 50 | Soft', 'moor.wav | 50 | Hard')).toBe(
      'assumed: The table gives dynamics but no velocities. 1 to 127 are shared out evenly among Soft, Hard.',
    );
  });

  it('tells where keys lack one of them', () => {
    expect(noteOn('fen.wav | 50 | pp', 'moor.wav | 50 | ff', 'bog.wav | 55 | pp')).toMatch(
      /among pp, ff\. Where a key lacks one of them, the others reach further\.$/,
    );
  });

  it('says that nothing is shared out where each key has one alone', () => {
    expect(noteOn('fen.wav | 50 | Soft', 'moor.wav | 52 | Hard')).toBe(
      'assumed: The table gives dynamics but no velocities. No key has more than one of them, so each zone sounds at all velocities.',
    );
  });
});
