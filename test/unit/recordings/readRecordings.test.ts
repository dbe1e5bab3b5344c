import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readRecordings } from '../../../server/recordings/readRecordings';
import type { Recording } from '../../../server/recordings/recording';
import { spreadKeys } from '../../../server/trade/keySpread';

/** A recording that sounds at a pitch, as a MIDI key; `undefined` for noise. */
function heard(path: string, pitch: number | undefined, more: Partial<Recording> = {}): Recording {
  return {
    path,
    frames: 1000,
    rootKey: undefined,
    loop: undefined,
    pitch,
    loudness: -20,
    content: path,
    ...more,
  };
}

const read = (...recordings: Recording[]) => {
  const { placed, leftOut, notes } = readRecordings(recordings);
  const byPath = Object.fromEntries(
    placed.map((one) => [
      one.recording.path,
      {
        keys: [one.lowKey, one.root, one.highKey],
        velocities: [one.lowVelocity, one.highVelocity],
        turn: `${one.position}/${one.length}`,
        section: one.section,
        tune: one.tuneCents,
        release: one.isRelease,
      },
    ]),
  );
  return { byPath, leftOut: leftOut.map(({ path }) => path), notes: notes.join('\n') };
};

describe('roots of recordings', () => {
  it('are the pitches, whatever middle C is called in the names', () => {
    const { byPath, notes } = read(
      heard('a C3.wav', 60),
      heard('a E3.wav', 64.1),
      heard('a G3.wav', undefined),
    );
    expect(byPath['a C3.wav']).toMatchObject({ keys: [58, 60, 62], tune: 0 });
    expect(byPath['a E3.wav']).toMatchObject({ keys: [63, 64, 65], tune: -10 });
    // A name is all that tells the key of this one, in the octave of the others.
    expect(byPath['a G3.wav']?.keys).toEqual([66, 67, 68]);
    expect(notes).toContain('Middle C is called C3');
  });

  it('are told by names that a layer, a turn or a dynamic follows without a sign', () => {
    const noise = ['A0v10', 'D#1v10', 'F#2v10', 'C4v10'].map((name) => heard(`${name}.ogg`, undefined));
    expect(Object.values(read(...noise).byPath).map(({ keys }) => keys[1])).toEqual([21, 27, 42, 60]);
    const { byPath } = read(
      heard('harp_C4mf.wav', 60),
      heard('harp_C4ff.wav', 60),
      heard('harp_E4mf.wav', undefined),
      heard('harp_E4ff.wav', undefined),
    );
    expect(Object.values(byPath).map(({ keys }) => keys[1])).toEqual([60, 60, 64, 64]);
    expect(byPath['harp_E4ff.wav']?.velocities).toEqual([64, 127]);
    expect(Object.values(read(heard('b2rr1.wav', 47), heard('b2rr2.wav', 47)).byPath)).toMatchObject([
      { turn: '1/2' },
      { turn: '2/2' },
    ]);
  });

  it('are told apart in German and English names by what sounds', () => {
    const { byPath } = read(
      heard('h1.wav', 71),
      heard('b1.wav', 70),
      heard('fis1.wav', 66),
      heard('as1.wav', 68),
    );
    expect(Object.values(byPath).map(({ keys }) => keys[1])).toEqual([71, 70, 66, 68]);
  });

  it('contradict a name with a note, and believe the sound', () => {
    const { byPath, notes } = read(
      heard('C4.wav', 60),
      heard('E4.wav', 65),
      heard('G4.wav', 67),
      heard('C5.wav', 72),
    );
    expect(byPath['E4.wav']?.keys[1]).toBe(65);
    expect(notes).toContain('"E4.wav" says 64 (E4), but it sounds at 65 (F4)');
  });

  it('are no root keys that all files have alike', () => {
    const { byPath, notes } = read(
      ...[48, 55, 62].map((key) => heard(`sound ${key - 40}.wav`, key, { rootKey: 60 })),
    );
    expect(Object.values(byPath).map(({ keys }) => keys[1])).toEqual([48, 55, 62]);
    expect(notes).toContain('The root keys in 3 of 3 files do not match the sound');
    expect(notes).toContain('The names give no notes');
  });
});

describe('recordings of one key', () => {
  it('are layers by words, in equal parts', () => {
    const { byPath } = read(
      ...['p', 'mf', 'f'].flatMap((word) =>
        [60, 67].map((key) => heard(`${key === 60 ? 'C4' : 'G4'}_${word}.wav`, key)),
      ),
    );
    expect(byPath['C4_p.wav']?.velocities).toEqual([1, 42]);
    expect(byPath['C4_mf.wav']?.velocities).toEqual([43, 84]);
    expect(byPath['C4_f.wav']?.velocities).toEqual([85, 127]);
  });

  it('are told in the words that stand in the names', () => {
    const { placed } = readRecordings([
      heard('C4 soft.wav', 60),
      heard('C4 Very Loud.wav', 60, { loudness: -10 }),
    ]);
    expect(placed.map(({ because }) => because.join(' '))).toEqual([
      expect.stringContaining('Its name says "soft": layer 1 of 2.'),
      expect.stringContaining('Its name says "Very Loud": layer 2 of 2.'),
    ]);
  });

  it('are told of once where the same holds of several sounds', () => {
    const names = ['kick', 'snare', 'crash', 'ride'].flatMap((name) => [
      `${name} soft.wav`,
      `${name} loud.wav`,
    ]);
    const { notes } = read(...names.map((name) => heard(name, undefined)));
    expect(notes.match(/share the velocities/g)).toHaveLength(1);
    expect(notes).toContain('The layers of kick, snare, crash, ride share the velocities in equal parts');
  });

  it('are layers by loudness where nothing else tells them apart, else round robins', () => {
    const two = (step: number) =>
      read(
        ...[60, 64].flatMap((key) => [
          heard(`${key} 1.wav`, key, { loudness: -10 }),
          heard(`${key} 2.wav`, key, { loudness: -10 - step }),
        ]),
      );
    expect(two(10).byPath['60 2.wav']?.velocities).toEqual([1, 63]);
    expect(two(10).byPath['60 1.wav']?.velocities).toEqual([64, 127]);
    expect(two(10).notes).toContain('from loud to soft');
    expect(two(1).byPath['60 2.wav']).toMatchObject({ velocities: [1, 127], turn: '2/2' });
  });

  it('are of groups of their own by articulation, microphone and release', () => {
    const { byPath, notes } = read(
      heard('sus/C4.wav', 60),
      heard('sus/E4.wav', 64),
      heard('pizz/C4 close.wav', 60),
      heard('pizz/E4 close.wav', 64),
      heard('pizz/C4 rel.wav', undefined),
    );
    expect(byPath['pizz/C4 close.wav']).toMatchObject({ section: 'pizz close', turn: '1/1' });
    expect(byPath['pizz/C4 rel.wav']).toMatchObject({ section: 'pizz release', release: true });
    expect(notes).toContain('sound together');
  });
});

describe('what is no note', () => {
  it('is left out and named', () => {
    const notes = [60, 64, 67, 72].map((key, at) => heard(`harp ${['C4', 'E4', 'G4', 'C5'][at]}.wav`, key));
    const { leftOut } = read(
      ...notes,
      heard('room tone.wav', undefined),
      heard('reference tone.wav', 69),
      heard('empty.wav', undefined, { loudness: undefined }),
      heard('harp C4 copy.wav', 60, { content: 'harp C4.wav' }),
    );
    expect([...leftOut].sort()).toEqual([
      'empty.wav',
      'harp C4 copy.wav',
      'reference tone.wav',
      'room tone.wav',
    ]);
  });

  it('is a kit where nothing has a note: a key for each sound, its layers and turns on it', () => {
    const names = [
      'kick.wav',
      'snare soft.wav',
      'snare loud.wav',
      'hat closed 1.wav',
      'hat closed 2.wav',
      'tom low.wav',
      'tom mid.wav',
    ];
    const { byPath } = read(...names.map((name) => heard(name, undefined)));
    const root = (name: string) => byPath[name]?.keys[1];
    expect(root('snare soft.wav')).toBe(root('snare loud.wav'));
    expect(byPath['snare loud.wav']?.velocities).toEqual([64, 127]);
    expect(root('hat closed 1.wav')).toBe(root('hat closed 2.wav'));
    expect(byPath['hat closed 2.wav']?.turn).toBe('2/2');
    expect(byPath['tom mid.wav']?.velocities).toEqual([1, 127]);
    expect(new Set(names.map(root)).size).toBe(5);
    // The bass drum of the percussion key map of General MIDI System Level 1 (MMA, 1991).
    expect([35, 36]).toContain(root('kick.wav'));
  });
});

describe('any roots', () => {
  it('take each key between the outermost once, the nearest root its own', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 0, max: 127 }), { minLength: 2, maxLength: 20 }),
        (roots) => {
          const spread = spreadKeys(roots);
          const sorted = [...roots].sort((a, b) => a - b);
          for (let key = sorted[0] as number; key <= (sorted.at(-1) as number); key++) {
            const takers = [...spread].filter(([, { low, high }]) => key >= low && key <= high);
            expect(takers).toHaveLength(1);
            const distance = Math.abs((takers[0]?.[0] as number) - key);
            expect(distance).toBe(Math.min(...roots.map((root) => Math.abs(root - key))));
          }
        },
      ),
    );
  });

  it('lose no recording: each is placed or left out', () => {
    const name = fc.constantFrom('C4', 'b3 p', 'kick', 'room', '60_100', 'rr2 D5', 'fis1 f', 'Do3', 'x', '');
    const recording = fc.record({
      name,
      pitch: fc.option(fc.double({ min: 20, max: 110, noNaN: true }), { nil: undefined }),
    });
    fc.assert(
      fc.property(fc.array(recording, { minLength: 1, maxLength: 12 }), (all) => {
        const recordings = all.map(({ name, pitch }, at) => heard(`${name} ${at}.wav`, pitch));
        const { placed, leftOut } = readRecordings(recordings);
        expect(
          [...placed.map(({ recording: { path } }) => path), ...leftOut.map(({ path }) => path)].sort(),
        ).toEqual(recordings.map(({ path }) => path).sort());
        for (const one of placed) {
          expect(one.lowKey).toBeLessThanOrEqual(one.root);
          expect(one.highKey).toBeGreaterThanOrEqual(one.root);
          expect(one.lowVelocity).toBeLessThanOrEqual(one.highVelocity);
        }
      }),
    );
  });
});
