import { describe, expect, it } from 'vitest';
import type { MiddleC } from '../../server/model/keys';
import { frequencyOfKey } from '../../server/model/keys';
import { splitAt } from '../../server/table/cells/split/splitAt';
import { octaveShifts } from '../../server/trade/middleC';
import { readKey } from '../../server/trade/readings/keyReading';

const rows = (text: string) => {
  const cells = splitAt(text, 'comma');
  return Array.from({ length: cells.rowCount }, (_, row) =>
    Array.from({ length: cells.width(row) }, (_, column) => cells.value(cells.cell(row, column))),
  );
};

// RFC 4180, section 2, rules 1 to 7 with the examples given there.
describe('RFC 4180, section 2', () => {
  it('1 and 2: records end in a line break, which may be missing after the last', () => {
    const records = [
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ];
    expect(rows('aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n')).toEqual(records);
    expect(rows('aaa,bbb,ccc\r\nzzz,yyy,xxx')).toEqual(records);
  });

  it('3: a header line has the form of a record', () => {
    expect(rows('field_name,field_name,field_name\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n')[0]).toEqual([
      'field_name',
      'field_name',
      'field_name',
    ]);
  });

  it('5: fields may be enclosed in quotation marks', () => {
    expect(rows('"aaa","bbb","ccc"\r\nzzz,yyy,xxx')).toEqual([
      ['aaa', 'bbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
  });

  it('6: fields with line breaks, quotation marks and commas are enclosed in quotation marks', () => {
    expect(rows('"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx')).toEqual([
      ['aaa', 'b\r\nbb', 'ccc'],
      ['zzz', 'yyy', 'xxx'],
    ]);
  });

  it('7: a quotation mark inside a field is doubled', () => {
    expect(rows('"aaa","b""bb","ccc"')).toEqual([['aaa', 'b"bb', 'ccc']]);
  });
});

// Note names in scientific pitch notation, MIDI key numbers and frequencies in equal temperament with A4 = 440 Hz
// (ISO 16:1975), as printed in general tables of pitch frequencies; typed by hand.
const pitches: [name: string, key: number, hertz: number][] = [
  ['C-1', 0, 8.176],
  ['A0', 21, 27.5],
  ['C1', 24, 32.703],
  ['E2', 40, 82.407],
  ['G3', 55, 195.998],
  ['C4', 60, 261.626],
  ['F#4', 66, 369.994],
  ['Gb4', 66, 369.994],
  ['A4', 69, 440],
  ['Bb4', 70, 466.164],
  ['C5', 72, 523.251],
  ['D#6', 87, 1244.508],
  ['C8', 108, 4186.009],
  ['G9', 127, 12543.854],
];

describe('note names against scientific pitch notation and ISO 16', () => {
  it.each(pitches)('%s is key %i at %f Hz', (name, key, hertz) => {
    expect(readKey(name)?.named).toBe(key);
    expect(frequencyOfKey(key)).toBeCloseTo(hertz, 2);
  });
});

describe('octave conventions', () => {
  // Key 60 is called C3 or C4 depending on the maker (common practice; MIDI 1.0 itself gives only the number), C5 where
  // octaves are counted from key 0.
  it.each(['C3', 'C4', 'C5'] as MiddleC[])('%s is key 60 in its own convention', (name) => {
    expect((readKey(name)?.named ?? Number.NaN) + octaveShifts[name]).toBe(60);
  });
});
