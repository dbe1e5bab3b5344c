import { describe, expect, it } from 'vitest';
import { isEndBehind } from '../../../../server/trade/statements/endsBehind';

describe('the end of a loop, told in words', () => {
  // Sentences from memory of the languages.
  it.each([
    'Slut anger första ramen EFTER slingan (den spelas inte)',
    'The end is the first frame after the loop',
    'Ende: das erste Bild nach der Schleife',
    'Fin : la trame qui suit, elle est jouée pas',
    'Koniec to pierwsza ramka po pętli',
    'El fin es el primer cuadro después del bucle, no suena',
  ])('is behind it: %s', (text) => expect(isEndBehind(text)).toBe(true));

  it.each([
    'The end is the last frame that is played',
    'Slut är sista ramen som spelas',
    'Das Ende ist das letzte Bild der Schleife',
    'After release the loop is not played',
    'Fine: ultimo campione del ciclo',
  ])('is not: %s', (text) => expect(isEndBehind(text)).toBe(false));
});
