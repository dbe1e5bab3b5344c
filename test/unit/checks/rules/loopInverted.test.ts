import { describe, expect, it } from 'vitest';
import { loopInverted } from '../../../../server/checks/rules/loopInverted';
import { foundBy, markedBy } from '../foundBy';
import { samplesInMemory, wav } from '../markedText';

const loops = [{ start: 600, end: 900, type: 'forward' as const }];
const looped = { samples: samplesInMemory({ 'a.wav': wav({ loops }), 'b.wav': wav({ loops }) }) };
const plain = { samples: samplesInMemory({ 'a.wav': wav({ frames: 1000 }) }) };
const unknown = { samples: samplesInMemory({}) };
const marks = (text: string, options = plain) => markedBy(loopInverted, text, options);

/** sfzformat.com: loop_start and loop_end go before the loop of the file; loop_end is the last frame that is played. */
describe('a loop whose start is at or behind its end', () => {
  it.each([
    ['<region> sample=a.wav loop_start=500 loop_end=400', '400'],
    ['<region> sample=a.wav loop_end=400 loop_start=500', '500'],
    ['<region> sample=a.wav loop_start=500 loop_end=500', '500'],
    ['<region> loop_start=500 loop_end=400 sample=a.wav', '400'],
    ['<region> loop_end=400 loop_start=500 sample=a.wav', '500'],
    ['<region> loop_mode=loop_sustain loop_end=0 loop_start=0 sample=a.wav', '0'],
    ['<region> sample=a.wav loop_start=2000 loop_end=1500', '1500'],
    ['<group> loop_start=500 <region> sample=a.wav loop_end=400', '400'],
    ['<region> sample=a.wav loop_mode=loop_sustain loop_start=0 loop_end=0', '0'],
    ['<region> sample=a.wav loop_mode=LOOP_CONTINUOUS loop_start=5 loop_end=0', '0'],
  ])('%s', (text, mark) => {
    expect(marks(text)).toEqual([mark]);
    expect(marks(text, unknown)).toEqual([mark]);
  });

  it.each([
    ['in order', '<region> sample=a.wav loop_start=400 loop_end=500'],
    ['from the start', '<region> sample=a.wav loop_start=0 loop_end=1'],
    ['none', '<region> sample=a.wav'],
    ['zeros for none', '<region> sample=a.wav loop_start=0 loop_end=0'],
    ['zeros for none, said', '<region> sample=a.wav loop_mode=no_loop loop_start=5 loop_end=0'],
    ['no numbers', '<region> sample=a.wav loop_start=x loop_end=400'],
    ['no number as end', '<region> sample=a.wav loop_start=500 loop_end=x'],
    ['below 0', '<region> sample=a.wav loop_start=-1 loop_end=-2'],
    ['to the end of the file', '<region> sample=a.wav loop_start=998'],
    ['past the file, which is told elsewhere', '<region> sample=a.wav loop_start=1000'],
  ])('is none: %s', (_, text) => {
    expect(marks(text)).toEqual([]);
  });

  it('takes what is not set from the loop of the file', () => {
    expect(marks('<region> sample=a.wav loop_end=600', looped)).toEqual(['600']);
    expect(marks('<region> sample=a.wav loop_end=601', looped)).toEqual([]);
    expect(marks('<region> sample=a.wav loop_start=900', looped)).toEqual(['900']);
    expect(marks('<region> sample=a.wav loop_start=899', looped)).toEqual([]);
    // Without a loop in the file it runs from the first to the last frame.
    expect(marks('<region> sample=a.wav loop_start=999')).toEqual(['999']);
    expect(marks('<region> sample=a.wav loop_end=5')).toEqual([]);
    expect(marks('<region> sample=a.wav loop_end=0 loop_mode=loop_sustain')).toEqual(['0']);
    // Of a file that is not there nothing is known.
    expect(marks('<region> sample=a.wav loop_start=999', unknown)).toEqual([]);
    expect(marks('<region> sample=a.wav loop_end=5', unknown)).toEqual([]);
  });

  it('is told once for each pair, and once for each file whose loop has a part in it', () => {
    const pair = '<group> loop_start=500 loop_end=400 <region> sample=a.wav <region> sample=b.wav';
    expect(marks(pair, looped)).toEqual(['400']);
    const half = '<group> loop_end=300 <region> sample=a.wav <region> sample=b.wav <region> sample=b.wav';
    expect(marks(half, looped)).toEqual(['300', '300']);
  });

  it('says where it starts and ends', () => {
    const text = '<region> sample=a.wav loop_start=500 loop_end=400';
    const { messages, related } = foundBy(loopInverted, text, plain);
    expect(messages[0]).toMatch(/starts at frame 500, after its end at 400\. Put/);
    expect(related).toEqual([['500: The loop starts here.']]);
    const turned = foundBy(loopInverted, '<region> sample=a.wav loop_end=400 loop_start=500', plain);
    expect(turned.related).toEqual([['400: The loop ends here.']]);
    const equal = foundBy(loopInverted, '<region> sample=a.wav loop_start=5 loop_end=5', plain);
    expect(equal.messages[0]).toMatch(/starts at frame 5, which is also its end\. Put/);
  });

  it('names the file whose loop has a part in it', () => {
    const end = foundBy(loopInverted, '<region> sample=low/a.wav loop_end=300', {
      samples: samplesInMemory({ 'low/a.wav': wav({ loops }) }),
    });
    expect(end.messages[0]).toMatch(/frame 600, after its end at 300 \(the start is that of "a\.wav"\)/);
    expect(end.related).toEqual([[]]);
    const start = foundBy(loopInverted, '<region> sample=a.wav loop_start=950', looped);
    expect(start.messages[0]).toMatch(/frame 950, after its end at 900 \(the end is that of "a\.wav"\)/);
  });

  it('is swapped, or left to the file', () => {
    const swapped = foundBy(loopInverted, '<group> loop_start=500 <region> sample=a.wav loop_end=400', plain);
    expect(swapped.fixed).toEqual([['<group> loop_start=400 <region> sample=a.wav loop_end=500']]);
    expect(swapped.titles[0][0]).toMatch(/Swap/);
    expect(foundBy(loopInverted, '<region> sample=a.wav loop_start=5 loop_end=5', plain).fixed).toEqual([[]]);
    const left = foundBy(loopInverted, '<region> sample=a.wav loop_end=300', looped);
    expect(left.fixed[0][0].trim()).toBe('<region> sample=a.wav');
    expect(left.titles[0][0]).toMatch(/loop of the file/);
  });
});

describe('the rule', () => {
  it('is told by the code and severity that the README lists', () => {
    expect(loopInverted).toMatchObject({
      code: 'loop-inverted',
      severity: 'error',
      finds: expect.stringContaining('start is at or after its end'),
    });
  });

  it('leaves what is heard to a person', () => {
    expect(foundBy(loopInverted, '<region> sample=a.wav loop_start=500 loop_end=400', plain).safe).toEqual([
      false,
    ]);
  });
});
