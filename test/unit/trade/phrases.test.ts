import { describe, expect, it } from 'vitest';
import { readClause } from '../../../server/trade/phrases/clause';

describe('what a clause of a sentence tells of a zone', () => {
  // Common practice: plain sentences in the languages of the trade.
  it.each([
    ['plays from C2 to E2', 'key_range', 'C2 – E2'],
    ['goes from A2 to D3', 'key_range', 'A2 – D3'],
    ['goes from key 58 to key 62', 'key_range', '58 – 62'],
    ['geht von Taste 58 bis Taste 62', 'key_range', '58 – 62'],
    ['va de la touche 58 à la touche 62', 'key_range', '58 – 62'],
    ['va dal tasto 58 al tasto 62', 'key_range', '58 – 62'],
    ['va desde la tecla C3 hasta la tecla E3', 'key_range', 'C3 – E3'],
    ['gra od klawisza 58 do klawisza 62', 'key_range', '58 – 62'],
    ['va de la tecla 36 a la 42', 'key_range', '36 – 42'],
    ['va desde la tecla 36 hasta la 42', 'key_range', '36 – 42'],
    ['est sur les touches de la 36 à la 42', 'key_range', '36 – 42'],
    ["va de la touche 36 jusqu'à la 42", 'key_range', '36 – 42'],
    ['spielt von der 36 bis zur 42', 'key_range', '36 – 42'],
    ['loopt van toets 36 tot de 42', 'key_range', '36 – 42'],
    ['vai da tecla 36 até a 42', 'key_range', '36 – 42'],
    ['copre i tasti dal 36 al 42', 'key_range', '36 – 42'],
    ['is used for A2 to D3', 'key_range', 'A2 – D3'],
    ['geht von A2 bis D3', 'key_range', 'A2 – D3'],
    ["s'étend de la2 à ré3", 'key_range', 'la2 – ré3'],
    ['ocupa de 45 a 50', 'key_range', '45 – 50'],
    ['va da 45 a 50', 'key_range', '45 – 50'],
    ['loopt van A2 tot en met D3', 'key_range', 'A2 – D3'],
    ['loopt van 45 tot 50', 'key_range', '45 – 50'],
    ['loopt van 4500 tot 52000', 'loop', '4500-52000'],
    ['zajmuje od A2 do D3', 'key_range', 'A2 – D3'],
    ['занимает от 45 до 50', 'key_range', '45 – 50'],
    ['1,5 dB zachter', 'volume', '-1.5 dB'],
    ['von Fis2 bis B2', 'key_range', 'Fis2 – B2'],
    ['klingt von C2 bis E2', 'key_range', 'C2 – E2'],
    ['clave raíz 60', 'pitch_keycenter', '60'],
    ['základní tón Fis', 'pitch_keycenter', 'Fis'],
    ['velocity up to 64', 'velocity_range', '<=64'],
    ['при силе нажатия от 65 до 127', 'velocity_range', '65 – 127'],
    ['boucle de 1200 à 34000', 'loop', '1200-34000'],
    ['2,5 dB quieter', 'volume', '-2.5 dB'],
    ['baissé de 3 dB', 'volume', '-3 dB'],
    ['3 cents too sharp', 'deviation', '+3 ct'],
    ['4 Cent zu tief', 'deviation', '-4 ct'],
    ['tuned down 7 cents', 'tune', '-7 ct'],
    ['12 Cent nach unten gestimmt', 'tune', '-12 ct'],
    ['um 8 Cent nach oben', 'tune', '+8 ct'],
    ['6 cent naar beneden', 'tune', '-6 ct'],
    ['8 cents plus bas', 'tune', '-8 ct'],
    ['5 cents vers le haut', 'tune', '+5 ct'],
    ['9 centów w dół', 'tune', '-9 ct'],
    ['3 dB nach unten', 'volume', '-3 dB'],
    ['2 dB głośniej', 'volume', '+2 dB'],
    ['links 20', 'pan', 'links 20'],
  ])('%s', (clause, meaning, text) => {
    const told = readClause(clause);
    expect(told?.meaning).toBe(meaning);
    expect(told?.text).toBe(text);
  });

  // A word that nobody knows may be the one that says which way it goes.
  it.each([
    ['15 cents dolorp', true],
    ['tuned by 15 cents', undefined],
    ['15 cents down', undefined],
    ['+15 cents dolorp', undefined],
    ['3 dB dolorp', true],
  ])('"%s" leaves its direction open: %s', (clause, isOpen) => {
    expect(readClause(clause)?.isOpen).toBe(isOpen);
  });

  it.each([
    'not below C2',
    'everything except 60',
    'recorded in 2019',
    '48 kHz, 24 bit',
    '3 dB louder than the 2 dB version',
    'louder and quieter by 3 dB',
    '',
  ])('leaves "%s" alone', (clause) => {
    expect(readClause(clause)).toBeUndefined();
  });
});
