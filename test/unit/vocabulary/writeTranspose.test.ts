import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../server/model/effectiveValues';
import { readSfz } from '../../../server/sfz/read';
import { readVocabularyXml } from '../../../server/vocabulary/read/readVocabularyXml';
import type { Vocabulary } from '../../../server/vocabulary/vocabulary';
import { writeInVocabulary } from '../../../server/vocabulary/write/writeVocabularyXml';

const vocabulary = (unit: 'cents' | 'semitones', ofGroups = false): Vocabulary => ({
  name: 'kiln',
  levels: [
    { element: 'kiln', is: 'instrument', parameters: [] },
    {
      element: 'shelf',
      is: 'group',
      parameters: ofGroups ? [{ parameter: 'tune', at: '@pitch', form: { kind: 'tuning', unit } }] : [],
    },
    {
      element: 'pot',
      is: 'region',
      parameters: [
        { parameter: 'sample', at: '@clay', form: { kind: 'path' } },
        { parameter: 'tune', at: '@pitch', form: { kind: 'tuning', unit } },
      ],
    },
  ],
});

/** The tunings of regions in cents, read again from what is written of a text in the open format, and what is noted. */
function written(sfz: string, target: Vocabulary) {
  const { text, notes } = writeInVocabulary(target)(readSfz(sfz, { path: 'a.sfz' }));
  const again = readVocabularyXml(target)(text, { path: 'a.xml' });
  return {
    tune: [...again.regions].map((region) => effectiveValues(again, region).tune ?? 0),
    notes: notes.map(({ kind, message }) => `${kind}: ${message}`),
  };
}

describe('a transposition where only a tuning has a place', () => {
  it('goes into the tuning, 100 cents for a semitone', () => {
    const { tune, notes } = written('<region> sample=a.wav transpose=-12 tune=5', vocabulary('cents'));
    expect(tune).toEqual([-1195]);
    // One for each of the two values.
    const note = 'approximated: transpose -12 is written in the tuning, which becomes -1195 cents.';
    expect(notes).toEqual([note, note]);
  });

  it.each([false, true])(
    'does so for each region of a group, which may have a place itself: %s',
    (ofGroups) => {
      const sfz =
        '<group> transpose=1 tune=3 <region> sample=a.wav <region> sample=b.wav tune=-4 <region> sample=c.wav transpose=2 <group> <region> sample=d.wav tune=9';
      const { tune, notes } = written(sfz, vocabulary('semitones', ofGroups));
      expect(tune).toEqual([103, 96, 203, 9]);
      expect(notes.every((note) => note.startsWith('approximated: transpose'))).toBe(true);
    },
  );
});
