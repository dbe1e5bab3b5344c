import { describe, expect, it } from 'vitest';
import { editedText } from '../../../server/model/changedInstrument';
import { effectiveValues } from '../../../server/model/effectiveValues';
import { readSfz } from '../../../server/sfz/read';
import { editInVocabulary } from '../../../server/vocabulary/edit/editVocabularyXml';
import { parseVocabulary } from '../../../server/vocabulary/parseVocabulary';
import { readVocabularyXml } from '../../../server/vocabulary/read/readVocabularyXml';
import type { SampleListPlace, Vocabulary } from '../../../server/vocabulary/vocabulary';
import { writeInVocabulary } from '../../../server/vocabulary/write/writeVocabularyXml';
import { writeVocabulary } from '../../../server/vocabulary/writeVocabulary';

const vocabulary = (list: SampleListPlace): Vocabulary => ({
  name: 'bottling',
  levels: [
    { element: 'bottling', is: 'instrument', parameters: [] },
    {
      element: 'bottle',
      is: 'region',
      parameters: [
        { parameter: 'sample', at: '@wave', form: { kind: 'path', folder: 'cellar', list } },
        { parameter: 'lokey', at: '@low', form: { kind: 'key', written: 'number' } },
      ],
    },
  ],
});
const byAttribute = vocabulary({ element: 'wave', key: '@id', path: '@file' });

const text = `<bottling>
  <bottle wave="2" low="36"/>
  <bottle wave="7" low="40"/>
  <waves><wave id="1" file="a &amp; b.wav"/><wave id="2" file="c.wav"/><wave id="2" file="late.wav"/></waves>
  <bottle wave="1" low="41"/>
</bottling>`;

describe('a list of samples that regions refer to', () => {
  it('gives their paths wherever it stands, and a finding where an entry is missing', () => {
    const instrument = readVocabularyXml(byAttribute)(text, { path: 'a.xml' });
    expect([...instrument.regions].map((region) => effectiveValues(instrument, region))).toEqual([
      { sample: 'cellar/c.wav', lokey: 36 },
      { lokey: 40 },
      { sample: 'cellar/a & b.wav', lokey: 41 },
    ]);
    expect(instrument.findings.map(({ start, end }) => text.slice(start, end))).toEqual(['7']);
    expect(instrument.findings[0]?.message).toContain('the id of a <wave>');
  });

  it('may hold the paths as texts', () => {
    const xml = '<bottling><wave n="x"> a.wav </wave><wave n="y"/><bottle wave="x"/></bottling>';
    const instrument = readVocabularyXml(vocabulary({ element: 'wave', key: '@n', path: '.' }))(xml, {
      path: 'a.xml',
    });
    expect(effectiveValues(instrument, instrument.regions[0])).toEqual({ sample: 'cellar/a.wav' });
  });

  it('is gone by when a region gets another sample', () => {
    const instrument = readVocabularyXml(byAttribute)(text, { path: 'a.xml' });
    const edit = editInVocabulary(byAttribute, () => undefined);
    const header = instrument.regions[0];
    const set = (value: string) => edit(instrument, { kind: 'set', header, name: 'sample', value });
    expect(editedText(text, set('cellar/a & b.wav').edits)).toBe(text.replace('wave="2"', 'wave="1"'));
    const unknown = set('cellar/new.wav');
    expect(unknown.edits).toEqual([]);
    expect(unknown.notes.map(({ kind }) => kind)).toEqual(['dropped']);
  });

  it('is gone by for regions that are put in', () => {
    const instrument = readVocabularyXml(byAttribute)(text, { path: 'a.xml' });
    const inserted = readSfz('<region> sample=cellar/c.wav lokey=50 <region> sample=other.wav lokey=51', {
      path: 'a.sfz',
    });
    const offset = text.lastIndexOf('</bottling>');
    const edit = editInVocabulary(byAttribute, () => undefined);
    const { edits, notes } = edit(instrument, { kind: 'insert', offset, instrument: inserted });
    const changed = editedText(text, edits);
    expect(changed).toContain('<bottle wave="2" low="50"/>');
    expect(changed).toContain('<bottle low="51"/>');
    expect(notes.filter(({ kind }) => kind === 'dropped')).toHaveLength(1);
  });

  it('is told of where a whole instrument is written, as it is not made', () => {
    const inserted = readSfz('<region> sample=cellar/c.wav lokey=50', { path: 'a.sfz' });
    const { text: written, notes } = writeInVocabulary(byAttribute)(inserted);
    expect(written).toContain('<bottle low="50"/>');
    expect(notes.filter(({ kind }) => kind === 'dropped')).toHaveLength(1);
  });

  it('is kept in a file, and told of where it makes no sense', () => {
    expect(parseVocabulary(writeVocabulary(byAttribute))).toEqual({ vocabulary: byAttribute, problems: [] });
    for (const [good, bad] of [
      ['"@id"', '"id"'],
      ['"@file"', '"a/b"'],
      ['"element": "wave"', '"element": "a b"'],
    ] as const)
      expect(parseVocabulary(writeVocabulary(byAttribute).replace(good, bad)).problems).toHaveLength(1);
  });
});
