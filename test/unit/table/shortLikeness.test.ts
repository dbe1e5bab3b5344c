import { expect, it } from 'vitest';
import { regions, table } from './tableRegions';

// `Last` is one letter from a Swedish word for lowest; nothing else in the table is Swedish.
it('a short heading is not taken for a misspelt word of another language', () => {
  const text = table('Stroke | First | Last', 'bell-one.wav | 36 | 47', 'bell-two.wav | 48 | 59');
  expect(regions(text).map(({ lokey, hikey }) => [lokey, hikey])).toEqual([
    ['36', '47'],
    ['48', '59'],
  ]);
});
