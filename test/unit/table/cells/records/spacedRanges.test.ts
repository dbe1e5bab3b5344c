import { describe, expect, it } from 'vitest';
import { regions } from '../../tableRegions';

describe('ranges of notes with blanks around their dash, in lines of words', () => {
  it.each([
    ['c2 - e2 root d2', 'f2 - a2 root g2'],
    ['C2 – E2, root D2', 'F2 – A2, root G2'],
    ['root d2, c2 - e2', 'root g2, f2 - a2'],
    [': c2 - e2 root d2', ': f2 - a2 root g2'],
  ])('are ranges, with talk around them: %s', (first, second) => {
    const text = `gamba, take two\n\ngamba_a.wav ${first}\ngamba_b.wav ${second}\n\n(c4 is middle c)\nask Pim for the other disk, thanks\n`;
    expect(
      regions(text).map(({ lokey, hikey, pitch_keycenter }) => [lokey, hikey, pitch_keycenter].join(' ')),
    ).toEqual(['36 40 38', '41 45 43']);
  });
});
