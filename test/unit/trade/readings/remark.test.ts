import { describe, expect, it } from 'vitest';
import { remarkIn } from '../../../../server/trade/readings/remark';

// Common practice: what somebody remarks on a value stands behind it, in brackets or behind a sign.
describe('a remark behind a value', () => {
  it.each([
    ['42 - new!', '42', '- new!'],
    ['38 – main snare', '38', '– main snare'],
    ['36: kick', '36', ': kick'],
    ['46 = hat open', '46', '= hat open'],
    ['-3 dB - war -6', '-3 dB', '- war -6'],
    ['C3-E3 - wide', 'C3-E3', '- wide'],
    ['36 - 新', '36', '- 新'],
    ['42 ※要確認', '42', '※要確認'],
    ['52?', '52', '?'],
    ['67 # later 72', '67', '# later 72'],
  ])('of %s', (text, value, remark) => {
    expect(remarkIn(text)).toEqual({ value, remark });
  });

  it.each(['C3 - E3', '40 - top', '41 - E3', '55 - up', '60 - max', '36-40', 'do3 - mi3'])(
    'is none where it is the other end of a range: %s',
    (text) => {
      expect(remarkIn(text)).toBeUndefined();
    },
  );
});
