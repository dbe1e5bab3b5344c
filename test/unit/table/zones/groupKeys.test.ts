import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const values = (text: string, ...names: string[]) =>
  regions(text).map((region) => names.map((name) => region[name] ?? '-').join(' '));
const keys = ['a.wav 30 35', 'b.wav 36 44', 'c.wav 45 49'];
const ends = ['sample', 'lokey', 'hikey'] as const;

describe('zones with keys of their own in groups that give keys as well', () => {
  it.each([
    ['key_range: [30, 44]', 'key_range: [45, 49]', 'from', 'to'],
    ['keys: {low: 30, high: 44}', 'keys: {low: 45, high: 49}', 'from', 'to'],
    ['key_range: [30, 44]', 'key_range: [45, 49]', 'lo', 'hi'],
    ['range: 30-44', 'range: 45-49', 'low_key', 'high_key'],
  ])('count before those: "%s"', (first, second, low, high) => {
    const text = `groups:
  - name: cellos
    volume_db: -4
    ${first}
    samples:
      - {file: a.wav, root: 33, ${low}: 30, ${high}: 35}
      - {file: b.wav, root: 40, ${low}: 36, ${high}: 44}
  - name: violas
    volume_db: 2
    ${second}
    samples:
      - {file: c.wav, root: 47, ${low}: 45, ${high}: 49}
`;
    expect(values(text, ...ends)).toEqual(keys);
    expect(values(text, 'volume', 'offset', 'end')).toEqual(['-4 - -', '-4 - -', '2 - -']);
  });

  it.each(['From | To', 'Low | High'])(
    'count before those that a table repeats on each row: %s',
    (headings) => {
      const text = table(
        `Group | Key range | File | Root | ${headings}`,
        'cellos | 30-44 | a.wav | 33 | 30 | 35',
        'cellos | 30-44 | b.wav | 40 | 36 | 44',
        'violas | 45-49 | c.wav | 47 | 45 | 49',
      );
      expect(values(text, ...ends)).toEqual(keys);
      expect(values(text, 'offset', 'end')).toEqual(['- -', '- -', '- -']);
      expect(notesOf(text).join('\n')).toMatch(/wider|those of a group|within those of the group/);
    },
  );

  it('leave starts and ends of samples as they are', () => {
    const text = table(
      'Key range | File | Root | Start | End',
      '30-44 | a.wav | 33 | 120 | 44100',
      '45-60 | b.wav | 47 | 45 | 50000',
    );
    expect(values(text, 'lokey', 'hikey', 'offset', 'end')).toEqual(['30 44 120 44100', '45 60 45 50000']);
  });
});

describe('values for all zones in a part beside them', () => {
  it('go for zones that give none, with a note', () => {
    const text = `{"meta": {"name": "Chimes", "zoneDefaults": {"velLow": 3, "velHigh": 120, "gainDb": -5}},
 "chimes": [
  {"file": "x.wav", "keyLow": 50, "keyHigh": 55, "rootKey": 52},
  {"file": "y.wav", "keyLow": 56, "keyHigh": 60, "rootKey": 58, "gainDb": 1, "velHigh": 60},
  {"file": "z.wav", "keyLow": 56, "keyHigh": 60, "rootKey": 58, "velLow": 61}
 ]}`;
    expect(values(text, 'sample', 'lovel', 'hivel', 'volume')).toEqual([
      'x.wav 3 120 -5',
      'y.wav 3 60 1',
      'z.wav 61 120 -5',
    ]);
    expect(notesOf(text).join('\n')).toMatch(/"zoneDefaults" is taken for all zones/);
  });
});
