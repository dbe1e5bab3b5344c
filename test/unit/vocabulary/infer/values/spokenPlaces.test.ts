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
