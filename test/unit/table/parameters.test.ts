import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from './tableRegions';

const values = (text: string, ...names: string[]) =>
  regions(text).map((region) => names.map((name) => region[name] ?? '-').join(' '));

describe('mute groups', () => {
  it('silence one another where one column gives them; 0 is none', () => {
    const text = table(
      'File | Key | Choke group',
      'shut.wav | 42 | 1',
      'open.wav | 46 | 1',
      'kick.wav | 36 | 0',
    );
    expect(values(text, 'group', 'off_by')).toEqual(['1 1', '1 1', '- -']);
  });

  it('silence one another one way beside a column of who silences whom', () => {
    const text = table('File | Key | Mute group | Off by', 'shut.wav | 42 | 1 |', 'open.wav | 46 | 2 | 1');
    expect(values(text, 'group', 'off_by')).toEqual(['1 -', '2 1']);
  });

  it('are told from the side of those that silence', () => {
    const text = table('Ficheiro | Tecla | Grupo de corte | Abafa', 'a.wav | 42 | | 1', 'b.wav | 46 | 1 |');
    // In SFZ, off_by of the one that falls silent names the group of the one that silences it.
    expect(values(text, 'group', 'off_by')).toEqual(['2 -', '1 2']);
    expect(notesOf(text).join('\n')).toMatch(/group 2 silences group 1/);
  });

  it('may have names, which are numbered with a note', () => {
    const text = table(
      'File | Key | Mute group',
      'a.wav | 42 | hat',
      'b.wav | 46 | hat',
      'c.wav | 49 | bell',
    );
    expect(values(text, 'group', 'off_by')).toEqual(['1 1', '1 1', '2 2']);
    expect(notesOf(text).join('\n')).toMatch(/"hat" is 1, "bell" is 2/);
  });
});

describe('key switches', () => {
  const text = table(
    'Keyswitch | Articulation | Sample | Low | High | Root',
    'C1 | Long | a.wav | C3 | B3 | C3',
    'D1 | Short | b.wav | C3 | B3 | C3',
  );

  it('are the keys of sw_last, in the octave of the other keys', () => {
    expect(values(text, 'sw_last', 'sw_lokey', 'sw_hikey', 'sw_default')).toEqual([
      '24 24 26 -',
      '26 24 26 -',
    ]);
    expect(notesOf(text).join('\n')).toMatch(/nothing sounds before one is pressed/);
  });

  it('start with the one that the text names', () => {
    const stated = `${text}\n\nDefault articulation: Short. Keyswitches live on 24-27.`;
    expect(values(stated, 'sw_last', 'sw_lokey', 'sw_hikey', 'sw_default')).toEqual([
      '24 24 27 26',
      '26 24 27 26',
    ]);
  });
});

describe('envelopes', () => {
  it('are seconds and percent, whatever the headings count in', () => {
    const text = table(
      'File | Key | Attack (ms) | Decay s | Sustain % | Release s',
      'a.wav | 60 | 5 | 0.4 | 80 | 1.5',
    );
    const names = ['ampeg_attack', 'ampeg_decay', 'ampeg_sustain', 'ampeg_release'];
    expect(values(text, ...names)).toEqual(['0.005 0.4 80 1.5']);
    const shares = table('File | Key | Attack | Sustain | Release time', 'a.wav | 60 | 0.01 | 0.5 | 2');
    expect(values(shares, 'ampeg_attack', 'ampeg_sustain', 'ampeg_release')).toEqual(['0.01 50 2']);
    expect(notesOf(shares).join('\n')).toMatch(/gives no unit of its times: seconds are assumed/);
  });

  it('may stand in one cell, by their letters or in their order', () => {
    const text = table(
      'File | Key | Envelope',
      'a.wav | 60 | A 5 ms, D 0.4 s, S 80 %, R 750 ms',
      'b.wav | 61 | 10ms / 0.2s / 50% / 1s',
      'c.wav | 62 | quick',
    );
    const names = ['ampeg_attack', 'ampeg_decay', 'ampeg_sustain', 'ampeg_release'];
    expect(values(text, ...names)).toEqual(['0.005 0.4 80 0.75', '0.01 0.2 50 1', '- - - -']);
    expect(notesOf(text).join('\n')).toMatch(/"quick" does not say which/);
  });
});

describe('chance and crossfades', () => {
  it('give alternatives even shares of chance, or the ranges that are written', () => {
    const text = table('File | Key | Random', 'a.wav | 60 | 1', 'b.wav | 60 | 2', 'c.wav | 61 | 0.25-0.75');
    expect(values(text, 'lorand', 'hirand')).toEqual(['0 0.5', '0.5 1', '0.25 0.75']);
  });

  it('fade between velocities', () => {
    const text = table('File | Key | Fade in | Fade out', 'a.wav | 60 | | 40-60', 'b.wav | 60 | 40-60 |');
    const names = ['xfin_lovel', 'xfin_hivel', 'xfout_lovel', 'xfout_hivel'];
    expect(values(text, ...names)).toEqual(['- - 40 60', '40 60 - -']);
  });
});

describe('what the text says of headings and of all zones', () => {
  it('turns how far samples are off pitch into the tuning that corrects it', () => {
    const text = `The column "off" is how many cents the recording is sharp (+) or flat (-).\n\n${table('File | Root | off', 'a.wav | 60 | +5', 'b.wav | 62 | -8')}`;
    expect(values(text, 'tune')).toEqual(['-5', '8']);
    expect(values(table('File | Root | Cents off', 'a.wav | 60 | 5', 'b.wav | 62 | -8'), 'tune')).toEqual([
      '-5',
      '8',
    ]);
  });

  it('explains short headings', () => {
    const text = `VL = lowest velocity, VH = highest velocity\n\n${table('File | Key | VL | VH', 'a.wav | 60 | 1 | 63', 'b.wav | 60 | 64 | 127')}`;
    expect(values(text, 'lovel', 'hivel')).toEqual(['1 63', '64 127']);
  });

  it('gives all zones a level, a transposition or a mode, unless something is excepted', () => {
    const rows = table('File | Key', 'a.wav | 60', 'b.wav | 61');
    const names = ['volume', 'transpose', 'loop_mode'];
    expect(values(`${rows}\n\nAll zones -3 dB and transpose -12.`, ...names)).toEqual([
      '-3 -12 -',
      '-3 -12 -',
    ]);
    expect(values(`All samples are one-shots.\n\n${rows}`, ...names)).toEqual([
      '- - one_shot',
      '- - one_shot',
    ]);
    expect(values(`All samples are one-shots except a.wav.\n\n${rows}`, ...names)).toEqual([
      '- - -',
      '- - -',
    ]);
  });

  it('puts the folder that it names before samples without one', () => {
    const rows = table('File | Key', 'a.wav | 60', 'other/b.wav | 61');
    expect(values(`Samples are in wav/keys/.\n\n${rows}`, 'sample')).toEqual([
      'wav/keys/a.wav',
      'other/b.wav',
    ]);
  });

  it('lists samples that zones refer to by numbers or letters', () => {
    const zones = table('Smp | Low | High | Root', 'A | 36 | 40 | 38', 'B | 41 | 50 | 45');
    const text = `${zones}\n\nA = Low bell.wav\nB = High bell.wav\n`;
    expect(values(text, 'sample', 'lokey')).toEqual(['Low bell.wav 36', 'High bell.wav 41']);
    expect(notesOf(text).join('\n')).toMatch(/A is "Low bell.wav"/);
  });
});

describe('rows and cells that say less or more', () => {
  it('leave rows out that a column of marks does not mark', () => {
    const text = table('on | File | Key', 'x | a.wav | 60', ' | b.wav | 61', 'x | c.wav | 62');
    expect(values(text, 'sample')).toEqual(['a.wav', 'c.wav']);
    expect(notesOf(text).join('\n')).toMatch(/switched off.*b\.wav/);
  });

  it('take a raised digit behind a value for the sign of a footnote', () => {
    const text = table('File | Low | High | Root', 'a.wav | 36 | 47\u00b9 | 4\u00b2', 'b.wav | 48 | 59 | 50');
    expect(values(text, 'hikey', 'pitch_keycenter')).toEqual(['47 4', '59 50']);
    expect(notesOf(text).join('\n')).toMatch(/"47\u00b9" is read as 47/);
  });

  it('read ends of ranges in words', () => {
    const text = table(
      'File | Low key | High key | Low vel | High vel',
      'a.wav | lowest | 42 | 1 | 63',
      'b.wav | 43 | top | 64 | max',
    );
    expect(values(text, 'lokey', 'hikey', 'lovel', 'hivel')).toEqual(['- 42 1 63', '43 - 64 -']);
    expect(notesOf(text)).toEqual([]);
  });

  it('read octaves by marks and letter case (Helmholtz: middle C is c with one prime)', () => {
    const text = table(
      'Datei | von | bis | Grundton',
      'a.wav | C, | H, | C',
      'b.wav | C | H | G',
      "c.wav | c | h | c'",
    );
    expect(values(text, 'lokey', 'hikey', 'pitch_keycenter')).toEqual(['24 35 36', '36 47 43', '48 59 60']);
  });

  it('read octaves by lines where the text says so, though every name has one (Helmholtz: c1 is middle C)', () => {
    const text = table(
      'Datei | von | bis | Grundton',
      'a.wav | c1 | es1 | c1',
      'b.wav | e1 | b1 | fis1',
      'c.wav | h1 | c4 | d2',
    );
    expect(values(`c1 ist das mittlere C, c2 = 72\n\n${text}`, 'lokey', 'hikey', 'pitch_keycenter')).toEqual([
      '60 63 60',
      '64 70 66',
      '71 96 74',
    ]);
  });

  it('read octaves by the name that the text gives to middle C, whatever its number is', () => {
    const text = table('File | Low | High | Root', 'a.wav | C1 | B1 | E1', 'b.wav | C2 | B2 | E2');
    const keys = ['48 59 52', '60 71 64'];
    expect(values(`C2 = MIDI 60\n\n${text}`, 'lokey', 'hikey', 'pitch_keycenter')).toEqual(keys);
    expect(notesOf(`C2 = MIDI 60\n\n${text}`)[0]).toContain('Key 60 is read as C2');
  });

  it('count as the text says that gives a number its key', () => {
    const rows = table('File | Low | High | Root', 'a.wav | 1 | 12 | 6', 'b.wav | 13 | 24 | 18');
    const text = `Keys are counted from the left: key 1 is C2.\n\n${rows}`;
    expect(values(text, 'lokey', 'hikey', 'pitch_keycenter')).toEqual(['36 47 41', '48 59 53']);
    expect(notesOf(text)[0]).toContain('35 is added to each number');
    const high = table('File | Low | High | Root', 'a.wav | 1 | 120 | 60');
    expect(values(`Key 1 is C2.\n\n${high}`, 'lokey', 'hikey')).toEqual(['1 120']);
    expect(notesOf(`Key 1 is C2.\n\n${high}`)[0]).toContain('keys would lie outside 0..127');
  });

  it('read signs in words, and hundredths of a semitone as cents', () => {
    const text = table(
      'Fichier | Touche | Accord fin (% de demi-ton)',
      'a.wav | do di\u00e8se 3 (61) | 5',
      'b.wav | si b\u00e9mol 3 | -50',
    );
    expect(values(text, 'key', 'tune')).toEqual(['61 5', '70 -50']);
  });
});
