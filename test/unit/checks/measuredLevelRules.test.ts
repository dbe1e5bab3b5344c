import { describe, expect, it } from 'vitest';
import type { SeveritySettings } from '../../../server/checks/rule';
import { applyFix, type Checked, checkText, expectMarks, fixesOf } from './markedText';
import type { StubbedSample } from './measuredStub';
import { measuredSamples, survey } from './measuredStub';

/** A sample of some loudness in LUFS, with a peak some dB above it. */
function loud(momentaryLoudness: number, crestDb = 12): StubbedSample {
  return { survey: survey({ momentaryLoudness, peak: 10 ** ((momentaryLoudness + crestDb) / 20) }) };
}

describe('loudness-step', () => {
  /** Notes on keys 40, 42, …, of these loudnesses, with opcodes more for some of them. */
  const row = (
    loudnesses: (number | undefined | null)[],
    more: Record<number, string> = {},
    global = '',
  ): Checked => {
    const samples = Object.fromEntries(
      loudnesses.map((one, at) => [`${at}.wav`, typeof one === 'number' ? loud(one) : { survey: one }]),
    );
    const text = loudnesses
      .map((_, at) => {
        const key = 40 + 2 * at;
        return `<region> sample=${at}.wav lokey=${key} hikey=${key + 1} pitch_keycenter=${key} ${more[at] ?? ''}`;
      })
      .join('\n');
    return checkText(`<global> amp_veltrack=60 ${global}\n${text}`, { samples: measuredSamples(samples) });
  };
  const found = ({ findings }: Checked) =>
    findings.map(({ code, message }) => `${code} ${message.slice(0, 7)}`);

  it('finds a sample that stands out from both neighbours by 10 dB, twice as loud on the sone scale (ISO 532-1)', () => {
    expect(found(row([-20, -21, -30, -20, -20, -21]))).toEqual([]);
    expect(found(row([-20, -21, -30.6, -20, -20, -21]))).toEqual(['loudness-step "2.wav"']);
    expect(found(row([-20, -21, -9, -20, -20, -21]))).toEqual(['loudness-step "2.wav"']);
  });

  it('evens it out with the volume, and counts in what is there', () => {
    const checked = row([-20, -20, -8, -20, -20, -20], { 2: 'volume=2' });
    expect(checked.findings[0]?.message).toContain('is 14 dB louder than "1.wav" and "3.wav" beside it');
    const fixed = applyFix(checked.text, fixesOf(checked, 'loudness-step')[0]);
    expect(fixed).toContain('volume=-12');
    expect(found(row([-20, -20, -8, -20, -20, -20], { 2: 'volume=-12' }))).toEqual([]);
    expect(found(row([-20, -20, -8, -20, -20, -20], { 2: 'amplitude=25' }))).toEqual([]);
    // 20 log 0.3 is −10.5 dB.
    expect(found(row([-20, -20, -20, -20, -20, -20], { 3: 'amplitude=30' }))).toEqual([
      'loudness-step "3.wav"',
    ]);
    expect(found(row([-20, -20, -20, -20, -20, -20], {}, 'volume=-20'))).toEqual([]);
  });

  it('offers no volume beyond the bounds of the opcode', () => {
    // The public documentation of the format bounds volume by −144 and 6 dB.
    expect(fixesOf(row([-20, -20, -22, -20, -20, -20], { 2: 'volume=-10' }), 'loudness-step')).toHaveLength(
      1,
    );
    expect(fixesOf(row([-20, -20, -32, -20, -20, -20]), 'loudness-step')).toEqual([]);
  });

  it('leaves alone rows of different sounds, slopes, ends of the keyboard, few keys and silent regions', () => {
    expect(found(row([-20, -27, -15, -30, -12, -26, -18]))).toEqual([]);
    expect(found(row([-10, -14, -30, -34, -35, -36]))).toEqual([]);
    expect(found(row([-32, -20, -20, -20, -20, -33]))).toEqual([]);
    expect(found(row([-20, -20, -35, -20]))).toEqual([]);
    expect(found(row([-20, -20, -35, -20, -20, -20], { 2: 'amplitude=0' }))).toEqual([]);
    expect(found(row([-20, -20, -35, -20, -20, -20], {}, 'pitch_keytrack=0'))).toEqual([]);
    expect(found(row([-20, -20, -35, -20, -20, -20], {}, 'trigger=release'))).toEqual([]);
  });

  it('waits for the whole row, and passes over what cannot be measured', () => {
    expect(found(row([-20, -20, -35, -20, -20, undefined]))).toEqual([]);
    expect(found(row([-20, -20, -35, null, -20, -20, -20]))).toEqual(['loudness-step "2.wav"']);
  });

  it('compares within a layer: velocities, turns and microphones each for themselves', () => {
    const samples = measuredSamples({ 'soft.wav': loud(-35), 'loud.wav': loud(-15) });
    const keys = [40, 42, 44, 46, 48, 50];
    const layers = (one: string, other: string) =>
      keys
        .flatMap((key) => [
          `<region> sample=soft.wav key=${key} ${one}`,
          `<region> sample=loud.wav key=${key} ${other}`,
        ])
        .join('\n');
    const severities: SeveritySettings = {
      'region-duplicate': 'off',
      'key-gap': 'off',
      'sequence-hole': 'off',
    };
    for (const [one, other] of [
      ['hivel=63', 'lovel=64'],
      ['seq_length=2', 'seq_length=2 seq_position=2'],
      ['amplitude_oncc20=100', 'amplitude_oncc21=100'],
      ['hirand=0.5', 'lorand=0.5'],
      ['', 'pan=20'],
    ] as const) {
      expect(found(checkText(layers(one, other), { samples, severities })), `${one} ${other}`).toEqual([]);
    }
    const groups = `<group> pan=-20\n${keys.map((key) => `<region> sample=soft.wav key=${key}`).join('\n')}
<group> pan=20\n${keys.map((key) => `<region> sample=loud.wav key=${key} ${key === 44 ? 'volume=-12' : ''}`).join('\n')}`;
    expect(found(checkText(groups, { samples, severities }))).toEqual(['loudness-step "loud.w']);
  });
});

describe('velocity-order', () => {
  const pair = (lower: StubbedSample, upper: StubbedSample, low = '', high = '', global = ''): Checked =>
    checkText(
      `<global> ${global}
<region> sample=p.wav lokey=60 hikey=63 pitch_keycenter=60 lovel=1 hivel=63 ${low}
<region> sample=f.wav lokey=60 hikey=63 pitch_keycenter=60 lovel=64 hivel=127 ${high}`,
      {
        samples: measuredSamples({ 'p.wav': lower, 'f.wav': upper }),
        severities: { 'key-gap': 'off', 'velocity-gap': 'off', 'no-effect': 'off' },
      },
    );
  const codes = ({ findings }: Checked) => findings.map(({ code }) => code);

  it('finds a layer that is softer than the one below it, and points to both', () => {
    const checked = expectMarks(
      `<region> sample=p.wav key=60 lovel=1 hivel=63
<region> sample=f.wav key=60 lovel=64 hivel=127
                ^^^^^ velocity-order information`,
      { samples: measuredSamples({ 'p.wav': loud(-12), 'f.wav': loud(-24) }) },
    );
    expect(checked.findings[0]?.message).toContain(
      '"f.wav" (velocities 64 to 127) is 12 dB softer than "p.wav" (velocities 1 to 63) on key 60 (C4), although',
    );
    expect(checked.findings[0]?.related?.map(({ start }) => checked.text.slice(start, start + 5))).toEqual([
      'p.wav',
    ]);
  });

  it('asks for 6 dB of loudness and 3 dB of peak', () => {
    // The gain of the two layers differs by 20 log (64/63)², 0.27 dB, where they meet.
    expect(codes(pair(loud(-20), loud(-26.2)))).toEqual([]);
    expect(codes(pair(loud(-20), loud(-26.4)))).toEqual(['velocity-order']);
    expect(codes(pair(loud(-20), loud(-20)))).toEqual([]);
    expect(codes(pair(loud(-20), loud(-8)))).toEqual([]);
    // Both brought to one peak, or to peaks that differ by little.
    expect(codes(pair(loud(-20, 8), loud(-28, 16)))).toEqual([]);
    expect(codes(pair(loud(-20, 8), loud(-28, 13.5)))).toEqual([]);
    expect(codes(pair(loud(-20, 8), loud(-28, 12.5)))).toEqual(['velocity-order']);
  });

  it('counts volume and amplitude in', () => {
    expect(codes(pair(loud(-20), loud(-12), 'volume=0', 'volume=-16'))).toEqual(['velocity-order']);
    expect(codes(pair(loud(-12), loud(-24), 'volume=-8'))).toEqual([]);
    expect(codes(pair(loud(-20), loud(-14), '', 'amplitude=20'))).toEqual(['velocity-order']);
  });

  it('counts velocity in where the layers follow it differently', () => {
    // At velocity 63 with amp_veltrack=100: 20 log (127² / 63²) is an attenuation of 12.2 dB (documentation of the format).
    expect(codes(pair(loud(-20), loud(-28), 'amp_veltrack=100', 'amp_veltrack=0'))).toEqual([]);
    expect(codes(pair(loud(-20), loud(-20), 'amp_veltrack=0', 'amp_veltrack=100'))).toEqual([
      'velocity-order',
    ]);
    expect(codes(pair(loud(-20), loud(-34), '', 'amp_veltrack=-50'))).toEqual([]);
    expect(codes(pair(loud(-20), loud(-34), '', '', 'amp_velcurve_64=1'))).toEqual([]);
  });

  it('says it once for two layers that are exchanged on all keys', () => {
    const keys = [40, 41, 42, 43, 44, 45, 46, 47];
    const samples = measuredSamples(
      Object.fromEntries(
        keys.flatMap((key) => [
          [`p${key}.wav`, loud(-10)],
          [`f${key}.wav`, loud(-30)],
        ]),
      ),
    );
    const layer = (name: string, velocities: string) =>
      `<group> ${velocities}\n${keys.map((key) => `<region> sample=${name}${key}.wav key=${key}`).join('\n')}`;
    const { findings } = checkText(`${layer('p', 'hivel=63')}\n${layer('f', 'lovel=64')}`, { samples });
    expect(findings.map(({ code }) => code)).toEqual(['velocity-order']);
    expect(findings[0]?.message).toContain('7 more places');
    expect(findings[0]?.related).toHaveLength(1);
  });

  it('compares a layer with the next one below on the same keys alone', () => {
    const samples = measuredSamples({
      'a.wav': loud(-10),
      'b.wav': loud(-30),
      'c.wav': loud(-18),
      'd.wav': loud(-40),
    });
    const { text, findings } = checkText(
      `<region> sample=a.wav key=60 hivel=40
<region> sample=b.wav key=60 lovel=41 hivel=80
<region> sample=c.wav key=60 lovel=81
<region> sample=d.wav key=61 lovel=81 hivel=127
<region> sample=c.wav key=61 hivel=80 volume=-30`,
      { samples },
    );
    expect(findings.map(({ code, start, end }) => `${code} ${text.slice(start, end)}`)).toEqual([
      'velocity-order b.wav',
    ]);
  });

  it('leaves alone layers of one sample, of different keys, of releases, and crossfaded or not yet known ones', () => {
    expect(codes(pair(loud(-10), { survey: undefined }))).toEqual([]);
    expect(codes(pair(loud(-10), { survey: null }))).toEqual([]);
    expect(codes(pair(loud(-10), loud(-30), '', '', 'trigger=release'))).toEqual([]);
    expect(codes(pair(loud(-10), loud(-30), 'hikey=60', 'lokey=62'))).toEqual([]);
    const { findings } = checkText(
      '<region> sample=a.wav key=60 hivel=63\n<region> sample=a.wav key=60 lovel=64 volume=-20',
      { samples: measuredSamples({ 'a.wav': loud(-10) }) },
    );
    expect(findings).toEqual([]);
  });

  it('adds up what sounds at one time', () => {
    const stack = (low: string[], high: string[]) =>
      [...low.map((name) => `<region> sample=${name}.wav key=60 hivel=63`)]
        .concat(high.map((name) => `<region> sample=${name}.wav key=60 lovel=64`))
        .join('\n');
    const samples = measuredSamples({
      near: loud(0),
      'a.wav': loud(-10),
      'b.wav': loud(-40),
      'c.wav': loud(-40),
      'd.wav': loud(-10),
    });
    // Near and far microphone change places in the text.
    expect(checkText(stack(['a', 'b'], ['c', 'd']), { samples }).findings).toEqual([]);
    expect(codes(checkText(stack(['a', 'b'], ['b', 'c']), { samples }))).toEqual(['velocity-order']);
    expect(checkText(stack(['a', 'b'], ['c']), { samples }).findings).toEqual([]);
  });
});
