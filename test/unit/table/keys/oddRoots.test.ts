import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const heading = 'Sample | Low | High | Root';
const notes = (...rows: string[]) => notesOf(table(heading, ...rows)).join('\n');
const near = ['spinet_C3.wav | 46 | 49 | 48', 'spinet_E3.wav | 50 | 53 | 52', 'spinet_G3.wav | 54 | 57 | 55'];
const nameless = ['r1.wav | 30 | 34 | 32', 'r2.wav | 35 | 39 | 37', 'r3.wav | 45 | 49 | 47'];
const isOdd = /root key/;

describe('a root that contradicts its row', () => {
  it('is told and kept where the other roots lie among theirs, with the root that the name gives', () => {
    const rows = [...near, 'spinet_B3.wav | 58 | 61 | 9'];
    expect(notes(...rows)).toContain(
      'Line 5: the root key 9 (A-1) lies 49 keys below its keys 58 (A#3) to 61 (C#4), unlike those of the other rows; the name of its sample says 59 (B3). It is kept. Check it.',
    );
    expect(regions(table(heading, ...rows))[3]?.pitch_keycenter).toBe('9');
  });

  it('is told by however little it lies outside', () => {
    expect(notes(...near, 'spinet_B3.wav | 58 | 61 | 57')).toMatch(
      /Line 5: the root key 57 \(A3\) lies 1 key below its keys 58 \(A#3\) to 61 \(C#4\), .* says 59 \(B3\)\./,
    );
    expect(notes(...nameless, 'r4.wav | 40 | 44 | 46')).toContain(
      'Line 5: the root key 46 (A#2) lies 2 keys above its keys 40 (E2) to 44 (G#2), unlike those of the other rows. It is kept. Check it.',
    );
  });

  it('is told where it lies within its keys, or none are given, and the name says another', () => {
    expect(notes(...near, 'spinet_B3.wav | 58 | 90 | 71')).toContain(
      'Line 5: the name of its sample says 59 (B3) for the root key 71 (B4), unlike those of the other rows.',
    );
    const alone = table('Sample | Root', 'a_C3.wav | 48', 'a_E3.wav | 52', 'a_G3.wav | 67', 'a_B3.wav | 59');
    expect(notesOf(alone).join('\n')).toContain(
      'the name of its sample says 55 (G3) for the root key 67 (G4)',
    );
  });

  it('is told once with others', () => {
    const more = ['r4.wav | 40 | 44 | 46', 'r5.wav | 50 | 54 | 40', 'r6.wav | 55 | 59 | 57'];
    const rest = ['r7.wav | 60 | 64 | 62', 'r8.wav | 65 | 69 | 67'];
    expect(notes(...nameless, ...more, ...rest)).toContain(
      '2 root keys contradict the keys of their rows or the names of their samples, unlike those of the other rows: line 5 (root 46 (A#2), keys 40 (E2) to 44 (G#2)); line 6 (root 40 (E2), keys 50 (D3) to 54 (F#3)). They are kept. Check them.',
    );
  });

  it('is told where few other rows are there and it lies more than two octaves off', () => {
    expect(notes('s1.wav | 30 | 34 | 32', 's2.wav | 35 | 39 | 37', 's3.wav | 40 | 40 | 73')).toMatch(
      /Line 4: the root key 73 \(C#5\) lies 33 keys above its key 40 \(E2\), unlike those of the other rows/,
    );
  });

  it.each([
    ['few rows agree otherwise', ['s1.wav | 30 | 34 | 32', 's2.wav | 35 | 39 | 37', 's3.wav | 40 | 44 | 45']],
    [
      'as many names agree as not',
      ['s_C3.wav | 46 | 50 | 48', 's_F3.wav | 51 | 55 | 54', 's_A3.wav | 56 | 58 | 56'],
    ],
    [
      'drums lie outside of theirs',
      ['d1.wav | 26 | 26 | 60', 'd2.wav | 27 | 27 | 60', 'd3.wav | 60 | 60 | 60'],
    ],
    [
      'all roots are the same',
      [...[41, 42, 43, 44].map((to) => `c${to}.wav | 40 | ${to} | 40`), 'd.wav | 45 | 46 | 40'],
    ],
    ['outermost zones are stretched', ['low.wav | 0 | 29 | 30', ...nameless, 'high.wav | 50 | 127 | 49']],
    [
      'a sample is played by another zone too',
      [...nameless, 'r3.wav | 40 | 44 | 47', 'r9.wav | 50 | 54 | 52'],
    ],
    [
      'a layer plays an octave off',
      [
        ...nameless,
        'q1.wav | 30 | 34 | 20',
        'q2.wav | 35 | 39 | 25',
        ...[50, 55, 60].map((at) => `r${at}.wav | ${at} | ${at + 4} | ${at}`),
      ],
    ],
  ])('is what is meant where %s', (_, rows) => {
    expect(notes(...rows)).not.toMatch(isOdd);
  });

  it('is what is meant where its zone is transposed', () => {
    const rows = [...nameless, 'r4.wav | 40 | 44 | 54'].map((row, at) => `${row} | ${at === 3 ? 12 : 0}`);
    expect(notesOf(table(`${heading} | Transpose`, ...rows)).join('\n')).not.toMatch(isOdd);
  });
});
