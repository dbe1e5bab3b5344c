import { describe, expect, it } from 'vitest';
import { notesOf, regions } from '../../tableRegions';

function values(text: string, ...names: string[]): string[] {
  return regions(text).map((region) => names.map((name) => region[name] ?? '-').join(' '));
}

// TOML 1.0: a table of values, and an array of tables.
const text = `name = "Garden gate"

[defaults]
velocity = [1, 127]
one_shot = true

[[zone]]
file = "gate.wav"
range = [36, 41]
root = 38

[[zone]]
file = "latch.wav"
range = [42, 47]
root = 44
one_shot = false
`;

describe('a block of values for all zones', () => {
  it('hands on values under any name, which zones overrule', () => {
    expect(values(text, 'sample', 'loop_mode')).toEqual(['gate.wav one_shot', 'latch.wav -']);
  });

  it('does the same in blocks with words between', () => {
    const ini =
      '[default]\none shot = yes\n\n[zone a]\nfile = gate.wav\nlow = 36\nhigh = 41\n\n[zone b]\nfile = latch.wav\nlow = 42\nhigh = 47\n';
    expect(values(ini, 'loop_mode')).toEqual(['one_shot', 'one_shot']);
  });

  it('takes the name of the one array for no group', () => {
    expect(notesOf(text).join('\n')).not.toMatch(/group/);
    expect(notesOf(text.replace('[[zone]]', '[[gates]]')).join('\n')).toMatch(/"\[\[gates\]\]".*group/);
  });
});
