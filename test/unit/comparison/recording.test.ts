import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { align } from '../../../server/comparison/recording/alignment';
import { folderWith, run } from '../commandLine/runInFolder';

const semitones = (count: number) => 220 * 2 ** (count / 12);

describe('aligning notes with onsets', () => {
  it('finds any start and a clock that is a little off, with notes missing and others too many', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.double({ min: -0.0005, max: 0.0005, noNaN: true }),
        fc.uniqueArray(fc.integer({ min: 0, max: 39 }), { maxLength: 8 }),
        fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { maxLength: 5 }),
        (start, drift, missing, extra) => {
          // A sweep: equal times, pitches that rise.
          const notes = Array.from({ length: 40 }, (_, at) => ({
            seconds: 1 + 2 * at,
            hertz: semitones(at),
          }));
          const at = (seconds: number) => start + (1 + drift) * seconds;
          const onsets = notes.flatMap(({ seconds, hertz }, number) =>
            missing.includes(number) ? [] : [{ seconds: at(seconds), hertz }],
          );
          const all = [...onsets, ...extra.map((seconds) => ({ seconds, hertz: null }))].sort(
            (one, other) => one.seconds - other.seconds,
          );
          const pitches = new Map<number, number | null>(all.map((one) => [one.seconds, one.hertz]));
          const found = align(
            notes,
            all.map(({ seconds }) => seconds),
            (onset) => pitches.get(onset) ?? null,
          );
          expect(found?.map.startSeconds).toBeCloseTo(start, 1);
          expect(Math.abs((found?.map.scale ?? 0) - 1 - drift)).toBeLessThan(0.0005);
        },
      ),
      { numRuns: 30 },
    );
  });

  it('finds nothing where there is nothing', () => {
    expect(align([{ seconds: 1, hertz: 220 }], [], () => null)).toBeUndefined();
  });
});

describe('compare --recording', () => {
  const sfz = '<group> sample=*saw ampeg_release=0.05\n<region> key=60\n<region> key=64\n<region> key=67\n';
  const render = async (a: string, b: string, ...more: string[]) => {
    const folder = folderWith({ 'a.sfz': a, 'b.sfz': b });
    await run(folder, ['sweep', 'a.sfz', '--output', 'a.mid']);
    await run(folder, ['render', 'a.sfz', '--midi', 'a.mid', '--output', 'a.wav']);
    return run(folder, ['compare', 'b.sfz', '--recording', 'a.wav', ...more]);
  };

  it('finds its own rendering of its own sweep alike', async () => {
    const { status, out } = await render(sfz, sfz);
    expect(status).toBe(0);
    expect(out).toContain('3 of 3 notes, for 3 regions, found');
    expect(out).toContain('No note differs');
  });

  it('compares what is there of a recording that ends too soon', async () => {
    const keys = Array.from({ length: 12 }, (_, at) => 50 + at);
    const all = (tuned: number) =>
      keys
        .map((key) => `<region> sample=*saw ampeg_release=0.05 key=${key}${key === tuned ? ' tune=20' : ''}`)
        .join('\n');
    const folder = folderWith({
      'a.sfz': all(0),
      'b.sfz': all(52),
      'c.sfz': all(0).split('\n').slice(0, 4).join('\n'),
    });
    await run(folder, ['sweep', 'c.sfz', '--output', 'c.mid']);
    await run(folder, ['render', 'c.sfz', '--midi', 'c.mid', '--output', 'c.wav']);
    const { status, out } = await run(folder, ['compare', 'b.sfz', '--recording', 'c.wav']);
    expect(status).toBe(1);
    expect(out).toContain('It ends before 8 notes of the MIDI file; these are not compared.');
    expect(out).toMatch(/1 note differs:\n\nkey 52 .*pitch −20 cents/);
    expect(out).not.toContain('not played from this MIDI file');
  });

  it('names the region and the opcode in Markdown', async () => {
    const { status, out } = await render(
      sfz,
      sfz.replace('key=64', 'key=64 tune=20'),
      '--format',
      'markdown',
    );
    expect(status).toBe(1);
    expect(out).toMatch(
      /\| key 64 \(E4\), velocity \d+ \| .* \| line 3, \*saw \| pitch −20 cents: The tuning differs\. \|/,
    );
  });

  it.each([
    [['compare', 'a.sfz', 'b.sfz', '--recording', 'a.wav'], 'one instrument'],
    [['compare', 'a.sfz', 'b.sfz', '--notes', 'a.mid'], '--recording'],
    [['compare', 'a.sfz', '--recording', 'a.wav', '--tolerance', 'few'], '--tolerance'],
    [['compare', 'a.sfz', '--recording', 'a.sfz'], 'no audio'],
  ])('says in one line what is wrong with %j', async (args, words) => {
    const { status, error } = await run(folderWith({ 'a.sfz': sfz }), args);
    expect(status).toBe(2);
    expect(error.trim().split('\n')).toHaveLength(1);
    expect(error).toContain(words);
  });
});
