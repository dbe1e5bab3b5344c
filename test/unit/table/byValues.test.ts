import { describe, expect, it } from 'vitest';
import { readZoneTable } from '../../../server/table/readTable';
import { notesOf, regions, table } from './tableRegions';

const values = (text: string, ...names: string[]) =>
  regions(text, { middleC: 'C4' }).map((region) => names.map((name) => region[name] ?? '').join(' '));

describe('velocities under headings that nobody knows', () => {
  it('are ranges that share out all velocities on the same keys', () => {
    const text = table(
      'File | Low | High | Root | Strike',
      'a.wav | 48 | 52 | 50 | 1-70',
      'b.wav | 48 | 52 | 50 | 71-127',
      'c.wav | 53 | 57 | 55 | 1-127',
    );
    expect(values(text, 'lovel', 'hivel')).toEqual(['1 70', '71 127', '1 127']);
    expect(notesOf(text).join('\n')).toMatch(/"Strike" is the velocity range\. On the same keys/);
  });

  it('are two columns that do so together, in either order', () => {
    const text = table(
      'File | Low | High | Root | Upto | Since',
      'a.wav | 48 | 52 | 50 | 70 | 1',
      'b.wav | 48 | 52 | 50 | 127 | 71',
    );
    expect(values(text, 'lovel', 'hivel')).toEqual(['1 70', '71 127']);
  });

  it('are not taken from ranges with a hole between', () => {
    const text = table(
      'File | Low | High | Root | Shelf',
      'a.wav | 48 | 52 | 50 | 1-60',
      'b.wav | 48 | 52 | 50 | 71-90',
    );
    expect(values(text, 'lovel', 'hivel')).toEqual([' ', ' ']);
    expect(notesOf(text).join('\n')).toMatch(/"Shelf" is not used/);
  });

  it('count in percent where the heading says so', () => {
    const text = table(
      'File | Low | High | Root | Strike (%)',
      'a.wav | 48 | 52 | 50 | 0-50',
      'b.wav | 48 | 52 | 50 | 51-100',
    );
    // Half of 127 is 63.5, which is written as the nearest whole number.
    expect(values(text, 'lovel', 'hivel')).toEqual(['0 64', '65 127']);
  });
});

describe('numbers under a heading of which the unit alone is known', () => {
  it.each([
    ['Strength (dB)', '-3', 'volume', '-3'],
    ['Bring it by (ct)', '-8', 'tune', '-8'],
    ['Moved (semitones)', '2', 'transpose', '2'],
    // A factor of 0.5 is 20 · log10(0.5) dB (IEC 60027-3).
    ['Strength (factor)', '0.5', 'volume', '-6.02'],
  ])('%s', (heading, cell, name, value) => {
    const text = table(`File | Root | ${heading}`, `a.wav | 50 | ${cell}`, `b.wav | 55 | ${cell}`);
    expect(values(text, name)).toEqual([value, value]);
    expect(notesOf(text).join('\n')).toMatch(/Taken by its heading/);
  });

  it.each(['Peak (dB)', 'Noise floor dB', 'Mic C'])('%s is no value of a zone', (heading) => {
    const text = table(`File | Root | ${heading}`, 'a.wav | 50 | -3', 'b.wav | 55 | -4');
    expect(values(text, 'volume', 'tune')).toEqual([' ', ' ']);
  });
});

describe('keys and loops under headings that nobody knows', () => {
  it('are ranges that hold the root on all rows', () => {
    const text = table('File | Root | Shelf', 'a.wav | 50 | 48-52', 'b.wav | 55 | 53-57');
    expect(values(text, 'lokey', 'hikey')).toEqual(['48 52', '53 57']);
  });

  it('are ranges of numbers that are too great for keys', () => {
    const text = table('File | Root | Turning', 'a.wav | 50 | 1200-30000', 'b.wav | 55 | 900-41000');
    expect(values(text, 'loop_start', 'loop_end')).toEqual(['1200 30000', '900 41000']);
  });

  it('follow from a word for loops and one for an end', () => {
    const text = table(
      'Datei | Grundton | Schleife ab | Schleife bis',
      'a.wav | 50 | 0,5 s | 1,5 s',
      'b.wav | 55 | 0,25 s | 1 s',
    );
    expect(regions(text, { rateOf: () => 1000 }).map((one) => `${one.loop_start} ${one.loop_end}`)).toEqual([
      '500 1500',
      '250 1000',
    ]);
  });
});

describe('roots under a heading that nobody knows', () => {
  const rows = ['a.wav | 36-47 | 41 | 1', 'b.wav | 48-59 | 53 | 2', 'c.wav | 60-84 | 65 | 1'];

  it('are the numbers that lie within the ranges on all rows', () => {
    const text = table('File | Keys | Wellspring | Shelf', ...rows);
    expect(values(text, 'pitch_keycenter')).toEqual(['41', '53', '65']);
    expect(notesOf(text).join('\n')).toMatch(
      /"Wellspring" is .*between the low and the high key on all rows/,
    );
  });

  it('are none where one lies outside, or two columns fit', () => {
    const outside = table('File | Keys | Wellspring', ...rows, 'd.wav | 85-90 | 99 | 1');
    expect(values(outside, 'pitch_keycenter')).not.toContain('41');
    const two = rows.map((row) => row.replace(/\d$/, (at) => String(Number(row.slice(8, 10)) + Number(at))));
    expect(values(table('File | Keys | Wellspring | Shelf', ...two), 'pitch_keycenter')).not.toContain('41');
  });
});

describe('milliseconds with a mark before three digits', () => {
  const text = table(
    'File | Root | Loop start (ms) | Loop end (ms)',
    'a.wav | 50 | 500 | 1.500',
    'b.wav | 55 | 400 | 1.200',
  );

  it('are thousands, as nobody counts in thousandths of them', () => {
    expect(regions(text, { rateOf: () => 1000 }).map((one) => one.loop_end)).toEqual(['1500', '1200']);
    expect(notesOf(text, { rateOf: () => 1000 }).join('\n')).toMatch(
      /"1\.500" in column "Loop end.*" is read as 1500 milliseconds, .*\. If its mark is a decimal one/,
    );
  });
});

describe('values of one of several samples in a row', () => {
  it('are told by the words of their headings', () => {
    const text = table(
      'Keys | Near mic | Far mic | Near dB | Far dB',
      '48-52 | n1.wav | f1.wav | 0 | -6',
      '53-57 | n2.wav | f2.wav | -1 | -7.5',
    );
    expect(values(text, 'sample', 'volume')).toEqual(['n1.wav ', 'n2.wav -1', 'f1.wav -6', 'f2.wav -7.5']);
  });

  it('are told by their place where the headings are alike', () => {
    const text = table(
      'Keys | Near file | Gain | Far file | Gain',
      '48-52 | n1.wav | -1 dB | f1.wav | -6 dB',
      '53-57 | n2.wav | -2 dB | f2.wav | -7 dB',
    );
    expect(values(text, 'sample', 'volume')).toEqual(['n1.wav -1', 'n2.wav -2', 'f1.wav -6', 'f2.wav -7']);
  });
});

describe('roots that some rows leave out', () => {
  it('are those of rows with the same keys, or of names that agree with the others', () => {
    const text = table(
      'File | Low | High | Root',
      'w_D3_a.wav | 47 | 51 | 50',
      'w_D3_b.wav | 47 | 51 |',
      'w_A3_a.wav | 52 | 58 | 57',
      'w_E4_a.wav | 59 | 65 |',
    );
    expect(values(text, 'pitch_keycenter')).toEqual(['50', '50', '57', '64']);
    const notes = notesOf(text).join('\n');
    expect(notes).toMatch(/Line 3 gives no root key; 50 is taken, as another row gives it for the same keys/);
    expect(notes).toMatch(/Line 5 gives no root key; 64 is taken, as the name of its sample gives it/);
  });

  it('are told of where nothing gives them', () => {
    const text = table('File | Low | High | Root', 'one.wav | 47 | 51 | 50', 'two.wav | 52 | 58 |');
    expect(notesOf(text).join('\n')).toMatch(/Line 3 gives no root key, and nothing else gives it/);
  });
});

describe('roots alone with a sentence that shares the keys out', () => {
  const rows = ['File\tRoot', 'a.wav\t40', 'b.wav\t47', 'c.wav\t52'];
  it.each([
    ['Each take plays up to the key below the next one.', ['40 46', '47 51', '52 52']],
    ['Jede Aufnahme reicht hinunter bis über die vorherige.', ['40 40', '41 47', '48 52']],
    ['Every sample goes half way to its neighbours.', ['37 43', '44 49', '50 54']],
    ['Cada toma suena hasta la tecla anterior a la siguiente.', ['40 46', '47 51', '52 52']],
    ['Cada amostra toca até à tecla abaixo da seguinte.', ['40 46', '47 51', '52 52']],
    ['Каждый сэмпл звучит до клавиши перед следующим.', ['40 46', '47 51', '52 52']],
    ['Każda próbka gra do klawisza przed następną.', ['40 46', '47 51', '52 52']],
  ])('%s', (sentence, expected) => {
    expect(values([sentence, '', ...rows].join('\n'), 'lokey', 'hikey')).toEqual(expected);
  });
});

describe('layers that meet', () => {
  it('are told of where both hold the same velocity', () => {
    const text = table('File | Low | High | Velocity', 'a.wav | 47 | 51 | 1-64', 'b.wav | 47 | 51 | 64-127');
    expect(notesOf(text).join('\n')).toMatch(/Velocity 64 lies in both line 2 and line 3/);
  });
});

describe('a line parted by blanks that lacks a value', () => {
  const lines = ['file key level pan', 'a.wav 60 -3 -20', 'b.wav 62 -2 10', 'c.wav 65 -1 0'];

  it('has the others where their numbers fit, and is told of', () => {
    const text = [...lines, 'd.wav 64 -7'].join('\n');
    expect(values(text, 'sample', 'key', 'volume', 'pan').at(-1)).toMatch(/^d\.wav 64/);
    expect(notesOf(text).join('\n')).toMatch(/The row of "d\.wav" has fewer values than the others/);
  });

  it('keeps no value of which it stays open what it is', () => {
    const text = [...lines, 'd.wav 64 40'].join('\n');
    expect(values(text, 'volume', 'pan').at(-1)).toBe(' ');
    expect(notesOf(text).join('\n')).toMatch(/not clear which are missing, so "40" is left out/);
  });
});

describe('what is no zone table', () => {
  it.each([
    'Controller\tName\tMin\tMax\tDefault\n1\tModulation\t0\t127\t0\n7\tVolume\t0\t127\t100\n64\tSustain\t0\t1\t0\n91\tReverb\t0\t127\t40',
    'Article,Name,Low price,High price\n101,Cow bell,12,18\n102,Goat bell,20,35\n103,Strap,44,60',
    'Pos;Artikel;Menge;Preis\n1;Kabel;4;18,50\n2;Stativ;2;39,00',
  ])('%j is refused, as it gives no keys', (text) => {
    const { problem, instrument } = readZoneTable(text);
    expect(instrument.regions).toHaveLength(0);
    expect(problem).toMatch(/gives no keys/);
  });
});

describe('text around columns that stand below one another', () => {
  it('does not move the columns', () => {
    const text = [
      'The old wheel, recorded in two rooms     sheet 3 of 4',
      'legend: soft = 1 to 60,    loud = 61 to 127',
      '',
      'keys    root   dyn    file          gain',
      '48-52   50     soft   a_soft.wav    -2',
      '               loud   a_loud.wav    -1',
      '53-57   55     soft   b_soft.wav    -3',
      '               loud   b_loud.wav     0',
      '                                page 3',
    ].join('\n');
    expect(values(text, 'sample', 'lokey', 'pitch_keycenter', 'hivel', 'volume')).toEqual([
      'a_soft.wav 48 50 60 -2',
      'a_loud.wav 48 50  -1',
      'b_soft.wav 53 55 60 -3',
      'b_loud.wav 53 55  ',
    ]);
  });

  it('names the zones of each of three tables side by side', () => {
    const text = [
      'SOFT (velocity 1-40)   MIDDLE (velocity 41-90)   LOUD (velocity 91-127)',
      'file    keys    root   file    keys    root      file    keys    root',
      's1.wav  40-47   43     m1.wav  40-51   45        l1.wav  40-63   51',
      's2.wav  48-55   51     m2.wav  52-63   57',
      's3.wav  56-63   59',
    ].join('\n');
    expect(values(text, 'sample', 'lovel', 'hivel')).toEqual([
      's1.wav 1 40',
      's2.wav 1 40',
      's3.wav 1 40',
      'm1.wav 41 90',
      'm2.wav 41 90',
      'l1.wav 91 127',
    ]);
  });
});
