import { describe, expect, it } from 'vitest';
import { readHeading } from '../../../../server/trade/headings/headings';
import { regions } from '../tableRegions';

/** Some values of all regions, one string a region; `-` for a value that is not given. */
function values(text: string, ...names: string[]): string[] {
  return regions(text).map((region) => names.map((name) => region[name] ?? '-').join(' '));
}

// Pages of handbooks, as they are set in fixed width (common practice); the tables are our own.
describe('columns of fixed width under headings of two lines', () => {
  const velocities = ['sample', 'key', 'lovel', 'hivel', 'volume'];

  it('keep a key and its number in brackets together', () => {
    const text = `
   Sample            Key            Velocity       Gain
                     (no.)        min    max       (dB)

   harp_c3.wav       C3  (48)       0     63       -3.0
   harp_c3f.wav      C3  (48)      64    127       -1.0
   harp_fs3.wav      F#3 (54)       0     63       -3.5
`;
    expect(values(text, ...velocities)).toEqual([
      'harp_c3.wav 48 0 63 -3',
      'harp_c3f.wav 48 64 127 -1',
      'harp_fs3.wav 54 0 63 -3.5',
    ]);
  });

  it('in other languages, with a number before its name, and with a line drawn below', () => {
    const german = `
      Datei              Taste        Anschlag      Pegel
                         (Nummer)     von   bis     (dB)
      ----------------   ----------   ---   ---     -----
      trommel_leise.wav  C2  (36)       1    79      -1.0
      trommel_laut.wav   C2  (36)      80   127      -0.5
      becken.wav         C#3 (49)       1   127      -2.5
`;
    expect(values(german, ...velocities)).toEqual([
      'trommel_leise.wav 36 1 79 -1',
      'trommel_laut.wav 36 80 127 -0.5',
      'becken.wav 49 1 127 -2.5',
    ]);
    const french = `
        Fichier            Note         Vélocité      Niveau
                          (MIDI)       de     à       (dB)
     cloche_a.wav        69  (A4)       1    90       -2.0
     cloche_b.wav        69  (A4)      91   127       -1.0
     cloche_c.wav        74  (D5)       1   127       -4.0
`;
    expect(values(french, ...velocities)).toEqual([
      'cloche_a.wav 69 1 90 -2',
      'cloche_b.wav 69 91 127 -1',
      'cloche_c.wav 74 1 127 -4',
    ]);
    const finnish = `
  Tiedosto          Nuotti         Voima          Taso
                    (numero)     min    max       (dB)
  ================  =========    ===    ===       =====
  rumpu1.wav        C2  (36)       1     80       -1.0
  rumpu2.wav        C2  (36)      81    127       -0.5
  pelti.wav         D#3 (51)       1    127       -3.0
`;
    expect(values(finnish, ...velocities)).toEqual([
      'rumpu1.wav 36 1 80 -1',
      'rumpu2.wav 36 81 127 -0.5',
      'pelti.wav 51 1 127 -3',
    ]);
  });

  it('part the words of the lower line that each stand over a column', () => {
    const text = `
Wave                Key  No.   Velocity   Gain
                                from to    dB
kick_soft.wav       C2   36     1   79    -1.0
kick_hard.wav       C2   36    80  127    -0.5
snare.wav           D2   38     1  127    -2.0
`;
    expect(values(text, ...velocities)).toEqual([
      'kick_soft.wav 36 1 79 -1',
      'kick_hard.wav 36 80 127 -0.5',
      'snare.wav 38 1 127 -2',
    ]);
  });

  it('of rows whose names have no endings of files', () => {
    const text = `
Sample            Key            Velocity       Gain
                  (no.)        min    max       (dB)
harp low          C3  (48)       0     63       -3.0
harp low f        C3  (48)      64    127       -1.0
harp mid          F#3 (54)       0     63       -3.5
`;
    expect(values(text, ...velocities)).toEqual([
      'harp low 48 0 63 -3',
      'harp low f 48 64 127 -1',
      'harp mid 54 0 63 -3.5',
    ]);
  });
});

describe('a heading that calls a key by its number', () => {
  it.each([
    ['Key No.', 'key'],
    ['Note no', 'key'],
    ['Tasten-Nr.', 'key'],
    ['N° note', 'key'],
    ['Nº de nota', 'key'],
    ['Nota n.', 'key'],
    ['Nootnr.', 'key'],
    ['нота №', 'key'],
    ['Root key no.', 'pitch_keycenter'],
    ['Low key no.', 'lokey'],
    ['No.', 'row_number'],
    ['Loop no', undefined],
    ['no key', undefined],
  ])('%s', (heading, meaning) => {
    expect(readHeading(heading)?.meaning).toBe(meaning);
  });
});

describe('words parted by single blanks', () => {
  it('keep numbers and units together, under a heading broken over two lines', () => {
    const text = `File name Root
key Key range Gain Tune
rh_c2.wav 36 36 – 37 0 dB -3 ct
rh_d2.wav 38 38 – 39 -1.5 dB 0 ct
rh_e2.wav 40 40 – 41 -2 dB 4 ct
`;
    expect(values(text, 'sample', 'lokey', 'hikey', 'pitch_keycenter', 'volume', 'tune')).toEqual([
      'rh_c2.wav 36 37 36 - -3',
      'rh_d2.wav 38 39 38 -1.5 -',
      'rh_e2.wav 40 41 40 -2 4',
    ]);
  });
});
