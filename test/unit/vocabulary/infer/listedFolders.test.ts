import { describe, expect, it } from 'vitest';
import { editedText } from '../../../../server/model/editing/changedInstrument';
import { editInVocabulary } from '../../../../server/vocabulary/edit/editVocabularyXml';
import { inferVocabulary } from '../../../../server/vocabulary/infer/inferVocabulary';
import { parseListedFolder, writeListedFolder } from '../../../../server/vocabulary/listedFolder';
import { parseVocabulary } from '../../../../server/vocabulary/parseVocabulary';
import { readVocabularyXml } from '../../../../server/vocabulary/read/readVocabularyXml';
import { writeVocabulary } from '../../../../server/vocabulary/writeVocabulary';
import { readInferred, valuesIn } from './inferred';

const kilns = '<kiln id="east" folder="oven/east" gain="-3"/><kiln id="west" folder="oven/west" gain="-5"/>';
const pots = (...all: string[]) => `<pottery>${kilns}${all.join('')}</pottery>`;
const keys = (at: number) => `low="${40 + 5 * at}" high="${44 + 5 * at}" root="${42 + 5 * at}"`;

describe('folders of entries that regions refer to', () => {
  it('stand before their files, wherever the reference stands', () => {
    const text = pots(
      `<pot kiln="east" clay="bowl.wav" ${keys(0)}/>`,
      `<pot clay="jug.wav" ${keys(1)} kiln="west"/>`,
      `<pot clay="cup.wav" kiln="#east" ${keys(2)}/>`,
    );
    expect(valuesIn(text, 'sample', 'volume')).toEqual([
      'oven/east/bowl.wav -3',
      'oven/west/jug.wav -5',
      'oven/east/cup.wav -3',
    ]);
    expect(readInferred(text).unread).toEqual([]);
  });

  it('are read where an entry names nothing else, or some name none', () => {
    const text = `<pottery><kiln id="east" folder="oven"/><kiln id="west"/>
      <pot kiln="east" clay="bowl.wav" ${keys(0)}/><pot kiln="west" clay="jug.wav" ${keys(1)}/></pottery>`;
    expect(valuesIn(text, 'sample')).toEqual(['oven/bowl.wav', 'jug.wav']);
  });

  it('are read where an element around regions refers to them, and from elements in entries', () => {
    const text = `<pottery><kilns><kiln id="east"><folder>one</folder></kiln><kiln id="west"><folder>two</folder></kiln></kilns>
      <shelf from="east"><pot clay="a.wav" ${keys(0)}/><pot clay="b.wav" ${keys(1)}/></shelf>
      <shelf from="west"><pot clay="a.wav" ${keys(2)}/><pot clay="b.wav" ${keys(3)}/></shelf></pottery>`;
    expect(valuesIn(text, 'sample')).toEqual(['one/a.wav', 'one/b.wav', 'two/a.wav', 'two/b.wav']);
  });

  it('go by a reference in an element behind the file, which is no end of a sample by its name', () => {
    const text = `<organ><stop id="1" folder="flue" gain="-3"/><stop id="2" folder="reed" gain="-4"/>
      <pipe ${keys(0)}><file>a.wav</file><stop>1</stop></pipe><pipe ${keys(1)}><file>b.wav</file><stop>2</stop></pipe></organ>`;
    expect(valuesIn(text, 'sample', 'end')).toEqual(['flue/a.wav -', 'reed/b.wav -']);
  });

  it('give way to files that are found without them', () => {
    const text = pots(
      `<pot kiln="east" clay="a.wav" ${keys(0)}/>`,
      `<pot kiln="west" clay="b.wav" ${keys(1)}/>`,
    );
    const facts = { sampleRate: 44100, frames: 1000, channels: 1, loops: [] };
    const sampleFacts = (path: string) => (path.includes('/') ? undefined : facts) as never;
    const inferred = inferVocabulary(text, { path: 'a.xml', sampleFacts });
    expect(JSON.stringify(inferred?.vocabulary)).not.toContain('folder');
  });

  it('are taken off a path that is written', () => {
    const text = pots(
      `<pot kiln="east" clay="bowl.wav" ${keys(0)}/>`,
      `<pot clay="jug.wav" ${keys(1)} kiln="west"/>`,
    );
    const { vocabulary } = readInferred(text);
    if (!vocabulary) throw new Error('no vocabulary');
    const instrument = readVocabularyXml(vocabulary)(text, { path: 'a.xml' });
    const edit = editInVocabulary(vocabulary, () => undefined);
    const header = instrument.regions[1];
    const { edits } = edit(instrument, { kind: 'set', header, name: 'sample', value: 'oven/west/vase.wav' });
    expect(editedText(text, edits)).toBe(text.replace('jug.wav', 'vase.wav'));
  });

  it('are kept in a file of the vocabulary, where a place of another kind is told of', () => {
    const place = { by: '@kiln', listed: { element: 'kiln', key: '@id', at: '@folder' } };
    expect(parseListedFolder(writeListedFolder(place))).toEqual(place);
    const { vocabulary } = readInferred(pots(`<pot kiln="east" clay="a.wav" ${keys(0)}/>`));
    if (!vocabulary) throw new Error('no vocabulary');
    const json = writeVocabulary(vocabulary);
    expect(json).toContain(writeListedFolder(place));
    expect(parseVocabulary(json.replace('=current()', '')).problems).toHaveLength(1);
  });
});
