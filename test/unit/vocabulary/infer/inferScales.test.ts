import { describe, expect, it } from 'vitest';
import { valuesIn } from './inferred';

/** Three regions with an attribute or two of their own each, and what stands around them. */
const cups = (own: readonly string[], around = '') =>
  `<cups>${around}${own
    .map(
      (one, at) =>
        `<cup clip="${at}.wav" lo="${40 + 5 * at}" hi="${44 + 5 * at}" root="${42 + 5 * at}" ${one}/>`,
    )
    .join('')}</cups>`;

describe('how values of a place count', () => {
  it('is said by a comment that gives an example in another unit', () => {
    const text = cups(
      ['move="0.07"', 'move="-12"', 'move="-0.5"'],
      '<!-- move: semitones, 0.07 = seven cents up; lean: -1 left ... 1 right -->',
    );
    expect(valuesIn(text, 'tune')).toEqual(['7', '-1200', '-50']);
  });

  it('is told by whole octaves beside parts of a semitone', () => {
    expect(valuesIn(cups(['detune="-24"', 'detune="0.07"', 'detune="0.5"']), 'tune')).toEqual([
      '-24',
      '0.07',
      '0.5',
    ]);
    expect(valuesIn(cups(['pitch-shift="-24"', 'pitch-shift="0.07"', 'pitch-shift="12"']), 'tune')).toEqual([
      '-2400',
      '7',
      '1200',
    ]);
    expect(valuesIn(cups(['tuning="-14"', 'tuning="0.5"', 'tuning="20"']), 'tune')).toEqual([
      '-14',
      '0.5',
      '20',
    ]);
  });

  it('is said by a name that is a unit alone', () => {
    expect(valuesIn(cups(['percent="100"', 'percent="50"', 'percent="25"']), 'volume')).toEqual([
      '0',
      '-6.0206',
      '-12.0412',
    ]);
    expect(valuesIn(cups(['factor="1"', 'factor="0.5"', 'factor="0.25"']), 'volume', 'tune')).toEqual([
      '0 -',
      '-6.0206 -',
      '-12.0412 -',
    ]);
    expect(
      valuesIn(cups(['factor="1"', 'factor="1.059463"', 'factor="0.943874"']), 'volume', 'tune')[1],
    ).toBe('- 99.999846');
  });

  it('raises no level that a unit alone would', () => {
    expect(valuesIn(cups(['percent="100"', 'percent="150"', 'percent="25"']), 'volume')).toEqual([
      '-',
      '-',
      '-',
    ]);
  });

  it('counts down where a name or a comment says that it makes quieter', () => {
    const says = '<!-- quieter: by how many dB the recording is turned down -->';
    expect(valuesIn(cups(['quieter="3"', 'quieter="0"', 'quieter="7.5"'], says), 'volume')).toEqual([
      '-3',
      '0',
      '-7.5',
    ]);
  });

  it('is a level where a comment says at which number it is as recorded', () => {
    const says = '<!-- strength: 0 to 100, linear, 100 is as recorded and the most -->';
    expect(valuesIn(cups(['strength="100"', 'strength="50"', 'strength="10"'], says), 'volume')).toEqual([
      '0',
      '-6.0206',
      '-20',
    ]);
  });
});

describe('groups that silence each other', () => {
  it('are those of one number where no other place names groups', () => {
    const text = cups(['silences="0"', 'silences="2"', 'silences="2"']);
    expect(valuesIn(text, 'group', 'off_by')).toEqual(['- -', '2 2', '2 2']);
  });
});

describe('turns', () => {
  it('are as many as the place called `of` beside their positions says', () => {
    const text = cups(['turn="1" of="3"', 'turn="2" of="3"', 'turn="1" of="1"']);
    expect(valuesIn(text, 'seq_position', 'seq_length')).toEqual(['1 3', '2 3', '1 1']);
  });
});

describe('elements beside regions', () => {
  it.each([
    '<fog bright="70"/>',
    '<body resonance="0.35"/>',
    '<plank size="3"/>',
    '<attic depth="2" width="90" on="1"/>',
    '<gable delay="0.3"/>',
  ])('say nothing of regions by a word alone: %s', (aside) => {
    const own = ['v="1"', 'v="1"', 'v="1"'];
    const names = ['cutoff', 'resonance', 'end', 'delay', 'offset', 'volume'] as const;
    expect(valuesIn(cups(own, aside), ...names)).toEqual(valuesIn(cups(own), ...names));
  });

  it('do so by several names that are known', () => {
    const text = cups(['v="1"', 'v="1"', 'v="1"'], '<swell attack="0.02" release="0.4"/>');
    expect(valuesIn(text, 'ampeg_attack', 'ampeg_release')[0]).toBe('0.02 0.4');
  });
});
