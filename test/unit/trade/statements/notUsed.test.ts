import { describe, expect, it } from 'vitest';
import { notUsedIn, saysNotUsed } from '../../../../server/trade/statements/notUsed';

describe('remarks that say that a row is not used', () => {
  it.each([
    'not used',
    'Unused',
    'is not in use',
    'old take, not used',
    'don\u2019t use!',
    'wird nicht verwendet',
    'unbenutzt',
    'pas utilis\u00e9e',
    'no se usa',
    'non in uso',
    'niet in gebruik',
    'anv\u00e4nds inte',
    'ei k\u00e4yt\u00f6ss\u00e4',
    'nieu\u017cywane',
    '\u043d\u0435 \u0438\u0441\u043f\u043e\u043b\u044c\u0437\u0443\u0435\u0442\u0441\u044f',
    '\u672a\u4f7f\u7528',
    '\uc0ac\uc6a9\ud558\uc9c0 \uc54a\uc74c',
  ])('%s', (remark) => {
    expect(saysNotUsed(remark)).toBe(true);
  });

  it.each([
    'not used in the demo',
    'pedal not used here',
    'used',
    'loop is not used below C2',
    'unused loop',
    '\u4e0d\u7528\u8e0f\u677f\u7684\u91c7\u6837',
    'reused',
  ])('does not take "%s" for it', (remark) => {
    expect(saysNotUsed(remark)).toBe(false);
  });
});

describe('where a text says that something is not used', () => {
  it('gives the words that say so', () => {
    expect(notUsedIn('this layer is no longer used by the presets')?.[0]).toBe('no longer used');
    expect(notUsedIn('kept for comparison')?.index).toBe(0);
  });

  it('takes no part of a longer word', () => {
    expect(notUsedIn('paused and reused')).toBeNull();
    expect(notUsedIn('unusedness')).toBeNull();
  });
});
