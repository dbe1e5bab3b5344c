import { describe, expect, it } from 'vitest';
import { regions } from '../tableRegions';

const names = ['sample', 'lokey', 'hikey', 'pitch_keycenter', 'lovel', 'hivel', 'tune'];

/** Velocities that may be left out. */
const every: Readonly<Record<string, string>> = { lovel: '1', hivel: '127' };

function values(text: string): string[] {
  return regions(text).map((region) => names.map((name) => region[name] ?? every[name] ?? '-').join(' '));
}

const expected = [
  'gong 1.wav 36 41 38 1 79 4',
  'gong 1 hard.wav 36 41 38 80 127 4',
  'gong 2.wav 42 47 44 1 127 -11',
];

const nested = `    ("gong 1.wav", 38, (36, 41), (1, 79), 4),
    ("gong 1 hard.wav", 38, (36, 41), (80, 127), 4),
    ("gong 2.wav", 44, (42, 47), (1, 127), -11),
]
`;

// Scripts that make instruments, as people write them (common practice).
describe('a comment that lists headings as the values of a script are nested', () => {
  it.each([
    ['in brackets', `# each one is (file, root, (lo, hi), (vlo, vhi), cents)\nGONGS = [\n${nested}`],
    [
      'behind a sentence',
      `# makes the gongs; an entry: (file, root, (lo, hi), (vlo, vhi), cents)\nGONGS = [\n${nested}`,
    ],
    ['without brackets around', `GONGS = [\n    # file, root, (lo, hi), (vlo, vhi), cents\n${nested}`],
    ['in the order of the values alone', `# (file, root, lo, hi, vlo, vhi, cents)\nGONGS = [\n${nested}`],
    [
      'over values without lists',
      `# (file, root, (lo, hi), (vlo, vhi), cents)
GONGS = [
  ("gong 1.wav", 38, 36, 41, 1, 79, 4),
  ("gong 1 hard.wav", 38, 36, 41, 80, 127, 4),
  ("gong 2.wav", 44, 42, 47, 1, 127, -11),
]`,
    ],
    [
      'in another order, of three values, with nothing for all velocities',
      `-- { file, { lo, root, hi }, { vlo, vhi }, cents }
gongs = {
  { "gong 1.wav", { 36, 38, 41 }, { 1, 79 }, 4 },
  { "gong 1 hard.wav", { 36, 38, 41 }, { 80, 127 }, 4 },
  { "gong 2.wav", { 42, 44, 47 }, nil, -11 },
}`,
    ],
  ])('names their columns: %s', (_, text) => {
    expect(values(text)).toEqual(expected);
  });
});
