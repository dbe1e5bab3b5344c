import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TableOptions } from '../../../server/table/readTable';
import { notesOf, regions, table } from './tableRegions';

const files = (frames: Readonly<Record<string, number>>, rate = 44_100): TableOptions => ({
  framesOf: (name) => frames[name],
  rateOf: (name) => (name in frames ? rate : undefined),
});
const points = (text: string, options?: TableOptions) =>
  regions(text, options).map(({ loop_start, loop_end }) => `${loop_start}-${loop_end}`);

describe('times', () => {
  const under = (heading: string, ...rows: string[]) =>
    table(`File | Key | ${heading} start | ${heading} end`, ...rows);
  const known = files({ 'mill.wav': 90_000, 'weir.wav': 96_000 }, 48_000);

  it('have no thousands marks under a heading that says seconds', () => {
    const text = table(
      'File | Key | Loop start (s) | Loop end (s)',
      'mill.wav | 60 | 0.500 | 1.750',
      'weir.wav | 61 | 0.625 | 2.000',
    );
    // The end of a sample is behind its last frame, so that of the other loop is too.
    expect(points(text, known)).toEqual(['24000-83999', '30000-95999']);
  });

  it('have them where another cell shows that commas are decimal', () => {
    const text = table(
      'File | Key | Start (ms)',
      'mill.wav | 60 | 500,5',
      'weir.wav | 61 | 1.250',
      'weir.wav | 62 | 1.105,5',
    );
    expect(regions(text, known).map(({ offset }) => offset)).toEqual(['24024', '60000', '53064']);
  });

  it('are told by their fractions where nothing says so, in the unit in which they fit the samples', () => {
    const seconds = under('Loop', 'mill.wav | 60 | 0.5 | 1.25', 'weir.wav | 61 | 0.75 | 1.5');
    expect(points(seconds, known)).toEqual(['24000-60000', '36000-72000']);
    expect(notesOf(seconds, known).join('\n')).toMatch(/have fractions, so they are read as seconds/);
    const thousandths = under('Loop', 'mill.wav | 60 | 500.5 | 1250.25', 'weir.wav | 61 | 750.5 | 1500.5');
    expect(points(thousandths, known)).toEqual(['24024-60012', '36024-72024']);
  });

  it('are told by the samples where thousands would lie past their ends', () => {
    const text = under('Loop', 'mill.wav | 60 | 1.250 | 1.750', 'weir.wav | 61 | 1.000 | 1.500');
    expect(points(text, files({ 'mill.wav': 1500, 'weir.wav': 1400 }, 800))).toEqual([
      '1000-1400',
      '800-1200',
    ]);
  });

  it('are what the text around says', () => {
    const text = `All times in milliseconds.\n\n${under('Loop', 'mill.wav | 60 | 500 | 1250')}`;
    expect(points(text, known)).toEqual(['24000-60000']);
  });

  it('count in the rate that the table or the text around gives', () => {
    const column = table(
      'File | Key | Rate | Start (ms)',
      'mill.wav | 60 | 48 kHz | 100',
      'weir.wav | 61 | 44100 | 100',
    );
    expect(regions(column).map(({ offset }) => offset)).toEqual(['4800', '4410']);
    const said = table('File | Key | Start (ms)', 'mill.wav | 60 | 100');
    expect(regions(`All files are 48 kHz.\n\n${said}`)[0]).toMatchObject({ offset: '4800' });
  });

  it('may be shares of the length', () => {
    const text = table('File | Key | Loop start % | Loop end %', 'mill.wav | 60 | 10 | 100');
    expect(points(text, known)).toEqual(['9000-89999']);
  });
});

describe('positions', () => {
  it('past the end of the sample have a note, whatever they were read from', () => {
    const position = fc.oneof(
      fc.integer({ min: 0, max: 400_000 }).map(String),
      fc.integer({ min: 0, max: 8000 }).map((ms) => `${ms} ms`),
      fc.integer({ min: 0, max: 8000 }).map((ms) => (ms / 1000).toFixed(3)),
      fc.integer({ min: 1, max: 400 }).map((one) => `${one}.000`),
    );
    const headings = ['Loop start | Loop end', 'Loop start (s) | Loop end (s)', 'Start (ms) | End (ms)'];
    const rows = fc.array(fc.tuple(position, position), { minLength: 1, maxLength: 5 });
    const frames = 50_000;
    const options: TableOptions = { framesOf: () => frames, rateOf: () => 44_100 };
    fc.assert(
      fc.property(rows, fc.constantFrom(...headings), (drawn, heading) => {
        const lines = drawn.map(([one, other], at) => `jug ${at}.wav | ${at} | ${one} | ${other}`);
        const text = table(`File | Key | ${heading}`, ...lines);
        const notes = notesOf(text, options);
        for (const { sample, loop_end, loop_start, offset, end } of regions(text, options)) {
          const last = Math.max(...[loop_end, loop_start, offset, end].map((one) => Number(one ?? 0)));
          if (last < frames) continue;
          const line = Number(/\d+/.exec(sample ?? '')?.[0]) + 2;
          expect(notes.join('\n')).toMatch(new RegExp(`Line ${line}, .* is past frame ${frames - 1}`));
        }
      }),
    );
  });
});

describe('loops', () => {
  const known: TableOptions = {
    ...files({ 'tarn.wav': 88_200, 'beck.wav': 70_000, 'ghyll.wav': 50_000 }),
    loopOf: (name) => (name === 'beck.wav' ? { start: 30_100, end: 65_535 } : undefined),
  };

  it('end with the frame behind the last one where their ends are the lengths of the samples', () => {
    const text = table(
      'File | Key | Loop start | Loop end',
      'tarn.wav | 60 | 22050 | 88200',
      'beck.wav | 61 | 30100 | 65536',
      'ghyll.wav | 62 | 1000 | 40000',
    );
    expect(points(text, known)).toEqual(['22050-88199', '30100-65535', '1000-39999']);
    expect(notesOf(text, known).join()).toMatch(
      /loops in .* name the frame after their last one.*1 is taken off each end/,
    );
  });

  it('end as they say where the samples agree', () => {
    const text = table(
      'File | Key | Loop start | Loop end',
      'tarn.wav | 60 | 10 | 88199',
      'beck.wav | 61 | 30100 | 65535',
    );
    expect(points(text, known)).toEqual(['10-88199', '30100-65535']);
    expect(notesOf(text, known).join()).not.toMatch(/taken off/);
  });

  it('count from 1 where start and end are one more than those of the sample', () => {
    const text = table(
      'File | Key | Loop start | Loop end',
      'beck.wav | 60 | 30101 | 65536',
      'ghyll.wav | 61 | 1 | 500',
    );
    expect(points(text, known)).toEqual(['30100-65535', '0-499']);
  });

  it('are what the text around says', () => {
    const text = table('File | Key | Loop start | Loop end', 'ghyll.wav | 60 | 100 | 500');
    expect(points(`Loop ends are exclusive.\n\n${text}`)).toEqual(['100-499']);
    expect(points(`Loop ends: the last frame is included.\n\n${text}`)).toEqual(['100-500']);
    expect(points(`Frames are counted from 1.\n\n${text}`)).toEqual(['99-499']);
    expect(notesOf(`Loop ends are exclusive.\n\n${text}`).join()).toMatch(
      /as "Loop ends are exclusive" says/,
    );
  });

  it('of two numbers are a start and a length where one lies before the start', () => {
    const text = table('File | Key | Loop', 'tarn.wav | 60 | 30000/8000', 'ghyll.wav | 61 | 9000/20000');
    expect(points(text)).toEqual(['30000-37999', '9000-28999']);
    expect(notesOf(text).join()).toMatch(/read as its length, as some of them lie before the start/);
  });

  it('of two numbers are a start and a length where both together end with the sample', () => {
    const text = table('File | Key | Loop', 'tarn.wav | 60 | 30000/58200', 'ghyll.wav | 61 | 9000/20000');
    expect(points(text, known)).toEqual(['30000-88199', '9000-28999']);
    expect(points(text)).toEqual(['30000-58200', '9000-20000']);
  });

  it('are a start and a length under a heading that says so', () => {
    for (const heading of ['Loop (start/length)', 'Loop start/len'])
      expect(points(table(`File | Key | ${heading}`, 'tarn.wav | 60 | 3000/8000'))).toEqual(['3000-10999']);
    expect(points(table('File | Key | Loop', 'tarn.wav | 60 | 300+800'))).toEqual(['300-1099']);
  });

  it('of samples end with the last frame where their ends are counts of frames', () => {
    const text = table(
      'File | Key | Sample start | Sample end',
      'tarn.wav | 60 | 100 | 88200',
      'ghyll.wav | 61 | 0 | 40000',
    );
    expect(regions(text, known).map(({ end }) => end)).toEqual(['88199', '39999']);
  });
});
