import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editedText } from '../../../server/model/editing/changedInstrument';
import { usualFormatStyle } from '../../../server/model/formatStyle';
import type { Instrument } from '../../../server/model/instrument';
import type { Change } from '../../../server/model/notation';
import { readSfz } from '../../../server/sfz/read';
import { vocabularyNotation } from '../../../server/vocabulary/vocabularyNotation';
import { anyText } from '../xml/anyXml';
import { examples } from './examples';

const inserted = readSfz('<group> volume=-3 <region> sample=a.wav lokey=40 tune=5 <region>', {
  path: 'a.sfz',
});

const valuesIn = (instrument: Instrument) =>
  Array.from({ length: instrument.parameters.count }, (_, parameter) => instrument.valueText(parameter));

describe.each(Object.entries(examples))('%s, broken', (_name, { vocabulary, text }) => {
  const notation = vocabularyNotation(vocabulary);
  const broken = fc
    .tuple(
      fc.nat(3000),
      fc.nat(400),
      fc.constantFrom('', '<', '>', '"', '</x>', '<!--', '&', '<![CDATA['),
      fc.nat(5000),
    )
    .map(([at, taken, put, end]) => (text.slice(0, at) + put + text.slice(at + taken)).slice(0, end));

  it('can be changed and laid out without harm', () => {
    fc.assert(
      fc.property(fc.oneof(broken, anyText), fc.nat(), (xml, seed) => {
        const instrument = notation.read(xml, { path: 'a.xml' });
        const { count } = instrument.headers;
        const changes: Change[] = [{ kind: 'insert', offset: seed % (xml.length + 1), instrument: inserted }];
        if (count > 0) {
          const header = seed % count;
          changes.push(
            { kind: 'set', header, name: 'lokey', value: '41' },
            { kind: 'set', header, name: 'volume', value: '-2' },
            { kind: 'removeHeader', header },
            { kind: 'group', first: header, last: count - 1, sets: [] },
          );
        }
        if (instrument.parameters.count > 0)
          changes.push({ kind: 'remove', parameter: seed % instrument.parameters.count });
        const all = changes.map((change) => notation.edit(instrument, change).edits);
        const layout = notation.layOut(instrument, usualFormatStyle);
        const isWithin = ({ start, end }: { start: number; end: number }) =>
          start >= 0 && end >= start && end <= xml.length;
        expect([...all, layout].flat().filter((edit) => !isWithin(edit))).toEqual([]);
        const laidOut = editedText(xml, layout);
        expect(laidOut.replace(/\s+/g, '')).toBe(xml.replace(/\s+/g, ''));
        const again = notation.read(laidOut, { path: 'a.xml' });
        expect(valuesIn(again)).toEqual(valuesIn(instrument));
      }),
    );
  });
});
