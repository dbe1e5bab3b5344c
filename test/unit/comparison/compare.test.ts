import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sameData } from '../../../server/comparison/sameData';
import { soundDifference } from '../../../server/comparison/soundDifference';
import { folderWith, run } from '../commandLine/runInFolder';
import { compared } from './comparedTexts';

const first = '<region> sample=*saw key=60 pan=10 volume=-6 tune=2 ampeg_release=0.1';
const texts = (second: string, a = first) => folderWith({ 'a.sfz': a, 'b.sfz': second });

describe('compare', () => {
  it('finds an instrument equal to itself without rendering it, however it is written', async () => {
    const folder = texts(`<group> pan=10 volume=-6\n<region> tune=2 ampeg_release=0.1 sample=*saw key=c4`);
    expect(await compared(folder, 'a.sfz', 'b.sfz')).toMatchObject({
      status: 0,
      equal: true,
      worstDb: null,
      rendered: 0,
      differences: [],
    });
  });

  it('does not call two instruments alike of which nothing can sound', async () => {
    const { status, out } = await run(texts('// nothing', '// nothing at all'), [
      'compare',
      'a.sfz',
      'b.sfz',
    ]);
    expect(status).toBe(0);
    expect(out).toContain('nothing was compared');
    expect(out).not.toContain('No difference');
  });

  it.each([
    ['level', 'volume=-6', 'volume=-5.5', { levelDb: 0.5 }],
    ['tuning', 'tune=2', 'tune=5', { pitchCents: 3 }],
    ['pan', 'pan=10', 'pan=40', {}],
    ['sample', '*saw', '*square', {}],
    ['envelope', 'ampeg_release=0.1', 'ampeg_release=0.4', {}],
    ['filter', 'tune=2', 'tune=2 cutoff=900', {}],
    ['missing', first, '// nothing', {}],
  ] as const)('names a difference of %s, with both places and its size', async (kind, from, to, sizes) => {
    const { status, equal, differences } = await compared(texts(first.replace(from, to)), 'a.sfz', 'b.sfz');
    expect([status, equal]).toEqual([1, false]);
    const [difference] = differences;
    expect(difference.cause.kind).toBe(kind);
    expect(difference.a).toMatchObject({ line: 1 });
    if (kind !== 'missing') expect(difference.b).toMatchObject({ line: 1 });
    // 5 % of what was changed.
    for (const [name, size] of Object.entries(sizes))
      expect(Math.abs(difference[name as 'levelDb'] / size - 1)).toBeLessThan(0.05);
  });

  it('lets differences be up to a tolerance', async () => {
    const folder = texts(first.replace('volume=-6', 'volume=-6.01'));
    expect(await compared(folder, 'a.sfz', 'b.sfz')).toMatchObject({ status: 1 });
    const loose = await compared(folder, 'a.sfz', 'b.sfz', '--tolerance=-40');
    expect(loose).toMatchObject({ status: 0, equal: true, rendered: 1 });
    expect(loose.worstDb).toBeLessThan(-40);
  });

  it('plays each round robin, keyswitch and layer of either side', async () => {
    const a =
      '<group> key=60 seq_length=2 <region> sample=*sine seq_position=1 <region> sample=*saw seq_position=2';
    const folder = texts(a.replace('*saw', '*square'), a);
    const { notes, differences } = await compared(folder, 'a.sfz', 'b.sfz');
    expect(notes).toBe(2);
    expect(differences).toHaveLength(1);
    expect(differences[0]).toMatchObject({ strike: 2, cause: { kind: 'sample' } });
  });

  it('is told for people, as text and as Markdown', async () => {
    const folder = texts(first.replace('volume=-6', 'volume=-5.5'));
    const text = await run(folder, ['compare', 'a.sfz', 'b.sfz']);
    expect(text.out).toContain('Levels in dB differ: -6 and -5.5.');
    const page = await run(folder, ['compare', 'a.sfz', 'b.sfz', '--format', 'markdown']);
    expect(page.out).toMatch(/^# a\.sfz and b\.sfz\n/);
    expect(page.out).toContain('| key 60 (C4), velocity');
  });

  it.each([
    [['compare', 'a.sfz'], 'two instruments'],
    [['compare', 'a.sfz', 'b.sfz', '--tolerance', 'loud'], '--tolerance'],
    [['compare', 'a.sfz', 'none.sfz'], 'none.sfz'],
  ])('says in one line what is wrong with %j', async (args, words) => {
    const { status, error } = await run(texts(first), args);
    expect(status).toBe(2);
    expect(error.trim().split('\n')).toHaveLength(1);
    expect(error).toContain(words);
  });
});

describe('the difference of two sounds', () => {
  const rate = 44100;
  const tone = (hertz: number, gain: number, delay = 0) => {
    const values = Float32Array.from({ length: rate }, (_, at) =>
      at < delay ? 0 : gain * Math.cos((2 * Math.PI * hertz * (at - delay)) / rate),
    );
    return { left: values, right: values };
  };

  it('is none of a sound and itself', () => {
    expect(soundDifference(tone(440, 0.5), tone(440, 0.5), rate)).toMatchObject({
      peakDb: null,
      rmsDb: null,
      levelDb: 0,
      pitchCents: 0,
      startMs: 0,
      lengthMs: 0,
    });
  });

  it('gives levels by 20·log10 of the factor, pitches by 1200·log2, starts in milliseconds', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -12, max: 12, noNaN: true }),
        fc.double({ min: -200, max: 200, noNaN: true }),
        fc.integer({ min: 0, max: 2000 }),
        (db, cents, delay) => {
          const other = tone(440 * 2 ** (cents / 1200), 0.2 * 10 ** (db / 20), delay);
          const { levelDb, pitchCents, startMs } = soundDifference(tone(440, 0.2), other, rate);
          expect(Math.abs(levelDb - db)).toBeLessThan(0.25);
          expect(Math.abs(pitchCents - cents)).toBeLessThan(0.15);
          expect(startMs).toBeCloseTo((1000 * delay) / rate, 6);
        },
      ),
      { numRuns: 20 },
    );
  });
});

describe('the same data', () => {
  it('is what a copy holds, and not what one changed number makes of it', () => {
    const data = fc.record({
      a: fc.float64Array({ minLength: 1 }),
      b: fc.array(fc.dictionary(fc.string(), fc.integer())),
    });
    fc.assert(
      fc.property(data, (one) => {
        expect(sameData(one, structuredClone(one))).toBe(true);
        const other = structuredClone(one);
        other.a[0] = Number.isNaN(other.a[0]) ? 1 : Number.NaN;
        expect(sameData(one, other)).toBe(false);
      }),
    );
  });
});
