import { describe, expect, it } from 'vitest';
import { valuesIn } from './inferred';

describe('the number of an outlet', () => {
  it.each(['<gain dB="-7"/>', '<volume>-7 dB</volume>', '<level db="-7"/>'])(
    'does not stand for the level that another place gives: %s',
    (level) => {
      const drum = (key: number) => `<drum key="${key}" output="2">${level}<shot>hit${key}.wav</shot></drum>`;
      expect(valuesIn(`<kit>${drum(35)}${drum(37)}</kit>`, 'lokey', 'volume')).toEqual(['35 -7', '37 -7']);
    },
  );
});
