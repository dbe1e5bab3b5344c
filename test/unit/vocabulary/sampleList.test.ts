import { describe, expect, it } from 'vitest';
import { editedText } from '../../../server/model/editing/changedInstrument';
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
        { parameter: 'sample', at: '@tap', form: { kind: 'path', folder: 'cellar', list } },
        { parameter: 'lokey', at: '@low', form: { kind: 'key', written: 'number' } },
      ],
    },
  ],
});
const byAttribute = vocabulary({ element: 'cask', key: '@mark', path: '@holds' });

const text = `<bottling>
  <bottle tap="2" low="36"/>
  <bottle tap="7" low="40"/>
  <casks><cask mark="1" holds="a &amp; b.wav"/><cask mark="2" holds="c.wav"/><cask mark="2" holds="late.wav"/></casks>
  <bottle tap="1" low="41"/>
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
    expect(instrument.findings[0]?.message).toContain('the mark of a <cask>');
  });

  it('may hold the paths as texts', () => {
    const xml = '<bottling><cask n="x"> a.wav </cask><cask n="y"/><bottle tap="x"/></bottling>';
    const instrument = readVocabularyXml(vocabulary({ element: 'cask', key: '@n', path: '.' }))(xml, {
      path: 'a.xml',
    });
    expect(effectiveValues(instrument, instrument.regions[0])).toEqual({ sample: 'cellar/a.wav' });
  });

  it('is gone by when a region gets another sample', () => {
    const instrument = readVocabularyXml(byAttribute)(text, { path: 'a.xml' });
    const edit = editInVocabulary(byAttribute, () => undefined);
    const header = instrument.regions[0];
    const set = (value: string) => edit(instrument, { kind: 'set', header, name: 'sample', value });
    expect(editedText(text, set('cellar/a & b.wav').edits)).toBe(text.replace('tap="2"', 'tap="1"'));
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
    expect(changed).toContain('<bottle tap="2" low="50"/>');
    expect(changed).toContain('<bottle low="51"/>');
    expect(notes.filter(({ kind }) => kind === 'dropped')).toHaveLength(1);
  });

  it('is written where a whole instrument is, each path once, so that it can be read again', () => {
    const inserted = readSfz(
      '<region> sample=cellar/c.wav lokey=50 <region> sample=cellar/C.wav lokey=51 <region> sample=cellar/c.wav lokey=52',
      { path: 'a.sfz' },
    );
    const inRack = vocabulary({ element: 'cask', key: '@mark', path: '@holds', inside: 'rack/casks' });
    for (const one of [byAttribute, inRack, vocabulary({ element: 'cask', key: '@n', path: '.' })]) {
      const { text: written, notes } = writeInVocabulary(one)(inserted);
      expect(notes).toEqual([]);
      expect(written.match(/<cask /g)).toHaveLength(2);
      const again = readVocabularyXml(one)(written, { path: 'b.xml' });
      expect([...again.regions].map((region) => effectiveValues(again, region))).toEqual([
        { sample: 'cellar/c.wav', lokey: 50 },
        { sample: 'cellar/C.wav', lokey: 51 },
        { sample: 'cellar/c.wav', lokey: 52 },
      ]);
    }
    expect(writeInVocabulary(inRack)(inserted).text).toContain(
      '  <rack>\n    <casks>\n      <cask mark="s1" holds="c.wav"/>',
    );
  });

  it('is kept in a file, and told of where it makes no sense', () => {
    expect(parseVocabulary(writeVocabulary(byAttribute))).toEqual({ vocabulary: byAttribute, problems: [] });
    for (const [good, bad] of [
      ['"@mark"', '"#2"'],
      ['"@holds"', '"a//b"'],
      ['"element": "cask"', '"element": "a b"'],
    ] as const)
      expect(parseVocabulary(writeVocabulary(byAttribute).replace(good, bad)).problems).toHaveLength(1);
  });
});
