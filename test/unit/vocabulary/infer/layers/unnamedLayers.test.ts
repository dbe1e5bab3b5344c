import { describe, expect, it } from 'vitest';
import { valuesIn } from '../inferred';

const layers = (first: string, second: string) =>
  `<barn><beam wave="a.wav" low="40" high="45" ${first}/><beam wave="b.wav" low="40" high="45" ${second}/></barn>`;

describe('velocity ends of unknown names', () => {
  // MIDI 1.0: velocities of sounding notes run from 1 to 127; that pairs part them is what layers do (common practice).
  it('are read where they part all velocities among regions of the same keys', () => {
    const text = layers('flim="1" flam="75"', 'flim="76" flam="127"');
    expect(valuesIn(text, 'lovel', 'hivel')).toEqual(['1 75', '76 127']);
  });

  it.each([
    ['a gap', 'flim="1" flam="70"', 'flim="76" flam="127"'],
    ['ends below the greatest', 'flim="1" flam="75"', 'flim="76" flam="110"'],
    ['layers over one another', 'flim="1" flam="80"', 'flim="76" flam="127"'],
  ])('are not read with %s', (_, first, second) => {
    expect(valuesIn(layers(first, second), 'lovel', 'hivel')).toEqual(['- -', '- -']);
  });
});
