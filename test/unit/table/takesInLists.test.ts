import { describe, expect, it } from 'vitest';
import { notesOf, regions } from './tableRegions';

/** Some values of all regions, one string a region; `-` for a value that is not given. */
const values = (text: string, ...names: string[]) =>
  regions(text).map((region) => names.map((name) => region[name] ?? '-').join(' '));

describe('takes in a list', () => {
  it.each([
    'round robin',
    'alternates',
    'im Wechsel',
    'en alternance',
    'por turnos',
    'om beurten',
    '交互に',
    '번갈아',
    '轮流',
  ])('under "%s" play in turn', (name) => {
    const text = `zones:\n  - keys: 40-44\n    root: 42\n    ${name}: [a1.wav, a2.wav]\n  - keys: 45-49\n    root: 47\n    ${name}: [b1.wav, b2.wav, b3.wav]\n  - keys: 50-54\n    root: 52\n    file: c.wav\n`;
    expect(values(text, 'sample', 'lokey', 'hikey', 'pitch_keycenter', 'seq_position', 'seq_length')).toEqual(
      [
        'a1.wav 40 44 42 1 2',
        'a2.wav 40 44 42 2 2',
        'b1.wav 45 49 47 1 3',
        'b2.wav 45 49 47 2 3',
        'b3.wav 45 49 47 3 3',
        'c.wav 50 54 52 - -',
      ],
    );
    expect(notesOf(text).join()).not.toContain('sound together');
  });

  it('of maps in JSON too, each with values of its own', () => {
    const text = JSON.stringify([
      {
        low: 40,
        high: 44,
        root: 42,
        roundRobin: [
          { file: 'a.wav', volume: -1 },
          { file: 'b.wav', volume: -2 },
        ],
      },
      {
        low: 45,
        high: 49,
        root: 47,
        roundRobin: [
          { file: 'c.wav', volume: -1 },
          { file: 'd.wav', volume: -3 },
        ],
      },
    ]);
    expect(values(text, 'sample', 'lokey', 'seq_position', 'volume')).toEqual([
      'a.wav 40 1 -1',
      'b.wav 40 2 -2',
      'c.wav 45 1 -1',
      'd.wav 45 2 -3',
    ]);
  });

  it('under any other name are told to sound together', () => {
    const text =
      'zones:\n  - keys: 40-44\n    root: 42\n    parts: [a1.wav, a2.wav]\n  - keys: 45-49\n    root: 47\n    parts: [b1.wav, b2.wav]\n';
    expect(regions(text).every(({ seq_position }) => seq_position === undefined)).toBe(true);
    expect(notesOf(text).join()).toContain('sound together');
  });
});

describe('a group of a list that sounds when keys are let go', () => {
  it.each([
    'when: only when the key is released',
    'spielt: nur beim Loslassen',
    'joue: seulement au relâchement',
    'suena: solo al soltar la tecla',
    'soa: apenas ao soltar',
    'klinkt: alleen bij loslaten',
    '소리: 건반을 뗄 때만',
    '鳴る: 離鍵のみ',
  ])('says so by "%s"', (said) => {
    const text = `groups:\n  - name: pluck\n    zones:\n      - keys: 40-44\n        root: 42\n        file: a.wav\n      - keys: 45-49\n        root: 47\n        file: b.wav\n  - name: thud\n    ${said}\n    zones:\n      - keys: 40-49\n        root: 45\n        file: c.wav\n`;
    expect(values(text, 'sample', 'trigger')).toEqual(['a.wav -', 'b.wav -', 'c.wav release']);
  });
});
