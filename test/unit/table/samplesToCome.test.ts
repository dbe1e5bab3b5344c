import { describe, expect, it } from 'vitest';
import { readZoneTable } from '../../../server/table/readTable';
import { isStillToCome } from '../../../server/trade/readings/stillToCome';
import { notesOf, regions, table } from './tableRegions';

const plan = (...samples: string[]) =>
  table(
    'Sample | Root | Low | High',
    ...samples.map((name, at) => `${name} | ${40 + at * 5} | ${38 + at * 5} | ${42 + at * 5}`),
  );

describe('a table whose samples are still to come', () => {
  it.each([
    ['(to be recorded)', '(to be recorded)'],
    ['TBD', 'tba'],
    ['pending', 'pending'],
    ['folgt', 'noch aufzunehmen'],
    ['à enregistrer', 'à enregistrer (mai)'],
    ['?', '?'],
    ['…', '...'],
    // Words that no list has, but the same in brackets everywhere.
    ['[see the next session]', '[see the next session]'],
  ])('names none: %s', (...samples) => {
    const { instrument, problem } = readZoneTable(plan(...samples));
    expect(instrument.regions).toHaveLength(0);
    expect(problem).toMatch(/No row names a sample yet: column "Sample" says/);
    expect(problem).toContain(samples[0]);
  });

  it('gives the rows that name one, and tells of the others', () => {
    const text = plan('a.wav', 'TBD', 'c.wav');
    expect(regions(text).map(({ sample }) => sample)).toEqual(['a.wav', 'c.wav']);
    expect(notesOf(text).join()).toMatch(/Line 3 is no zone: it names a sample that is still to come/);
  });

  it.each([
    ['the same name without brackets', ['piano', 'piano']],
    ['different names in brackets', ['[soft]', '[loud]']],
    ['one name in brackets', ['[soft]']],
  ])('is none with %s', (_, samples) => {
    expect(regions(plan(...samples)).map(({ sample }) => sample)).toEqual(samples);
  });
});

describe('words for what is still to come', () => {
  it.each([
    'T.B.D.',
    'Not recorded yet',
    'not yet recorded',
    'to be recorded in May',
    '<tbc>',
    'pendiente',
    '未録音',
    'ещё не записано',
  ])('%s', (text) => expect(isStillToCome(text)).toBe(true));

  it.each(['TBD_60.wav', 'open', 'piano', 'tb', 'Pending Drum 3', 'a1', '', '-', 'missing_C4'])(
    'not %s',
    (text) => expect(isStillToCome(text)).toBe(false),
  );
});
