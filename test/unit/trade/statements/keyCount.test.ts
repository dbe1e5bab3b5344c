import { describe, expect, it } from 'vitest';
import { keyCountIn } from '../../../../server/trade/statements/keys/keyCount';
import { pianoKeysIn } from '../../../../server/trade/statements/keys/pianoKeys';

// Middle C is key 60 of MIDI 1.0, C4 where nothing else is said; the lowest key of a piano is A0, number 21 (common practice).
describe('how numbers of keys are counted', () => {
  it.each([
    ['Toetsen: 1 = de laagste A (MIDI 21), 88 = de hoogste C.', 20],
    ['Keys are counted from the left; key 1 is C2 (MIDI 36).', 35],
    ['Taste 1 ist das tiefe C (MIDI 36)', 35],
    ['La tecla 1 es do2 (MIDI 36)', 35],
    ['la touche 1 est le la grave (MIDI 21).', 20],
    ['key 1 = MIDI 36', 35],
    ['1 = MIDI 24', 23],
    ['nr. 1 = C (MIDI 48)', 47],
    ['Keys are counted from 0; key 0 is MIDI 21', 21],
    ['keys numbered from the left, first key A0', 20],
    ['counted from 1 at C2', 35],
    ['Key numbers start at 1 = C2', 35],
    ['C2 is key 1', 35],
  ])('%s', (text, shift) => {
    expect(keyCountIn([text], undefined)?.shift).toBe(shift);
  });

  it('follows the octaves that the text states', () => {
    expect(keyCountIn(['key 1 is C2'], 'C3')?.shift).toBe(47);
  });

  it.each([
    'velocity 1 = MIDI 1',
    'take 1 = MIDI 60',
    'Group 1 is C2',
    '1 = C3, 2 = D3, 3 = E3',
    '1 = C3 (MIDI 60), 2 = D3 (MIDI 62)',
    '36 = C2',
    '60 = C4',
    'key 60 is C3',
    'key 60 = MIDI 60',
    'The first zone starts at A0.',
    'first key A0',
  ])('is not told by "%s"', (text) => {
    expect(keyCountIn([text], undefined)).toBeUndefined();
  });

  it.each([
    'Keys counted as on a piano: 1 is the lowest A, 88 the highest C.',
    'key 1 is the lowest A',
    'Tasten wie am Klavier gezählt',
    'Touches numérotées comme sur un piano',
    'Las teclas se cuentan como en el piano: 1 = el la más grave',
    'Tasti contati come sul pianoforte (1 = la più grave)',
    'Klawisze liczone jak na fortepianie',
    'Tangenter räknas som på ett piano, 1 är lägsta A',
  ])('is as on a piano by "%s"', (text) => {
    expect(pianoKeysIn([text])).toBe(text);
  });

  it.each([
    'A piano, sampled like a piano should be.',
    'The piano has 12 samples, numbered 1 to 12.',
    'Group 1 is the low A group',
    'MIDI key 21 is the lowest A',
  ])('is not as on a piano by "%s"', (text) => {
    expect(pianoKeysIn([text])).toBeUndefined();
  });
});
