import { describe, expect, it } from 'vitest';
import { valuesIn } from '../inferred';

const flagged = (name: string, [yes, no]: readonly string[], comment = '') =>
  `<barn>${comment}<beam wave="a.wav" key="40" ${name}="${no}"/><beam wave="b.wav" key="40" ${name}="${yes}"/></barn>`;

describe('a flag for regions that start when a key is let go', () => {
  // Words from memory of the languages.
  it.each([
    ['alSoltar', ['sí', 'no']],
    ['beimLoslassen', ['ja', 'nein']],
  ])('is known by its name: %s', (name, words) => {
    expect(valuesIn(flagged(name, words), 'trigger')).toEqual(['attack', 'release']);
  });

  it('is known by what the document says of it', () => {
    const comment = '<!-- flurn = sounds when the key is let go -->';
    expect(valuesIn(flagged('flurn', ['yes', 'no'], comment), 'trigger')).toEqual(['attack', 'release']);
    expect(valuesIn(flagged('flurn', ['yes', 'no']), 'trigger')).toEqual(['-', '-']);
  });
});

describe('letters for sides before numbers', () => {
  const bins = (name: string, ...texts: string[]) =>
    `<barn>${texts.map((text, at) => `<beam wave="b${at}.wav" key="${40 + at}"><${name}>${text}</${name}></beam>`).join('')}</barn>`;

  it('are pan positions whatever the place is called', () => {
    expect(valuesIn(bins('place', 'L35', 'C', 'R90', 'C'), 'pan')).toEqual(['-35', '0', '90', '0']);
    expect(valuesIn(bins('zib', 'L12', 'C', 'R33'), 'pan')).toEqual(['-12', '0', '33']);
    expect(valuesIn(bins('zib', 'L80', 'L20', 'R20', 'R60'), 'pan')).toEqual(['-80', '-20', '20', '60']);
  });

  it('are codes where they count something', () => {
    expect(valuesIn(bins('shelf', 'L1', 'L2', 'R1', 'R2'), 'pan')).toEqual(['-', '-', '-', '-']);
    expect(valuesIn(bins('shelf', 'L400', 'C', 'R900'), 'pan')).toEqual(['-', '-', '-']);
  });
});

describe('words for sides', () => {
  const bins = (name: string, ...texts: string[]) =>
    `<barn>${texts.map((text, at) => `<beam wave="b${at}.wav" key="${40 + at}" ${name}="${text}"/>`).join('')}</barn>`;

  it('are pan positions where all three occur', () => {
    expect(valuesIn(bins('zib', 'links', 'Mitte', 'rechts'), 'pan')).toEqual(['-100', '0', '100']);
    expect(valuesIn(bins('hand', 'left', 'right', 'right'), 'pan')).toEqual(['-', '-', '-']);
    expect(valuesIn(bins('zib', 'L', 'C', 'R'), 'pan')).toEqual(['-', '-', '-']);
  });
});
