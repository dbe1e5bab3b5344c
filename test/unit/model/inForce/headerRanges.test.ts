import { describe, expect, it } from 'vitest';
import { shiftKey } from '../../../../server/model/inForce/headerRanges';
import { readSfz } from '../../../../server/sfz/read';

const read = (text: string) => readSfz(text, { path: 'a.sfz' });

/** Keys and velocities of each region, as `lokey-hikey lovel-hivel`. */
function ranges(text: string): string[] {
  const { regions, lowKey, highKey, lowVelocity, highVelocity } = read(text);
  return Array.from(regions, (at) => `${lowKey[at]}-${highKey[at]} ${lowVelocity[at]}-${highVelocity[at]}`);
}

function samples(text: string): (string | undefined)[] {
  const instrument = read(text);
  return Array.from(instrument.regions, (region) => instrument.samplePath(region));
}

/**
 * sfzformat.com: a region plays all keys and velocities unless it says otherwise; it inherits from the group, master and global
 * before it; `key` stands for lokey, hikey and pitch_keycenter at once; of one opcode twice, the last one counts.
 */
describe('keys and velocities of regions', () => {
  it.each([
    ['<region>', '0-127 1-127'],
    ['<region> lokey=10', '10-127 1-127'],
    ['<region> hikey=20', '0-20 1-127'],
    ['<region> lokey=c4 hikey=d4', '60-62 1-127'],
    ['<region> key=60', '60-60 1-127'],
    ['<region> key=60 hikey=62', '60-62 1-127'],
    ['<region> hikey=62 key=60', '60-60 1-127'],
    ['<region> lokey=1 lokey=2', '2-127 1-127'],
    ['<region> lovel=10 hivel=20', '0-127 10-20'],
    ['<region> lovel=0 hivel=127', '0-127 0-127'],
    ['<region> lokey=0 hikey=0', '0-0 1-127'],
    ['<region> lokey=-1 hikey=-1', '-1--1 1-127'],
    ['<region> pitch_keycenter=60', '0-127 1-127'],
    ['<region> lokey=x hikey=128 lovel=-2 hivel=200', '0-127 1-127'],
    ['<region> tune=5 volume=-3 pan=20', '0-127 1-127'],
  ])('%s', (text, expected) => {
    expect(ranges(text)).toEqual([expected]);
  });

  it('are inherited, inner over outer', () => {
    expect(
      ranges(
        '<global> lokey=1 lovel=2 <master> hikey=90 <group> hivel=100 <region> <region> lokey=5 lovel=6 ' +
          '<group> <region> <master> <region> <global> <region>',
      ),
    ).toEqual(['1-90 2-100', '5-90 6-100', '1-90 2-127', '1-127 2-127', '0-127 1-127']);
  });

  it('stand in a header too, for what is asked of groups', () => {
    const { lowKey, highKey } = read('<group> lokey=5 <group>');
    expect([lowKey[0], highKey[0], lowKey[1], highKey[1]]).toEqual([5, 127, 0, 127]);
  });

  it('are those of regions alone, in the order of the text', () => {
    const { regions } = read('<global> <region> <curve> <region> <effect>');
    expect([...regions]).toEqual([1, 3]);
  });
});

describe('samples in force', () => {
  it('are inherited, and one of the region goes before', () => {
    expect(samples('<group> sample=a.wav <region> <region> sample=b.wav <group> <region>')).toEqual([
      'a.wav',
      'b.wav',
      undefined,
    ]);
  });

  it('are the last of several', () => {
    expect(samples('<region> sample=a.wav sample=b.wav key=60')).toEqual(['b.wav']);
  });
});

/** sfzformat.com: note_offset and octave_offset stand under <control> and go for what follows it. */
describe('keys moved by a control header', () => {
  it.each([
    ['<control> note_offset=2 <region> key=60', '62-62 1-127'],
    ['<control> octave_offset=1 <region> key=60', '72-72 1-127'],
    ['<control> note_offset=-2 octave_offset=1 <region> key=60', '70-70 1-127'],
    ['<control> note_offset=2.9 <region> key=60', '62-62 1-127'],
    ['<control> note_offset=x octave_offset=1 <region> key=60', '72-72 1-127'],
    ['<control> octave_offset=x note_offset=1 <region> key=60', '61-61 1-127'],
    ['<control> note_offset=2 <region>', '0-127 1-127'],
    ['<control> note_offset=-1 <region> lokey=60', '59-127 1-127'],
    ['<control> note_offset=12 <region> lokey=-1 hikey=120', '-1-127 1-127'],
    ['<control> note_offset=-12 <region> lokey=5 hikey=20', '0-8 1-127'],
    ['<control> note_offset=2 <group> lokey=60 <region> hikey=70', '62-72 1-127'],
  ])('%s', (text, expected) => {
    expect(ranges(text)).toEqual([expected]);
  });

  it('go for what follows, until set anew', () => {
    expect(
      ranges(
        '<region> key=60 <control> note_offset=2 <region> key=60 <control> default_path=a/ <region> key=60 <control> octave_offset=1 <region> key=60',
      ),
    ).toEqual(['60-60 1-127', '62-62 1-127', '62-62 1-127', '72-72 1-127']);
  });

  it('has its path end with the next one', () => {
    expect(
      samples(
        '<region> sample=a.wav <control> default_path=b/ <region> sample=a.wav <control> <region> sample=a.wav',
      ),
    ).toEqual(['a.wav', 'b/a.wav', 'a.wav']);
  });

  it('is answered for each header', () => {
    const instrument = read('<group> <control> note_offset=2 <region>');
    expect(instrument.control(0).keyOffset).toBe(0);
    expect(instrument.control(2)).toEqual({ header: 1, defaultPath: '', keyOffset: 2 });
  });
});

describe('a key that is moved', () => {
  it('stays on the keyboard, and off where it is off', () => {
    expect(shiftKey(60, 5)).toBe(65);
    expect(shiftKey(60, -5)).toBe(55);
    expect(shiftKey(125, 5)).toBe(127);
    expect(shiftKey(3, -5)).toBe(0);
    expect(shiftKey(-1, 5)).toBe(-1);
    expect(shiftKey(60, 0)).toBe(60);
  });
});
