import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from './tableRegions';

const read = (...lines: string[]) =>
  regions(table(...lines)).map(({ sample, key, lokey, hikey, volume, pan, tune }) =>
    [sample, key ?? `${lokey}-${hikey}`, volume ?? 0, pan ?? 0, tune ?? 0].join(' '),
  );

describe('a bare list of keys and files with values behind some of them', () => {
  it('is read by the units of the values', () => {
    expect(
      read(
        'Shed kit, one key each.',
        '',
        '36 pot.wav',
        '38 tin.wav  -3 dB',
        '42 lid.wav (noisy)  -1,5 dB',
        '49 pan.wav (−2 dB)',
      ),
    ).toEqual(['pot.wav 36 0 0 0', 'tin.wav 38 -3 0 0', 'lid.wav 42 -1.5 0 0', 'pan.wav 49 -2 0 0']);
    expect(read('36 → marmite.wav', '38 → casserole.wav ; −3 dB', '40 → louche.wav')).toEqual([
      'marmite.wav 36 0 0 0',
      'casserole.wav 38 -3 0 0',
      'louche.wav 40 0 0 0',
    ]);
  });

  it('may give several values, and the key behind the name', () => {
    expect(read('pot.wav = 36', 'tin.wav = 38, -2 dB', 'lid.wav = 42, R30, +5 ct')).toEqual([
      'pot.wav 36 0 0 0',
      'tin.wav 38 -2 0 0',
      'lid.wav 42 0 30 5',
    ]);
    expect(read('pot.wav 36 -3dB', 'tin.wav 38', 'lid.wav 42 -1.5dB')).toEqual([
      'pot.wav 36 -3 0 0',
      'tin.wav 38 0 0 0',
      'lid.wav 42 -1.5 0 0',
    ]);
    expect(read('36-40 low.wav  -2 dB', '41-45 mid.wav', '46-50 high.wav  +1 dB')).toEqual([
      'low.wav 36-40 -2 0 0',
      'mid.wav 41-45 0 0 0',
      'high.wav 46-50 1 0 0',
    ]);
  });

  it('keeps velocities beside a level', () => {
    const text = table('36 pot.wav vel 1-64', '36 pot_hard.wav vel 65-127 -1 dB', '38 tin.wav');
    expect(regions(text).map(({ lovel, hivel, volume }) => [lovel, hivel, volume].join())).toEqual([
      '1,64,',
      '65,127,-1',
      ',,',
    ]);
  });

  it('leaves out lines that somebody took out, with a note', () => {
    for (const value of ['', '  -2 dB']) {
      const text = table('# 36 pot_old.wav', `36 pot.wav${value}`, '38 tin.wav', '40 lid.wav');
      expect(regions(text).map(({ sample }) => sample)).toEqual(['pot.wav', 'tin.wav', 'lid.wav']);
      expect(notesOf(text).join()).toMatch(/comment names a sample.*pot_old/);
    }
  });

  it('is told of remarks', () => {
    expect(notesOf(table('36 pot.wav', '42 lid.wav (noisy) -2 dB')).join()).toMatch(/"noisy"/);
  });

  it('may give the root behind @, of a range or a single key', () => {
    const rooted = (...lines: string[]) =>
      regions(lines.join('\n')).map(({ sample, key, lokey, hikey, pitch_keycenter }) =>
        [sample, key ?? `${lokey}-${hikey}`, pitch_keycenter ?? key].join(' '),
      );
    expect(rooted('pot.wav: 30-34 @32', 'tin.wav: 35-39 @37', 'lid.wav: 47 @47   # the last')).toEqual([
      'pot.wav 30-34 32',
      'tin.wav 35-39 37',
      'lid.wav 47-47 47',
    ]);
    expect(rooted('a.wav: D3-E3 @D3', 'b.wav: F3-G3 @F3', 'c.wav: A3-C4 @A3', 'C4 = 60')).toEqual([
      'a.wav 50-52 50',
      'b.wav 53-55 53',
      'c.wav 57-60 57',
    ]);
  });

  it('may have its names in quotation marks, with folders and blanks', () => {
    expect(
      read('Les fichiers avec leur note :', '"D:\\Sons\\Do 2 fort.wav"  48', '"D:\\Sons\\Mi 2 fort.wav"  52'),
    ).toEqual(['D:\\Sons\\Do 2 fort.wav 48 0 0 0', 'D:\\Sons\\Mi 2 fort.wav 52 0 0 0']);
    expect(read('48 "low one.wav"', '52 "high one.wav"')).toEqual([
      'low one.wav 48 0 0 0',
      'high one.wav 52 0 0 0',
    ]);
  });
});
