import { describe, expect, it } from 'vitest';
import { regions } from '../../tableRegions';

const values = (text: string) =>
  regions(text).map((one) => {
    const root = one.pitch_keycenter ?? one.key;
    return [one.sample, one.lokey ?? one.key, one.hikey ?? one.key, root, one.volume ?? '-'].join(' ');
  });
const expected = [
  'oc1.wav 60 62 61 -',
  'oc2.wav 63 64 64 -',
  'oc3.wav 65 67 66 -2',
  'oc4.wav 68 68 68 -',
  'oc5.wav 69 72 70 1.5',
];

describe('lines in a style that changes, of which one gives a key alone', () => {
  it.each([
    ['to', 'root', 'just 68 (root too)'],
    ['to', 'root', '68 only, root 68'],
    ['to', 'root', 'only 68 (also the root)'],
    ['bis', 'Grundton', 'nur 68 (auch Grundton)'],
    ['bis', 'Grundton', 'bloß 68, Grundton 68'],
    ['à', 'fondamentale', 'seulement 68 (fondamentale aussi)'],
    ['a', 'raíz', 'solo 68 (también la raíz)'],
    ['tot', 'grondtoon', 'alleen 68 (ook grondtoon)'],
  ])('%s, %s: %s', (to, root, alone) => {
    const text = `ocarina\noc1.wav 60 ${to} 62 ${root} 61\noc2.wav 63-64, ${root} 64\noc3.wav 65..67 ${root} 66, -2dB\noc4.wav ${alone}\noc5.wav 69 ${to} 72 ${root} 70 +1.5 dB\n\nmilk, bread\n`;
    expect(values(text)).toEqual(expected);
  });
});
