import { describe, expect, it } from 'vitest';
import { readInferred, valuesIn } from '../inferred';

const horns = (end: (name: string, octave: number, step: number) => string) =>
  `<horns>${[2, 3, 4]
    .map(
      (octave) =>
        `<horn file="h${octave}.wav" gain="-3 dB">${end('low', octave, 1)}${end('high', octave, 11)}</horn>`,
    )
    .join('')}</horns>`;

describe('keys told by octave and step', () => {
  it.each([
    [
      'attributes',
      (name: string, octave: number, step: number) => `<${name} octave="${octave}" step="${step}"/>`,
    ],
    ['names of notes', (name: string, octave: number) => `<${name} octave="${octave}" note="C"/>`],
    [
      'German names',
      (name: string, octave: number, step: number) =>
        `<${name === 'low' ? 'von' : 'bis'} oktave="${octave}" ton="${step}"/>`,
    ],
    [
      'elements',
      (name: string, octave: number, step: number) =>
        `<${name}><octave>${octave}</octave><semitone>${step}</semitone></${name}>`,
    ],
  ])('are never read by the step alone: %s', (_, end) => {
    expect(readInferred(horns(end)).regions).toEqual(['none']);
  });

  it('leave tunings in octaves and semitones as they are', () => {
    const text = `<horns><horn file="a.wav" low="40" high="50"><tuning octave="0" semitone="2"/></horn>
      <horn file="b.wav" low="51" high="60"><tuning octave="0" semitone="-1"/></horn></horns>`;
    expect(valuesIn(text, 'lokey', 'transpose')).toEqual(['40 2', '51 -1']);
  });
});
