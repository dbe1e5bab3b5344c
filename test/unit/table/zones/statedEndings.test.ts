import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const samples = (text: string) => regions(text).map(({ sample }) => sample);
const rows = table(
  'Sample | Low | High | Root',
  'Duduk_D2 | 48 | 52 | 50',
  'Duduk_G2 | 53 | 57 | 55',
  'Duduk_C3 | 58 | 62 | 60',
);

describe('names of files without their ending', () => {
  it.each([
    ['All samples are `.flac`.', '.flac'],
    ['All files are 24 bit WAV.', '.wav'],
    ['Note: the files are Duduk_D2.ogg etc., I left the ending off', '.ogg'],
    ['(files are duduk_d2.wav and so on; C3 = MIDI 60)', '.wav'],
    ['Extension: .aiff', '.aiff'],
    ['File ending is wav', '.wav'],
    ['Alle Dateien haben die Endung .wav.', '.wav'],
    ['Dateiendung: flac', '.flac'],
    ['Tous les fichiers sont en .wav', '.wav'],
    ['Todos los archivos son .wav', '.wav'],
    ['L’estensione è .flac', '.flac'],
    ['Alla filer är .wav', '.wav'],
    ['拡張子は.wav', '.wav'],
  ])('get the one that "%s" gives', (said, ending) => {
    for (const text of [`${said}\n\n${rows}`, `${rows}\n\n${said}`]) {
      expect(samples(text)).toEqual([`Duduk_D2${ending}`, `Duduk_G2${ending}`, `Duduk_C3${ending}`]);
      expect(notesOf(text).join('\n')).toMatch(/The ending \.\w+ is put behind the sample names, as/);
    }
  });

  it.each([
    'The files are .wav or .flac.',
    'All files are .wav. All files of the second disc are .ogg.',
    'The files are not .wav.',
    'The demo is duduk_demo.mp3.',
    'I like wav.',
  ])('keep it open where the text does: "%s"', (said) => {
    expect(samples(`${said}\n\n${rows}`)).toEqual(['Duduk_D2', 'Duduk_G2', 'Duduk_C3']);
  });

  it('leave names that have one as they are', () => {
    const text = `All samples are .flac\n\n${rows}\nDuduk_E3.wav\t63\t66\t64`;
    expect(samples(text)).toEqual(['Duduk_D2.flac', 'Duduk_G2.flac', 'Duduk_C3.flac', 'Duduk_E3.wav']);
  });
});

describe('names of files with a comma for the dot', () => {
  it('are read with the dot, and told', () => {
    const text =
      'Datei;Von;Bis;Grundton;Pegel\nOud a,wav;40;44;42;-1,5\nOud b,wav;45;49;47;0\nOud c,WAV;50;54;52;-0,5';
    expect(samples(text)).toEqual(['Oud a.wav', 'Oud b.wav', 'Oud c.WAV']);
    expect(notesOf(text).join('\n')).toMatch(/another sign than a dot .*"Oud a,wav"/);
  });

  it('are not looked for where files have their dot', () => {
    const text = 'File;Root;Remark\na.wav;40;see b,wav\nb.wav;44;\nc.wav;48;';
    expect(samples(text)).toEqual(['a.wav', 'b.wav', 'c.wav']);
    expect(notesOf(text).join('\n')).not.toMatch(/another sign/);
  });
});
