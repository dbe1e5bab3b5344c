import { expect, it } from 'vitest';
import { lackOfZoneTable } from '../../../server/table/looksLikeZoneTable';
import { regions } from './tableRegions';

it('reads a bare list of keys and ranges of keys', () => {
  const text = '35: boom.wav\n39: snap.wav\n41-47: drums.wav\n';
  expect(lackOfZoneTable(text)).toBeUndefined();
  const found = regions(text).map(({ key, lokey, hikey }) => `${lokey ?? key}-${hikey ?? key}`);
  expect(found).toEqual(['35-35', '39-39', '41-47']);
});

it('says of JSON without samples that it is JSON', () => {
  expect(lackOfZoneTable('{"x": 3, "y": [4, 5]}')).toBe('it is JSON, but lists no samples with keys');
});
