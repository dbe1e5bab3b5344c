import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from '../inferred';

const jars = (one: string, other: string, ...values: (readonly [number, number])[]) =>
  `<cellar>${values
    .map(([a, b], at) => `<jar wav="j${at}.wav" note="${50 + at}" ${one}="${a}" ${other}="${b}"/>`)
    .join('')}</cellar>`;

describe('two tunings with shortened names', () => {
  it.each([
    ['ct', 'ft'],
    ['tc', 'tf'],
    ['crsT', 'finT'],
    ['gTn', 'fTn'],
    ['cx', 'fx'],
  ])('are a coarse and a fine one: %s and %s', (coarse, fine) => {
    const text = jars(coarse, fine, [0, -8], [2, 45], [-5, 0]);
    expect(valuesIn(text, 'transpose', 'tune')).toEqual(['0 -8', '2 45', '-5 0']);
    const about = readInferred(text).decisions.filter(({ confidence }) => confidence < 0.75);
    expect(about.map(({ id }) => id)).toEqual(expect.arrayContaining(['transpose', 'tune']));
  });

  it('may be a fine one in parts of a semitone', () => {
    const text = jars('tc', 'tf', [0, -0.08], [2, 0.45], [-5, 0]);
    expect(valuesIn(text, 'transpose', 'tune')).toEqual(['0 -8', '2 45', '-5 0']);
  });

  it('are none where the numbers say otherwise, which is told', () => {
    const text = jars('cx', 'fx', [0, -8], [90, 4], [-70, 0]);
    expect(valuesIn(text, 'transpose', 'tune')).toEqual(['- -', '- -', '- -']);
    const lost = readInferred(text).decisions.filter(({ isLost }) => isLost);
    expect(lost.map(({ id }) => id)).toEqual(['jar/@cx', 'jar/@fx']);
  });

  it('are told to be open where one is alone', () => {
    const text = '<cellar><jar wav="a.wav" note="50" ct="2"/><jar wav="b.wav" note="51" ct="-12"/></cellar>';
    expect(readInferred(text).decisions.find(({ id }) => id === 'tune.unit')?.isGuess).toBe(true);
  });
});
