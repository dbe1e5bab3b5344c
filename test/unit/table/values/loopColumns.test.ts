import { describe, expect, it } from 'vitest';
import type { TableOptions } from '../../../../server/table/readTable';
import { notesOf, regions, table } from '../tableRegions';

const loops = (text: string, options?: TableOptions) =>
  regions(text, options).map(({ loop_mode, loop_type, loop_start, loop_end }) =>
    [loop_mode, loop_type, loop_start, loop_end].map((one) => one ?? '-').join(' '),
  );
const notes = (text: string, options?: TableOptions) => notesOf(text, options).join('\n');
const under = (heading: string, ...rows: string[]) => table(`File | Key | ${heading}`, ...rows);

/** sfzformat.com: loop_end is the last frame that is played, so a loop of n frames from s ends at s + n - 1. */
describe('loops in columns of their own', () => {
  it('start and end', () => {
    expect(loops(under('Loop start | Loop end', 'a.wav | 60 | 100 | 200'))).toEqual([
      'loop_continuous - 100 200',
    ]);
    expect(loops(under('Loop start | Loop end', 'a.wav | 60 | 0 | 200'))).toEqual([
      'loop_continuous - 0 200',
    ]);
    expect(loops(under('Loop end | Loop start', 'a.wav | 60 | 200 | 100'))).toEqual([
      'loop_continuous - 100 200',
    ]);
  });

  it('start and are so long', () => {
    expect(loops(under('Loop start | Loop length', 'a.wav | 60 | 100 | 50'))).toEqual([
      'loop_continuous - 100 149',
    ]);
    expect(
      loops(under('Loop start | Loop length (ms)', 'a.wav | 60 | 441 | 10'), { rateOf: () => 44_100 }),
    ).toEqual(['loop_continuous - 441 881']);
  });

  it('end where they say, whatever their length is', () => {
    expect(loops(under('Loop start | Loop end | Loop length', 'a.wav | 60 | 100 | 200 | 7'))).toEqual([
      'loop_continuous - 100 200',
    ]);
    expect(loops(under('Loop start | Loop end | Loop length', 'a.wav | 60 | 100 | | 7'))).toEqual([
      'loop_continuous - 100 106',
    ]);
  });

  it('are told of where nothing says whether the end belongs to them', () => {
    const text = under('Loop start | Loop end', 'a.wav | 60 | 100 | 200');
    expect(notes(text)).toMatch(/Nothing says whether the loops in column "Loop end"/);
    // The last frame of a sample is the one before its number of frames.
    expect(notes(text, { framesOf: () => 201 })).not.toMatch(/Nothing says/);
    expect(notes(under('loop_start | loop_end', 'a.wav | 60 | 100 | 200'))).not.toMatch(/Nothing says/);
  });

  it('end as the heading or the text says', () => {
    const text = under('Loop start | Loop end', 'a.wav | 60 | 100 | 200');
    const said = `${text}\n\nThe sample at the loop end is not played.`;
    expect(loops(said)).toEqual(['loop_continuous - 100 199']);
    expect(notes(said)).toMatch(
      /as "The sample at the loop end is not played" says\. 1 is taken off each end/,
    );
    const headed = under('Loop start | Loop end (exclusive)', 'a.wav | 60 | 100 | 200');
    expect(loops(headed)).toEqual(['loop_continuous - 100 199']);
    const included = under('Loop start | Loop end (inclusive)', 'a.wav | 60 | 100 | 200');
    expect(loops(included)).toEqual(['loop_continuous - 100 200']);
    expect(notes(included)).not.toMatch(/Nothing says/);
  });

  it('are none where both are 0, or neither is there', () => {
    const text = under(
      'Loop start | Loop end',
      'a.wav | 60 | 100 | 200',
      'b.wav | 61 | 0 | 0',
      'c.wav | 62 | | ',
    );
    expect(loops(text).slice(1)).toEqual(['- - - -', '- - - -']);
    expect(notes(text)).not.toMatch(/loop (?:start|end) without|makes no loop/);
  });

  it('are not told of where one of both is 0 and the other one is missing', () => {
    const text = under(
      'Loop start | Loop end',
      'a.wav | 60 | 100 | 200',
      'b.wav | 61 | 0 | ',
      'c.wav | 62 | | 0',
    );
    expect(notes(text)).not.toMatch(/loop (?:start|end) without/);
  });

  it('are told where an end is 0, and where a length has no start', () => {
    const text = under('Loop start | Loop end', 'a.wav | 60 | 100 | 200', 'b.wav | 61 | 5 | 0');
    expect(loops(text)[1]).toBe('- - - -');
    expect(notes(text)).toMatch(/Line 3,.* makes no loop/);
    const both = under(
      'Loop start | Loop end | Loop length',
      'a.wav | 60 | 100 | 200 | 101',
      'b.wav | 61 | | | 70',
    );
    expect(notes(both)).toMatch(/Line 3,.*"70".* is a loop end without a loop start/);
  });

  it('end at a time where their end is one, and with a frame where it is none', () => {
    const options: TableOptions = { rateOf: () => 1000 };
    const atTime = /loop ends in .* are times, not frames\. The frame at each is read as the last one/;
    expect(notes(under('Loop start (s) | Loop end (s)', 'a.wav | 60 | 0.5 | 1.25'), options)).toMatch(atTime);
    expect(notes(under('Loop start | Loop end (s)', 'a.wav | 60 | 100 | 1.25'), options)).toMatch(atTime);
    expect(notes(under('Loop start (s) | Loop end', 'a.wav | 60 | 0.5 | 900'), options)).not.toMatch(atTime);
    expect(notes(under('Loop start | Loop end', 'a.wav | 60 | 500 | 1250'), options)).not.toMatch(atTime);
    expect(notes(under('Loop start | Loop length (ms)', 'a.wav | 60 | 441 | 10'), options)).not.toMatch(
      atTime,
    );
    expect(notes(under('Loop', 'a.wav | 60 | 0.5-1.25 s'), options)).toMatch(atTime);
    expect(notes(under('Loop', 'a.wav | 60 | 500-1250 ms'), options)).toMatch(atTime);
    expect(notes(under('Loop', 'a.wav | 60 | 500-1250'), options)).not.toMatch(atTime);
    expect(notes(under('Loop', 'a.wav | 60 | 0.5 s + 250 ms'), options)).not.toMatch(atTime);
  });

  it('are told where one of both is missing', () => {
    const text = under(
      'Loop start | Loop end',
      'a.wav | 60 | 100 | 200',
      'b.wav | 61 | 150 | ',
      'c.wav | 62 | | 250',
    );
    expect(loops(text)).toEqual(['loop_continuous - 100 200', '- - - -', '- - - -']);
    expect(notes(text)).toMatch(/Line 3,.*"150".* is a loop start without a loop end/);
    expect(notes(text)).toMatch(/Line 4,.*"250".* is a loop end without a loop start/);
    const length = under('Loop start | Loop length', 'a.wav | 60 | 100 | 200', 'b.wav | 61 | | 250');
    expect(notes(length)).toMatch(/Line 3,.*"250".* is a loop end without a loop start/);
  });

  it('are told where the end does not lie behind the start', () => {
    const text = under(
      'Loop start | Loop end',
      'a.wav | 60 | 200 | 100',
      'b.wav | 61 | 100 | 200',
      'c.wav | 62 | 5 | 5',
    );
    expect(loops(text)).toEqual(['- - - -', 'loop_continuous - 100 200', '- - - -']);
    expect(notes(text)).toMatch(/Line 2,.*"100".* makes no loop: its start does not lie before its end/);
    expect(notes(text)).toMatch(/Line 4,.*"5".* makes no loop/);
  });

  it('are told where a point is none', () => {
    const text = under('Loop start | Loop end', 'a.wav | 60 | 100 | 200', 'b.wav | 61 | x | 250');
    expect(loops(text)[1]).toBe('- - - -');
    expect(notes(text)).toMatch(/"x".* is not a whole number of frames/);
  });

  it('are told where they end past the sample', () => {
    const options: TableOptions = { framesOf: () => 150 };
    for (const heading of ['Loop start | Loop end', 'Loop start | Loop length'])
      expect(notes(under(heading, 'a.wav | 60 | 100 | 190'), options)).toMatch(
        /Line 2, .* is past frame 149/,
      );
    expect(notes(under('Loop', 'a.wav | 60 | 100-190'), options)).toMatch(/Line 2, .* is past frame 149/);
    expect(notes(under('Loop start | Loop end', 'a.wav | 60 | 100 | 140'), options)).not.toMatch(
      /is past frame/,
    );
  });
});

describe('loops that are switched', () => {
  it('by a word, with or without points beside', () => {
    expect(loops(under('Loop', 'a.wav | 60 | on', 'b.wav | 61 | off', 'c.wav | 62 | sustain'))).toEqual([
      'loop_continuous - - -',
      'no_loop - - -',
      'loop_sustain - - -',
    ]);
    expect(
      loops(
        under(
          'Loop | Loop start | Loop end',
          'a.wav | 60 | sustain | 100 | 200',
          'b.wav | 61 | on | 100 | 200',
        ),
      ),
    ).toEqual(['loop_sustain - 100 200', 'loop_continuous - 100 200']);
  });

  it('off have no points', () => {
    const text = under(
      'Loop | Loop start | Loop end',
      'a.wav | 60 | off | 100 | 200',
      'b.wav | 61 | one shot | 100 | 200',
      'c.wav | 62 | on | 100 | 200',
    );
    expect(loops(text)).toEqual(['no_loop - - -', 'one_shot - - -', 'loop_continuous - 100 200']);
  });

  it('run back, too', () => {
    expect(loops(under('Loop', 'a.wav | 60 | ↔', 'b.wav | 61 | ←', 'c.wav | 62 | on'))).toEqual([
      'loop_continuous alternate - -',
      'loop_continuous backward - -',
      'loop_continuous - - -',
    ]);
  });

  it.each(['◉', '⬤'])('by other filled dots too: %s', (dot) => {
    expect(loops(under('Loop', `a.wav | 60 | ${dot}`, 'b.wav | 61 | ○'))[1]).toBe('no_loop - - -');
  });

  it('by dots, of which an open one says no only beside filled ones', () => {
    expect(loops(under('Loop', 'a.wav | 60 | ●', 'b.wav | 61 | ○'))).toEqual([
      'loop_continuous - - -',
      'no_loop - - -',
    ]);
    expect(loops(under('Loop', 'a.wav | 60 | ○', 'b.wav | 61 | ○'))).toEqual([
      'loop_continuous - - -',
      'loop_continuous - - -',
    ]);
  });

  it('by something else are told', () => {
    const text = under('Loop', 'a.wav | 60 | on', 'b.wav | 61 | off', 'c.wav | 62 | perhaps');
    expect(loops(text)[2]).toBe('- - - -');
    expect(notes(text)).toMatch(/Line 4,.*"perhaps".* is not a loop mode/);
  });
});

describe('loops of two points in a cell', () => {
  it('start and end, or start and are so long', () => {
    expect(loops(under('Loop', 'a.wav | 60 | 100-200', 'b.wav | 61 | 300+50'))).toEqual([
      'loop_continuous - 100 200',
      'loop_continuous - 300 349',
    ]);
    expect(loops(under('Loop', 'a.wav | 60 | sustain 100-200'))).toEqual(['loop_sustain - 100 200']);
  });

  it.each([
    'length',
    'size',
    'Länge',
    'longueur',
    'longitud',
    'lunghezza',
    'lengte',
    'len',
    'duration',
    'durée',
    'Laenge',
  ])('are so long under a heading that says %s', (word) => {
    const text = under(`Loop (start/${word})`, 'a.wav | 60 | 3000/8000');
    expect(loops(text)).toEqual(['loop_continuous - 3000 10999']);
  });

  it('are an end under a heading that does not, and with a sign that says so', () => {
    expect(loops(under('Loop', 'a.wav | 60 | 3000/8000'))).toEqual(['loop_continuous - 3000 8000']);
    expect(loops(under('Loop (start/length)', 'a.wav | 60 | 3000-8000'))).toEqual([
      'loop_continuous - 3000 8000',
    ]);
  });

  it('go before points in columns', () => {
    expect(
      loops(
        under('Loop | Loop start | Loop end', 'a.wav | 60 | 5-9 | 100 | 200', 'b.wav | 61 | on | 100 | 200'),
      )[0],
    ).toMatch(/5 9$/);
  });

  it('are times, of a rate that is known', () => {
    const options: TableOptions = { rateOf: () => 1000 };
    expect(loops(under('Loop', 'a.wav | 60 | 0.5-1.25 s'), options)).toEqual(['loop_continuous - 500 1250']);
    expect(loops(under('Loop', 'a.wav | 60 | 0.5 s + 250 ms'), options)).toEqual([
      'loop_continuous - 500 749',
    ]);
  });

  it('have none where the rate is not known', () => {
    const text = under('Loop', 'a.wav | 60 | 0.5-1.25 s');
    expect(loops(text)[0]).toMatch(/ - -$/);
    expect(notes(text)).toMatch(/Line 2,.*"0.5-1.25 s"/);
  });

  it('have none where one of both cannot be counted in frames', () => {
    for (const points of ['100 - 1.25 s', '0.5 s - 1250']) {
      const text = under('Loop', `a.wav | 60 | ${points}`, 'b.wav | 61 | 100-200');
      expect(loops(text)).toEqual([expect.stringMatching(/ - -$/), 'loop_continuous - 100 200']);
      expect(notes(text)).toContain(points);
      expect(notes(text)).not.toMatch(/makes no loop/);
    }
  });

  it('that end before they start are told', () => {
    const text = under('Loop', 'a.wav | 60 | 200-100', 'b.wav | 61 | 100-200');
    expect(loops(text)[0]).toMatch(/ - -$/);
    expect(notes(text)).toMatch(/Line 2,.*"200-100".* makes no loop/);
  });
});

describe('points that make no loop', () => {
  const mode = (rows: string) =>
    loops(under('Loop | Loop start | Loop end', rows, 'b.wav | 62 | forward | 10 | 90'))[0];

  it.each([
    'forward | 900 | 300',
    'until release | 700 | 700',
    'ping-pong | 900 | 300',
    'forward | 900 | ',
    'forward | | 900',
  ])('take the mode with them that would loop the whole file: %s', (row) => {
    expect(mode(`a.wav | 60 | ${row}`)).toBe('- - - -');
    expect(notes(under('Loop | Loop start | Loop end', `a.wav | 60 | ${row}`))).toMatch(
      /Line 2.*it and the loop mode of its row are left out/,
    );
  });

  it('leave a mode that needs none', () => {
    expect(mode('a.wav | 60 | off | 900 | 300')).toBe('no_loop - - -');
    expect(mode('a.wav | 60 | one-shot | 900 | 300')).toBe('one_shot - - -');
    expect(mode('a.wav | 60 | forward | | ')).toBe('loop_continuous - - -');
  });
});
