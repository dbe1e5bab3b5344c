import { describe, expect, it } from 'vitest';
import { regions } from '../tableRegions';

const values = (text: string) =>
  regions(text).map((one) =>
    [one.sample, one.lokey, one.hikey, one.pitch_keycenter, one.lovel ?? '-', one.hivel ?? '-'].join(' '),
  );
const rows = [
  ['Sample', 'Low', 'High', 'Root', 'Velocity'],
  ['reed_41.wav', '38', '43', '41', '1 » 70'],
  ['reed_41_f.wav', '38', '43', '41', '71 » 127'],
  ['reed_47.wav', '44', '49', '47', '1 » 127'],
];
const expected = ['reed_41.wav 38 43 41 1 70', 'reed_41_f.wav 38 43 41 71 127', 'reed_47.wav 44 49 47 1 127'];

describe('cells parted by a sign that looks like a bar', () => {
  it.each(['¦', ' ¦ ', '\u2502', ' \u2016 ', '\u2758', '\u23d0', '｜', '￤'])('"%s"', (sign) => {
    expect(values(rows.map((row) => row.join(sign)).join('\n'))).toEqual(expected);
  });

  it('with lines drawn between the rows', () => {
    const drawn = rows.map((row) => `¦ ${row.join(' ¦ ')} ¦\n¦---¦---¦---¦---¦---¦`).join('\n');
    expect(values(`¦---¦---¦---¦---¦---¦\n${drawn}\n3 rows`)).toEqual(expected);
  });
});

describe('a range whose ends an arrow parts', () => {
  it.each(['»', '→', '>', '->', '-->', '=>', '⇒', '➜', '›', '▶', '>>', '↔'])('"%s"', (sign) => {
    const text = [
      'Sample\tKeys\tRoot\tVelocity',
      `reed_41.wav\t38 ${sign} 43\t41\t1 ${sign} 70`,
      `reed_41_f.wav\t38 ${sign} 43\t41\t71 ${sign} 127`,
      `reed_47.wav\tG#2 ${sign} C#3\t47\t1 ${sign} 127`,
    ].join('\n');
    expect(values(text)).toEqual(expected);
  });
});
