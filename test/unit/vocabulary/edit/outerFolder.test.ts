import { describe, expect, it } from 'vitest';
import { editedText } from '../../../../server/model/editing/changedInstrument';
import { effectiveValues } from '../../../../server/model/effectiveValues';
import { readSfz } from '../../../../server/sfz/read';
import { editInVocabulary } from '../../../../server/vocabulary/edit/editVocabularyXml';
import { parseVocabulary } from '../../../../server/vocabulary/parseVocabulary';
import { readVocabularyXml } from '../../../../server/vocabulary/read/readVocabularyXml';
import type { Vocabulary } from '../../../../server/vocabulary/vocabulary';
import { writeVocabulary } from '../../../../server/vocabulary/writeVocabulary';

const vocabulary = (under: string): Vocabulary => ({
  name: 'library',
  levels: [
    { element: 'library', is: 'instrument', parameters: [] },
    { element: 'shelf', is: 'group', parameters: [] },
    { element: 'shelf', is: 'group', parameters: [] },
    {
      element: 'bar',
      is: 'region',
      parameters: [
        { parameter: 'sample', at: '@file', form: { kind: 'path', folder: 'tapes', under } },
        { parameter: 'lokey', at: '@low', form: { kind: 'key', written: 'number' } },
      ],
    },
  ],
});

function read(text: string, under = '@folder') {
  const instrument = readVocabularyXml(vocabulary(under))(text, { path: 'a.xml' });
  expect(instrument.findings).toEqual([]);
  return instrument;
}

function samplesIn(text: string, under?: string): unknown[] {
  const instrument = read(text, under);
  return [...instrument.regions].map((region) => effectiveValues(instrument, region).sample);
}

const text = `<library folder="other">
  <shelf folder="soft/">
    <bar file="a.wav"/>
    <shelf folder="very\\soft"><bar file="b.wav"/></shelf>
    <bar file="c.wav"/>
  </shelf>
  <shelf><bar file="d.wav"/><bar file="*sine"/></shelf>
</library>`;

describe('a folder that an element around paths names', () => {
  it('is that of the nearest one, inside those of elements of its name', () => {
    expect(samplesIn(text)).toEqual([
      'tapes/soft/a.wav',
      'tapes/soft/very/soft/b.wav',
      'tapes/soft/c.wav',
      'tapes/other/d.wav',
      '*sine',
    ]);
  });

  it('may stand in a child element', () => {
    const xml =
      '<library><shelf><where><dir>x &amp; y</dir></where><bar file="a.wav"/></shelf><bar file="b.wav"/></library>';
    expect(samplesIn(xml, 'where/dir')).toEqual(['tapes/x & y/a.wav', 'tapes/b.wav']);
  });

  it('is taken off a path that is written', () => {
    const instrument = read(text);
    const edit = editInVocabulary(vocabulary('@folder'), () => undefined);
    const set = (at: number, value: string) => {
      const header = instrument.regions[at];
      return editedText(text, edit(instrument, { kind: 'set', header, name: 'sample', value }).edits);
    };
    expect(set(0, 'tapes/soft/new.wav')).toBe(text.replace('a.wav', 'new.wav'));
    expect(set(1, 'tapes/soft/new.wav')).toBe(text.replace('b.wav', '../../new.wav'));
    expect(set(3, 'tapes/other/e.wav')).toBe(text.replace('d.wav', 'e.wav'));
  });

  it('is taken off the path of a region that is put in', () => {
    const inserted = readSfz('<region> sample=tapes/soft/z.wav lokey=3', { path: 'a.sfz' });
    const edit = editInVocabulary(vocabulary('@folder'), () => undefined);
    const offset = text.indexOf('<bar file="a.wav"/>') + 20;
    const { edits } = edit(read(text), { kind: 'insert', offset, instrument: inserted });
    const changed = editedText(text, edits);
    expect(changed).toContain('<bar file="z.wav" low="3"/>');
    expect(samplesIn(changed)).toContain('tapes/soft/z.wav');
  });

  it('is kept in a file, and told of where it is no place', () => {
    const json = writeVocabulary(vocabulary('@folder'));
    expect(parseVocabulary(json)).toEqual({ vocabulary: vocabulary('@folder'), problems: [] });
    expect(parseVocabulary(json.replace('@folder', 'a//b')).problems).toHaveLength(1);
  });
});
