import { describe, expect, it } from 'vitest';
import { readZoneTable } from '../../../server/table/readTable';
import type { ColumnMeaning } from '../../../server/trade/meaning';
import { notesOf, regions, regionsOf, table } from './tableRegions';

describe('a zone table with everything', () => {
  const text = table(
    'Sample | Group | RR | Root | Low key | High key | Low vel | High vel | Tune | Volume | Pan | Loop start | Loop end',
    'a1.wav | Soft | 1 | 60 | 58 | 62 | 1 | 63 | -4 | -3.5 | L20 | 1000 | 44099',
    'a2.wav | Soft | 2 | 60 | 58 | 62 | 1 | 63 | 0 | 0 | C | 0 | 0',
    'b1.wav | Loud | 1 | 60 | 58 | 62 | 64 | 127 | 12 | +2 | R20 | | ',
  );

  it('gives regions in groups with the values that differ from defaults', () => {
    const keys = { pitch_keycenter: '60', lokey: '58', hikey: '62' };
    const soft = { group: 'Soft', ...keys, lovel: '1', hivel: '63', seq_length: '2' };
    expect(regions(text)).toEqual([
      {
        ...soft,
        sample: 'a1.wav',
        seq_position: '1',
        tune: '-4',
        volume: '-3.5',
        pan: '-20',
        loop_mode: 'loop_continuous',
        loop_start: '1000',
        loop_end: '44099',
      },
      { ...soft, sample: 'a2.wav', seq_position: '2' },
      {
        group: 'Loud',
        ...keys,
        sample: 'b1.wav',
        lovel: '64',
        hivel: '127',
        tune: '12',
        volume: '2',
        pan: '20',
      },
    ]);
    expect(notesOf(text)).toEqual([
      expect.stringMatching(/^assumed: .*"Tune" gives no unit.*cents are assumed/),
      expect.stringMatching(/^assumed: .*"Pan" .*-100 is read as left/),
      expect.stringMatching(/^assumed: Nothing says whether the loops in column "Loop end"/),
    ]);
  });

  it('ties each value to its cell', () => {
    const { instrument } = readZoneTable(text, { path: 'zones.tsv' });
    expect(instrument.format).toBe('table');
    expect(instrument.sources[0]).toMatchObject({ path: 'zones.tsv', text });
    const found: [string, string][] = [];
    for (let parameter = 0; parameter < instrument.parameters.count; parameter++) {
      const { start, end } = instrument.valueSpan(parameter);
      expect(instrument.parameterSpan(parameter)).toMatchObject({ start, end });
      found.push([instrument.names.text(instrument.name(parameter)), text.slice(start, end)]);
    }
    expect(found).toContainEqual(['pan', 'L20']);
    expect(found).toContainEqual(['loop_end', '44099']);
    expect(found).toContainEqual(['group_label', 'Loud']);
    expect(found).toContainEqual(['volume', '+2']);
  });
});

describe('groups', () => {
  it('come in order of first appearance, regions without one first', () => {
    const text = table(
      'File | Group | Key',
      'a.wav | B | 60',
      'b.wav | A | 60',
      'c.wav | | 61',
      'd.wav | B | 61',
    );
    expect(regions(text).map(({ sample, group }) => [sample, group])).toEqual([
      ['c.wav', undefined],
      ['a.wav', 'B'],
      ['d.wav', 'B'],
      ['b.wav', 'A'],
    ]);
  });

  it('reach down to rows below a name that stands once', () => {
    const text = table(
      'Group | File | Key',
      'A | a.wav | 60',
      ' | b.wav | 61',
      'B | c.wav | 60',
      ' | d.wav | 61',
    );
    expect(regions(text).map(({ group }) => group)).toEqual(['A', 'A', 'B', 'B']);
    expect(notesOf(text)[0]).toMatch(/^assumed: Line 3 names no group.*"A"/);
  });
});

describe('values', () => {
  it('shares tuning beyond 100 cents between transpose and tune', () => {
    const text = table(
      'File | Key | Tune',
      'a.wav | 60 | 150',
      'b.wav | 61 | -250',
      'c.wav | 62 | 1200',
      'd.wav | 63 | -1.5 st',
    );
    expect(regions(text).map(({ transpose, tune }) => [transpose, tune])).toEqual([
      ['1', '50'],
      ['-2', '-50'],
      ['12', undefined],
      ['-1', '-50'],
    ]);
    expect(notesOf(text)).toEqual([]);
  });

  it('adds coarse and fine', () => {
    const text = table(
      'File | Key | Coarse | Fine',
      'a.wav | 60 | -12 | 7',
      'b.wav | 61 | 0 | 7',
      'c.wav | 62 | 0.5 | 70',
    );
    expect(regions(text).map(({ transpose, tune }) => [transpose, tune])).toEqual([
      ['-12', '7'],
      [undefined, '7'],
      ['1', '20'],
    ]);
  });

  it('brings levels into bounds with a note', () => {
    const text = table('File | Key | Gain (dB)', 'a.wav | 60 | 9', 'b.wav | 61 | -inf', 'c.wav | 62 | −2,5');
    expect(regions(text).map(({ volume }) => volume)).toEqual(['6', '-144', '-2.5']);
    expect(notesOf(text)).toEqual([
      expect.stringMatching(/^approximated: Line 2, column "Gain \(dB\)": "9" .*6 dB/),
      expect.stringMatching(/^approximated: Line 3, .*-144 dB/),
    ]);
  });

  it('turns attenuation round', () => {
    expect(regions(table('File | Key | Attenuation', 'a.wav | 60 | 6'))[0]?.volume).toBe('-6');
  });

  it('finds the scale of pan', () => {
    const pans = (...values: string[]) =>
      regions(
        table('File | Key | Pan', ...values.map((value, at) => `${at}.wav | ${60 + at} | ${value}`)),
      ).map(({ pan }) => pan);
    expect(pans('-100', '0', '50')).toEqual(['-100', undefined, '50']);
    expect(pans('-1', '0', '0.25')).toEqual(['-100', undefined, '25']);
    expect(pans('0', '64', '127')).toEqual(['-100', undefined, '100']);
    expect(pans('-140', '0', '50')).toEqual(['-100', undefined, '50']);
  });

  it('reads loops by switch, mode, length and range', () => {
    const loops = (heading: string, ...rows: string[]) =>
      regions(
        table(`File | Key | ${heading}`, ...rows.map((row, at) => `${at}.wav | ${60 + at} | ${row}`)),
      ).map(({ loop_mode, loop_start, loop_end }) => [loop_mode, loop_start, loop_end]);
    expect(
      loops('Loop | Loop start | Loop end', 'on | 10 | 99', 'off | 10 | 99', ' | 10 | 99', 'sustain | 5 | 9'),
    ).toEqual([
      ['loop_continuous', '10', '99'],
      ['no_loop', undefined, undefined],
      ['loop_continuous', '10', '99'],
      ['loop_sustain', '5', '9'],
    ]);
    expect(loops('Loop start | Loop length', '10 | 90', '0 | 0')).toEqual([
      ['loop_continuous', '10', '99'],
      [undefined, undefined, undefined],
    ]);
    expect(loops('Loop', '1000-2000', 'off')).toEqual([
      ['loop_continuous', '1000', '2000'],
      ['no_loop', undefined, undefined],
    ]);
  });

  it('leaves out a loop that ends before it starts, with a note', () => {
    const text = table('File | Key | Loop start | Loop end', 'a.wav | 60 | 900 | 100', 'b.wav | 61 | 1 | 9');
    expect(regions(text)[0]).not.toHaveProperty('loop_mode');
    expect(notesOf(text).join('\n')).toMatch(/^dropped: Line 2, column "Loop end": "100" makes no loop/m);
  });

  it('reads start and end of the sample', () => {
    const text = table('File | Key | Start | End', 'a.wav | 60 | 100 | 5000', 'b.wav | 61 | 0 | 0');
    expect(regions(text)).toEqual([
      { sample: 'a.wav', key: '60', offset: '100', end: '5000' },
      { sample: 'b.wav', key: '61' },
    ]);
  });

  it('counts a round robin over groups where each position is a group', () => {
    const text = table(
      'File | Group | RR | Key',
      'a.wav | one | 1 | 60',
      'b.wav | two | 2 | 60',
      'c.wav | one | 1 | 61',
    );
    expect(
      regions(text).map(({ sample, seq_position, seq_length }) => [sample, seq_position, seq_length]),
    ).toEqual([
      ['a.wav', '1', '2'],
      ['c.wav', undefined, undefined],
      ['b.wav', '2', '2'],
    ]);
  });

  it('leaves out what it does not understand, naming cell, line and column', () => {
    const text = table(
      'File | Root | Low vel | Pan | Loop end | Tune',
      'a.wav | 60 | 1 | 0 | 0 | 0',
      'b.wav | X9 | 200 | far | 1.5 | =1+1',
      'c.wav | 62 | 1 | 0 | 0 | 0',
    );
    expect(regions(text, { columns: new Map() })[1]).toEqual({ sample: 'b.wav' });
    const notes = notesOf(text).filter((note) => note.startsWith('dropped'));
    expect(notes).toHaveLength(5);
    expect(notes.join('\n')).toMatch(/Line 3, column "Root": "X9"/);
    expect(notes.join('\n')).toMatch(/"=1\+1" is a formula/);
  });
});

describe('rows that are no zones', () => {
  it('are passed over with a note', () => {
    const text = table(
      'Zones of the second day',
      '',
      'File | Root | Low | High',
      'a.wav | 60 | 58 | 62',
      ' | 61 | 59 | 63',
      'Loud ones',
      'File | Root | Low | High',
      'b.wav | 65 | 63 | 66',
      '=HYPERLINK("x") | 70 | 70 | 70',
      'Total | 2 | | ',
    );
    expect(regions(text).map(({ sample }) => sample)).toEqual(['a.wav', 'b.wav']);
    const notes = notesOf(text);
    expect(notes.filter((note) => !note.startsWith('ignored: Line '))).toEqual([
      expect.stringMatching(/^assumed: Line 6, "Loud ones", .*name of the group/),
    ]);
    expect(notes.map((note) => Number(/Line (\d+)/.exec(note)?.[1])).sort((a, b) => a - b)).toEqual([
      1, 5, 6, 7, 9, 10,
    ]);
  });

  it('keeps a sample with odd characters as text on one line', () => {
    const text = 'File,Key\n"a <region> key=1.wav",60\n"b\nc.wav",61\n';
    expect(regions(text).map(({ sample }) => sample)).toEqual(['a <region> key=1.wav', 'b c.wav']);
    expect(notesOf(text)).toEqual([expect.stringMatching(/^approximated: Line 3: line breaks/)]);
  });
});

describe('octaves', () => {
  const named = table('File | Root | Low | High', 'x C2.wav | C3 | B2 | D3', 'x F2.wav | F3 | D#3 | G3');
  const roots = (text: string, options = {}) =>
    regions(text, options).map(({ pitch_keycenter }) => pitch_keycenter);

  it('takes C4 = 60 where nothing tells otherwise, with a note', () => {
    expect(roots(named)).toEqual(['48', '53']);
    expect(notesOf(named)).toEqual([expect.stringMatching(/^assumed: Key 60 .*C4.*--middle-c/)]);
  });

  it('obeys the option without a note', () => {
    expect(roots(named, { middleC: 'C3' })).toEqual(['60', '65']);
    expect(roots(named, { middleC: 'C5' })).toEqual(['36', '41']);
    expect(notesOf(named, { middleC: 'C3' })).toEqual([]);
  });

  it('follows the root keys of the sample files', () => {
    const rootKeyOf = (sample: string) => (sample === 'x C2.wav' ? 60 : 65);
    expect(roots(named, { rootKeyOf })).toEqual(['60', '65']);
    expect(notesOf(named, { rootKeyOf })[0]).toMatch(/C3, because the root keys in 2 of 2 sample files/);
  });

  it('follows numbers beside names', () => {
    expect(roots(table('File | Root', 'a.wav | C3 (60)', 'b.wav | D3'))).toEqual(['60', '62']);
    const two = table('File | Root | Root note | Low | High', 'a.wav | 60 | C5 | B4 | D5');
    expect(regions(two)).toEqual([{ sample: 'a.wav', pitch_keycenter: '60', lokey: '59', hikey: '62' }]);
    const mixed = table('File | Root | Low | High', 'a.wav | 60 | B2 | D3', 'b.wav | 65 | E3 | G3');
    expect(regions(mixed)[0]).toMatchObject({ lokey: '59', hikey: '62' });
  });

  it('follows names in files beside numbers', () => {
    const text = table('File | Root | Low | High', 'x C3.wav | 60 | C2 | C6', 'x F3.wav | 65 | C2 | C6');
    expect(regions(text)[0]).toMatchObject({ lokey: '48', hikey: '96' });
  });

  it('keeps names inside 0..127', () => {
    expect(regions(table('File | Low | High', 'a.wav | C-2 | G8'))[0]).toMatchObject({
      lokey: '0',
      hikey: '127',
    });
    expect(regions(table('File | Low | High', 'a.wav | C0 | G10'))[0]).toMatchObject({
      lokey: '0',
      hikey: '127',
    });
  });

  it('says nothing where keys are numbers', () => {
    expect(readZoneTable(table('File | Root | Key range', 'a.wav | 60 | 1-127')).middleC).toBeUndefined();
  });
});

describe('layers', () => {
  it('start above the next lower one where only their highest velocities are given', () => {
    const text = table(
      'File | Low | High | Velocity',
      'a.wav | 58 | 62 | 127',
      'b.wav | 58 | 62 | 63',
      'c.wav | 63 | 66 | 127',
      'd.wav | 58 | 62 | 63',
    );
    expect(regions(text).map(({ sample, lovel, hivel }) => [sample, lovel, hivel])).toEqual([
      ['a.wav', '64', '127'],
      ['b.wav', undefined, '63'],
      ['c.wav', undefined, '127'],
      ['d.wav', undefined, '63'],
    ]);
    expect(notesOf(text).join('\n')).toMatch(/assumed: .*one above the next lower/);
  });
});

describe('columns of spaces', () => {
  it('keep names of several words whole and fill groups down', () => {
    const text = [
      'Group     File               Root  Lo   Hi   Gain  Pan',
      'Soft      tap soft 01.wav    60    57   62   -3.5  L20',
      '          tap soft 02.wav    65    63   68    0    C',
      'Loud      tap loud 01.wav    60    57   62    1.5  R20',
    ].join('\n');
    expect(regions(text)).toEqual([
      {
        group: 'Soft',
        sample: 'tap soft 01.wav',
        pitch_keycenter: '60',
        lokey: '57',
        hikey: '62',
        hivel: '63',
        volume: '-3.5',
        pan: '-20',
      },
      {
        group: 'Soft',
        sample: 'tap soft 02.wav',
        pitch_keycenter: '65',
        lokey: '63',
        hikey: '68',
      },
      {
        group: 'Loud',
        sample: 'tap loud 01.wav',
        pitch_keycenter: '60',
        lokey: '57',
        hikey: '62',
        lovel: '64',
        volume: '1.5',
        pan: '20',
      },
    ]);
  });
});

describe('options', () => {
  it('writes the paths that samples are found at', () => {
    const text = 'a,60,58,62\nb,65,63,66';
    const resolveSample = (name: string) => (name === 'a' ? 'Samples/a.wav' : undefined);
    expect(regions(text, { resolveSample }).map(({ sample }) => sample)).toEqual(['Samples/a.wav', 'b']);
  });

  it('obeys meanings set by hand', () => {
    const columns = new Map<number, ColumnMeaning>([
      [1, 'lokey'],
      [2, 'hikey'],
    ]);
    expect(regions('a.wav,58,62\nb.wav,63,66', { columns })[0]).toEqual({
      sample: 'a.wav',
      lokey: '58',
      hikey: '62',
    });
    const reading = readZoneTable('File,Root,Cutoff\na.wav,60,12', { columns: new Map([[2, 'tune']]) });
    expect(regionsOf(reading)[0]).toMatchObject({ tune: '12' });
  });
});

describe('what is no table', () => {
  it.each([
    ['', /no text/],
    [' \n\t\n', /no text/],
    ['one cell', /no zone table/],
    ['a.wav\nb.wav\n', /no zone table/],
    ['The bell rang. A boat came in, slowly, and nobody saw it.\nThen it left.', /sample names/],
    ['Sample\tRoot\tLow\tHigh\n', /headings only/],
    ['Root\tLow\tHigh\n60\t58\t62', /sample names/],
    ['RIFF\u0000\u0000WAVE,fmt ,1,2', /binary/],
    ['\ufffd\u0001\ufffd\u0002,\ufffd\ufffd', /binary/],
    ['File,Root\n,60\n,61', /names a sample/],
  ])('%j gives one clear problem', (text, problem) => {
    const reading = readZoneTable(text);
    expect(reading.problem).toMatch(problem);
    expect(reading.instrument.regions).toHaveLength(0);
    expect(reading.notes).toEqual([]);
  });

  it('takes a thousand columns, one huge line and rows of unequal length', () => {
    const wide = `File,Root${',x'.repeat(3000)}\na.wav,60${',1'.repeat(3000)}\nb.wav\n`;
    expect(regions(wide).map(({ sample }) => sample)).toEqual(['a.wav', 'b.wav']);
    expect(readZoneTable(`a.wav,${'60,'.repeat(300_000)}`).problem).toBeUndefined();
    expect(readZoneTable('a'.repeat(2_000_000)).problem).toBeDefined();
    expect(readZoneTable('C'.repeat(300_000).split('').join('  ')).problem).toBeDefined();
  });

  it('lists notes of one sort up to a limit', () => {
    const text = `File\tRoot\tPan\n${'a.wav\t60\t0\na.wav\t61\twide\n'.repeat(1500)}`;
    const notes = notesOf(text);
    // Of two sorts: cells that are no pan, and rows that repeat others.
    expect(notes.length).toBeLessThan(300);
    expect(notes.join('\n')).toMatch(/1,400 more places/);
  });
});
