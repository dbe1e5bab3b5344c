import { describe, expect, it } from 'vitest';
import { middleCIn } from '../../../../server/trade/statements/keys/statedOctave';

// MIDI 1.0 names no octaves; sentences by our own hand, as people write them (common practice).
describe('a key that a sentence calls by name', () => {
  it.each([
    ['60 shows as C3', 'C3'],
    ['What the display calls C3 is MIDI note number 60.', 'C3'],
    ['Its C5 sounds like MIDI 60', 'C5'],
    ['note names count so that key 60 comes out as C3', 'C3'],
    ['Das Gerät nennt die MIDI-Note 60 „C3“.', 'C3'],
    ['C3 entspricht MIDI-Note 60', 'C3'],
    ["l'appareil appelle « do3 » la note MIDI 60", 'C3'],
    ['El aparato llama C3 a la nota MIDI 60', 'C3'],
    ['il display mostra la nota 72 come C4', 'C3'],
    ['a nota MIDI 60 aparece como C3', 'C3'],
    ["l'aparell anomena C3 la nota MIDI 60", 'C3'],
    ['noot 60 wordt weergegeven als C3', 'C3'],
    ['MIDI-not 60 kallas C3 i listan', 'C3'],
    ['enheden viser node 60 som C3', 'C3'],
    ['laite kutsuu MIDI-nuottia 60 nimellä C3', 'C3'],
    ['urządzenie wyświetla nutę 60 jako C3', 'C3'],
    ['přístroj zobrazuje notu 60 jako C3', 'C3'],
    ['a készülék a 60-as MIDI-hangot C3-nak nevezi', 'C3'],
    ['cihaz 60 numaralı MIDI notasına C3 der', 'C3'],
    ['C3 соответствует ноте MIDI 60', 'C3'],
    ['η νότα 60 εμφανίζεται ως C3', 'C3'],
    ['设备把MIDI音符60称为C3', 'C3'],
    ['60番はC3と表示されます', 'C3'],
    ['기기는 MIDI 60번을 C3라고 부릅니다', 'C3'],
  ])('%s', (text, expected) => {
    expect(middleCIn(text)).toBe(expected);
  });

  it.each([
    'MIDI note 60 is not called C3',
    'MIDI 60 heißt hier nicht C3',
    'The recorder showed 60 percent from C3 on.',
    'from key 48 to C3',
    'Take 61 is called C3',
    'The file called flute_60 is C2',
    'The 60 ms fade is shown as C3.',
    'Velocity 60 shows as C3',
  ])('not: %s', (text) => {
    expect(middleCIn(text)).toBeUndefined();
  });
});
