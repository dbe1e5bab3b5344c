import { describe, expect, it } from 'vitest';
import { looksLikeZoneTable } from '../../../../server/table/looksLikeZoneTable';
import { notesOf, regions } from '../tableRegions';

const names = ['sample', 'lokey', 'hikey', 'volume'];

function values(text: string): string[] {
  return regions(text).map((region) =>
    names.map((name) => region[name] ?? (name === 'volume' ? '0' : '-')).join(' '),
  );
}

const expected = ['oak n.wav 36 41 0', 'elm n.wav 42 47 0', 'oak f.wav 36 41 -5', 'elm f.wav 42 47 -5'];

// YAML 1.2: flow collections (chapter 7.4), anchors (6.9.2) and comments (6.6).
describe('zones of YAML in named sections', () => {
  it.each([
    [
      'maps in braces',
      `positions:
  near:
    level_db: 0
    zones:
      - {file: oak n.wav, low: 36, high: 41, root: 38}
      - {file: elm n.wav, low: 42, high: 47, root: 44}
  far: # in the yard
    level_db: -5
    zones:
      - {file: oak f.wav, low: 36, high: 41, root: 38}
      - {file: elm f.wav, low: 42, high: 47, root: 44}
`,
    ],
    [
      'lists in brackets',
      `near:
  level_db: 0
  zones:
    - [oak n.wav, 36, 41, 38]
    - [elm n.wav, 42, 47, 44]
far:
  level_db: -5
  zones:
    - [oak f.wav, 36, 41, 38]
    - [elm f.wav, 42, 47, 44]
`,
    ],
    [
      'braces over several lines',
      `near:
  level_db: 0
  zones:
    - { file: oak n.wav,
        low: 36, high: 41 }
    - { file: elm n.wav,
        low: 42, high: 47 }
far:
  level_db: -5
  zones:
    - { file: oak f.wav,
        low: 36, high: 41 }
    - { file: elm f.wav,
        low: 42, high: 47 }
`,
    ],
    [
      'files as keys, with a mark',
      `parts:
  near:
    level_db: 0
    zones:
      oak n.wav: {low: 36, high: 41}
      elm n.wav: {low: 42, high: 47}
  far: &far
    level_db: -5
    zones:
      oak f.wav:
        low: 36
        high: 41
      elm f.wav:
        low: 42
        high: 47
`,
    ],
  ])('take the values of their section: %s', (_, text) => {
    expect(looksLikeZoneTable(text)).toBe(true);
    expect(values(text)).toEqual(expected);
    expect(notesOf(text).join('\n')).not.toMatch(/"zones"/);
  });
});
