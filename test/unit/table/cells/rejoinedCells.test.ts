import { describe, expect, it } from 'vitest';
import { notesOf, regions } from '../tableRegions';

const values = (text: string, ...names: string[]) =>
  regions(text).map((region) => names.map((name) => region[name] ?? '-').join(' '));

describe('a comma inside a cell without quotation marks', () => {
  it('belongs to the name of a file', () => {
    const text =
      'File,Root,Low,High,Remark\nHarp, soft C.wav,48,46,50,ok\nHarp, soft G.wav,55,53,57,\nHarp A.wav,59,58,60,';
    expect(values(text, 'sample', 'pitch_keycenter', 'lokey', 'hikey')).toEqual([
      'Harp, soft C.wav 48 46 50',
      'Harp, soft G.wav 55 53 57',
      'Harp A.wav 59 58 60',
    ]);
    expect(notesOf(text).join()).toMatch(/"Harp, soft C\.wav" is read as one cell/);
  });

  it('belongs to a decimal number', () => {
    const text =
      'File,Root,Low,High,Level dB,Remark\na.wav,48,46,50,-2,5,ok\nb.wav,55,53,57,-3,fine\nc.wav,60,58,62,-1,25,ok';
    expect(values(text, 'pitch_keycenter', 'volume')).toEqual(['48 -2.5', '55 -3', '60 -1.25']);
  });

  it('belongs to words, before the file too', () => {
    const text = 'Root,Low,High,Remark,File\n48,46,50,ok, but noisy,a.wav\n55,53,57,fine,b.wav';
    expect(values(text, 'sample', 'pitch_keycenter')).toEqual(['a.wav 48', 'b.wav 55']);
    const groups = 'File;Articulation;Root;Low;High\na.wav;Long; vibrato;48;46;50\nb.wav;Short;55;53;57';
    expect(values(groups, 'group', 'pitch_keycenter', 'lokey', 'hikey')).toEqual([
      'Long; vibrato 48 46 50',
      'Short 55 53 57',
    ]);
  });

  it('is told of where it stays open to which cell it belongs', () => {
    const text = 'File,Root,Low,High,Level dB,Tune ct\na.wav,48,46,50,-2,5,3\nb.wav,55,53,57,-3,1';
    expect(notesOf(text).join()).toMatch(/not clear which belong together/);
  });

  it('stands in the same columns of all rows', () => {
    const head = 'Campione,Nota,Tasto min,Tasto max,Volume dB,Pan\n';
    // The second row alone fits in one way only: `0,-20` is no number.
    const one = `${head}a.wav,40,36,42,-1,5,3\nb.wav,45,43,47,-2,0,-20\nc.wav,50,48,52,0,5,1`;
    expect(values(one, 'volume', 'pan')).toEqual(['-1.5 3', '-2 -20', '0.5 1']);
    // Decimals are written with one digit, pan is not.
    const even = `${head}a.wav,40,36,42,-1,5,10\nb.wav,45,43,47,-2\nc.wav,50,48,52,-3,5,5`;
    expect(values(even, 'volume')).toEqual(['-1.5', '-2', '-3.5']);
  });

  it('stands in the columns that a text names', () => {
    const text =
      'Das Komma in der Lautstärke ist ein Dezimalkomma.\nDatei,Grundton,Von,Bis,Lautstärke (dB),Stimmung (Cent)\na.wav,40,36,42,-1,5,3\nb.wav,45,43,47,-2,0,7\nc.wav,50,48,52,-0,5,1';
    expect(values(text, 'volume', 'tune')).toEqual(['-1.5 3', '-2 7', '-0.5 1']);
  });

  it('leaves out numbers where it stays open', () => {
    const text = 'File,Root,Low,High,Level dB,Tune ct\na.wav,48,46,50,-2,5,3\nb.wav,55,53,57,-3,1';
    expect(values(text, 'pitch_keycenter', 'volume', 'tune')).toEqual(['48 - -', '55 -3 1']);
  });

  it('is none where the row has empty cells at its end', () => {
    const text = 'File,Root,Low,High\na.wav,48,46,50,,\nb.wav,55,53,57,,';
    expect(notesOf(text).join()).not.toMatch(/one cell|belong together/);
  });
});
