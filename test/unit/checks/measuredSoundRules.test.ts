import { describe, expect, it } from 'vitest';
import { joinAlike } from '../../../server/checks/alikeFindings';
import type { SampleFacts, SampleSurvey } from '../../../server/model/samples';
import { applyFix, checkText, expectMarks, fixesOf } from './markedText';
import type { StubbedSample } from './measuredStub';
import { measuredSamples, survey } from './measuredStub';

/** The codes of the findings about one sample that a region plays with some more opcodes. */
function codesOf(
  found: Partial<SampleSurvey> | null | undefined,
  { opcodes = '', facts }: { opcodes?: string; facts?: Partial<SampleFacts> } = {},
): string[] {
  const samples = measuredSamples({
    'a.wav': { survey: found ? survey(found) : found, ...(facts && { facts }) },
  });
  const { findings } = checkText(`<region> sample=a.wav key=60 ${opcodes}`, {
    samples,
    severities: { 'no-effect': 'off' },
  });
  return findings.map(({ code }) => code);
}

const stereo = { facts: { channels: 2 } };

describe('findings of what was measured', () => {
  it('are none where the sample is good, silent, not measured yet or cannot be measured', () => {
    expect(codesOf({})).toEqual([]);
    expect(codesOf(undefined)).toEqual([]);
    expect(codesOf(null)).toEqual([]);
    const silent = { peak: 0, leadingSilenceFrames: 44100, trailingSilenceFrames: 44100, dcOffset: [0] };
    expect(
      codesOf({ ...silent, endLevelDb: Number.NEGATIVE_INFINITY, hasEqualChannels: true }, stereo),
    ).toEqual([]);
  });

  it('stand once for a file, at its first use, with the other uses beside them where they are few', () => {
    const bad = { 'a.wav': { survey: survey({ dcOffset: [0.2] }) } };
    const line = (key: number) => `<region> sample=a.wav key=${key}`;
    const few = checkText([60, 61, 62].map(line).join('\n'), { samples: measuredSamples(bad) });
    expect(few.findings.map(({ code, start }) => [code, start])).toEqual([['dc-offset', 16]]);
    expect(few.findings[0]?.related?.map(({ start }) => few.text.slice(start - 7, start + 5))).toEqual([
      'sample=a.wav',
      'sample=a.wav',
    ]);
    const many = checkText(Array.from({ length: 20 }, (_, at) => line(50 + at)).join('\n'), {
      samples: measuredSamples(bad),
    });
    expect(many.findings).toHaveLength(1);
    expect(many.findings[0]?.related).toBeUndefined();
  });

  it('are told as one where many samples have them, with ways to the others', () => {
    const names = (count: number) => Array.from({ length: count }, (_, at) => `${at}.wav`);
    const joined = (count: number) => {
      const bad = names(count).map((name) => [name, { survey: survey({ dcOffset: [0.2] }) }] as const);
      const text = names(count)
        .map((name, at) => `<region> sample=${name} key=${at}`)
        .join('\n');
      return joinAlike(checkText(text, { samples: measuredSamples(Object.fromEntries(bad)) }).findings);
    };
    expect(joined(4)).toHaveLength(4);
    const [one, ...more] = joined(40);
    expect(more).toEqual([]);
    expect(one?.message).toMatch(
      /^40 samples are like this; here is the first\. The waveform of "0\.wav" is centred/,
    );
    expect(one?.related?.map(({ message }) => /"[^"]*"/.exec(message)?.[0])).toEqual(
      names(40)
        .slice(1)
        .map((name) => `"${name}"`),
    );
  });

  it('stand once where many regions inherit the sample', () => {
    const samples = measuredSamples({ 'a.wav': { survey: survey({ dcOffset: [0.2] }) } });
    const checked = expectMarks(
      `<group> sample=a.wav
               ^^^^^ dc-offset information
<region> key=60
<region> sample=b.wav key=61
<region> key=62`,
      { samples, severities: { 'sample-missing': 'off' } },
    );
    expect(checked.findings[0]?.related).toBeUndefined();
  });

  it('are none of regions that are kept silent', () => {
    expect(codesOf({ dcOffset: [0.2] }, { opcodes: 'end=-1' })).toEqual([]);
  });
});

describe('silence-before', () => {
  // 20 ms at 44100 Hz are 882 frames.
  it('finds silence from 20 ms on', () => {
    expect(codesOf({ leadingSilenceFrames: 881 })).toEqual([]);
    expect(codesOf({ leadingSilenceFrames: 882 })).toEqual(['silence-before']);
  });

  it('sets an offset in every region that plays the silence, a millisecond before the sound', () => {
    const samples = measuredSamples({ 'a.wav': { survey: survey({ leadingSilenceFrames: 4410 }) } });
    const checked = expectMarks(
      `<group> offset=10
<region> sample=a.wav key=60
                ^^^^^ silence-before information
<region> sample=a.wav key=61 offset=4000
<region> sample=a.wav key=62 offset=500`,
      { samples },
    );
    expect(checked.findings[0]?.message).toContain('100 ms of silence (4410 frames)');
    const fixed = applyFix(checked.text, fixesOf(checked, 'silence-before')[0]);
    // 4410 frames less 1 ms, 44 frames.
    expect(fixed.match(/offset=\d+/g)).toEqual(['offset=10', 'offset=4366', 'offset=4000', 'offset=4366']);
    expect(checkText(fixed, { samples }).findings).toEqual([]);
  });

  it('leaves alone what is skipped, late on purpose, or moved by a controller', () => {
    const late = { leadingSilenceFrames: 4410 };
    for (const opcodes of [
      'offset=4400',
      'offset=3600',
      'delay=0.1',
      'direction=reverse',
      'trigger=release',
      'offset_oncc20=4410',
      'offset_random=200',
      'offset=10 offset_mode=percent',
      'lokey=-1 hikey=-1 on_locc64=64 on_hicc64=127',
    ]) {
      expect(codesOf(late, { opcodes }), opcodes).toEqual([]);
    }
    expect(codesOf(late, { opcodes: 'offset=3528' })).toEqual(['silence-before']);
  });

  it('takes a microphone that hears later than one beside it for one in the room', () => {
    const text = (more: string) => `<group> key=60 amplitude_oncc20=100 <region> sample=near.wav
<group> key=60 amplitude_oncc21=100 ${more} <region> sample=far.wav`;
    const samples = (frames: number) =>
      measuredSamples({
        'near.wav': { survey: survey() },
        'far.wav': { survey: survey({ leadingSilenceFrames: frames }) },
      });
    const found = (more: string, frames: number) =>
      checkText(text(more), { samples: samples(frames) }).findings.map(({ code }) => code);
    expect(found('', 1500)).toEqual([]);
    expect(found('', 4500)).toEqual(['silence-before']);
    expect(found('seq_length=2 seq_position=2', 1500)).toContain('silence-before');
  });
});

describe('tail-cut', () => {
  it('finds a sound that ends a tenth of its loudest amplitude or less below it', () => {
    const endStep = 0.05;
    const greatestEndStep = 0.05;
    expect(codesOf({ endLevelDb: -19.9, endStep, greatestEndStep })).toEqual(['tail-cut']);
    expect(codesOf({ endLevelDb: -20.1, endStep, greatestEndStep })).toEqual([]);
  });

  it('leaves alone what is faded out to silence, in however short a time, and hits', () => {
    expect(codesOf({ endLevelDb: -3, peak: 0.5, endStep: 0.0009, greatestEndStep: 0.05 })).toEqual([]);
    expect(codesOf({ endLevelDb: -3, peak: 0.5, endStep: 0.0011, greatestEndStep: 0.05 })).toEqual([
      'tail-cut',
    ]);
    const hit = { frames: 4000, endLevelDb: -3, endStep: 0.1, greatestEndStep: 0.1 };
    expect(codesOf(hit, { facts: { frames: 4000 } })).toEqual([]);
  });

  it('tells of three or more at once', () => {
    const cut = survey({ endLevelDb: -4, endStep: 0.1, greatestEndStep: 0.1 });
    const names = ['a.wav', 'b.wav', 'c.wav', 'd.wav'];
    const text = names.map((name, at) => `<region> sample=${name} key=${60 + at}`).join('\n');
    const of = (all: Record<string, StubbedSample>) =>
      checkText(text, { samples: measuredSamples(all) }).findings;
    const [finding, ...more] = of({
      ...Object.fromEntries(names.map((name) => [name, { survey: cut }])),
      'd.wav': { survey: survey() },
    });
    expect(more).toEqual([]);
    expect(finding?.message).toMatch(
      /^3 of 4 samples stop while they still sound\. The last 10 ms are only 4 dB softer/,
    );
    expect(finding?.related).toHaveLength(2);
  });

  it('asks of short sounds that they end with a step', () => {
    const blip = { frames: 4410, endLevelDb: -6, greatestEndStep: 0.02 };
    const facts = { frames: 4410 };
    expect(codesOf({ ...blip, endStep: 0.001 }, { facts })).toEqual([]);
    expect(codesOf({ ...blip, endStep: 0.02 }, { facts })).toEqual(['tail-cut']);
  });

  it('leaves alone what is not heard to its end', () => {
    const cut = { endLevelDb: -3, endStep: 0.3 };
    for (const opcodes of [
      'loop_mode=loop_continuous loop_start=10 loop_end=20000',
      'loop_mode=loop_sustain loop_start=10 loop_end=20000',
      'end=30000',
      'direction=reverse',
      'ampeg_decay=0.4 ampeg_sustain=0',
      'oscillator=on',
    ]) {
      expect(codesOf(cut, { opcodes }), opcodes).toEqual([]);
    }
    const loops = [{ start: 10, end: 20000, type: 'forward' as const }];
    expect(codesOf(cut, { facts: { loops } })).toEqual([]);
    expect(codesOf(cut, { facts: { loops }, opcodes: 'loop_mode=no_loop' })).toEqual(['tail-cut']);
    expect(codesOf(cut, { opcodes: 'loop_mode=one_shot end=44099' })).toEqual(['tail-cut']);
  });

  it('finds it where one of several regions plays to the end', () => {
    const samples = measuredSamples({ 'a.wav': { survey: survey({ endLevelDb: -3, endStep: 0.1 }) } });
    const { findings } = checkText('<region> sample=a.wav key=60 end=30000\n<region> sample=a.wav key=61', {
      samples,
    });
    expect(findings.map(({ code }) => code)).toEqual(['tail-cut']);
    expect(findings[0]?.message).toContain('only 3 dB softer than the loudest part');
  });
});

describe('end-click', () => {
  it('finds a step four times what the sound moves, a hundredth of its peak and −60 dB of full scale', () => {
    const step = { endLevelDb: -30, endStep: 0.02, greatestEndStep: 0.005 };
    expect(codesOf(step)).toEqual(['end-click']);
    expect(codesOf({ ...step, greatestEndStep: 0.0051 })).toEqual([]);
    expect(codesOf({ ...step, peak: 2.1 })).toEqual([]);
    const soft = { peak: 0.05, endLevelDb: -30, greatestEndStep: 0 };
    expect(codesOf({ ...soft, endStep: 0.0009 })).toEqual([]);
    expect(codesOf({ ...soft, endStep: 0.0011 })).toEqual(['end-click']);
  });

  it('says nothing of what has a finding already, or is not heard', () => {
    const step = { endStep: 0.2, greatestEndStep: 0.001 };
    expect(codesOf({ ...step, endLevelDb: -3 })).toEqual(['tail-cut']);
    expect(codesOf({ ...step, endLevelDb: -3, dcOffset: [0.2] })).toEqual(['dc-offset']);
    expect(codesOf({ ...step, endLevelDb: -30 }, { opcodes: 'end=40000' })).toEqual([]);
  });
});

describe('dc-offset', () => {
  it('finds a mean from 2 % of the peak on, of either sign and in any channel', () => {
    // Long enough that a half wave of 20 Hz, which a sound that breaks off may leave, does not matter.
    const long = { frames: 441000, peak: 0.5 };
    const facts = { frames: 441000 };
    expect(codesOf({ ...long, dcOffset: [0.0099] }, { facts })).toEqual([]);
    expect(codesOf({ ...long, dcOffset: [0.0101] }, { facts })).toEqual(['dc-offset']);
    expect(codesOf({ ...long, dcOffset: [0, -0.0101] }, { facts: { ...facts, channels: 2 } })).toEqual([
      'dc-offset',
    ]);
    expect(codesOf({ ...long, peak: 0.05, dcOffset: [0.0019] }, { facts })).toEqual([]);
  });

  it('allows short sounds what their length explains', () => {
    // A tone of 20 Hz and amplitude A over one and a half periods, 75 ms: its mean is (2A / 2π·20) / 0.075, 0.212 A.
    const mean = (2 * 0.5) / (2 * Math.PI * 20) / 0.075;
    expect(mean).toBeCloseTo(0.106, 3);
    expect(codesOf({ frames: 3308, dcOffset: [mean] }, { facts: { frames: 3308 } })).toEqual([]);
  });
});

describe('clipped', () => {
  it('finds three stretches or ten frames', () => {
    const clipping = (runs: number, frames: number) => ({ clipping: { runs, frames, firstFrame: 4410 } });
    expect(codesOf(clipping(2, 9))).toEqual([]);
    expect(codesOf(clipping(3, 9))).toEqual(['clipped']);
    expect(codesOf(clipping(1, 10))).toEqual(['clipped']);
  });

  it('takes a wave that stays at full scale most of the time for one that is meant so', () => {
    expect(codesOf({ clipping: { runs: 400, frames: 40000, firstFrame: 0 } })).toEqual([]);
  });

  it('says where', () => {
    const samples = measuredSamples({
      'a.wav': { survey: survey({ clipping: { runs: 4, frames: 20, firstFrame: 4410 } }) },
    });
    const { findings } = checkText('<region> sample=a.wav key=60', { samples });
    expect(findings[0]?.message).toContain('20 frames in 4 places, first at frame 4410 (0.100 s)');
  });
});

describe('opposite-phase and false-stereo', () => {
  it('find channels that cancel one another out', () => {
    expect(codesOf({ channelCorrelation: -0.94 }, stereo)).toEqual([]);
    expect(codesOf({ channelCorrelation: -0.95 }, stereo)).toEqual(['opposite-phase']);
    expect(codesOf({ channelCorrelation: 0.95 }, stereo)).toEqual([]);
    expect(codesOf({ channelCorrelation: null }, stereo)).toEqual([]);
  });

  it('find channels that hold the same, where there are several', () => {
    expect(codesOf({ channelCorrelation: 1, hasEqualChannels: true }, stereo)).toEqual(['false-stereo']);
    expect(codesOf({ channelCorrelation: 1, hasEqualChannels: false }, stereo)).toEqual([]);
    expect(codesOf({ hasEqualChannels: true })).toEqual([]);
  });
});

describe('mixed-rates and mixed-depths', () => {
  const text = ['a', 'b', 'c', 'd']
    .map((name, at) => `<region> sample=${name}.wav key=${60 + at}`)
    .join('\n');
  const findings = (facts: Partial<SampleFacts>[]) =>
    checkText(text, {
      samples: measuredSamples(
        Object.fromEntries(facts.map((one, at) => [`${'abcd'[at]}.wav`, { facts: one, survey: null }])),
      ),
      severities: { 'sample-missing': 'off' },
    }).findings;

  it('stand at the first sample that differs from most, with the others beside', () => {
    const rates = [48000, 44100, 44100, 48000].map((sampleRate) => ({ sampleRate }));
    // Equally many: what comes first is the rule.
    const [even, ...none] = findings(rates);
    expect(none).toEqual([]);
    expect(even?.code).toBe('mixed-rates');
    expect(even?.message).toContain(
      '"b.wav" is at 44100 Hz; 2 others are at 48000 Hz, 1 other is at 44100 Hz.',
    );
    expect(even?.related).toHaveLength(1);
    const [odd] = findings([48000, 44100, 44100, 44100].map((sampleRate) => ({ sampleRate })));
    expect(odd?.message).toContain('"a.wav" is at 48000 Hz; 3 others are at 44100 Hz. Convert');
    expect(odd?.related).toBeUndefined();
  });

  it('are none where all are the same', () => {
    expect(findings([{}, {}, {}, {}])).toEqual([]);
  });

  it('leave out encodings without a depth, and take 24 bits and more for the same', () => {
    const depths = (...bits: number[]) =>
      findings(bits.map((bitsPerSample) => ({ bitsPerSample }))).map(({ code }) => code);
    expect(depths(16, 0, 16, 16)).toEqual([]);
    expect(depths(24, 32, 24, 64)).toEqual([]);
    expect(depths(16, 24, 16, 16)).toEqual(['mixed-depths']);
    expect(depths(8, 16, 16, 16)).toEqual(['mixed-depths']);
  });

  it('wait until all is known', () => {
    const states = { 'a.wav': { sampleRate: 48000 }, 'b.wav': {}, 'c.wav': {} };
    const known = measuredSamples(
      Object.fromEntries(Object.entries(states).map(([path, facts]) => [path, { facts, survey: null }])),
    );
    const pending = {
      ...known,
      state: (path: string) => (path === 'd.wav' ? { kind: 'pending' as const } : known.state(path)),
    };
    expect(checkText(text, { samples: pending }).findings).toEqual([]);
    const there = { ...known, state: (path: string) => known.state(path === 'd.wav' ? 'c.wav' : path) };
    expect(checkText(text, { samples: there }).findings.map(({ code }) => code)).toEqual(['mixed-rates']);
  });
});
