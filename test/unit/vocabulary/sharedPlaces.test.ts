import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../server/model/effectiveValues';
import type { Change } from '../../../server/model/notation';
import { readSfz } from '../../../server/sfz/read';
import type { Vocabulary } from '../../../server/vocabulary/vocabulary';
import { vocabularyNotation } from '../../../server/vocabulary/vocabularyNotation';

/** One number says the group of a region and which group silences it. */
const stable: Vocabulary = {
  name: 'Stable',
  levels: [
    { element: 'yard', is: 'instrument', parameters: [] },
    {
      element: 'horse',
      is: 'region',
      parameters: [
        { parameter: 'sample', at: '@neigh', form: { kind: 'path' } },
        { parameter: 'group', at: '@box', form: { kind: 'number' } },
        { parameter: 'off_by', at: '@box', form: { kind: 'number' } },
        { parameter: 'pan', at: '@side', form: { kind: 'pan', left: -100, centre: 0, right: 100 } },
      ],
    },
  ],
};
const notation = vocabularyNotation(stable);

const text = '<yard>\n  <horse neigh="a.wav" box="4"/>\n  <horse neigh="b.wav"/>\n</yard>\n';

function changed(change: (regions: readonly number[]) => Change) {
  const instrument = notation.read(text, { path: 'a.xml' });
  const { edits, notes } = notation.edit(instrument, change([...instrument.regions]));
  let result = text;
  for (const { start, end, newText } of edits) result = result.slice(0, start) + newText + result.slice(end);
  const again = notation.read(result, { path: 'a.xml' });
  return {
    result,
    messages: notes.map(({ message }) => message),
    regions: [...again.regions].map((region) => effectiveValues(again, region)),
  };
}

const parameterOf = (name: string) => {
  const instrument = notation.read(text, { path: 'a.xml' });
  return instrument.own(instrument.regions[0], instrument.names.canonical(instrument.names.idOf(name)));
};

describe('two parameters in one place', () => {
  it('both change when one does, which a note says', () => {
    const { regions, messages } = changed(([header = -1]) => ({
      kind: 'set',
      header,
      name: 'group',
      value: '5',
    }));
    expect(regions[0]).toMatchObject({ group: 5, off_by: 5 });
    expect(messages).toEqual(['off_by becomes 5 as well: it stands in the same place as group.']);
  });

  it('are both set when one is', () => {
    const { regions, messages } = changed(([, header = -1]) => ({
      kind: 'set',
      header,
      name: 'off_by',
      value: '2',
    }));
    expect(regions[1]).toMatchObject({ group: 2, off_by: 2 });
    expect(messages).toEqual(['group becomes 2 as well: it stands in the same place as off_by.']);
  });

  it('are both taken out when one is', () => {
    const { result, messages } = changed(() => ({ kind: 'remove', parameter: parameterOf('off_by') }));
    expect(result).toContain('<horse neigh="a.wav"/>');
    expect(messages).toEqual(['group is not set any more: it stands in the same place as off_by.']);
  });

  it('are changed together without a note where that is what was asked for', () => {
    const add = (group: string, offBy: string) =>
      changed(([header = -1]) => ({
        kind: 'revise',
        header,
        remove: [],
        add: [
          { name: 'group', value: group },
          { name: 'off_by', value: offBy },
        ],
      }));
    expect(add('7', '7')).toMatchObject({ messages: [], regions: [{ group: 7, off_by: 7 }, {}] });
    const refused = add('7', '8');
    expect(refused.result).toBe(text);
    expect(refused.messages).toEqual([
      'group and off_by stand in the same place and cannot differ, so nothing was changed.',
    ]);
  });

  it('are not renamed into one another', () => {
    const { result, messages } = changed(() => ({
      kind: 'rename',
      parameter: parameterOf('group'),
      name: 'off_by',
    }));
    expect(result).toBe(text);
    expect(messages.length).toBe(1);
  });

  it('are written with a note where only one is set, or where they differ', () => {
    const written = (sfz: string) => {
      const { text: xml, notes } = notation.write(readSfz(sfz, { path: 'a.sfz' }));
      return {
        line: xml.split('\n')[2]?.trim(),
        told: notes.map(({ kind, message }) => `${kind}: ${message}`),
      };
    };
    expect(written('<region> sample=a.wav group=3 off_by=3')).toEqual({
      line: '<horse neigh="a.wav" box="3"/>',
      told: [],
    });
    expect(written('<region> sample=a.wav group=3')).toEqual({
      line: '<horse neigh="a.wav" box="3"/>',
      told: ['assumed: off_by becomes 3 as well: it stands in the same place as group 3.'],
    });
    expect(written('<region> sample=a.wav group=3 off_by=4')).toEqual({
      line: '<horse neigh="a.wav" box="3"/>',
      told: ['dropped: off_by 4 is left out: it stands in the same place as group 3.'],
    });
  });
});
