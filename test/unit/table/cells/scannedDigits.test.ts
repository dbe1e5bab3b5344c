import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const values = (text: string) =>
  regions(text).map((one) =>
    [one.sample, one.lokey, one.hikey, one.pitch_keycenter, one.hivel ?? '-', one.pan ?? '-'].join(' '),
  );

describe('letters in place of digits, as a scan gives them', () => {
  it('are read as digits where the rest of the column are numbers, and told', () => {
    const text = [
      'N o .   S a m p l e      L o w   H i g h   R o o t   Vel hi',
      '---------------------------------------------------------',
      'l       harm_0l.wav       36       4O       38        l27',
      '2       harm_02.wav       4l       45       43        127',
      '3       harm_03.wav       46       5I       48        127',
      '4       harm_04.wav       52       58       S5        127',
      '5       harm_05.wav       59       64       6l        9O',
    ].join('\n');
    expect(values(text)).toEqual([
      'harm_01.wav 36 40 38 127 -',
      'harm_02.wav 41 45 43 127 -',
      'harm_03.wav 46 51 48 127 -',
      'harm_04.wav 52 58 55 127 -',
      'harm_05.wav 59 64 61 90 -',
    ]);
    const notes = notesOf(text).join('\n');
    for (const some of ['"4O" is read as 40', '"harm_0l.wav" is read as "harm_01.wav"', '"S5" is read as 55'])
      expect(notes).toContain(some);
  });

  it('in ranges and octaves', () => {
    const text = table(
      'Sample | Keys | Root',
      'a.wav | Cl-El | D1',
      'b.wav | F1-A1 | G1',
      'c.wav | A#1-D2 | B1',
      'd.wav | D#2-F2 | E2',
      'e.wav | F#2-A2 | G2',
    );
    expect(values(text)[0]).toMatch(/^a\.wav 24 28 26/);
    const numbers = table(
      'Sample | Keys | Root',
      'a.wav | 3O-35 | 33',
      'b.wav | 36-39 | 38',
      'c.wav | 40-44 | 42',
    );
    expect(values(numbers)[0]).toMatch(/^a\.wav 30 35 33/);
  });

  it('are left where they say a side, or where most of the column is no number', () => {
    const text = table(
      'Sample | Low | High | Root | Pan',
      'a.wav | 3O | 35 | 33 | l20',
      'b.wav | 36 | 39 | 38 | r20',
      'c.wav | 40 | 44 | 42 | l',
      'd.wav | 45 | 49 | 47 | 0',
    );
    expect(values(text)).toEqual([
      'a.wav 30 35 33 - -20',
      'b.wav 36 39 38 - 20',
      'c.wav 40 44 42 - -100',
      'd.wav 45 49 47 - -',
    ]);
  });

  it('in names only where those beside them are counted so', () => {
    const text = table(
      'Sample | Low | High | Root',
      'mic_l.wav | 3O | 35 | 33',
      'mic_r.wav | 36 | 39 | 38',
      'mic_3.wav | 40 | 44 | 42',
      'mic_4.wav | 45 | 49 | 47',
    );
    expect(regions(text)[0]?.sample).toBe('mic_l.wav');
  });
});
