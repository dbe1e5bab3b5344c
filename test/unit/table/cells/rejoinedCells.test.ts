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

  it('is none where the row has empty cells at its end', () => {
    const text = 'File,Root,Low,High\na.wav,48,46,50,,\nb.wav,55,53,57,,';
    expect(notesOf(text).join()).not.toMatch(/one cell|belong together/);
  });
});
