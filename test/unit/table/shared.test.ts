import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from './tableRegions';

const values = (text: string, ...names: string[]) =>
  regions(text).map((region) => names.map((name) => region[name] ?? '-').join(' '));

describe('headings of columns of samples', () => {
  it('may give velocities in numbers', () => {
    const text = table('note | soft (1-45) | loud (46-127)', '48 | a.wav | b.wav', '50 | c.wav | -');
    expect(values(text, 'sample', 'key', 'lovel', 'hivel')).toEqual([
      'a.wav 48 - 45',
      'b.wav 48 46 -',
      'c.wav 50 - 45',
    ]);
  });

  it('may name keys, beside dynamics as rows', () => {
    const text = `Middle C is C3.\n\n${table('Dynamics | C3 | E3', 'pp | a.wav | b.wav', 'ff | c.wav | d.wav')}`;
    expect(values(text, 'sample', 'key', 'lovel', 'hivel')).toEqual([
      'a.wav 60 - 63',
      'b.wav 64 - 63',
      'c.wav 60 64 -',
      'd.wav 64 64 -',
    ]);
    expect(notesOf(text).join('\n')).toMatch(/Key 60 is read as C3, because "Middle C is C3."/);
  });
});

describe('ends of ranges that the table leaves out', () => {
  it('are next to those of other zones, with a note', () => {
    const highs = table('File | Top key | Root', 'b.wav | 50 | 45', 'a.wav | 40 | 38');
    expect(values(highs, 'sample', 'lokey', 'hikey')).toEqual(['b.wav 41 50', 'a.wav - 40']);
    expect(notesOf(highs).join('\n')).toMatch(/no low keys: each zone begins one above the next lower one/);
    const lows = table('File | Lowest key | Root', 'a.wav | 36 | 38', 'b.wav | 41 | 45');
    expect(values(lows, 'sample', 'lokey', 'hikey')).toEqual(['a.wav 36 40', 'b.wav 41 -']);
    const velocities = table('File | Key | Low vel', 'a.wav | 60 | 1', 'b.wav | 60 | 80', 'c.wav | 62 | 1');
    expect(values(velocities, 'lovel', 'hivel')).toEqual(['1 79', '80 -', '1 -']);
  });

  it.each([
    'The lowest zone starts at key 21.',
    'La zone la plus grave commence à la touche 21.',
    'La zona más grave empieza en la tecla 21.',
    'Den lägsta zonen börjar på tangent 21.',
    'Pierwsza strefa zaczyna się od 21.',
  ])('start where the text says: %s', (said) => {
    const text = `${said}\n\n${table('File | Top key | Root', 'a.wav | 40 | 38', 'b.wav | 50 | 45')}`;
    expect(values(text, 'lokey', 'hikey')).toEqual(['21 40', '41 50']);
  });
});

describe('velocities of dynamics', () => {
  const rows = table('File | Dynamic | Key', 'a.wav | soft | 60', 'b.wav | medium | 60', 'c.wav | loud | 60');
  const ranges = (text: string) => regions(text).map(({ lovel, hivel }) => `${lovel ?? 1}-${hivel ?? 127}`);

  it.each([
    'Soft is up to 50, medium 51 to 100, loud above.',
    'soft = 1-50, medium = 51-100, loud = 101-127',
    'Velocities: soft below 51, medium from 51 to 100, loud from 101.',
  ])('are those that the text gives: %s', (text) => {
    expect(ranges(`${text}\n\n${rows}`)).toEqual(['1-50', '51-100', '101-127']);
  });

  it('are shared out evenly where the text gives too few', () => {
    expect(ranges(`Loud is nice.\n\n${rows}`)).toEqual(['1-42', '43-84', '85-127']);
  });
});

describe('wikis and lists', () => {
  it('put cells that reach over rows into each of them', () => {
    const text = [
      '{|',
      '! Keys !! Velocity !! Sample',
      '|-',
      '| rowspan="2" | 60-63 || 1-100 || a.wav',
      '|-',
      '| 101-127 || b.wav',
      '|}',
    ].join('\n');
    expect(values(text, 'sample', 'lokey', 'hikey', 'lovel', 'hivel')).toEqual([
      'a.wav 60 63 1 100',
      'b.wav 60 63 101 127',
    ]);
  });

  it('leave remarks behind files out, with a note that says them', () => {
    const text = '36 Kick.wav\n38 Snare.wav   (a bit loud)\n40 Ride.wav -- missing\n';
    expect(values(text, 'sample', 'key')).toEqual(['Kick.wav 36', 'Snare.wav 38', 'Ride.wav 40']);
    expect(notesOf(text).join('\n')).toMatch(/"\(a bit loud\)", "-- missing"/);
  });
});

describe('several things in one place', () => {
  it('are takes in turn where a cell names several files', () => {
    const text = table('Sample | Key', 'a.wav / b.wav | 36', 'dir/c.wav | 38');
    expect(values(text, 'sample', 'key', 'seq_position', 'seq_length')).toEqual([
      'a.wav 36 1 2',
      'b.wav 36 2 2',
      'dir/c.wav 38 - -',
    ]);
  });

  it('are a lowest key and how many keys follow', () => {
    const text = table('Sample | First key | Keys | Root', 'a.wav | 36 | 5 | 38', 'b.wav | 41 | 3 | 42');
    expect(values(text, 'lokey', 'hikey', 'pitch_keycenter')).toEqual(['36 40 38', '41 43 42']);
    const counted = table('Sample | Low key | Number of keys', 'a.wav | C3 | 12', 'b.wav | C4 | 1');
    expect(values(counted, 'lokey', 'hikey')).toEqual(['48 59', '60 60']);
  });

  it('are an articulation and its key switch in a title', () => {
    const text = [
      'Bowed (keyswitch 24)',
      table('File | Low | High', 'a.wav | 48 | 59', 'b.wav | 60 | 71'),
      '',
      'Plucked (keyswitch 26)',
      table('File | Low | High', 'c.wav | 48 | 59'),
    ].join('\n');
    expect(values(text, 'group', 'sw_last', 'sw_lokey', 'sw_hikey')).toEqual([
      'Bowed 24 24 26',
      'Bowed 24 24 26',
      'Plucked 26 24 26',
    ]);
  });
});

describe('numbers and rows that the text says to read otherwise', () => {
  it('are hexadecimal', () => {
    const text = `Keys are in hex.\n\n${table('File | Low | High | Root', 'a.wav | 24 | 2F | 2A', 'b.wav | 30 | 3B | 36')}`;
    expect(values(text, 'lokey', 'hikey', 'pitch_keycenter')).toEqual(['36 47 42', '48 59 54']);
    expect(notesOf(text).join('\n')).toMatch(/read as hexadecimal/);
  });

  it('are struck out', () => {
    const text = '| Sample | Key |\n|---|---|\n| a.wav | 36 |\n| ~~b.wav~~ | ~~37~~ |\n| c.wav | 38 |\n';
    expect(values(text, 'sample')).toEqual(['a.wav', 'c.wav']);
    expect(notesOf(text).join('\n')).toMatch(/struck out.*b\.wav/);
  });

  it('take a channel in words for a side, and a number of channels for none', () => {
    expect(values(table('File | Key | Channel', 'a.wav | 60 | L', 'b.wav | 60 | R'), 'pan')).toEqual([
      '-100',
      '100',
    ]);
    expect(values(table('File | Key | Channels', 'a.wav | 60 | 1', 'b.wav | 61 | 2'), 'pan')).toEqual([
      '-',
      '-',
    ]);
  });
});

describe('headings and sections in odd places', () => {
  it('have units on a line of their own below them', () => {
    const text = [
      'Smp              Lo Hi Base Coarse Fine',
      '                             (st)  (% of a semitone)',
      'a-1.wav          40 47  43     0     0',
      'b-1.wav          48 55  51    -1    50',
      'c-1.wav          56 63  60    +7   -25',
    ].join('\n');
    expect(values(text, 'lokey', 'hikey', 'pitch_keycenter', 'transpose', 'tune')).toEqual([
      '40 47 43 - -',
      '48 55 51 -1 50',
      '56 63 60 7 -25',
    ]);
  });

  it('have cells of two lines between drawn ones', () => {
    const text = [
      '+------------+----------+',
      '| Sample     | Keys     |',
      '+============+==========+',
      '| Big bell   | 48 to 52 |',
      '| soft.wav   |          |',
      '+------------+----------+',
      '| Bell.wav   | 53 to 57 |',
      '+------------+----------+',
      '| Small.wav  | 58 to 60 |',
      '+------------+----------+',
    ].join('\n');
    expect(values(text, 'sample', 'lokey', 'hikey')).toEqual([
      'Big bell soft.wav 48 52',
      'Bell.wav 53 57',
      'Small.wav 58 60',
    ]);
  });

  it('give key switches behind titles in brackets, and the one to start with', () => {
    const text = [
      '[Long]   keyswitch 12',
      'a_36.wav    36-42   39',
      'a_43.wav    43-50   46',
      '',
      '[Short]  keyswitch 13',
      'b_36.wav    36-42   39',
      '',
      '(Starts in Long.)',
    ].join('\n');
    expect(values(text, 'group', 'sw_last', 'sw_default', 'lokey')).toEqual([
      'Long 12 12 36',
      'Long 12 12 43',
      'Short 13 12 36',
    ]);
  });

  it('put zone start and end for keys where the numbers are keys', () => {
    const text = table(
      'Wave | Zone start | Zone end | Base key',
      'a.wav | 36 | 47 | 41',
      'b.wav | 48 | 59 | 53',
    );
    expect(values(text, 'lokey', 'hikey', 'offset', 'end')).toEqual(['36 47 - -', '48 59 - -']);
  });

  it('hand the folder and the defaults of a part on to its zones', () => {
    const json =
      '{"groups":[{"name":"Main","sampleDir":"slate/","zones":[{"file":"a.wav","key":{"from":36,"to":41}}]}]}';
    expect(values(json, 'sample', 'lokey', 'hikey')).toEqual(['slate/a.wav 36 41']);
    const list =
      'defaults:\n  volume: -2 dB\nzones:\n  - sample: a.wav\n    keys: 55-59\n  - sample: b.wav\n    keys: 60-64\n    volume: -4 dB\n';
    expect(values(list, 'sample', 'volume')).toEqual(['a.wav -2', 'b.wav -4']);
  });
});

it('takes two tables that stand side by side apart, and hears which of them sounds on release', () => {
  const text = [
    'DOWN                              | UP',
    'file          range    root       | file          range    root   level',
    'a_d50.wav     48-52    50         | a_u50.wav     48-54    51     -9 dB',
    'a_d55.wav     53-57    55         | a_u58.wav     55-62    58     -9 dB',
    'a_d60.wav     58-62    60         |',
    '',
    'DOWN = when a key is pressed, UP = when it is let go.',
  ].join('\n');
  expect(values(text, 'sample', 'lokey', 'hikey', 'pitch_keycenter', 'volume', 'trigger')).toEqual([
    'a_d50.wav 48 52 50 - -',
    'a_d55.wav 53 57 55 - -',
    'a_d60.wav 58 62 60 - -',
    'a_u50.wav 48 54 51 -9 release',
    'a_u58.wav 55 62 58 -9 release',
  ]);
});
