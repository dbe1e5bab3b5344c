import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from './inferred';

const zone = (file: string, low: number, high: number) =>
  `<z file="${file}" lo="${low}" hi="${high}" root="${low + 4}"/>`;

/** Words for letting a key go are common practice; a section of its own holds what sounds then. */
describe('a section of regions that is named after letting a key go', () => {
  it.each([
    ['voci', 'rilasci'],
    ['voci', 'suoni_al_rilascio'],
    ['sons', 'relâchements'],
    ['Töne', 'Loslassgeräusche'],
    ['Töne', 'Nachklänge'],
    ['pijpen', 'naklanken'],
    ['dźwięki', 'puszczenia'],
    ['sonidos', 'sueltas'],
    ['pipes', 'tails'],
    ['voices', 'key-up-noises'],
  ])('starts them on release and is told: %s and %s', (one, other) => {
    const text = `<set><${one}>${zone('a.wav', 40, 50)}${zone('b.wav', 51, 60)}</${one}><${other}>${zone('r.wav', 40, 60)}</${other}></set>`;
    expect(valuesIn(text, 'sample', 'trigger')).toEqual(['a.wav -', 'b.wav -', 'r.wav release']);
    const told = readInferred(text).decisions.map(({ message }) => message);
    expect(told).toContain(`Regions inside <${other}> start when a key is released.`);
  });

  it('is none where the name is another one', () => {
    const text = `<set><voci>${zone('a.wav', 40, 50)}</voci><suoni>${zone('b.wav', 51, 60)}</suoni></set>`;
    expect(valuesIn(text, 'sample', 'trigger')).toEqual(['a.wav -', 'b.wav -']);
  });
});
