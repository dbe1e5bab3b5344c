import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeInVocabulary } from '../../../server/vocabulary/read/placeInVocabulary';
import { readVocabularyXml } from '../../../server/vocabulary/read/readVocabularyXml';
import type { Vocabulary } from '../../../server/vocabulary/vocabulary';
import { examples } from './examples';

/** What stands at the `|` of a text: the kind, the text of the place, and the parameter with its value. */
function placeAt(vocabulary: Vocabulary, marked: string): string {
  const offset = marked.indexOf('|');
  const text = marked.slice(0, offset) + marked.slice(offset + 1);
  const instrument = readVocabularyXml(vocabulary)(text, { path: 'a.xml' });
  const place = placeInVocabulary(vocabulary)(instrument, offset);
  if (!('start' in place)) return place.kind;
  const parts = [place.kind, `[${text.slice(place.start, place.end)}]`];
  if ('name' in place) parts.push(place.name);
  if ('header' in place) parts.push(place.header < 0 ? 'no header' : instrument.headerName(place.header));
  if ('parameter' in place && place.parameter >= 0) {
    const name = instrument.names.text(instrument.name(place.parameter));
    parts.push(`${name}=${instrument.valueText(place.parameter)}`);
  }
  return parts.join(' ');
}

const vocabularyOf = (name: string) => examples[name]?.vocabulary;

describe('a place among attributes', () => {
  const at = (marked: string) => placeAt(vocabularyOf('foundry'), `<foundry>${marked}</foundry>`);

  it('is the element, a name or a value', () => {
    expect(at('<be|ll bottomKey="36" loudness="-3 dB"/>')).toBe('header [bell] region');
    expect(at('<bell bott|omKey="36" loudness="-3 dB"/>')).toBe('name [bottomKey] region lokey=36');
    expect(at('<bell bottomKey="3|6" loudness="-3 dB"/>')).toBe('value [36] lokey region lokey=36');
    expect(at('<bell bottomKey="36" loudness="-3 |dB"/>')).toBe('value [-3 dB] volume region volume=-3');
    expect(at('<bell bottomKey="36" | loudness="-3 dB"/>')).toBe('name [] region');
    expect(at('<bell castOn="|day 1"/>')).toBe('other');
  });

  it('is known while it is being typed', () => {
    expect(at('<be|')).toBe('header [be] no header');
    expect(at('<bell bott|')).toBe('name [bott] region');
    expect(at('<bell bottomKey="|"/>')).toBe('value [] lokey region');
    expect(at('<bell bottomKey="|')).toBe('value [] lokey region');
    expect(at('<bell topKey="40" bottomKey="abc|"/>')).toBe('value [abc] lokey region');
  });

  it('is nothing in comments, instructions and between elements', () => {
    expect(at('<!-- <bell bottomKey="3|6"/> -->')).toBe('other');
    expect(at(' | <bell/>')).toBe('other');
    expect(at('<bell/></fou|ndry>')).toBe('other');
  });
});

describe('a place in child elements', () => {
  const orchard = (marked: string) =>
    placeAt(
      vocabularyOf('orchard'),
      `<orchard-book><hillside><tree-row title="A" min-velocity="0.25">${marked}</tree-row></hillside></orchard-book>`,
    );

  it('belongs to the region around it', () => {
    expect(orchard('<fruit-tree><note-span from="C|3"/></fruit-tree>')).toBe(
      'value [C3] lokey region lokey=60',
    );
    expect(orchard('<fruit-tree><note-span fr|om="C3"/></fruit-tree>')).toBe('name [from] region lokey=60');
    expect(orchard('<fruit-tree><note-span from="C3" |/></fruit-tree>')).toBe('name [] region');
    expect(orchard('<fruit-tree><no|te-span from="C3"/></fruit-tree>')).toBe('header [note-span] no header');
    expect(orchard('<fruit-tree> | </fruit-tree>')).toBe('name [] region');
  });

  it('belongs to the group where the region has ended', () => {
    expect(orchard('<fruit-tree><mixing stereo-pan="0"/></fruit-tree><fruit-tr|ee>')).toBe(
      'header [fruit-tree] region',
    );
    expect(orchard('<fruit-tree/><unknown from="C|3"/>')).toBe('other');
  });

  it('is the text of an element', () => {
    const harbour = (marked: string) =>
      placeAt(vocabularyOf('harbour'), `<HARBOUR><QUAY><MOORING>${marked}</MOORING></QUAY></HARBOUR>`);
    expect(harbour('<LOWEST_NOTE> C|4 </LOWEST_NOTE>')).toBe('value [C4] lokey region lokey=60');
    expect(harbour('<LOWEST_NOTE>|</LOWEST_NOTE>')).toBe('value [] lokey region');
    expect(harbour('<LOW|EST_NOTE>C4</LOWEST_NOTE>')).toBe('name [LOWEST_NOTE] region lokey=60');
    expect(harbour('<LOWEST_NOTE>C4</LOWEST_NOTE> | <PAN>0</PAN>')).toBe('name [] region');
    expect(harbour('<COLOUR>re|d</COLOUR>')).toBe('other');
  });

  it('is the part of a range that it stands in', () => {
    const mill = (marked: string) =>
      placeAt(vocabularyOf('weavingMill'), `<weaving_mill><loom>${marked}</loom></weaving_mill>`);
    expect(mill("<cloth key_range='3|6-48'/>")).toBe('value [36] lokey region lokey=36');
    expect(mill("<cloth key_range='36-4|8'/>")).toBe('value [48] hikey region hikey=48');
    expect(mill("<cloth key_range='|'/>")).toBe('value [] lokey region');
    expect(mill("<cloth key_ra|nge='36-48'/>")).toBe('name [key_range] region lokey=36');
  });

  it('is named by the attribute that says what the other means', () => {
    const sky = (marked: string) =>
      placeAt(vocabularyOf('observatory'), `<sky><night><star>${marked}</star></night></sky>`);
    expect(sky('<reading what="root| key" shows="C5"/>')).toBe('name [root key] region pitch_keycenter=60');
    expect(sky('<reading what="root key" shows="C|5"/>')).toBe(
      'value [C5] pitch_keycenter region pitch_keycenter=60',
    );
    expect(sky('<reading shows="C|5" what="root key"/>')).toBe(
      'value [C5] pitch_keycenter region pitch_keycenter=60',
    );
    expect(sky('<reading wh|at="root key" shows="C5"/>')).toBe('other');
    expect(sky('<reading what="colour" shows="bl|ue"/>')).toBe('other');
  });

  it('belongs to a group where it stands behind the regions', () => {
    const brewery = (marked: string) => placeAt(vocabularyOf('brewery'), `<brewery>${marked}</brewery>`);
    expect(brewery('<cellar><vat><pint kLo="1"/><env att="0.|5"/></vat></cellar>')).toBe(
      'value [0.5] ampeg_attack group ampeg_attack=0.5',
    );
    expect(brewery('<cellar><vat><pint kLo="1"/></vat></cellar><env rel="0.|5"/>')).toBe(
      'value [0.5] ampeg_release global ampeg_release=0.5',
    );
    expect(brewery('<cellar vol="|3"/>')).toBe('value [3] volume master volume=3');
  });
});

describe.each(Object.entries(examples))('in %s', (_, { vocabulary, text }) => {
  const instrument = readVocabularyXml(vocabulary)(text, { path: 'a.xml' });
  const place = placeInVocabulary(vocabulary);

  it('every value is found at its place', () => {
    fc.assert(
      fc.property(fc.nat(instrument.parameters.count - 1), (parameter) => {
        const { start, end } = instrument.valueSpan(parameter);
        const header = instrument.headerOfParameter(parameter);
        const name = instrument.names.text(instrument.canonicalName(parameter));
        expect(place(instrument, start)).toEqual({ kind: 'value', start, end, header, parameter, name });
      }),
    );
  });

  it('every offset is some place, found without an error', () => {
    fc.assert(
      fc.property(fc.nat(text.length), fc.boolean(), (offset, isCut) => {
        const read = isCut ? text.slice(0, offset) : text;
        place(isCut ? readVocabularyXml(vocabulary)(read, { path: 'a.xml' }) : instrument, offset);
      }),
      { numRuns: 50 },
    );
  });
});
