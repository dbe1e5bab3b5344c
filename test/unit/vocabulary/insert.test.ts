import fc from 'fast-check';
import { XMLValidator } from 'fast-xml-parser';
import { describe, expect, it } from 'vitest';
import { editedText } from '../../../server/model/editing/changedInstrument';
import { effectiveValues } from '../../../server/model/effectiveValues';
import type { Instrument } from '../../../server/model/instrument';
import type { Change } from '../../../server/model/notation';
import { readSfz } from '../../../server/sfz/read';
import { editInVocabulary } from '../../../server/vocabulary/edit/editVocabularyXml';
import { readVocabularyXml } from '../../../server/vocabulary/read/readVocabularyXml';
import type { Vocabulary } from '../../../server/vocabulary/vocabulary';
import { examples } from './examples';
import { anyFacts, anyInstrument } from './writeAnyInstrument';

function regionsOf(instrument: Instrument) {
  return [...instrument.regions].map((region) => effectiveValues(instrument, region));
}

describe.each(Object.entries(examples))('%s', (_name, { vocabulary, text, samples }) => {
  const sampleFacts = (path: string) => samples.get(path) ?? anyFacts;
  const read = (xml: string) => readVocabularyXml(vocabulary)(xml, { path: 'a.xml', sampleFacts });
  const edit = editInVocabulary(vocabulary, () => sampleFacts);
  const instrument = read(text);
  const before = regionsOf(instrument);

  it('pastes regions anywhere, with all their values, and leaves the rest as it is', () => {
    fc.assert(
      fc.property(anyInstrument(vocabulary), fc.nat(text.length), (sfz, offset) => {
        const inserted = readSfz(sfz, { path: 'a.sfz' });
        const { edits, notes } = edit(instrument, { kind: 'insert', offset, instrument: inserted });
        const [change, ...more] = edits;
        if (inserted.regions.length === 0) {
          // Comments are written all the same.
          const same = editedText(text, edits);
          expect(XMLValidator.validate(same)).toBe(true);
          expect(regionsOf(read(same))).toEqual(before);
          return;
        }
        expect(more).toEqual([]);
        expect(text.slice(change?.start, change?.end).trim()).toBe('');
        const changed = editedText(text, edits);
        expect(XMLValidator.validate(changed)).toBe(true);
        const after = regionsOf(read(changed));
        const added = regionsOf(inserted);
        const first = after.findIndex((values, at) => JSON.stringify(values) !== JSON.stringify(before[at]));
        expect(after.length).toBe(before.length + added.length);
        const place = first < 0 ? before.length : first;
        expect(after.slice(place + added.length)).toEqual(before.slice(place));
        expect(notes.filter(({ kind }) => kind === 'dropped')).toEqual([]);
        added.forEach((values, at) => {
          const now = after[place + at] ?? {};
          for (const [name, value] of Object.entries(values)) {
            if (typeof value === 'number')
              expect(Math.abs(Number(now[name]) - value), name).toBeLessThanOrEqual(0.5);
            else expect(now[name]).toBe(value);
          }
        });
      }),
      { numRuns: 40 },
    );
  });

  it('writes a region like the one beside it', () => {
    const [values = {}] = before;
    const opcodes = Object.entries(values).map(([name, value]) => `${name}=${value}`);
    const header = instrument.regions[0];
    const { start, end } = instrument.bodySpan(header);
    const change = {
      kind: 'insert',
      offset: end,
      instrument: readSfz(`<region>\n${opcodes.join('\n')}`, { path: 'a.sfz' }),
    };
    const { edits } = edit(instrument, change as Change);
    const changed = editedText(text, edits);
    const lineEnd = text.includes('\r\n') ? '\r\n' : '\n';
    const indentation = /[^\n]*$/.exec(text.slice(0, start))?.[0] ?? '';
    const neighbour = text.slice(start, end).replace(/ castOn="[^"]*"/, '');
    const added = changed.slice(end, changed.length - (text.length - end));
    // Only digits that numbers do not need are left out.
    expect(plainNumbers(added)).toBe(plainNumbers(lineEnd + indentation + neighbour));
  });
});

/** Numbers without zeros at the end of their decimals. */
function plainNumbers(text: string): string {
  return text.replace(/(\d[.,]\d*?)0+(?!\d)/g, '$1').replace(/[.,](?!\d)/g, '');
}

const mill: Vocabulary = {
  name: 'Windmill',
  levels: [
    { element: 'windmill', is: 'instrument', parameters: [] },
    {
      element: 'floor',
      is: 'group',
      parameters: [{ parameter: 'volume', at: '@loudness', form: { kind: 'level', unit: 'dB' } }],
    },
    {
      element: 'sack',
      is: 'region',
      parameters: [
        { parameter: 'sample', at: '@grain', form: { kind: 'path' } },
        { parameter: 'lokey', at: 'stones/@nether', form: { kind: 'key', written: 'number' } },
        { parameter: 'hikey', at: 'stones/@upper', form: { kind: 'key', written: 'number' } },
        { parameter: 'tune', at: '@grind', form: { kind: 'tuning', unit: 'cents' } },
        { parameter: 'pan', at: '@drift', form: { kind: 'pan', left: -1, centre: 0, right: 1 } },
      ],
    },
  ],
};

function pasted(marked: string, sfz: string): string {
  const offset = marked.indexOf('|');
  const text = marked.replace('|', '');
  const instrument = readVocabularyXml(mill)(text, { path: 'a.xml' });
  const change: Change = { kind: 'insert', offset, instrument: readSfz(sfz, { path: 'a.sfz' }) };
  return editedText(text, editInVocabulary(mill)(instrument, change).edits);
}

describe('one region written by hand is enough', () => {
  const two = '<region> sample=b.wav lokey=40 hikey=50 tune=7 pan=50 <region> sample=c.wav tune=-7';

  it.each([
    [
      'on one line, with single quotes, values that it lacks last',
      `<windmill>\n  <floor>\n    <sack weight='3' grind='1.50' grain='a.wav' />|\n  </floor>\n</windmill>\n`,
      `<windmill>
  <floor>
    <sack weight='3' grind='1.50' grain='a.wav' />
    <sack grind='7' grain='b.wav' drift='0.5'>
      <stones nether="40" upper="50"/>
    </sack>
    <sack grind='-7' grain='c.wav' />
  </floor>
</windmill>
`,
    ],
    [
      'an attribute on each line',
      `<windmill>\n\t<floor>\n\t\t<sack\n\t\t\tgrain="a.wav"\n\t\t\tgrind = "2"\n\t\t>\n\t\t\t<stones upper="3"\n\t\t\t\tnether="2"/>\n\t\t</sack>\n\n|\t</floor>\n</windmill>`,
      `<windmill>
\t<floor>
\t\t<sack
\t\t\tgrain="a.wav"
\t\t\tgrind = "2"
\t\t>
\t\t\t<stones upper="3"
\t\t\t\tnether="2"/>
\t\t</sack>

\t\t<sack
\t\t\tgrain="b.wav"
\t\t\tgrind = "7"
\t\t\tdrift = "0.5"
\t\t>
\t\t\t<stones upper="50"
\t\t\t\tnether="40"/>
\t\t</sack>
\t\t<sack
\t\t\tgrain="c.wav"
\t\t\tgrind = "-7"
\t\t/>
\t</floor>
</windmill>`,
    ],
    [
      'all on one line',
      '<windmill><floor><sack grain="a.wav"/> <sack grain="d.wav"/>|</floor></windmill>',
      '<windmill><floor><sack grain="a.wav"/> <sack grain="d.wav"/> <sack grain="b.wav" grind="7" drift="0.5"><stones nether="40" upper="50"/></sack> <sack grain="c.wav" grind="-7"/></floor></windmill>',
    ],
    [
      'in an instrument without a region',
      '<windmill>|</windmill>',
      `<windmill>
  <floor>
    <sack grain="b.wav" grind="7" drift="0.5">
      <stones nether="40" upper="50"/>
    </sack>
    <sack grain="c.wav" grind="-7"/>
  </floor>
</windmill>`,
    ],
  ])('%s', (_name, marked, result) => {
    expect(pasted(marked, two)).toBe(result);
  });

  it('writes groups like those that stand there', () => {
    const text = `<windmill>
  <floor loudness='-3' door="shut">
    <sack grain="a.wav"/>
  </floor>|
</windmill>
`;
    expect(
      pasted(text, '<global> pan=100 <group> volume=2 <region> sample=b.wav <group> <region> sample=c.wav'),
    ).toBe(`<windmill>
  <floor loudness='-3' door="shut">
    <sack grain="a.wav"/>
  </floor>
  <floor loudness='2'>
    <sack grain="b.wav" drift="1"/>
  </floor>
  <floor>
    <sack grain="c.wav" drift="1"/>
  </floor>
</windmill>
`);
  });
});
