import { describe, expect, it } from 'vitest';
import { notesOf, regions, table } from '../tableRegions';

const loops = (...[text, options]: Parameters<typeof regions>) =>
  regions(text, options).map(({ loop_start: start, loop_end: end }) => [Number(start), Number(end)]);
const rows = (first: string, second: string, ...points: [number | string, number | string][]) =>
  table(
    `Sample | Low | High | Root | ${first} | ${second}`,
    ...points.map(
      ([one, other], at) =>
        `p${at}.wav | ${40 + at * 5} | ${44 + at * 5} | ${42 + at * 5} | ${one} | ${other}`,
    ),
  );

describe('two columns of positions that headings only number', () => {
  it.each([
    ['loop1', 'loop2'],
    ['Loop A', 'Loop B'],
    ['Schleife 1', 'Schleife 2'],
    ['1er point de boucle', '2e point de boucle'],
    ['ループ1', 'ループ2'],
    ['L1', 'L2'],
    ['Punkt 1', 'Punkt 2'],
    ['петля А', 'петля Б'],
  ])('%s and %s are start and end, with a note of what is in doubt', (first, second) => {
    const text = rows(first, second, [12000, 33000], [11000, 35500]);
    expect(loops(text)).toEqual([
      [12000, 33000],
      [11000, 35500],
    ]);
    expect(notesOf(text).join('\n')).toMatch(
      /read as its end, as none of them lies before the start\. If it is a length, say so/,
    );
  });

  it('are start and length where the second number lies before the first', () => {
    const text = rows('loop 1', 'loop 2', [30000, 8000], [31000, 9500]);
    // Frames count from 0: 8000 frames from 30000 on end with 37999.
    expect(loops(text)).toEqual([
      [30000, 37999],
      [31000, 40499],
    ]);
    expect(notesOf(text).join('\n')).toMatch(/"loop 2" is read as its length, as some of them lie before/);
  });

  it("are start and length where the files' own loops say so", () => {
    const text = rows('loop A', 'loop B', [10000, 12000], [9000, 11000]);
    const own: Record<string, { start: number; end: number }> = {
      'p0.wav': { start: 10000, end: 21999 },
      'p1.wav': { start: 9000, end: 19999 },
    };
    const options = { loopOf: (sample: string) => own[sample], framesOf: () => 50000 };
    expect(loops(text, options)).toEqual([
      [10000, 21999],
      [9000, 19999],
    ]);
  });

  it('are start and end without doubt where lengths would reach past the samples', () => {
    const text = rows('loop A', 'loop B', [10000, 30000], [9000, 31000]);
    const options = { framesOf: () => 35000 };
    expect(loops(text, options)).toEqual([
      [10000, 30000],
      [9000, 31000],
    ]);
    expect(notesOf(text, options).join('\n')).not.toMatch(/If it is a length/);
  });

  it('may stand the other way round', () => {
    expect(loops(rows('LoopB', 'LoopA', [40000, 1000], [41000, 2000]))).toEqual([
      [1000, 40000],
      [2000, 41000],
    ]);
  });

  it.each([
    ['ends that are numbered themselves', 'loop start 1', 'loop start 2', 5000, 9000],
    ['switches', 'loop 1', 'loop 2', 'on', 'off'],
    ['points that may be those of the whole sample', 'P1', 'P2', 0, 9000],
    ['small numbers under letters that say nothing of loops', 'L1', 'L2', 20, 90],
  ])('%s make no loops', (_what, first, second, one, other) => {
    const text = rows(first, second, [one, other], [one, other]);
    expect(loops(text)).toEqual([
      [Number.NaN, Number.NaN],
      [Number.NaN, Number.NaN],
    ]);
    expect(notesOf(text).join('\n')).toContain(`column "${second}" is not used`);
  });

  it('of which there are three stay open', () => {
    const text = table(
      'Sample | Key | loop 1 | loop 2 | loop 3',
      'a.wav | 40 | 5000 | 9000 | 10000',
      'b.wav | 41 | 6000 | 9500 | 11000',
    );
    expect(loops(text)[0]).toEqual([Number.NaN, Number.NaN]);
    expect(notesOf(text).join('\n')).toContain('What stands in column "loop 1" is not used');
  });
});
