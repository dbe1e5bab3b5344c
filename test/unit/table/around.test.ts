import { describe, expect, it } from 'vitest';
import { middleCIn } from '../../../server/trade/statements/keys/statedOctave';
import { statementsIn } from '../../../server/trade/statements/statements';
import { notesOf, regions, table } from './tableRegions';

// MIDI 1.0 names no octaves; makers call key 60 C3, C4 or C5 (common practice).
describe('the octave that a text states', () => {
  it.each([
    ['Middle C is C3.', 'C3'],
    ['In this list C3 is middle C', 'C3'],
    ['middle C (60) = C4', 'C4'],
    ['Note names: C5 = 60.', 'C5'],
    ['60 = C3', 'C3'],
    ['C3 is MIDI note 60', 'C3'],
    ['MIDI key 60 is C4', 'C4'],
    ['C-2 = 0', 'C3'],
    ['A4 = 69', 'C4'],
    ['A3 = 440 Hz', 'C3'],
    ['Das mittlere C heißt hier C3.', 'C3'],
    ['El do central es Do3.', 'C3'],
    ['Le do du milieu est Do4', 'C4'],
    ['Do centrale = Do3', 'C3'],
    ['De centrale c is C3', 'C3'],
    ['中央C=C4', 'C4'],
    ['Keys run from C2 to C6.', undefined],
    ['Take 61 is C3 only', undefined],
    ['', undefined],
  ])('%s', (text, expected) => {
    expect(middleCIn(text)).toBe(expected);
  });

  it('counts above and below the table and in its headings, before all other evidence', () => {
    const rows = table(
      'File | Low | High | Root',
      'reed 048.wav | A2 | D#3 | C3',
      'reed 060.wav | E3 | D4 | C4',
    );
    expect(regions(`Middle C is C3.\n\n${rows}`)[0]).toMatchObject({ pitch_keycenter: '60', lokey: '57' });
    expect(regions(`${rows}\nMiddle C is C5.`)[0]).toMatchObject({ pitch_keycenter: '36' });
    const headed = table('File | Low | High | Root (C3 = 60)', 'reed.wav | A2 | D#3 | C3');
    expect(regions(headed)[0]).toMatchObject({ pitch_keycenter: '60' });
    expect(notesOf(headed).join()).toMatch(/read as C3, because the text says "Root \(C3 = 60\)"/);
  });
});

describe('other statements', () => {
  it('give scales', () => {
    const scaleOf = (text: string, meaning: 'volume' | 'tune' | 'pan' | 'lovel' | 'loop_end') => {
      const { unit, low, high } = statementsIn([text]).scales.get(meaning) ?? {};
      return unit ?? (high === undefined ? undefined : `${low}..${high}`);
    };
    expect(scaleOf('Velocities run 1 to 100.', 'lovel')).toBe('1..100');
    expect(scaleOf('Anschlagstärke von 0 bis 100', 'lovel')).toBe('0..100');
    expect(scaleOf('Velocity is in percent', 'lovel')).toBe('percent');
    expect(scaleOf('All levels in dB.', 'volume')).toBe('dB');
    expect(scaleOf('Volume: 100 = full', 'volume')).toBe('0..100');
    expect(scaleOf('Pegel in Prozent', 'volume')).toBe('percent');
    expect(scaleOf('Tuning in semitones', 'tune')).toBe('semitones');
    expect(scaleOf('Pan -64 to 63', 'pan')).toBe('-64..63');
    expect(scaleOf('Loop points are in milliseconds', 'loop_end')).toBe('ms');
    expect(scaleOf('We set the levels late in the evening.', 'volume')).toBeUndefined();
    expect(scaleOf('The samples were made in May.', 'loop_end')).toBeUndefined();
  });

  it('give the rate of samples, and how loops are counted', () => {
    expect(statementsIn(['Recorded at 44.1 kHz, 24 bit']).sampleRate).toBe(44_100);
    expect(statementsIn(['Loop ends exclusive']).ends).toMatchObject({ are: 'behind' });
    expect(statementsIn(['Loop end is the last frame played']).ends).toMatchObject({ are: 'included' });
    expect(statementsIn(['Sample positions start at 1']).firstFrame).toMatchObject({ is: 1 });
  });
});

describe('what starts a region', () => {
  it('is told by a column of words under any heading', () => {
    for (const heading of ['Plays on', 'Trigger', 'When', 'Remark']) {
      const text = table(
        `File | Key | ${heading}`,
        'a.wav | 60 | press',
        'b.wav | 60 | release',
        'c.wav | 61 | note-off',
      );
      expect(
        regions(text).map(({ trigger }) => trigger),
        heading,
      ).toEqual([undefined, 'release', 'release']);
    }
  });

  it('is told by yes and no under a heading that names it', () => {
    const text = table('File | Key | Release', 'a.wav | 60 | no', 'b.wav | 60 | yes', 'c.wav | 61 | ');
    expect(regions(text).map(({ trigger }) => trigger)).toEqual([undefined, 'release', undefined]);
  });

  it('is told by the name of a group', () => {
    const text = table(
      'Sustains',
      'File | Key',
      'a.wav | 60',
      '',
      'Release samples',
      'File | Key',
      'b.wav | 60',
    );
    expect(regions(text).map(({ group, trigger }) => [group, trigger])).toEqual([
      ['Sustains', undefined],
      ['Release samples', 'release'],
    ]);
    expect(notesOf(text).join()).toMatch(/"Release samples" are taken to sound when the key is released/);
  });

  it('is no switch of a loop', () => {
    const text = table('File | Key | Loop', 'a.wav | 60 | on', 'b.wav | 61 | off');
    expect(regions(text).map(({ trigger, loop_mode }) => [trigger, loop_mode])).toEqual([
      [undefined, 'loop_continuous'],
      [undefined, 'no_loop'],
    ]);
  });
});

describe('dynamics', () => {
  const layers = (text: string) => regions(text).map(({ lovel = '1', hivel = '127' }) => `${lovel}-${hivel}`);

  it('are told by letters and words under any heading', () => {
    for (const heading of ['Loudness', 'Touch', 'Stroke', 'Anschlag']) {
      const text = table(
        `File | Low | High | ${heading}`,
        'a.wav | 50 | 60 | soft',
        'b.wav | 50 | 60 | medium',
        'c.wav | 50 | 60 | hard',
      );
      expect(layers(text), heading).toEqual(['1-42', '43-84', '85-127']);
      expect(notesOf(text).join(), heading).toMatch(/dynamics but no velocities/);
    }
  });

  it('are told by a column of groups, which stay groups', () => {
    const text = table('File | Key | Layer', 'a.wav | 60 | very soft', 'b.wav | 60 | loud layer');
    expect(layers(text)).toEqual(['1-63', '64-127']);
    expect(regions(text).map(({ group }) => group)).toEqual(['very soft', 'loud layer']);
  });

  it('are told by numbers of layers that run from 1', () => {
    const text = table(
      'File | Key | Velocity layer',
      'a.wav | 60 | 1',
      'b.wav | 60 | 2',
      'c.wav | 61 | 1',
      'd.wav | 61 | 2',
    );
    expect(layers(text)).toEqual(['1-63', '64-127', '1-63', '64-127']);
    const turned = `Layer 1 is the loudest.\n\n${text}`;
    expect(layers(turned)).toEqual(['64-127', '1-63', '64-127', '1-63']);
  });

  it('give way to velocities', () => {
    const text = table(
      'File | Key | Group | Velocity',
      'a.wav | 60 | soft | 1-100',
      'b.wav | 60 | loud | 101-127',
    );
    expect(layers(text)).toEqual(['1-100', '101-127']);
  });
});

describe('merged cells', () => {
  it('are carried down for velocities as for keys', () => {
    const text = table(
      'Keys | Velocity | File | Root',
      '36-47 | 1-63 | a.wav | 41',
      ' | 64-127 | b.wav | 41',
      ' | | c.wav | 41',
      '48-59 | 1-127 | d.wav | 53',
    );
    expect(regions(text).map(({ lokey, lovel, hivel }) => `${lokey} ${lovel}-${hivel}`)).toEqual([
      '36 1-63',
      '36 64-127',
      '36 64-127',
      '48 1-127',
    ]);
    const notes = notesOf(text).join('\n');
    expect(notes).toMatch(/Line 4 gives no velocities; those of the row above it are taken/);
    expect(notes).toMatch(/Line 3 and line 4 have the same keys and velocities\..*sound together/);
  });

  it('before the keys go for all rows below', () => {
    const text = table(
      'Velocity | Key | File',
      '1-63 | 60 | a.wav',
      ' | 61 | b.wav',
      '64-127 | 60 | c.wav',
      ' | 61 | d.wav',
    );
    expect(regions(text).map(({ lovel }) => lovel)).toEqual(['1', '1', '64', '64']);
  });

  it('are none where a root lies outside the keys above, or velocities differ row by row', () => {
    const text = table(
      'File | Low | High | Root | Velocity',
      'a.wav | 36 | 47 | 41 | 1-63',
      'b.wav | | | 60 | ',
      'c.wav | 50 | 52 | 51 | ',
    );
    expect(regions(text).map(({ lokey, lovel }) => [lokey, lovel])).toEqual([
      ['36', '1'],
      [undefined, undefined],
      ['50', undefined],
    ]);
  });
});

describe('remarks', () => {
  it('behind a value are left out, with a note', () => {
    const text = table(
      'File | Low | High | Root | Volume | Tune',
      'a.wav | 40 | 52? | 46 | -3 dB ! | 4',
      'b.wav | 53 | 58 | 56 <- check | -6 | 5 (was 7)',
      'c.wav | 59 | 67 # later 72 | ~62 | -2 too loud? | 3',
    );
    expect(regions(text)).toEqual([
      { sample: 'a.wav', lokey: '40', hikey: '52', pitch_keycenter: '46', volume: '-3', tune: '4' },
      { sample: 'b.wav', lokey: '53', hikey: '58', pitch_keycenter: '56', volume: '-6', tune: '5' },
      { sample: 'c.wav', lokey: '59', hikey: '67', pitch_keycenter: '62', volume: '-2', tune: '3' },
    ]);
    const notes = notesOf(text).join('\n');
    expect(notes).toMatch(/column "High": "52\?" is not certain of its key; 52 is taken/i);
    expect(notes).toMatch(/Line 4, column "High": "67 # later 72" is read as 67/);
  });

  it('are no units', () => {
    const text = table('File | Key | Volume', 'a.wav | 60 | -3', 'b.wav | 61 | 7 ct');
    expect(regions(text).map(({ volume }) => volume)).toEqual(['-3', undefined]);
    expect(notesOf(text).join()).toMatch(/"7 ct" is not a level/);
  });
});

describe('roots between keys', () => {
  it('may be frequencies, key 69 being 440 Hz (MIDI Tuning Standard)', () => {
    const text = table(
      'File | Low | High | Root (Hz)',
      'a.wav | 65 | 70 | 440.0',
      'b.wav | 57 | 64 | 262.8',
      'c.wav | 71 | 74 | 523.25',
    );
    expect(regions(text).map(({ pitch_keycenter, tune }) => [pitch_keycenter, tune])).toEqual([
      ['69', undefined],
      ['60', '-8'],
      ['72', undefined],
    ]);
    expect(notesOf(text).join()).toMatch(
      /gives frequencies: each is written as the nearest root key, and the rest as tuning/,
    );
  });

  it('may have a fraction', () => {
    const text = table(
      'File | Low | High | Root | Tune (ct)',
      'a.wav | 58 | 62 | 60.25 | 5',
      'b.wav | 63 | 66 | 64.9 | 0',
    );
    expect(regions(text).map(({ pitch_keycenter, tune }) => [pitch_keycenter, tune])).toEqual([
      ['60', '-20'],
      ['65', '10'],
    ]);
  });
});

describe('headings that are only like known ones', () => {
  it('count where the cells agree, with a note', () => {
    const text = table(
      'Smaple | Lo Kye | Hgih Key | Rooot | Velcity low | Velcoity high | Volumne dB',
      'a.wav | 40 | 47 | 44 | 1 | 70 | -2.0',
      'b.wav | 40 | 47 | 44 | 71 | 127 | 0.0',
    );
    expect(regions(text)[1]).toEqual({
      sample: 'b.wav',
      lokey: '40',
      hikey: '47',
      pitch_keycenter: '44',
      lovel: '71',
      hivel: '127',
    });
    expect(notesOf(text).join('\n')).toMatch(/"Velcity low" is the low velocity.*spelt almost like/);
  });

  it('do not count where they do not', () => {
    const text = table(
      'File | Low | High | Root | Rot | Pane | Vole',
      'a.wav | 30 | 41 | 36 | 70 | oak | yes',
      'b.wav | 42 | 53 | 48 | 90 | tin | no',
    );
    expect(regions(text)[0]).toEqual({ sample: 'a.wav', lokey: '30', hikey: '41', pitch_keycenter: '36' });
    const notes = notesOf(text).join('\n');
    for (const heading of ['Rot', 'Pane', 'Vole'])
      expect(notes).toMatch(new RegExp(`What stands in column "${heading}" is not used`));
  });

  it('are no round robin where the numbers do not run from 1', () => {
    const of = (...cells: number[]) =>
      regions(table('File | Key | Take', ...cells.map((cell, at) => `${at}.wav | 60 | ${cell}`))).map(
        ({ seq_position }) => seq_position,
      );
    expect(of(1, 2, 3)).toEqual(['1', '2', '3']);
    expect(of(0, 1, 2)).toEqual(['1', '2', '3']);
    expect(of(12, 14, 17)).toEqual([undefined, undefined, undefined]);
  });

  it('are no keys where they speak of lengths', () => {
    const text = table('File | Low (cm) | High (cm) | Key', 'a.wav | 30 | 41 | 60', 'b.wav | 42 | 53 | 61');
    expect(regions(text)[0]).toEqual({ sample: 'a.wav', key: '60' });
  });
});

describe('rows that are switched off', () => {
  it('are left out with a note', () => {
    const text = table('File | Key | Active', 'a.wav | 60 | yes', 'b.wav | 61 | no', 'c.wav | 62 | yes');
    expect(regions(text).map(({ sample }) => sample)).toEqual(['a.wav', 'c.wav']);
    expect(notesOf(text).join()).toMatch(/Line 3 is no zone: it is switched off in the table/);
    const muted = table('File | Key | Mute', 'a.wav | 60 | ', 'b.wav | 61 | x');
    expect(regions(muted).map(({ sample }) => sample)).toEqual(['a.wav']);
  });

  it.each([
    ['Remarks', 'first try; not used'],
    ['Bemerkung', 'nicht verwendet'],
    ['Remarque', 'souffle (non utilisé)'],
    ['Huom.', 'ei käytössä'],
    ['Примечание', 'шум, не используется'],
  ])('are left out with a note where their remark says so: %s, %s', (heading, remark) => {
    const rows = ['a.wav | 60 | ', `b.wav | 61 | ${remark}`, 'c.wav | 62 | '];
    const text = table(`File | Key | ${heading}`, ...rows);
    expect(regions(text).map(({ sample }) => sample)).toEqual(['a.wav', 'c.wav']);
    expect(notesOf(text).join()).toMatch(/Line 3 is no zone: it is not used, as its remark says/);
  });

  it('are kept where a remark speaks of something else, or says so of all rows', () => {
    const of = (...remarks: string[]) =>
      regions(table('File | Key | Remarks', ...remarks.map((one, at) => `${at}.wav | ${60 + at} | ${one}`)));
    expect(of('the close microphone is not used here', 'not used above C5', 'bright')).toHaveLength(3);
    expect(of('not used', 'not used')).toHaveLength(2);
  });
});

describe('statements in other languages', () => {
  const values = (text: string, name: string) => regions(text).map((region) => region[name] ?? '-');
  const notes = table('File | Key', 'a.wav | C3', 'b.wav | D3');
  it.each([
    '中央のドはC3=60',
    '尺八の表(中央のドはC3=60)',
    'C3は60です',
    '60 = C3，所有音名',
    '가운데 도는C3=60',
  ])('say where middle C is: %s', (said) => {
    expect(values(`${said}\n\n${notes}`, 'key')).toEqual(['60', '62']);
  });

  const rows = table('File | Key', 'a.wav | 60', 'b.wav | 61');
  it.each([
    ['Alla zoner ska stämmas upp 7 cent.', '7'],
    ['Alle Zonen werden um 7 Cent tiefer gestimmt.', '-7'],
    ['Wszystkie strefy należy nastroić 7 centów w górę.', '7'],
    ['Все зоны настроить на 7 центов ниже.', '-7'],
    ['すべてのゾーンは7セント上げる', '7'],
  ])('tune all zones: %s', (said, tune) => {
    expect(values(`${said}\n\n${rows}`, 'tune')).toEqual([tune, tune]);
  });

  it('leave the tuning where a sample is only said to be off', () => {
    expect(values(`All samples are 7 cents too high.\n\n${rows}`, 'tune')).toEqual(['-', '-']);
    expect(values(`All samples are 7 cents sharp.\n\n${rows}`, 'tune')).toEqual(['-', '-']);
  });
});

describe('scales that one sentence gives for two columns', () => {
  it.each([
    'coarse in semitones and fine in cents are added',
    'fine in cents and coarse in semitones are added',
    'coarse in semitones und fine in cents',
  ])('%s', (sentence) => {
    const { scales } = statementsIn([sentence]);
    expect(scales.get('transpose')?.unit).toBe('semitones');
    expect(scales.get('tune')?.unit).toBe('cents');
  });

  it('holds a sentence together that gives one unit', () => {
    expect(statementsIn(['levels and trims in dB']).scales.get('volume')?.unit).toBe('dB');
  });
});

describe('ends of a pan scale that are explained in brackets', () => {
  it.each([
    'from -50 (hard left) to 50 (hard right)',
    'Pan: −50 (left), +50 (right)',
    '-50 (links) bis 50 (rechts)',
  ])('%s', (sentence) => {
    expect(statementsIn([sentence]).scales.get('pan')).toMatchObject({ low: -50, high: 50 });
    const text = table('File | Key | Pan', 'a.wav | 60 | -20', 'b.wav | 62 | 25');
    expect(regions(`${text}\n${sentence}`).map(({ pan }) => pan)).toEqual(['-40', '50']);
  });
});
