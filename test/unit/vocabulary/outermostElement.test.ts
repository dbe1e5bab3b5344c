import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../server/model/effectiveValues';
import { readSfz } from '../../../server/sfz/read';
import { matchesVocabulary } from '../../../server/vocabulary/infer/matchesVocabulary';
import type { Vocabulary, VocabularyLevel } from '../../../server/vocabulary/vocabulary';
import { vocabularyNotation } from '../../../server/vocabulary/vocabularyNotation';

const shelf: VocabularyLevel = {
  element: 'shelf',
  is: 'group',
  parameters: [{ parameter: 'volume', at: '@height', form: { kind: 'level', unit: 'dB' } }],
};
const loaf: VocabularyLevel = {
  element: 'loaf',
  is: 'region',
  parameters: [
    { parameter: 'sample', at: '@dough', form: { kind: 'path' } },
    { parameter: 'lokey', at: '@crumb', form: { kind: 'key', written: 'number' } },
  ],
};
const loaves: Vocabulary = { name: 'Loaves & more', levels: [loaf] };
const shelves: Vocabulary = { name: 'shelf', levels: [shelf, loaf] };

const sfz =
  '// rye\n<group> volume=-3 <region> sample=a.wav lokey=40\n<group> <region> sample=b.wav lokey=41';

function regionsOf(vocabulary: Vocabulary, text: string) {
  const instrument = vocabularyNotation(vocabulary).read(text, { path: 'a.xml' });
  return [...instrument.regions].map((region) => effectiveValues(instrument, region));
}

// XML 1.0 (fifth edition), section 2.1: there is exactly one element that no part of appears in another.
describe('a vocabulary that names no outermost element', () => {
  it.each([
    ['regions alone', loaves, 'loaves-more'],
    ['groups', shelves, 'shelf-instrument'],
  ] as const)('is written in one element of its own name: %s', (_what, vocabulary, root) => {
    const { text, notes } = vocabularyNotation(vocabulary).write(readSfz(sfz, { path: 'a.sfz' }));
    expect(XMLValidator.validate(text)).toBe(true);
    const parsed = new XMLParser().parse(text);
    expect(Object.keys(parsed)).toEqual(['?xml', root]);
    const note = notes.find(({ kind }) => kind === 'assumed');
    expect(note?.message).toContain(`<${root}>`);
    expect(text.slice(note?.written?.start, note?.written?.end)).toBe(`<${root}`);
    expect(matchesVocabulary(vocabulary, text)).toBe(true);
    expect(regionsOf(vocabulary, text).map(({ sample }) => sample)).toEqual(['a.wav', 'b.wav']);
  });

  it('keeps what groups set', () => {
    const { text } = vocabularyNotation(shelves).write(readSfz(sfz, { path: 'a.sfz' }));
    expect(regionsOf(shelves, text).map(({ volume }) => volume)).toEqual([-3, undefined]);
  });

  it('is written well formed without regions and with its namespaces', () => {
    const empty = readSfz('', { path: 'a.sfz' });
    const { text } = vocabularyNotation({ ...loaves, namespaces: { '': 'urn:example:bread' } }).write(empty);
    expect(XMLValidator.validate(text)).toBe(true);
    expect(text).toContain('<loaves-more xmlns="urn:example:bread"/>');
    expect(matchesVocabulary(loaves, text)).toBe(true);
    expect(matchesVocabulary(loaves, '<cellar/>')).toBe(false);
  });

  it('is read in any outermost element, and only there', () => {
    const inside = '<loaf dough="c.wav" crumb="50"/>';
    for (const [text, isRead] of [
      [`<bakery from="here">${inside}</bakery>`, true],
      [inside, true],
      [`<bakery><oven>${inside}</oven></bakery>`, false],
    ] as const) {
      expect(regionsOf(loaves, text).length, text).toBe(isRead ? 1 : 0);
      expect(matchesVocabulary(loaves, text), text).toBe(isRead);
    }
  });

  it('takes new regions in the element that stands there', () => {
    const text = '<bakery>\n  <loaf dough="c.wav" crumb="50"/>\n</bakery>\n';
    const notation = vocabularyNotation(loaves);
    const instrument = notation.read(text, { path: 'a.xml' });
    const inserted = readSfz('<region> sample=d.wav lokey=51', { path: 'b.sfz' });
    const { edits } = notation.edit(instrument, {
      kind: 'insert',
      offset: text.indexOf('</bakery>'),
      instrument: inserted,
    });
    const [edit] = edits;
    const changed = text.slice(0, edit?.start) + edit?.newText + text.slice(edit?.end);
    expect(changed).toBe(
      '<bakery>\n  <loaf dough="c.wav" crumb="50"/>\n  <loaf dough="d.wav" crumb="51"/>\n</bakery>\n',
    );
  });

  it('offers values inside its elements and none in the tag around them', () => {
    const notation = vocabularyNotation(loaves);
    const text = '<bakery >\n  <loaf dough="c.wav" crumb="50"/>\n</bakery>\n';
    const instrument = notation.read(text, { path: 'a.xml' });
    expect(notation.placeAt(instrument, text.indexOf('c.wav') + 2)).toMatchObject({
      kind: 'value',
      name: 'sample',
    });
    expect(notation.placeAt(instrument, text.indexOf(' >') + 1).kind).toBe('other');
  });
});
