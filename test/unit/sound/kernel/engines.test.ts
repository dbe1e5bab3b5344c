import { describe, expect, it } from 'vitest';
import { pageFrames } from '../../../../server/sound/voice/voiceSamples';
import { type Act, db, engineOf, type PlayOptions, play, type Rendered, type TestSample } from '../playing';

const seconds = 0.6;
const rate = 48000;
const wave = (length: number, turn: number) =>
  Float32Array.from({ length }, (_, at) => Math.sin(at * 0.05 + turn) * 0.7 + Math.sin(at * at * 1e-4) * 0.3);
const mono: TestSample = { channels: [wave(9000, 0)], rate: 44100 };
const stereo: TestSample = { channels: [wave(9000, 0), wave(9000, 1)], rate };
const short: TestSample = { channels: [wave(300, 2)], rate };
const samples = { 'a.wav': mono, 'b.wav': stereo, 'c.wav': short };

const kinds: [name: string, text: string, options?: PlayOptions][] = [
  ['one after the other', '<region> sample=a.wav <region> sample=b.wav volume=-6 tune=33'],
  [
    'a loop of 200 frames',
    '<region> sample=b.wav tune=7 loop_mode=loop_continuous loop_start=400 loop_end=599',
  ],
  [
    'loops with a crossfade, let go at several places',
    '<region> sample=a.wav volume=-12 tune=-50 pitch_keytrack=0 loop_mode=loop_sustain loop_start=3000 loop_end=3400 loop_crossfade=0.002 ampeg_release=1',
    {
      acts: [61, 62, 63, 64].flatMap((key): Act[] => [
        [0, (to) => to.noteOn(key, 100)],
        [0.2 + key / 200, (to) => to.noteOff(key)],
      ]),
    },
  ],
  [
    'loops that turn round',
    '<region> sample=b.wav tune=9 loop_mode=loop_continuous loop_type=alternate loop_start=10 loop_end=700',
  ],
  [
    'loops that go back',
    '<region> sample=a.wav loop_mode=loop_continuous loop_type=backward loop_start=10 loop_end=700',
  ],
  ['reversed', '<region> sample=b.wav direction=reverse tune=40'],
  ['an octave up and three down', '<region> sample=a.wav transpose=12 <region> sample=b.wav transpose=-36'],
  [
    'five octaves up',
    '<region> sample=b.wav transpose=60 loop_mode=loop_continuous loop_start=0 loop_end=8999',
  ],
  [
    'a glide through the recorded pitch',
    '<region> sample=b.wav pitcheg_depth=1200 pitcheg_attack=0.2 tune=-600 loop_mode=loop_continuous',
  ],
  [
    'filters, LFOs, pan and width',
    '<region> sample=b.wav tune=3 cutoff=900 fileg_depth=2400 fileg_decay=0.3 lfo1_freq=6 lfo1_pan=80 lfo1_pitch=40 width=40 position=-30 loop_mode=loop_continuous',
  ],
  [
    'a short decay',
    '<region> sample=a.wav tune=11 ampeg_attack=0.01 ampeg_decay=0.2 ampeg_sustain=20',
    { hold: 0.4 },
  ],
  [
    'a wheel that jumps up eight octaves',
    '<region> sample=b.wav offset=600 bend_down=-9600 bend_up=700 loop_mode=loop_continuous',
    {
      acts: [
        [0, (to) => to.bend(-8192)],
        [0.02, (to) => to.noteOn(60, 100)],
        [0.024, (to) => to.bend(8191)],
      ],
    },
  ],
  [
    'one voice for one short note after the other',
    '<region> sample=c.wav tune=11 hikey=60 loop_mode=one_shot <region> sample=b.wav tune=-30 lokey=61',
    { acts: [[0.02, (to) => to.noteOn(61, 100)]] },
  ],
  ['generators', '<region> sample=*saw volume=-12 <region> sample=*noise volume=-20'],
  [
    'a pitch wheel and controllers on the way',
    '<region> sample=b.wav tune=5 bend_up=1200 volume_oncc20=-20 pan_oncc21=100 loop_mode=loop_continuous',
    {
      acts: [
        [0.1, (to) => to.bend(4000)],
        [0.2, (to) => to.controller(20, 90)],
        [0.3, (to) => to.controller(21, 127)],
      ],
    },
  ],
];

function difference(one: Rendered, other: Rendered): number {
  let worst = 0;
  for (const side of ['left', 'right'] as const) {
    for (const [at, value] of one[side].entries()) worst = Math.max(worst, Math.abs(value - other[side][at]));
  }
  return db(worst);
}

function loudest({ left }: Rendered): number {
  return left.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
}

describe('live quality, compiled and in JavaScript', () => {
  it.each(kinds)('sounds alike within −120 dB of full scale: %s', (_name, text, options) => {
    const [compiled, plain] = [true, false].map((mayCompile) =>
      play(text, seconds, { samples, quality: 'live', ...options, mayCompile }),
    );
    expect(loudest(plain)).toBeGreaterThan(0.02);
    expect(difference(compiled, plain)).toBeLessThan(-120);
    // And the two are not the same by having taken the same way.
    if (!text.includes('*')) expect(difference(compiled, plain)).toBeGreaterThan(-200);
  });

  it('sounds alike where a stretch of a long sample comes late, and counts what was missing', () => {
    const long = wave(3 * pageFrames, 0);
    const [compiled, plain] = [true, false].map((mayCompile) => {
      const engine = engineOf('<region> sample=a.wav tune=20', { quality: 'live', mayCompile });
      const give = (page: number) => {
        const startFrame = page * pageFrames;
        const stretch = { startFrame, totalFrames: long.length };
        engine.addSample(0, [long.subarray(startFrame, startFrame + pageFrames)], rate, stretch);
      };
      give(0);
      engine.noteOn(60, 100);
      const frames = 2 * pageFrames;
      const rendered = { left: new Float64Array(frames), right: new Float64Array(frames) };
      const run = (from: number, to: number) =>
        engine.process(rendered.left.subarray(from, to), rendered.right.subarray(from, to));
      run(0, pageFrames + 6400);
      const missing = engine.takeReport().missingFrames;
      give(1);
      give(2);
      run(pageFrames + 6400, frames);
      return { rendered, missing, missingAfter: engine.takeReport().missingFrames };
    });
    expect(difference(compiled.rendered, plain.rendered)).toBeLessThan(-120);
    expect(plain.missing).toBeGreaterThan(6000);
    expect(compiled.missing).toBe(plain.missing);
    expect(compiled.missingAfter).toBe(0);
  });

  it('has voices enough for more than there are windows', () => {
    const text = Array.from(
      { length: 600 },
      (_, at) => `<region> sample=b.wav volume=-40 tune=${at % 100}`,
    ).join('\n');
    const [compiled, plain] = [true, false].map((mayCompile) => {
      const { left, right } = play(text, 0.1, { samples, quality: 'live', mayCompile });
      return { left, right };
    });
    expect(difference(compiled, plain)).toBeLessThan(-120);
  });
});
