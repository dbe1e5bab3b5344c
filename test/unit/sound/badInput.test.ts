import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { renderedOpcodes } from '../../../server/sound/program/renderedOpcodes';
import { constant, engineOf, play, sine } from './playing';

const rate = 48000;
const ramp = Float32Array.from({ length: 1000 }, (_, at) => at / 1000);
const samples = { 'a.wav': { channels: [ramp], rate }, 'one.wav': constant(1) };

/** All numbers, and none beyond what a voice of full scale can give here. */
function isSound({ left, right }: { left: Float64Array; right: Float64Array }): boolean {
  return [...left, ...right].every((value) => Math.abs(value) < 1e6);
}

describe('bad input', () => {
  it('takes loop points past the end for the last frame', () => {
    const text = '<region> sample=a.wav pan=-100 loop_mode=loop_continuous loop_start=900 loop_end=99999';
    const { left } = play(text, 0.1, { samples });
    expect(left[999]).toBeCloseTo(0.999, 6);
    expect(left[1000]).toBeCloseTo(0.9, 6);
  });

  it.each([
    ['an offset past the end', 'offset=5000'],
    ['an end before the start', 'offset=500 end=400'],
  ])('is silent for %s', (_name, opcodes) => {
    const engine = engineOf(`<region> sample=a.wav ${opcodes}`, { samples });
    engine.noteOn(60, 127);
    const left = new Float64Array(256);
    engine.process(left, new Float64Array(256));
    expect(left.every((value) => value === 0)).toBe(true);
    expect(engine.activeVoices).toBe(0);
  });

  it('plays through where the loop ends before it starts', () => {
    const text = '<region> sample=a.wav pan=-100 loop_mode=loop_continuous loop_start=800 loop_end=100';
    const { left } = play(text, 0.05, { samples });
    expect(left[999]).toBeCloseTo(0.999, 6);
    expect(left[1000]).toBe(0);
  });

  it('plays a loop of a single frame, and of two', () => {
    for (const end of [500, 501]) {
      const text = `<region> sample=a.wav pan=-100 loop_mode=loop_continuous loop_start=500 loop_end=${end}`;
      for (const type of ['forward', 'backward', 'alternate']) {
        const { left } = play(`${text} loop_type=${type}`, 0.1, { samples, key: 63 });
        expect(Math.abs(left[4000] - 0.5005)).toBeLessThan(0.01);
      }
    }
  });

  it('plays samples of any rate at their pitch', () => {
    for (const one of [200_000, 8000, 11_025, 1]) {
      const tone = { channels: [sine(one / 50, 1, Math.max(one, 50))], rate: one };
      const sound = play('<region> sample=t.wav', 0.05, { samples: { 't.wav': tone } });
      expect(isSound(sound)).toBe(true);
    }
  });

  it('stops a voice whose numbers run away, and says which region', () => {
    const engine = engineOf('<region> sample=one.wav volume=70000\n<region> sample=one.wav volume=-6', {
      samples,
    });
    engine.noteOn(60, 127);
    const left = new Float64Array(256);
    engine.process(left, new Float64Array(256));
    expect(engine.takeReport().brokenRegions).toEqual([0]);
    expect(left.every(Number.isFinite)).toBe(true);
    expect(left[100]).toBeGreaterThan(0.3);
  });

  it('lets no number that is none out of a sample', () => {
    const broken = Float32Array.from(ramp);
    broken[500] = Number.NaN;
    const engine = engineOf('<region> sample=n.wav', { samples: { 'n.wav': { channels: [broken], rate } } });
    engine.noteOn(60, 127);
    const left = new Float64Array(2048);
    engine.process(left, new Float64Array(2048));
    expect(left.every(Number.isFinite)).toBe(true);
    expect(engine.takeReport().brokenRegions).toEqual([0]);
  });

  it('is not slowed down by a tail near nothing', () => {
    // A filter that rings on behind a sample comes to exactly nothing, and the voice ends.
    const engine = engineOf('<region> sample=a.wav cutoff=30 resonance=30', { samples });
    engine.noteOn(60, 127);
    const block = new Float64Array(rate);
    for (let second = 0; second < 20 && engine.activeVoices > 0; second++)
      engine.process(block, new Float64Array(rate));
    expect(engine.activeVoices).toBe(0);
  });

  it('plays no more voices than it may, and says how many it left out', () => {
    const text = '<region> sample=one.wav\n'.repeat(500);
    const engine = engineOf(text, { samples });
    for (let key = 50; key < 60; key++) engine.noteOn(key, 100);
    expect(engine.activeVoices).toBe(512);
    const report = engine.takeReport();
    expect(report.refusedVoices).toBe(5000 - 512);
    const left = new Float64Array(128);
    engine.process(left, new Float64Array(128));
    expect(left.every(Number.isFinite)).toBe(true);
  });

  it('waits for a sample that is not there, and says so', () => {
    const engine = engineOf('<region> sample=late.wav pan=-100');
    engine.noteOn(60, 127);
    const left = new Float64Array(128);
    engine.process(left, new Float64Array(128));
    expect(left.every((value) => value === 0)).toBe(true);
    expect(engine.takeReport().wantedSamples).toEqual([0]);
    engine.addSample(0, [ramp], rate);
    engine.process(left, new Float64Array(128));
    expect(left[100]).toBeCloseTo(0.1, 6);
  });

  it('has resonances of 40 dB and sudden cutoffs without running away', () => {
    const text =
      '<region> sample=*noise cutoff=200 resonance=40 cutoff_oncc1=9600 lfo1_freq=300 lfo1_wave=3 lfo1_cutoff=6000';
    const acts = Array.from(
      { length: 50 },
      (_, at) =>
        [at / 50, (engine: ReturnType<typeof engineOf>) => engine.controller(1, (at * 53) % 128)] as const,
    );
    const { left } = play(text, 1, { acts: acts.map(([at, act]) => [at, act]) });
    expect(left.every((value) => Math.abs(value) < 1000)).toBe(true);
  });

  it('makes numbers of any values of any opcodes', () => {
    const patterns = renderedOpcodes().filter((pattern) => !pattern.includes('*') && pattern !== 'sample');
    const opcode = fc.record({
      name: fc.constantFrom(...patterns).map((pattern) => pattern.replace(/N+|[XY]/g, '1')),
      value: fc.oneof(
        fc.double({ min: -20000, max: 20000, noNaN: true }).map((value) => value.toFixed(3)),
        fc.constantFrom(
          '0',
          '-1',
          '1',
          '127',
          '1e30',
          '-1e30',
          '0.0001',
          'on',
          'reverse',
          'alternate',
          'loop_sustain',
          'lpf_6p',
        ),
      ),
    });
    fc.assert(
      fc.property(fc.array(opcode, { maxLength: 12 }), fc.integer({ min: 0, max: 127 }), (opcodes, key) => {
        const text = opcodes.map(({ name, value }) => `${name}=${value}`).join(' ');
        const sound = play(`<region> sample=a.wav ${text}`, 0.03, {
          samples,
          key,
          hold: 0.015,
          controllers: { 1: 90 },
        });
        return [...sound.left, ...sound.right].every(Number.isFinite);
      }),
      { numRuns: 150 },
    );
  });
});
