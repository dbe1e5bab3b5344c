import { describe, expect, it } from 'vitest';
import { sequenceHole } from '../../../../server/checks/rules/sequenceHole';
import { foundBy, markedBy } from '../foundBy';

const marks = (text: string) => markedBy(sequenceHole, text);
const messages = (text: string) => foundBy(sequenceHole, text).messages;
const steps = (length: number, positions: number[], more = '') =>
  `<group> key=60 seq_length=${length}\n${positions.map((at) => `<region> sample=${at}.wav seq_position=${at} ${more}`).join('\n')}`;

/** sfzformat.com: of seq_length strikes in turn, a region plays at the one of its seq_position; both default to 1. */
describe('steps of a round robin that no region has', () => {
  it.each([
    ['one of four', steps(4, [1, 2, 4]), /No region has step 3 of 4 on key 60 \(C4\), so/],
    ['the first', steps(2, [2]), /step 1 of 2 on/],
    ['the last', steps(3, [1, 2]), /step 3 of 3 on/],
    ['two', steps(4, [1, 4]), /steps 2, 3 of 4 on/],
    ['six', steps(7, [1]), /steps 2, 3, 4, 5, 6, 7 of 7 on/],
    ['many', steps(9, [1, 2]), /steps 3, 4, 5, 6, 7, 8, … of 9 on/],
    [
      'of thirty',
      steps(
        30,
        [...Array(29).keys()].map((at) => at + 1),
      ),
      /step 30 of 30 on/,
    ],
    ['where the position is not said', '<region> key=60 seq_length=2', /step 2 of 2 on/],
    ['in a layer', steps(2, [1], 'hivel=63'), /step 2 of 2 on key 60 \(C4\) at velocities 1 to 63,/],
    ['in an upper layer', steps(2, [1], 'lovel=64'), /on key 60 \(C4\) at velocities 64 to 127,/],
    ['by all velocities from 0', steps(2, [1], 'lovel=0'), /on key 60 \(C4\), so/],
  ])('%s', (_, text, message) => {
    expect(messages(text)).toHaveLength(1);
    expect(messages(text)[0]).toMatch(message);
  });

  it.each([
    ['all are there', steps(3, [1, 2, 3])],
    ['all in another order', steps(3, [3, 1, 2])],
    ['one is there twice', steps(2, [1, 2, 2])],
    ['a length of one', '<region> key=60 seq_length=1 seq_position=1'],
    ['no round robin', '<region> key=60'],
    ['too long to look at', steps(31, [1])],
    ['a region outside plays each time', `${steps(2, [1])}\n<group>\n<region> sample=x.wav key=60`],
    ['one of all keys', `${steps(2, [1])}\n<group>\n<region> sample=x.wav`],
    // Of four turns, a region of two plays at the second and at the fourth.
    ['one of half the length', `${steps(4, [1, 3])}\n<group>\n<region> key=60 seq_length=2 seq_position=2`],
  ])('are none where %s', (_, text) => {
    expect(messages(text)).toEqual([]);
  });

  it('are those that no turn of another length meets', () => {
    // Of six and of four turns, every second one meets: their greatest common divisor is 2.
    const found = messages(`${steps(4, [1, 3])}\n<region> seq_length=6 seq_position=4`);
    expect(found).toHaveLength(1);
    expect(found[0]).toMatch(/steps 2, 6 of 6/);
  });

  it('are looked for in equal conditions only', () => {
    const inLayers = (low: number[], high: number[]) =>
      `<group> key=60 hivel=63 seq_length=2\n${low.map((at) => `<region> seq_position=${at}`).join('\n')}\n<group> key=60 lovel=64 seq_length=2\n${high.map((at) => `<region> seq_position=${at}`).join('\n')}`;
    expect(messages(inLayers([1, 2], [1, 2]))).toEqual([]);
    expect(messages(inLayers([1], [2]))).toHaveLength(2);
    // Where a controller lets a region sound at times, the step is not silent for good.
    expect(messages('<group> key=60 seq_length=2 <region> <region> seq_position=2 locc1=64')).toEqual([]);
    // Each half of the random numbers lacks the turn that the other one has.
    expect(
      messages('<group> key=60 seq_length=2 <region> hirand=0.5 <region> lorand=0.5 seq_position=2'),
    ).toHaveLength(2);
    // A region past its own length never plays.
    expect(
      messages('<group> key=60 seq_length=2 <region> <region> seq_length=3 seq_position=4'),
    ).toHaveLength(2);
  });

  it('come of lengths that are unlike, which leaves some strikes to nobody', () => {
    const found = messages('<region> key=60 seq_length=2 seq_position=2\n<region> key=60 seq_length=3');
    // Of six strikes the second, fourth and sixth are taken, and the first and fourth.
    expect(found).toEqual(
      Array(2).fill(
        expect.stringMatching(/^Round robins of 2 and 3 steps meet on key 60 \(C4\), so 2 of 6 strikes/),
      ),
    );
    expect(
      messages(
        '<region> key=60 seq_length=2\n<region> key=60 seq_length=4 seq_position=2\n<region> key=60 seq_length=4 seq_position=4',
      ),
    ).toEqual([]);
  });

  it('are told at the length, once for all places that lack the same', () => {
    const keys = (count: number) =>
      `<group> seq_length=2\n${[...Array(count).keys()].map((at) => `<region> key=${60 + at}`).join('\n')}`;
    expect(marks(keys(1))).toEqual(['2']);
    expect(messages(keys(1))[0]).not.toMatch(/more place/);
    expect(messages(keys(2))).toHaveLength(1);
    expect(messages(keys(2))[0]).toMatch(/on key 60 \(C4\), and in 1 more place, so/);
    expect(messages(keys(3))[0]).toMatch(/and in 2 more places, so/);
  });

  it('are mended by the length where the first ones are there', () => {
    const { fixed, titles } = foundBy(sequenceHole, steps(4, [1, 2]));
    expect(fixed[0]).toEqual([steps(4, [1, 2]).replace('seq_length=4', 'seq_length=2')]);
    expect(titles[0][0]).toContain('seq_length=2');
    expect(foundBy(sequenceHole, steps(4, [1, 3])).fixed).toEqual([[]]);
    expect(foundBy(sequenceHole, steps(4, [1, 2, 4])).fixed).toEqual([[]]);
  });
});

describe('a step past the length', () => {
  it('is told at the position, with the length beside', () => {
    const text = '<region> key=60 seq_length=2 seq_position=3';
    const { marks: found, messages: said, related, fixed, titles } = foundBy(sequenceHole, text);
    expect(found).toEqual([`${text.length - 1}:3`]);
    expect(said[0]).toMatch(/Step 3 is beyond seq_length=2/);
    expect(related[0][0]).toMatch(/^2: The length/);
    expect(fixed[0]).toEqual(['<region> key=60 seq_length=3 seq_position=3']);
    expect(titles[0]).toEqual(['Set seq_length=3']);
  });

  it('is told where there is no length', () => {
    const { messages: said, related, fixed } = foundBy(sequenceHole, '<region> key=60 seq_position=2');
    expect(said[0]).toMatch(/Step 2 never sounds, because its round robin has no length/);
    expect(related).toEqual([[]]);
    expect(fixed).toEqual([[]]);
  });

  it('is told once for each pair', () => {
    expect(marks('<group> seq_length=2 seq_position=3 <region> key=60 <region> key=61')).toEqual(['3']);
    expect(marks('<region> key=60 seq_position=2 <region> key=61 seq_position=2')).toEqual(['2', '2']);
  });
});

describe('the rule', () => {
  it('is told by the code and severity that the README lists', () => {
    expect(sequenceHole).toMatchObject({
      code: 'sequence-hole',
      severity: 'warning',
      finds: expect.stringContaining('that no region has'),
    });
  });

  it('leaves what is heard to a person', () => {
    expect(foundBy(sequenceHole, steps(4, [1, 2])).safe).toEqual([false]);
    expect(foundBy(sequenceHole, '<region> key=60 seq_length=2 seq_position=3').safe).toEqual([false]);
  });
});
