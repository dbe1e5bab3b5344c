import { describe, expect, it } from 'vitest';
import { looksLikeZoneTable } from '../../../server/table/looksLikeZoneTable';
import { regions } from './tableRegions';

const rows = (kind: string) => [`rebec_${kind}_1.wav  D3  F3  E3`, `rebec_${kind}_2.wav  F#3  A3  G3`];
const zones = (text: string) =>
  regions(text).map(
    ({ sample, lokey, hikey, pitch_keycenter: root }) => `${sample} ${lokey} ${hikey} ${root}`,
  );
const expected = ['long', 'short'].flatMap((kind) => [
  `rebec_${kind}_1.wav 50 53 52`,
  `rebec_${kind}_2.wav 54 57 55`,
]);

describe('columns that a line alone names', () => {
  it.each([
    ['below', '', 'columns: file, low, high, root'],
    ['above', 'Each line: file, low, high, root (middle C = C4)', ''],
  ])('count for rows in sections, %s them', (_, before, behind) => {
    const text = [
      'Rebec, C4 = 60',
      before,
      '=== Long   (loud) ===',
      ...rows('long'),
      '',
      '=== Short  (soft) ===',
      ...rows('short'),
      '',
      behind,
    ].join('\n');
    expect(zones(text)).toEqual(expected);
    expect(looksLikeZoneTable(text)).toBe(true);
  });
});
