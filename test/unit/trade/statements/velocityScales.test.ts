import { describe, expect, it } from 'vitest';
import { statementsIn } from '../../../../server/trade/statements/statements';

function scaleOf(text: string): string | undefined {
  const { low, high } = statementsIn([text]).scales.get('lovel') ?? {};
  return high === undefined ? undefined : `${low}..${high}`;
}

// Velocities are 0..127 in MIDI 1.0; other scales are told in sentences (our own hand, as people write them).
describe('a scale of velocities in a sentence', () => {
  it.each([
    ['Iskuvoima (velocity) on tässä asteikolla 1–100.', '1..100'],
    ['Voima annetaan välillä 1...100', '1..100'],
    ['Velocity (how hard a key is hit) is given from 0 to 100', '0..100'],
    ['The velocity values (in our tool) range between 0 and 100', '0..100'],
    ['Anschlagstärke (Velocity) läuft bei uns von 1 bis 100.', '1..100'],
    ['La vélocité (force de frappe) est sur une échelle de 1 à 100.', '1..100'],
    ['La velocidad (fuerza) está en una escala de 1 a 100.', '1..100'],
    ['La velocity (forza) è su una scala da 1 a 100.', '1..100'],
    ['A velocidade (força) está numa escala de 1 a 100.', '1..100'],
    ['La velocitat va de 0 a 100', '0..100'],
    ['De aanslag (velocity) loopt van 1 tot 100.', '1..100'],
    ['Anslaget (velocity) är på en skala 1–100.', '1..100'],
    ['Anslaget (velocity) er på en skala fra 1 til 100', '1..100'],
    ['Dynamika (velocity) jest w skali 1–100.', '1..100'],
    ['Síla úhozu (velocity) je na stupnici 1–100.', '1..100'],
    ['Vuruş kuvveti (velocity) 1–100 ölçeğinde', '1..100'],
    ['Сила нажатия (velocity) дана по шкале от 1 до 100.', '1..100'],
    ['Η ένταση χτυπήματος (velocity) είναι σε κλίμακα 1–100.', '1..100'],
    ['力度（velocity）的范围是1到100', '1..100'],
    ['ベロシティは0から100まで', '0..100'],
    ['벨로시티는 1에서 100까지입니다', '1..100'],
  ])('%s', (text, expected) => {
    expect(scaleOf(text)).toBe(expected);
  });

  it('is none in a sentence of another column', () => {
    expect(scaleOf('Pan (left to right) runs from -64 to 63')).toBeUndefined();
    expect(scaleOf('The loops (loop points) run from 1 to 100')).toBeUndefined();
  });
});
