import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../server/model/effectiveValues';
import type { WriteOptions } from '../../../server/model/notation';
import { assumedOnReading } from '../../../server/model/writing/readingNotes';
import { readSfz } from '../../../server/sfz/read';
import { readVocabularyXml } from '../../../server/vocabulary/read/readVocabularyXml';
import type { Vocabulary } from '../../../server/vocabulary/vocabulary';
import { writeInVocabulary } from '../../../server/vocabulary/write/writeVocabularyXml';

/** Keys as a range and as one number, one level of groups, a position as a length, few other places. */
const lighthouse: Vocabulary = {
  name: 'Lighthouse',
  levels: [
    { element: 'coast', is: 'instrument', parameters: [] },
    {
      element: 'tower',
      is: 'group',
      parameters: [
        { parameter: 'volume', at: '@brightness', form: { kind: 'level', unit: 'dB' } },
        { parameter: 'seq_length', at: '@turns', form: { kind: 'number' } },
      ],
    },
    {
      element: 'beam',
      is: 'region',
      parameters: [
        { parameter: 'sample', at: 'horn', form: { kind: 'path', folder: 'horns', ending: '.wav' } },
        { parameter: 'lokey', at: '@arc', part: 1, form: { kind: 'key', written: 'number' } },
        { parameter: 'hikey', at: '@arc', part: 2, form: { kind: 'key', written: 'number' } },
        { parameter: 'pitch_keycenter', at: '@mid', form: { kind: 'key', written: 'number' } },
        { parameter: 'pan', at: '@bearing', form: { kind: 'pan', left: 0, centre: 180, right: 360 } },
        { parameter: 'tune', at: '@drift', form: { kind: 'tuning', unit: 'ratio' } },
        {
          parameter: 'loop_mode',
          at: '@flashing',
          form: { kind: 'words', words: { yes: 'loop_continuous', no: 'no_loop' } },
        },
      ],
    },
  ],
};

function written(sfz: string, options: WriteOptions = {}) {
  const instrument = readSfz(sfz, { path: 'a.sfz' });
  const { text, notes, kept } = writeInVocabulary(lighthouse)(instrument, options);
  const told = notes.map(({ kind, start, end, message }) => `${kind} ${sfz.slice(start, end)}: ${message}`);
  const again = readVocabularyXml(lighthouse)(text, { path: 'a.xml' });
  const regions = [...again.regions].map((region) => effectiveValues(again, region));
  return { lines: text.split('\n').slice(1, -1), told, kept, regions };
}

describe('writing in a vocabulary', () => {
  it('merges headers that have no level, and puts values where there is a place', () => {
    const { lines, told, kept } = written(
      [
        '// all of it',
        '<global> pan=100 volume=-3',
        '<master> volume=-6',
        '// lit at dusk',
        '<group> seq_length=2',
        '<region> sample=horns/a.wav key=60 // the first',
        '<region> sample=horns/b.wav volume=0 pan=0',
        '<group> <region> sample=horns/c.wav',
      ].join('\n'),
    );
    expect(lines).toEqual([
      '<!-- all of it -->',
      '<coast>',
      '  <!-- lit at dusk -->',
      '  <tower brightness="-6" turns="2">',
      '    <beam arc="60-60" mid="60" bearing="360">',
      '      <horn>a</horn>',
      '    </beam>',
      '    <!-- the first -->',
      '  </tower>',
      '  <tower brightness="0" turns="2">',
      '    <beam bearing="180">',
      '      <horn>b</horn>',
      '    </beam>',
      '  </tower>',
      '  <tower brightness="-6">',
      '    <beam bearing="360">',
      '      <horn>c</horn>',
      '    </beam>',
      '  </tower>',
      '</coast>',
    ]);
    expect(told).toEqual([
      'ignored volume=-3: volume -3 is left out: other values take its place in all regions.',
    ]);
    expect(kept).toBe(9);
  });

  it('tells what it leaves out, rounds and decides', () => {
    const { told, kept, lines } = written(
      '<control> set_cc1=5 note_offset=2\n<region> lokey=40 cutoff=500 loop_mode=one_shot sample=horns/a.wav pan=1 pan=50\n<curve> curve_index=7',
    );
    expect(lines).toEqual([
      '<coast>',
      '  <tower>',
      '    <beam arc="42-127" bearing="270">',
      '      <horn>a</horn>',
      '    </beam>',
      '  </tower>',
      '</coast>',
    ]);
    expect(told).toEqual([
      'dropped set_cc1=5: set_cc1 5 is left out: there is no place for it.',
      'assumed lokey=40: hikey is written as 127, its default, because lokey 42 stands in a range with it.',
      'dropped cutoff=500: cutoff 500 is left out: there is no place for it.',
      'dropped loop_mode=one_shot: loop_mode one_shot is left out: it cannot be written in the form that its place takes.',
      'ignored pan=1: This pan is left out: pan is set again later in the same place.',
      'dropped <curve> curve_index=7: <curve> is left out: instruments of this kind have no place for it.',
    ]);
    // note_offset, the sample and the pan that counts.
    expect(kept).toBe(3);
  });

  it('keeps a range together with what is inherited of it', () => {
    const { lines, told } = written('<group> hikey=50 <region> lokey=40 <region>');
    expect(lines.slice(2, -2)).toEqual(['    <beam arc="40-50"/>', '    <beam arc="0-50"/>']);
    expect(told.map((one) => one.split(' ')[0])).toEqual(['assumed']);
  });

  it('leads sample paths from another folder, and writes them in the form of the vocabulary', () => {
    const { lines } = written(
      '<control> default_path=low/ <region> sample=a.wav <control> default_path=..\\horns\\ <region> sample=b.flac <region> sample=*sine',
      { move: { from: '/x/set', to: '/x/set/low' } },
    );
    expect(lines.filter((line) => line.includes('<horn>')).map((line) => line.trim())).toEqual([
      '<horn>../a</horn>',
      '<horn>../../../horns/b.flac</horn>',
      '<horn>*sine</horn>',
    ]);
  });

  it('escapes what XML cannot hold as it is', () => {
    const { regions, told } = written(
      '<region> sample=horns/a & > "c".wav\n<region> sample=horns/d\u0007.wav',
    );
    expect(regions.map(({ sample }) => sample)).toEqual(['horns/a & > "c".wav', 'horns/d.wav']);
    expect(told.map((one) => one.split(' ')[0])).toEqual(['dropped']);
  });

  it('shows each note at the value that was written, else at the element', () => {
    const sfz = [
      '<control> set_cc1=5',
      '<group> volume=-3 cutoff=500 <region> lokey=40 tune=7 sample=horns/a\u0007.wav pan=1 pan=33',
      '<group> volume=-6 <region> seq_length=2 cutoff=900 sample=horns/b.wav loop_mode=one_shot',
      '<effect> type=x',
    ].join('\n');
    const instrument = readSfz(sfz, { path: 'a.sfz' });
    const { text, notes } = writeInVocabulary(lighthouse)(instrument);
    const shown = notes.map(({ start, end, written }) => [
      sfz.slice(start, end),
      text.slice(written?.start, written?.end),
    ]);
    expect(shown).toEqual([
      ['set_cc1=5', '<beam'],
      ['cutoff=500', '<beam'],
      ['lokey=40', 'arc="40-127"'],
      ['sample=horns/a\u0007.wav', 'a'],
      ['pan=1', '<beam'],
      ['cutoff=900', '<beam'],
      ['loop_mode=one_shot', '<beam'],
      ['<effect> type=x', '<beam'],
    ]);
  });

  it('shows what was assumed on reading at the value, and does not count that as kept', () => {
    const bells = (unit: 'seconds' | 'frames'): Vocabulary => ({
      name: 'Belfry',
      levels: [
        { element: 'tower', is: 'instrument', parameters: [] },
        {
          element: 'bell',
          is: 'region',
          parameters: [
            { parameter: 'sample', at: '@bronze', form: { kind: 'path' } },
            { parameter: 'offset', at: 'clapper/@from', form: { kind: 'position', unit } },
          ],
        },
      ],
    });
    const xml = '<tower><bell bronze="a.wav"><clapper from="0.5"/></bell><bell bronze="b.wav"/></tower>';
    const instrument = readVocabularyXml(bells('seconds'))(xml, { path: 'a.xml' });
    const readingNotes = assumedOnReading(instrument);
    const { text, notes, kept } = writeInVocabulary(bells('frames'))(instrument, { readingNotes });
    const read = [...readingNotes.values()].flat();
    // Half a second at 44,100 frames a second, the rate of the audio CD (IEC 60908), where none is known.
    expect(read.map(({ written: place }) => text.slice(place?.start, place?.end))).toEqual(['from="22050"']);
    expect(notes).toEqual([]);
    expect(kept).toBe(instrument.parameters.count - 1);
  });

  it('writes the instrument alone where there is no region', () => {
    expect(written('// empty\n').lines).toEqual(['<coast>', '  <!-- empty -->', '</coast>']);
    expect(written('<group> pan=3').told.map((one) => one.split(' ')[0])).toEqual(['ignored']);
  });
});
