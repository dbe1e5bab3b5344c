import { describe, expect, it } from 'vitest';
import { notesOf, regions } from '../tableRegions';

const head = 'file,lo,hi,root,vel lo,vel hi';
const rows = [
  'bassoon_C3.wav,46,49,48,0,127',
  'bassoon_E3.wav,50,53,52,0,127',
  'bassoon_G3.wav,54,57,55,0,127',
  'bassoon_B3.wav,58,61,59,0,127',
];
const text = (at: number, row: string) => [head, ...rows.with(at, row)].join('\n');
const read = (table: string) =>
  regions(table).map(
    ({ sample, lokey, hikey, pitch_keycenter, lovel, hivel }) =>
      `${sample} ${lokey}-${hikey} ${pitch_keycenter} ${lovel}-${hivel}`,
  );
const notes = (table: string) => notesOf(table).join('\n');
const whole = [
  'bassoon_C3.wav 46-49 48 0-127',
  'bassoon_E3.wav 50-53 52 0-127',
  'bassoon_G3.wav 54-57 55 0-127',
  'bassoon_B3.wav 58-61 59 0-127',
];

describe('a row with a cell less than there are headings', () => {
  it.each([
    ['the high key, which its name and the row below tell', 'bassoon_E3.wav,50,52,0,127', 'hi'],
    ['the low key', 'bassoon_E3.wav,53,52,0,127', 'lo'],
    ['the root, which its name tells', 'bassoon_E3.wav,50,53,0,127', 'root'],
  ])('is read under the headings that fit where it lacks %s', (_, row, heading) => {
    expect(read(text(1, row))).toEqual(whole);
    expect(notes(text(1, row))).toContain(
      `The row of "bassoon_E3.wav" has 1 cell less than there are headings: "${heading}" is missing`,
    );
  });

  it('is left out where its key may be one of two', () => {
    const keys = ['file,lo,hi,root', 'oboe a.wav,40,44,41', 'oboe b.wav,45,50', 'oboe c.wav,53,59,57'];
    const layers = [
      'file,key,vel lo,vel hi',
      'oboe a.wav,40,0,60',
      'oboe b.wav,40,61,127',
      'oboe c.wav,42,0,60',
      'oboe d.wav,42,127',
    ];
    expect(notes(keys.join('\n'))).toMatch(
      /dropped: The row of "oboe b.wav" .*"hi" or "root" that is missing, so the row is left out/,
    );
    expect(regions(layers.join('\n'))).toHaveLength(3);
    expect(notes(layers.join('\n'))).toMatch(
      /dropped: The row of "oboe d.wav" .*"key" or "vel lo" that is missing, so the row is left out/,
    );
  });

  it('keeps its keys where one of its other values is missing, and nothing tells which', () => {
    const table = [
      'file,root,lo,hi,tune,volume',
      'oboe a.wav,41,40,44,3,-2',
      'oboe b.wav,47,45,50,-4',
      'oboe c.wav,52,51,54,-6,-3',
      'oboe d.wav,58,56,60,1,-1',
    ].join('\n');
    expect(regions(table).find(({ sample }) => sample === 'oboe b.wav')).toEqual({
      sample: 'oboe b.wav',
      pitch_keycenter: '47',
      lokey: '45',
      hikey: '50',
    });
    expect(notes(table)).toMatch(
      /"tune" or "volume" that is missing, so its "tune" and "volume" are left out/,
    );
  });

  it('stays as it stands where it lacks a remark, or many rows end early', () => {
    const remarks = [
      'file,lo,hi,root,remark',
      'a.wav,40,44,41,dull',
      'b.wav,45,50,47',
      'c.wav,51,55,52,fine',
    ];
    const early = [
      'file,lo,hi,root,tune',
      'a.wav,40,44,41,3',
      'b.wav,45,50,47',
      'c.wav,51,55,52,-2',
      'd.wav,56,60,58',
    ];
    for (const table of [remarks, early]) {
      expect(regions(table.join('\n')).find(({ sample }) => sample === 'b.wav')).toMatchObject({
        lokey: '45',
        hikey: '50',
        pitch_keycenter: '47',
      });
      expect(notes(table.join('\n'))).not.toMatch(/cell less/);
    }
  });
});

describe('a row with a cell more than there are headings', () => {
  it.each([
    'bassoon_E3.wav,50,53,52,88,0,127',
    'bassoon_E3.wav,50,53,53,52,0,127',
    'bassoon_E3.wav,88,50,53,52,0,127',
  ])('is read without the cell that does not fit: %s', (row) => {
    expect(read(text(1, row))).toEqual(whole);
    expect(notes(text(1, row))).toMatch(/"bassoon_E3.wav" has 1 cell more .*: "(?:88|53)" is left out/);
  });

  it('is left out where no cell or several may be too many', () => {
    const doubt = text(1, 'bassoon_E3.wav,50,53,52,90,20,0');
    expect(regions(doubt)).toHaveLength(3);
    expect(notes(doubt)).toMatch(/dropped: The row of "bassoon_E3.wav" has 1 cell more/);
  });

  it('may have a remark there', () => {
    expect(read(text(1, 'bassoon_E3.wav,50,53,52,0,127,thin'))).toEqual(whole);
  });
});
