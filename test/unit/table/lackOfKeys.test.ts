import { describe, expect, it } from 'vitest';
import { looksLikeZoneTable } from '../../../server/table/looksLikeZoneTable';
import { readZoneTable } from '../../../server/table/readTable';
import { table } from './tableRegions';

const problem = (...lines: string[]) => readZoneTable(table(...lines)).problem;

// Common practice: `Em` is E minor, which no single key of a keyboard is.
describe('a list of pieces that gives the keys they are in', () => {
  it.each([
    ['Key', ['G', 'Em', 'D', 'F#m']],
    ['Key', ['G', 'D', 'C']],
    ['Tonart', ['G-Dur', 'e-Moll', 'D-Dur', 'fis-Moll']],
    ['Tonalité', ['sol majeur', 'mi mineur', 'ré majeur', 'la mineur']],
    ['調', ['ト長調', 'ホ短調', 'ニ長調', 'ハ長調']],
  ])('under %s is refused', (heading, keys) => {
    const rows = keys.map((key, at) => `piece${at}.wav | ${key} | ${at - 3}`);
    expect(problem(`File | ${heading} | Level dB`, ...rows)).toMatch(
      /^This is no zone table: column ".*" gives the keys that pieces of music are in/,
    );
  });

  it('is a zone table where something gives keys of a keyboard', () => {
    expect(problem('File | Root | Scale', 'a.wav | 60 | Em', 'b.wav | 62 | G')).toBeUndefined();
    expect(problem('File | Scale', 'pad_C3.wav | Em', 'pad_D3.wav | G')).toBeUndefined();
  });

  it('is not seen in notes that have octaves', () => {
    expect(problem('File | Key', 'a.wav | E4', 'b.wav | G4')).toBeUndefined();
  });
});

// Common practice: all songs of one voice lie within an octave or two, and the zones of an instrument beside one another.
describe('a list of songs with the notes that a voice needs', () => {
  const songs = [
    ['Blue Morning', 'blue.wav', 'G3', 'D5', 'G', '96'],
    ['Old Mill', 'mill.wav', 'A3', 'E5', 'Am', '72'],
    ['Rainy Street', 'rain.wav', 'F3', 'C5', 'F', '120'],
    ['Two Boats', 'boats.wav', 'B3', 'D5', 'Em', '88'],
    ['Harvest', 'harvest.wav', 'G3', 'E5', 'C', '104'],
  ];
  const list = (headings: string, columns: readonly number[]) =>
    table(headings, ...songs.map((song) => columns.map((at) => song[at]).join(' | ')));

  it.each([
    ['Title | File | Lowest | Highest | Key | Tempo', [0, 1, 2, 3, 4, 5]],
    ['Titel | Datei | Tiefster Ton | Höchster Ton | Takt', [0, 1, 2, 3, 5]],
    ['Fichier | Note basse | Note haute | Tonalité | Tempo', [1, 2, 3, 4, 5]],
    ['Canción | Archivo | Nota baja | Nota alta | BPM', [0, 1, 2, 3, 5]],
  ] as const)('is refused: %s', (headings, columns) => {
    const text = list(headings, columns);
    expect(readZoneTable(text).problem).toMatch(
      /it lists pieces of music \(.*\), and its ranges of notes overlap/,
    );
    expect(looksLikeZoneTable(text)).toBe(false);
  });

  it('is a zone table where its ranges share the keyboard out, or where it gives what zones have', () => {
    const ranges = ['C3 | E3', 'F3 | A3', 'A#3 | D4', 'D#4 | G4', 'G#4 | C5'];
    const phrases = ranges.map((range, at) => `Phrase ${at} | p${at}.wav | ${range} | Em | 120`);
    expect(problem('Title | File | Low | High | Scale | Tempo', ...phrases)).toBeUndefined();
    const layered = songs.map(
      ([name, file, low, high], at) => `${name} | ${file} | ${low} | ${high} | ${at * 20 + 1} | 120`,
    );
    expect(problem('Title | File | Low | High | Low velocity | Tempo', ...layered)).toBeUndefined();
  });

  it('gives no root keys by its tempo', () => {
    const rows = ['C3 | F3 | 49', 'F#3 | A3 | 55', 'A#3 | D4 | 60', 'D#4 | G4 | 65'].map(
      (row, at) => `p${at}.wav | ${row}`,
    );
    const { notes } = readZoneTable(table('File | Low | High | Tempo', ...rows));
    expect(notes.map(({ message }) => message).join()).not.toMatch(/"Tempo" is the root key/);
    const headed = readZoneTable(table('File | Low | High | Column', ...rows)).notes;
    expect(headed.map(({ message }) => message).join()).toMatch(/"Column" is the root key/);
  });
});

// Common practice: a catalogue of recordings gives what the files are, and nothing of a keyboard.
describe('a list of files', () => {
  it.each([
    ['File | Length | Size (MB) | Rate | Recorded | Licence', '2:12 | 34.1 | 48000 | 2019-03-12 | CC0'],
    ['Datei | Dauer | Größe | Abtastrate | Lizenz', '2:12 | 34 MB | 48 kHz | CC0'],
    ['Archivo | Duración (s) | Canales | Bits | Frecuencia', '125,4 | 2 | 24 | 48000'],
    ['Fichier | Taille (Mo) | Durée | Fréquence | Date', '38,2 | 3:36 | 48 kHz | 02/11/2019'],
    ['Файл | Размер, МБ | Длительность | Дата', '34,1 | 2:12 | 12.03.2019'],
    ['ファイル | サイズ | 長さ | サンプルレート | 録音日', '34MB | 2:12 | 48kHz | 2019/3/12'],
    ['File | Category | Description | Duration | Take', 'Foley | Wooden door | 0:03 | 1'],
  ])('is refused: %s', (headings, row) => {
    const files = ['rain.wav', 'harbour.wav', 'door_02.wav', 'tram.wav'];
    const text = table(headings, ...files.map((file) => `${file} | ${row}`));
    expect(readZoneTable(text).problem).toMatch(
      /^This is no zone table: it lists files \(column ".*gives no keys/,
    );
    expect(looksLikeZoneTable(text)).toBe(false);
  });

  it('gives no keys by sizes, seconds or beats, though they lie in the order of keys', () => {
    const rows = ['34 | 62 | 96', '51 | 64 | 98', '12 | 30 | 100', '23 | 90 | 96'];
    const text = table('File | Size MB | Seconds | BPM', ...rows.map((row, at) => `part${at}.wav | ${row}`));
    expect(readZoneTable(text).problem).toMatch(/it lists files/);
  });

  it('is a zone table where it gives keys, levels or velocities too', () => {
    const of = (heading: string, ...cells: string[]) =>
      problem(`File | Size | ${heading}`, ...cells.map((cell, at) => `part${at}.wav | 34 MB | ${cell}`));
    expect(of('Root', '60', '62')).toBeUndefined();
    expect(of('Velocity', '1-64', '65-127')).toBeUndefined();
    expect(of('Level dB', '-1', '-3')).toBeUndefined();
    expect(problem('File | Size', 'pad_C3.wav | 34 MB', 'pad_D3.wav | 35 MB')).toBeUndefined();
  });

  it('is refused without headings too', () => {
    const files = ['rain.wav', 'dock.wav', 'tram.wav'];
    const rows = files.map((file) => `${file} | 48000 Hz | 24 bit | stereo | 00:03:12`);
    expect(readZoneTable(table(...rows)).problem).toMatch(/it lists files/);
    expect(looksLikeZoneTable(table(...rows))).toBe(false);
  });

  it('reads frequencies that are rates of files as rates', () => {
    const { columns } = readZoneTable(
      table('Fichier | Touche | Fréquence', 'a.wav | 36 | 48 kHz', 'b.wav | 38 | 44,1 kHz'),
    );
    expect(columns.map(({ meaning }) => meaning)).toEqual(['sample', 'key', 'sample_rate']);
    const roots = readZoneTable(
      table('Fichier | Touche | Fréquence', 'a.wav | 57 | 220 Hz', 'b.wav | 69 | 440 Hz'),
    );
    expect(roots.columns.map(({ meaning }) => meaning)).toContain('pitch_keycenter');
  });
});

// Common practice: a log of recordings tells when each take began and ended.
describe('a log of takes with times of the day', () => {
  it.each([
    [
      'take,file,start,end,remark',
      ['1,waltz_a.wav,9:02,9:06,', '2,waltz_b.wav,9:08,9:12,good', '3,polka.wav,9:20,9:24,'],
    ],
    ['Take;Datei;Von;Bis', ['1;walzer_a.wav;14:02 Uhr;14:06 Uhr', '2;walzer_b.wav;14:08 Uhr;14:12 Uhr']],
    ['take,file,time', ['1,waltz_a.wav,10:02:10 am', '2,waltz_b.wav,10:08:45 am']],
  ])('under %s is refused', (heading, rows) => {
    expect(readZoneTable(`${heading}\n${rows.join('\n')}\n`).problem).toMatch(/it lists files/);
  });

  it('is a zone table where something gives keys', () => {
    expect(readZoneTable('take,file,start,root\n1,a.wav,9:02,60\n1,b.wav,9:08,64\n').problem).toBeUndefined();
  });
});
