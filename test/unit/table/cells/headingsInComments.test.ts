import { describe, expect, it } from 'vitest';
import { notesOf, regions } from '../tableRegions';

/** Some values of all regions, one string a region; `-` for a value that is not given. */
function values(text: string, ...names: string[]): string[] {
  return regions(text).map((region) => names.map((name) => region[name] ?? '-').join(' '));
}

const names = ['sample', 'lokey', 'hikey', 'pitch_keycenter', 'tune'];
const expected = ['a.wav 48 52 50 -8', 'b.wav 53 57 55 14'];

// Scripts that make instruments, as people write them (common practice).
describe('a comment that names as many columns as the rows of a script have values', () => {
  it.each([
    [
      'Python, with a program behind',
      `zones = [
    # file,   root, low, high, cents
    ("a.wav", 50, 48, 52, -8),
    ("b.wav", 55, 53, 57, 14),
]
for f, root, low, high, cents in zones:
    write_zone(f, root, low, high, tune=cents)
print("done", len(zones))`,
    ],
    [
      'JavaScript, without commas',
      `const zones = [
  // file  root low high cents
  ["a.wav", 50, 48, 52, -8],
  ["b.wav", 55, 53, 57, 14],
];
zones.forEach(([f, root, low, high, cents]) => addZone(f, { root, low, high, tune: cents }));`,
    ],
    [
      'Lua',
      `local zones = {
  -- sample, key low, key high, root, cents
  { "a.wav", 48, 52, 50, -8 },
  { "b.wav", 53, 57, 55, 14 },
}
for i, z in ipairs(zones) do add(z[1], z[2]) end`,
    ],
    [
      'Perl',
      `my @zones = (
  # file     lo  hi  root  cents
  ['a.wav',  48, 52, 50,   -8],
  ['b.wav',  53, 57, 55,   14],
);
foreach my $z (@zones) { add_zone(@$z); }`,
    ],
    [
      'Ruby, in French',
      `zones = [
  # Fichier, note basse, note haute, fondamentale, cents
  ["a.wav", 48, 52, 50, -8],
  ["b.wav", 53, 57, 55, 14],
]
zones.each { |f, lo, hi, r, v| add f, lo, hi, r, v }`,
    ],
    [
      'Python, in German',
      `ZONEN = [
  # Datei, tiefste Taste, höchste Taste, Grundton, Cent
  ("a.wav", 48, 52, 50, -8),
  ("b.wav", 53, 57, 55, 14),
]
for datei, tief, hoch, grund, cent in ZONEN:
    zone(datei, tief, hoch, grund, stimmung=cent)`,
    ],
    [
      'R',
      `zones <- list(
  # file, root, low, high, cents
  c("a.wav", 50, 48, 52, -8),
  c("b.wav", 55, 53, 57, 14)
)`,
    ],
  ])('%s', (_, text) => {
    expect(values(text, ...names)).toEqual(expected);
  });

  it('leaves out a row that is a comment, and says so', () => {
    const text = `zones = [
    # file, root, low, high, cents
    ("a.wav", 50, 48, 52, -8),
#   ("a_old.wav", 50, 48, 52, 0),  # noisy
    ("b.wav", 55, 53, 57, 14),
]`;
    expect(values(text, ...names)).toEqual(expected);
    expect(notesOf(text).join('\n')).toMatch(/A comment names a sample .*a_old\.wav/);
  });
});
