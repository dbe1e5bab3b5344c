import { describe, expect, it } from 'vitest';
import { looksLikeZoneTable } from '../../../../server/table/looksLikeZoneTable';
import { regions } from '../tableRegions';

const read = (text: string) =>
  regions(text).map(({ sample, lokey, hikey, pitch_keycenter: root, lovel = '-', hivel = '-', tune = '-' }) =>
    [sample, lokey, hikey, root, lovel, hivel, tune].join(' '),
  );
const rows = [
  ['tin_a.wav', '36-40', '38', '1-60'],
  ['tin_b.wav', '41-45', '43', '61-127'],
  ['tin_c.wav', '46-52', '48', '1-127'],
];
const zones = ['tin_a.wav 36 40 38 1 60 -', 'tin_b.wav 41 45 43 61 127 -', 'tin_c.wav 46 52 48 1 127 -'];

describe('words in front of the values of a column', () => {
  it.each([
    ['tabs', '\t', (root: string) => `root ${root}`, (range: string) => `vel ${range}`],
    ['spaces and brackets', '    ', (root: string) => `(${root})`, (range: string) => `vel ${range}`],
    ['bars and colons', ' | ', (root: string) => `Root: ${root}`, (range: string) => `Velocity: ${range}`],
    ['another language', '\t', (root: string) => `Grundton ${root}`, (range: string) => `Anschlag ${range}`],
  ])('are its heading, with %s', (_, parting, root, velocities) => {
    const text = rows
      .map(([file, keys, own, range]) => [file, keys, root(own), velocities(range)].join(parting))
      .join('\n');
    expect(looksLikeZoneTable(text)).toBe(true);
    expect(read(text)).toEqual(zones);
  });

  it('are part of the values where they differ', () => {
    const text = 'tin_a.wav\t36\tlow 1\ntin_b.wav\t41\thigh 2\n';
    expect(regions(text).map(({ sample, pitch_keycenter, key }) => [sample, key ?? pitch_keycenter])).toEqual(
      [
        ['tin_a.wav', '36'],
        ['tin_b.wav', '41'],
      ],
    );
  });
});

describe('a list parted by blanks', () => {
  it('is one of zones where one key after another stands on its lines', () => {
    const text =
      'Kit of the mill\n\n35  big drum   drum_a.wav\n36  old drum   drum_b.wav\n38  rim        rim_a.wav\n42  plate      plate.wav\n';
    expect(looksLikeZoneTable(text)).toBe(true);
    expect(regions(text)).toHaveLength(4);
  });

  it('is none where its numbers count lines', () => {
    expect(looksLikeZoneTable('1  drum_a.wav\n2  drum_b.wav\n3  rim_a.wav\n4  plate.wav\n')).toBe(false);
  });
});
