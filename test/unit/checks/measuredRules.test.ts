import { describe, expect, it } from 'vitest';
import type { LoopSeam, MeasuredPitch, SampleLookup, SampleState } from '../../../server/model/samples';
import { applyFix, checkText, expectMarks, fixesOf, samplesInMemory, wav } from './markedText';

// 440 · 2^((n − 69) / 12): A4 = 440 Hz (ISO 16:1975), key 69 (MIDI 1.0), equal temperament.
/** A pitch some cents above a key. */
function pitch(key: number, cents = 0, confidence = 0.95): MeasuredPitch {
  return { hertz: 440 * 2 ** ((key + cents / 100 - 69) / 12), key, cents, confidence };
}

function withPitches(
  pitches: Record<string, MeasuredPitch | null>,
  states?: Record<string, SampleState>,
): SampleLookup {
  const measures = { pitch: (path: string) => pitches[path], loopSeam: () => null };
  return { ...samplesInMemory(states), measures };
}

// A sample sounds at its root key pitch_keycenter, moved by tune in cents: public documentation of the open SFZ format (CC0
// 1.0). From 50 cents on, by how many samples together, and what is a kit of drums is our choice; that drums lie anywhere is
// common practice.
describe('root-mismatch', () => {
  it('marks the root key that is an octave off, names it and sets it', () => {
    const checked = expectMarks(
      `<region> sample=a.wav lokey=48 hikey=59 pitch_keycenter=48
                                                        ^^ root-mismatch warning
<region> sample=b.wav lokey=60 hikey=72 pitch_keycenter=72`,
      { samples: withPitches({ 'a.wav': pitch(60), 'b.wav': pitch(72, 4) }) },
    );
    const [finding] = checked.findings;
    expect(finding?.message).toContain(
      '"a.wav" sounds at key 60 (C4): its root key 48 (C3) is one octave too low.',
    );
    const fixed = applyFix(checked.text, fixesOf(checked, 'root-mismatch')[0]);
    expect(fixed).toContain('hikey=59 pitch_keycenter=60');
  });

  it('names a semitone, which no tuning takes the place of', () => {
    const checked = checkText('<region> sample=a.wav lokey=50 hikey=62 pitch_keycenter=61 tune=20', {
      samples: withPitches({ 'a.wav': pitch(60, -20) }),
    });
    expect(checked.findings.map(({ message }) => message)).toEqual([
      expect.stringContaining(
        'key 60 (C4) −20 cents: its root key 61 (C#4) with tune=20 is one semitone too high.',
      ),
    ]);
    expect(fixesOf(checked, 'root-mismatch').map(({ title }) => title)).toEqual([
      'Set the root key to 60 (C4)',
    ]);
  });

  it('names other distances in semitones, octaves or cents', () => {
    const texts = [pitch(63), pitch(84, 10), pitch(62, 40), pitch(60, -70)].map((one) => {
      const { findings } = checkText('<region> sample=a.wav lokey=50 hikey=62 pitch_keycenter=60', {
        samples: withPitches({ 'a.wav': one }),
      });
      return /\) is (.*?)\. Correct/.exec(findings[0]?.message ?? '')?.[1];
    });
    expect(texts).toEqual([
      '3 semitones too low',
      '2 octaves too low',
      '240 cents too low',
      'one semitone too high',
    ]);
  });

  it('offers to tune first, or root key and tuning, where the sample lies between keys', () => {
    const checked = checkText('<region> sample=a.wav lokey=50 hikey=62 pitch_keycenter=60', {
      samples: withPitches({ 'a.wav': pitch(61, -40) }),
    });
    const [first, second] = fixesOf(checked, 'root-mismatch');
    expect(applyFix(checked.text, first)).toMatch(/pitch_keycenter=60\b.* tune=-60/);
    expect(applyFix(checked.text, second)).toMatch(/pitch_keycenter=61\b.* tune=40/);
    // What the fixes write is in order.
    for (const fix of [first, second]) {
      const again = checkText(applyFix(checked.text, fix), {
        samples: withPitches({ 'a.wav': pitch(61, -40) }),
      });
      expect(again.findings).toEqual([]);
    }
  });

  it('says once what several regions say of one sample, and mends all of them', () => {
    const samples = withPitches({ 'a.wav': pitch(60), 'b.wav': pitch(72) });
    const checked = checkText(
      ['1 hivel=40', '41 hivel=80', '81 hivel=127']
        .flatMap((layer) => [
          `<region> sample=a.wav lovel=${layer} lokey=48 hikey=59 pitch_keycenter=48`,
          `<region> sample=b.wav lovel=${layer} lokey=60 hikey=72 pitch_keycenter=72`,
        ])
        .join('\n'),
      { samples },
    );
    expect(checked.findings.map(({ message }) => message)).toEqual([
      expect.stringContaining('is one octave too low. 2 more regions have it so. Correct'),
    ]);
    const [fix] = fixesOf(checked, 'root-mismatch');
    expect(fix?.title).toBe('Set the root key to 60 (C4) in 3 regions');
    expect(checkText(applyFix(checked.text, fix), { samples }).findings).toEqual([]);
  });

  it('puts the root key behind a key that sets it', () => {
    const checked = checkText('<region> key=60 sample=a.wav', {
      samples: withPitches({ 'a.wav': pitch(72) }),
    });
    const text = applyFix(checked.text, fixesOf(checked, 'root-mismatch')[0]);
    expect(checkText(text, { samples: withPitches({ 'a.wav': pitch(72) }) }).findings).toEqual([]);
    expect(text).toContain('key=60');
  });

  it('takes tuning into account', () => {
    const samples = withPitches({ 'a.wav': pitch(60, 49) });
    expectMarks('<region> sample=a.wav key=60 tune=-49', { samples });
    expectMarks('<region> sample=a.wav key=60', { samples });
    expectMarks(
      `<region> sample=a.wav key=60 tune=30
                          ^^ root-mismatch warning`,
      { samples },
    );
  });

  it('takes a transposition for what it may be: a cure or music', () => {
    const samples = withPitches({ 'a.wav': pitch(60), 'b.wav': pitch(48) });
    expectMarks(
      '<region> sample=a.wav key=60 transpose=12\n<region> sample=b.wav key=60 lovel=1 hivel=127 transpose=12',
      {
        samples,
        severities: { 'range-overlap': 'off', 'region-duplicate': 'off' },
      },
    );
  });

  it('takes a transposition with a tuning beside it for a step that is meant, less a little', () => {
    const samples = withPitches({ 'a.wav': pitch(60), 'b.wav': pitch(67) });
    const of = (tuning: string) =>
      [
        'lokey=58 hikey=63 sample=a.wav pitch_keycenter=60',
        'lokey=64 hikey=70 sample=b.wav pitch_keycenter=67',
      ]
        .map((region) => `<region> ${region} ${tuning}`)
        .join('\n');
    // An octave up, 5 cents flat against the layer below it, as strings that are strung in pairs are tuned.
    for (const tuning of [
      'transpose=11 tune=95',
      'transpose=-12 tune=-4',
      'transpose=-23 tune=-97',
      'transpose=12',
    ])
      expectMarks(of(tuning), { samples });
    const { findings } = checkText(of('transpose=12 tune=60'), { samples });
    expect(findings.length).toBeGreaterThan(0);
  });

  describe('ranks', () => {
    const keys = [48, 55, 62, 69];
    const samples = withPitches(Object.fromEntries(keys.map((key) => [`pipe${key}.wav`, pitch(key, 3)])));
    const rank = (step: number, of: readonly number[] = keys) =>
      of
        .map((key) => key + step)
        .map(
          (root, at) =>
            `<region> sample=pipe${of[at]}.wav lokey=${root - 3} hikey=${root + 3} pitch_keycenter=${root}`,
        )
        .join('\n');
    const findingsOf = (text: string) =>
      checkText(text, { samples, severities: { 'range-overlap': 'off' } }).findings.filter(
        ({ code }) => code === 'root-mismatch',
      );

    it('leaves samples alone that play at their own pitch and again an octave, two or a twelfth away, several by the same step', () => {
      for (const step of [12, -12, 24, 19])
        expect(findingsOf(`${rank(0)}\n${rank(step)}`), `${step}`).toEqual([]);
    });

    it('marks them where the step is none of an organ, where they are few, or where nothing plays them at their own pitch', () => {
      expect(findingsOf(`${rank(0)}\n${rank(1)}`)).toHaveLength(1);
      expect(findingsOf(`${rank(0)}\n${rank(12, [48, 55])}`)).toHaveLength(2);
      expect(findingsOf(rank(12))).toHaveLength(1);
    });
  });

  describe('of groups', () => {
    const plain = [50, 62, 74].map((key) => `<region> sample=p${key}.wav lokey=${key - 6} hikey=${key + 5}`);
    const rooted = (of: string, keys: readonly number[]) =>
      keys
        .map(
          (key) => `<region> sample=${of}${key}.wav lokey=${key - 6} hikey=${key + 5} pitch_keycenter=${key}`,
        )
        .join('\n');
    const findingsOf = (text: string, pitches: Record<string, MeasuredPitch>) =>
      checkText(text, { samples: withPitches(pitches) }).findings.filter(
        ({ code }) => code === 'root-mismatch',
      );
    const principal = `<group>\n${plain.map((line, at) => `${line} pitch_keycenter=${[50, 62, 74][at]}`).join('\n')}`;
    const pitches = { 'p50.wav': pitch(50), 'p62.wav': pitch(62), 'p74.wav': pitch(74) };

    it('tells once, as information, of a stop whose samples are all off by the same', () => {
      const text = `${principal}\n<group>\n${rooted('q', [50, 62])}`;
      for (const step of [12, -12, 19]) {
        const all = { ...pitches, 'q50.wav': pitch(50 + step), 'q62.wav': pitch(62 + step, 4) };
        const [finding, ...more] = findingsOf(text, all);
        expect(more).toEqual([]);
        expect(finding).toMatchObject({
          severity: 'information',
          message: expect.stringContaining('All 2 samples of this group'),
        });
      }
    });

    it('warns of one that is off by itself in its group, and where those of a group do not agree', () => {
      const text = `${principal}\n<group>\n${rooted('q', [50, 62])}`;
      const one = findingsOf(text, { ...pitches, 'q50.wav': pitch(62), 'q62.wav': pitch(62) });
      expect(one.map(({ severity }) => severity)).toEqual(['warning']);
      const two = findingsOf(text, { ...pitches, 'q50.wav': pitch(62), 'q62.wav': pitch(50) });
      expect(two.map(({ severity }) => severity)).toEqual(['warning', 'warning']);
    });
  });

  it('leaves the hum of bells alone, which lies an octave below the note and is told with less confidence', () => {
    const text =
      '<region> sample=a.wav lokey=60 hikey=64 pitch_keycenter=62\n<region> sample=b.wav lokey=65 hikey=70 pitch_keycenter=67';
    const of = (confidence: number) =>
      checkText(text, { samples: withPitches({ 'a.wav': pitch(50, -4, confidence), 'b.wav': pitch(67) }) });
    expect(of(0.82).findings).toEqual([]);
    expect(of(0.95).findings).toHaveLength(1);
  });

  it('takes a key or two that play to the end for percussion, and one sound on one key for no note', () => {
    const tuned = [48, 55, 62].map(
      (key) => `<region> sample=${key}.wav lokey=${key - 3} hikey=${key + 3} pitch_keycenter=${key}`,
    );
    const pitches = Object.fromEntries([48, 55, 62].map((key) => [`${key}.wav`, pitch(key)]));
    const block = '<region> sample=block.wav lokey=90 hikey=91 pitch_keycenter=90 loop_mode=one_shot';
    const all = { samples: withPitches({ ...pitches, 'block.wav': pitch(97) }) };
    expect(checkText([...tuned, block].join('\n'), all).findings).toEqual([]);
    expect(checkText('<region> sample=block.wav key=95', all).findings).toEqual([]);
  });

  it('leaves a kit of drums alone whose samples stand on keys of their own', () => {
    // Half of the pitches happen to lie near octaves or semitones of their keys, as they do by chance.
    const keys = [36, 38, 40, 42, 44, 46, 48, 50];
    const pitches = keys.map((key, at) => pitch(key + [12, 1, 7, -5, -12, 24, 3, 9][at]));
    const samples = withPitches(Object.fromEntries(pitches.map((one, at) => [`hit${at}.wav`, one])));
    const text = keys.map((key, at) => `<region> sample=hit${at}.wav key=${key}`).join('\n');
    const { findings } = checkText(text, { samples });
    expect(findings.filter(({ code }) => code === 'root-mismatch')).toEqual([]);
  });

  it('leaves alone what is no tuned note', () => {
    const far = { 'a.wav': pitch(72) };
    for (const text of [
      '<region> sample=a.wav lokey=50 hikey=70 pitch_keycenter=60 pitch_keytrack=0',
      '<region> sample=a.wav key=60 loop_mode=one_shot',
      '<region> sample=a.wav lokey=50 hikey=70 pitch_keycenter=60 trigger=release',
      '<region> sample=a.wav key=60',
      '<region> sample=a.wav',
    ]) {
      const pitches = text.endsWith('key=60') ? { 'a.wav': pitch(72, 0, 0.7) } : far;
      const { findings } = checkText(text, { samples: withPitches(pitches) });
      expect(
        findings.filter(({ code }) => code === 'root-mismatch'),
        text,
      ).toEqual([]);
    }
  });

  it('leaves drums alone: their sure pitches are few, or lie anywhere', () => {
    const kit = Array.from(
      { length: 6 },
      (_, number) => `<region> sample=${number}.wav key=${40 + number}`,
    ).join('\n');
    const few = {
      '0.wav': pitch(57, 10),
      ...Object.fromEntries([1, 2, 3, 4, 5].map((n) => [`${n}.wav`, pitch(50, 0, 0.2)])),
    };
    expect(checkText(kit, { samples: withPitches(few) }).findings).toEqual([]);
    const anywhere = Object.fromEntries(
      [3, 9, 17, 22, 5, 14].map((away, n) => [`${n}.wav`, pitch(40 + n + away, 7 * n)]),
    );
    expect(checkText(kit, { samples: withPitches(anywhere) }).findings).toEqual([]);
  });

  describe('of many samples that are off by the same', () => {
    const keys = [40, 41, 42, 43, 44, 45];
    /** Samples on keys 40 to 45 that sound some cents above their keys. */
    const row = (cents: number[], more = '') => {
      const text = cents.map((_, at) => `<region> sample=${at}.wav key=${40 + at}${more}`).join('\n');
      const samples = withPitches(
        Object.fromEntries(
          cents.map((away, at) => {
            const semitones = Math.round(away / 100);
            return [`${at}.wav`, pitch(40 + at + semitones, away - 100 * semitones)];
          }),
        ),
      );
      return { checked: checkText(text, { samples }), samples };
    };

    it('says it once, and sets all root keys', () => {
      const { checked, samples } = row(keys.map((_, at) => 1200 + 3 * at));
      expect(checked.findings.map(({ message }) => message)).toEqual([
        expect.stringContaining('All 6 samples with a clear pitch sound one octave above their root keys'),
      ]);
      const fixes = fixesOf(checked, 'root-mismatch');
      expect(fixes.map(({ title }) => title)).toEqual([
        'Move the root keys of 6 regions 12 semitones higher',
      ]);
      const fixed = applyFix(checked.text, fixes[0]);
      expect(fixed.match(/pitch_keycenter=\d+/g)).toEqual(keys.map((key) => `pitch_keycenter=${key + 12}`));
      expect(checkText(fixed, { samples }).findings).toEqual([]);
    });

    it('tunes all where they are off by less than a semitone', () => {
      const { checked, samples } = row([60, 62, 64, 58, 60, 60], ' tune=0');
      expect(checked.findings).toHaveLength(1);
      const [fix] = fixesOf(checked, 'root-mismatch');
      expect(fix?.title).toBe('Tune 6 regions 61 cents lower');
      expect(checkText(applyFix(checked.text, fix), { samples }).findings).toEqual([]);
    });

    it('counts those that are right, and names those that are off by something else one by one', () => {
      const { checked } = row([0, 1200, 1210, 1195, 100, 1200, 1200]);
      expect(checked.findings.map(({ message }) => message)).toEqual([
        expect.stringContaining('5 of the 7 samples with a clear pitch sound one octave above'),
        expect.stringContaining('is one semitone too low'),
      ]);
    });

    it('names them one by one where they are few, or less than two thirds', () => {
      expect(row([1200, 1200]).checked.findings).toHaveLength(2);
      expect(row([1200, 1200, 1200, 1200, 0, 0, 0]).checked.findings).toHaveLength(4);
      expect(row([0, 3, -4, 20, 0, 0]).checked.findings).toEqual([]);
    });

    it('offers no root keys that are not there', () => {
      const text = [120, 121, 122].map((key) => `<region> sample=${key}.wav key=${key}`).join('\n');
      const samples = withPitches(
        Object.fromEntries([120, 121, 122].map((key) => [`${key}.wav`, pitch(key + 12)])),
      );
      const checked = checkText(text, { samples });
      expect(checked.findings).toHaveLength(1);
      expect(fixesOf(checked, 'root-mismatch')).toEqual([]);
    });
  });

  it('says nothing without measures, or before they are all there', () => {
    const text = '<region> sample=a.wav key=60\n<region> sample=b.wav key=61';
    expect(checkText(text).findings).toEqual([]);
    expect(checkText(text, { samples: withPitches({ 'a.wav': pitch(72) }) }).findings).toEqual([]);
  });

  it('holds no root key that is not set against the sound of one key or all keys, nor one of the file', () => {
    const samples = withPitches({ 'a.wav': pitch(72) }, { 'a.wav': wav({ rootKey: 72 }) });
    expectMarks('<region> sample=a.wav lokey=50 hikey=72', { samples });
    expectMarks('<region> sample=a.wav lokey=50 hikey=72 pitch_keycenter=sample', {
      samples,
      severities: { 'opcode-value': 'off' },
    });
    expectMarks(
      `<region> sample=a.wav lokey=50 hikey=72
                ^^^^^ root-mismatch warning`,
      { samples: withPitches({ 'a.wav': pitch(72) }) },
    );
  });
});

// loop_start, loop_end (the last frame that is played) and loop_crossfade in seconds: public documentation of the open SFZ
// format (CC0 1.0). What is audible is our choice.
describe('loop-seam', () => {
  const seam: LoopSeam = {
    isAudible: true,
    step: 0.5,
    greatestStep: 0.05,
    bend: 0.5,
    greatestBend: 0.01,
    spectrumChange: 0.3,
    greatestSpectrumChange: 0.2,
    better: { start: 1000, end: 2345 },
  };
  const asked: string[] = [];
  const samples = (facts: Parameters<typeof wav>[0] = {}, found: LoopSeam | null = seam): SampleLookup => ({
    ...samplesInMemory({ 'a.wav': wav(facts) }),
    measures: {
      pitch: () => null,
      loopSeam: (path, start, end) => {
        asked.push(`${path} ${start} ${end}`);
        return found;
      },
    },
  });

  it('marks the end of the loop and moves it', () => {
    const checked = expectMarks(
      `<region> sample=a.wav key=60 loop_mode=loop_continuous loop_start=1000 loop_end=2300
                                                                                ^^^^ loop-seam information`,
      { samples: samples() },
    );
    expect(applyFix(checked.text, fixesOf(checked, 'loop-seam')[0])).toContain('loop_end=2345');
    expect(asked.at(-1)).toBe('a.wav 1000 2300');
  });

  it('marks the sample where the loop is that of the file, and sets points in the region', () => {
    const loops = [{ start: 500, end: 2300, type: 'forward' as const }];
    const found = { ...seam, better: { start: 500, end: 2345 } };
    const checked = expectMarks(
      `<region> sample=a.wav key=60
                ^^^^^ loop-seam information`,
      { samples: samples({ loops }, found) },
    );
    const text = applyFix(checked.text, fixesOf(checked, 'loop-seam')[0]);
    expect(text).toMatch(/loop_start=500\b/);
    expect(text).toMatch(/loop_end=2345\b/);
  });

  it('takes a whole file that is looped for one cycle or a rhythm, unless it breaks off', () => {
    const of = (frames: number, found: LoopSeam) =>
      checkText(
        `<region> sample=a.wav key=60 loop_mode=loop_continuous loop_start=0 loop_end=${frames - 1}`,
        {
          samples: samples({ frames }, found),
        },
      ).findings.map(({ code }) => code);
    expect(of(200, seam)).toEqual([]);
    expect(of(60000, { ...seam, step: 0.01 })).toEqual([]);
    expect(of(60000, seam)).toEqual(['loop-seam']);
  });

  it('moves both ends where no other end alone will do', () => {
    const checked = checkText(
      '<region> sample=a.wav key=60 loop_mode=loop_continuous loop_start=1000 loop_end=2300',
      {
        samples: samples({}, { ...seam, better: { start: 1100, end: 2345 } }),
      },
    );
    expect(checked.findings[0]?.message).toContain('Loop from frame 1100 to 2345, where it closes smoothly.');
    const [fix] = fixesOf(checked, 'loop-seam');
    expect(fix?.title).toBe('Loop from frame 1100 to 2345');
    expect(applyFix(checked.text, fix)).toContain('loop_start=1100 loop_end=2345');
  });

  it('offers a crossfade, in seconds, beside better points or alone', () => {
    const text = '<region> sample=a.wav key=60 loop_mode=loop_continuous loop_start=1000 loop_end=2300';
    const facts = { sampleRate: 48000 };
    const both = checkText(text, { samples: samples(facts, { ...seam, crossfadeFrames: 480 }) });
    expect(fixesOf(both, 'loop-seam').map(({ title }) => title)).toEqual([
      'End the loop at frame 2345',
      'Close the loop with a crossfade of 0.01 s',
    ]);
    const { better: _, ...without } = seam;
    const found = { ...without, crossfadeFrames: 480 };
    const alone = checkText(text, { samples: samples(facts, found) });
    expect(alone.findings[0]?.message).toContain(
      'No loop points nearby close it smoothly. Set loop_crossfade.',
    );
    const fixed = applyFix(alone.text, fixesOf(alone, 'loop-seam')[0]);
    expect(fixed).toMatch(/loop_end=2300\b.* loop_crossfade=0\.01\b/);
    // A loop that is crossfaded is not held against its bare seam again.
    expect(checkText(fixed, { samples: samples(facts, found) }).findings).toEqual([]);
    const neither = checkText(text, { samples: samples(facts, without) });
    expect(fixesOf(neither, 'loop-seam')).toEqual([]);
  });

  it('tells a change of sound from a jump', () => {
    const found = { ...seam, step: 0.01, bend: 0.01, spectrumChange: 0.5 };
    const checked = checkText(
      '<region> sample=a.wav key=60 loop_mode=loop_continuous loop_start=1000 loop_end=2300',
      { samples: samples({}, found) },
    );
    expect(checked.findings[0]?.message).toContain('suddenly changes in sound or level where it closes');
  });

  it('leaves alone what is not looped, faded over, played back and forth, or smooth', () => {
    const points = '<region> sample=a.wav key=60 loop_start=1000 loop_end=2300';
    const severities = { 'no-effect': 'off' as const };
    expectMarks(points, { samples: samples(), severities });
    expectMarks(`${points} loop_mode=no_loop`, { samples: samples(), severities });
    expectMarks(`${points} loop_mode=loop_continuous loop_crossfade=0.1`, { samples: samples() });
    expectMarks(`${points} loop_mode=loop_continuous loop_type=alternate`, { samples: samples() });
    expectMarks(`${points} loop_mode=loop_continuous`, {
      samples: samples({}, { ...seam, isAudible: false }),
    });
    expectMarks(`${points} loop_mode=loop_continuous`, { samples: samples({}, null) });
    expectMarks(`${points} loop_mode=loop_continuous`);
  });
});
