import { describe, expect, it } from 'vitest';
import { regions } from '../tableRegions';

/** What starts the zones of a Markdown table whose first column says so. */
function triggers(heading: string, usual: string, released: string): (string | undefined)[] {
  const text = `My harpsichord, see below.

| ${heading} | sample | keys | root |
|---|---|---|---|
| ${usual} | h1.wav | 30..41 | 36 |
| ${usual} | h2.wav | 42..53 | 48 |
| ${usual} | h3.wav | 54..70 | 62 |
| ${usual} | h4.wav | 71..80 | 75 |
| ${released} | off1.wav | 30..53 | 41 |
| ${released} | off2.wav | 54..80 | 66 |
`;
  return regions(text).map(({ trigger }) => trigger);
}

describe('a column of words for zones as usual and for those on release', () => {
  it.each([
    ['when', 'note', 'release'],
    ['what', 'normal', 'release'],
    ['kind', 'sustain', 'note off'],
    ['wann', 'Ton', 'Loslassen'],
    ['quand', 'note', 'relâchement'],
    ['cuándo', 'nota', 'soltar'],
  ])('below "%s" are "%s" and "%s"', (heading, usual, released) => {
    const none = undefined;
    expect(triggers(heading, usual, released)).toEqual([none, none, none, none, 'release', 'release']);
  });
});
