import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const zones = [
  { sample: 'reed_1.wav', lokey: '31', hikey: '40', pitch_keycenter: '36' },
  { sample: 'reed_2.wav', lokey: '41', hikey: '52', pitch_keycenter: '47' },
];

describe('the letters and numbers that frame a spreadsheet', () => {
  it.each([
    ['with numbers', [' |A|B|C|D', '1|reed_1.wav|31|40|36', '2|reed_2.wav|41|52|47']],
    [
      'above headings',
      [' |A|B|C|D', '1|File|Low|High|Root', '2|reed_1.wav|31|40|36', '4|reed_2.wav|41|52|47'],
    ],
    ['without a corner', ['A|B|C|D', '1|reed_1.wav|31|40|36', '2|reed_2.wav|41|52|47']],
    ['without numbers', ['A|B|C|D', 'reed_1.wav|31|40|36', 'reed_2.wav|41|52|47']],
  ])('are no headings: %s', (_, lines) => {
    const text = table(...lines);
    expect(regions(text)).toEqual(zones);
    expect(notesOf(text).join(' ')).toContain('those of a spreadsheet');
  });

  it('leaves letters alone that do not count from A on', () => {
    const text = table('Sample|A|C|D', 'reed_1.wav|1|2|3', 'reed_2.wav|4|5|6');
    expect(notesOf(text).join(' ')).not.toContain('spreadsheet');
  });
});
