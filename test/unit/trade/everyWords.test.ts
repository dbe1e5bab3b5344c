import { describe, expect, it } from 'vitest';
import { forAllIn } from '../../../server/trade/statements/amounts/forAll';
import { keyReachIn } from '../../../server/trade/statements/keys/keyReach';
import { keySpreadIn } from '../../../server/trade/statements/keys/keySpread';
import { playsOutIn } from '../../../server/trade/statements/playing/playsOut';

// Words from dictionaries of each language (from memory); that all places know them alike is our choice.
describe('words for all zones', () => {
  it('are known to all who read what goes for all', () => {
    expect(forAllIn(['Tous les samples -3 dB'])[0]?.values.get('volume')).toBe(-3);
    expect(forAllIn(['Sämtliche Samples -3 dB'])[0]?.values.get('volume')).toBe(-3);
    expect(forAllIn(['Alle regioner -3 dB'])[0]?.values.get('volume')).toBe(-3);
    expect(keyReachIn(['Alle opnames: one key up and down'])?.up).toBe(1);
    expect(keyReachIn(['Sämtliche Aufnahmen reichen zwei Halbtöne nach oben und unten'])?.up).toBe(2);
    expect(keySpreadIn(['Totes arriben up to the next'])?.is).toBe('upward');
    expect(playsOutIn(['Sämtliche Klänge laufen bis zum Ende'])).toBeDefined();
  });

  it('are none of others that look like them', () => {
    expect(forAllIn(['The one sample -3 dB'])).toEqual([]);
    expect(playsOutIn(['Every key is covered, so you can play it right through'])).toBeUndefined();
    expect(playsOutIn(['De klokken klinken tot het einde'])).toBeUndefined();
    expect(playsOutIn(['Alle klokken klinken tot het einde'])).toBeDefined();
  });
});
