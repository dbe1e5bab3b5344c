import { describe, expect, it } from 'vitest';
import { lackOfZoneTable } from '../../../server/table/looksLikeZoneTable';
import { regions } from './tableRegions';

describe('calls of a script whose files are joined from a constant', () => {
  it.each([
    [
      'a plus',
      [
        'folder = "wav/"',
        'zone(folder + "tuba_a.wav", lo=36, hi=41, root=39)',
        'zone(folder + "tuba_b.wav", lo=42, hi=47, root=45)',
        '# zone(folder + "tuba_c.wav", lo=42, hi=47, root=45)  # noisy',
        'save("tuba.out")',
      ],
    ],
    [
      'two dots',
      [
        'local folder = "wav/"',
        'zone(folder .. "tuba_a.wav", { lo = 36, hi = 41, root = 39 })',
        'zone(folder .. "tuba_b.wav", { lo = 42, hi = 47, root = 45 })',
      ],
    ],
    [
      'a dot',
      [
        "my $folder = 'wav/';",
        "zone($folder . 'tuba_a.wav', lo => 36, hi => 41, root => 39);",
        "zone($folder . 'tuba_b.wav', lo => 42, hi => 47, root => 45);",
      ],
    ],
    [
      'a name in braces',
      [
        'folder = "wav"',
        'zone(f"{folder}/tuba_a.wav", lo=36, hi=41, root=39)',
        'zone(f"{folder}/tuba_b.wav", lo=42, hi=47, root=45)',
      ],
    ],
  ])('by %s are zones', (_, lines) => {
    const text = `${lines.join('\n')}\n`;
    expect(lackOfZoneTable(text)).toBeUndefined();
    expect(regions(text).map((one) => [one.sample, one.lokey, one.hikey, one.pitch_keycenter])).toEqual([
      ['wav/tuba_a.wav', '36', '41', '39'],
      ['wav/tuba_b.wav', '42', '47', '45'],
    ]);
  });
});

describe('a line of a wiki in slanted letters', () => {
  const rows = '|= File |= Root |= Low |= High |\n| t1.wav | C3 | A2 | D3 |\n| t2.wav | F3 | D#3 | G3 |\n';

  it('is no comment of program code, and counts as what it says', () => {
    const text = `= Tuba =\n${rows}\n//Middle C is C3//\n`;
    expect(lackOfZoneTable(text)).toBeUndefined();
    expect(regions(text).map((one) => one.pitch_keycenter)).toEqual(['60', '65']);
  });

  it('is told from one', () => {
    expect(lackOfZoneTable(`// the tuba\nint first = 1;\nplay("t1.wav", first);\n`)).toBe(
      'it looks like program code',
    );
  });
});
