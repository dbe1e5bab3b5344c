import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { kWeighting } from '../../../server/audio/measure/kWeighting';
import { LoudnessMeter } from '../../../server/audio/measure/loudness';
import { surveySample } from '../../../server/audio/measure/survey';
import { temporaryFolder } from '../../temporaryFolder';
import { readerOf } from '../../unit/audio/byteFiles';
import { hasTools, SoundFiles } from './soundFiles';
import { tonesFile } from './tonesFile';

const folder = temporaryFolder('loudness');
const files = new SoundFiles(folder);

describe('K-weighting', () => {
  it('has the coefficients that ITU-R BS.1770-5 gives at 48 kHz (Annex 1, tables 1 and 2)', () => {
    const { shelf, highPass } = kWeighting(48_000);
    const near = (found: readonly number[], expected: readonly number[]) =>
      found.forEach((value, place) => {
        expect(value).toBeCloseTo(expected[place], 12);
      });
    near(shelf.b, [1.53512485958697, -2.69169618940638, 1.19839281085285]);
    near(shelf.a, [-1.69065929318241, 0.73248077421585]);
    near(highPass.b, [1, -2, 1]);
    near(highPass.a, [-1.99004745483398, 0.99007225036621]);
  });
});

// EBU Tech 3341, version 4.0, November 2023, table 1 (edition from memory; the signals are those of earlier versions too).
describe('loudness of the signals that EBU Tech 3341 gives, table 1', () => {
  const seconds = new Map<number, Float32Array>();
  /** A second of 1 kHz at 48 kHz, made once for each level. */
  function second(level: number): Float32Array {
    const known = seconds.get(level);
    if (known) return known;
    const made = new Float32Array(48_000);
    for (let frame = 0; frame < made.length; frame++)
      made[frame] = 10 ** (level / 20) * Math.sin((Math.PI * frame) / 24);
    seconds.set(level, made);
    return made;
  }

  /** Sines of 1 kHz at 48 kHz, one level a channel in dB of full scale, one stretch behind the other. */
  function integrated(...stretches: [seconds: number, levels: number[]][]): number | null {
    const meter = new LoudnessMeter(48_000, stretches[0]?.[1].length ?? 0);
    for (const [seconds, levels] of stretches) {
      for (let frames = Math.round(seconds * 48_000); frames > 0; frames -= 48_000) {
        const length = Math.min(frames, 48_000);
        // A whole number of periods, so that stretches and blocks join.
        meter.add(levels.map((level) => second(level).subarray(0, length)));
      }
    }
    return meter.result().integrated;
  }
  const stereo = (level: number) => [level, level];

  // The document allows 0.1 LU.
  it.each<[string, [number, number[]][], number]>([
    ['1', [[20, stereo(-23)]], -23],
    ['2', [[20, stereo(-33)]], -33],
    [
      '3',
      [
        [10, stereo(-36)],
        [60, stereo(-23)],
        [10, stereo(-36)],
      ],
      -23,
    ],
    [
      '4',
      [
        [10, stereo(-72)],
        [10, stereo(-36)],
        [60, stereo(-23)],
        [10, stereo(-36)],
        [10, stereo(-72)],
      ],
      -23,
    ],
    [
      '5',
      [
        [20, stereo(-26)],
        [20.1, stereo(-20)],
        [20, stereo(-26)],
      ],
      -23,
    ],
    ['6', [[20, [-28, -28, -24, -30, -30]]], -23],
  ])('case %s', (_, stretches, expected) => {
    expect(Math.abs((integrated(...stretches) ?? 0) - expected)).toBeLessThanOrEqual(0.1);
  });
});

describe('loudness of short and silent sounds', () => {
  it('is that of the whole, as of the blocks of a longer one (EBU Tech 3341, version 4.0, leaves it open)', () => {
    const sine = (frames: number) => [
      Float32Array.from({ length: frames }, (_, frame) => Math.sin((2 * Math.PI * 997 * frame) / 48_000)),
    ];
    const short = new LoudnessMeter(48_000, 1);
    short.add(sine(12_000));
    expect(short.result().integrated).toBeNull();
    expect(Math.abs((short.result().momentary ?? 0) + 3.01)).toBeLessThan(0.1);
    const silent = new LoudnessMeter(48_000, 1);
    silent.add([new Float32Array(96_000)]);
    expect(silent.result()).toEqual({ integrated: null, momentary: null });
  });
});

describe.skipIf(!hasTools('sox'))('loudness of the tone that ITU-R BS.1770-5 gives', () => {
  // Annex 1: a sine of 997 Hz at 0 dBFS in one front channel reads −3.01 LKFS.
  it.each([44_100, 48_000, 96_000])('at %i Hz', async (rate) => {
    files.run(
      'sox',
      '-R',
      '-n',
      '-r',
      String(rate),
      '-b',
      '24',
      'full.wav',
      'synth',
      '3',
      'sine',
      '997',
      'norm',
      '0',
    );
    const survey = await surveySample(readerOf(files.bytes('full.wav')));
    expect(Math.abs((survey?.loudness ?? 0) + 3.01)).toBeLessThan(0.02);
  });
});

describe.skipIf(!hasTools('ffmpeg', 'sox'))('loudness against the ebur128 filter of ffmpeg', () => {
  /** Integrated and greatest momentary loudness of files, all at once: it takes longer to start than to measure. */
  function byFfmpeg(names: readonly string[]): { integrated: number; momentary: number }[] {
    const inputs = names.flatMap((name) => ['-i', name]);
    const filters = names.map((_, at) => `[${at}:a]ebur128=framelog=info[o${at}]`).join(';');
    const outputs = names.flatMap((_, at) => ['-map', `[o${at}]`, '-f', 'null', '-']);
    const args = ['-hide_banner', '-nostats', ...inputs, '-filter_complex', filters, ...outputs];
    const { stderr } = spawnSync('ffmpeg', args, { cwd: folder, encoding: 'utf8', maxBuffer: 1 << 26 });
    return names.map((_, at) => {
      const own = stderr.split(/^(?=\[)/m).filter((line) => line.startsWith(`[Parsed_ebur128_${at} `));
      const said = own.join('');
      // There is an empty summary first, of what the filter is tried with.
      const summaries = [...said.matchAll(/Integrated loudness:\s+I:\s+(-?[\d.]+) LUFS/g)];
      const integrated = Number(summaries.at(-1)?.[1]);
      const frames = [...said.matchAll(/ M:\s*(-?[\d.]+) S:/g)].map((match) => Number(match[1]));
      return { integrated, momentary: Math.max(...frames) };
    });
  }

  async function expectSame(...names: readonly string[]): Promise<void> {
    for (const [at, { integrated, momentary }] of byFfmpeg(names).entries()) {
      const survey = await surveySample(readerOf(files.bytes(names[at])));
      expect(integrated).toBeGreaterThan(-70);
      expect(Math.abs((survey?.loudness ?? 0) - integrated)).toBeLessThanOrEqual(0.1);
      expect(Math.abs((survey?.momentaryLoudness ?? 0) - momentary)).toBeLessThanOrEqual(0.1);
    }
  }

  const kinds = [8000, 22_050, 44_100, 48_000, 88_200, 96_000, 192_000].flatMap((rate) =>
    [1, 2].map((channels) => [rate, channels] as const),
  );

  it.each(kinds)('noise and a dying tone at %i Hz, %i channels', async (rate, channels) => {
    const kind = ['-r', String(rate), '-b', '24', '-c', String(channels)];
    const parts: [string, string[]][] = [
      ['noise.wav', ['synth', '2.34', 'pinknoise', 'gain', '-12']],
      ['tone.wav', ['synth', '4', 'sine', '196', 'fade', 'l', '0', '4', '4', 'gain', '-6']],
      ['quiet.wav', ['synth', '3', 'whitenoise', 'gain', '-48']],
    ];
    for (const [name, effects] of parts) {
      files.run('sox', '-R', '-n', ...kind, name, ...effects);
    }
    // The quiet part falls below the relative gate.
    files.run('sox', 'noise.wav', 'quiet.wav', 'tone.wav', 'all.wav');
    await expectSame(...parts.map(([name]) => name), 'all.wav');
  });

  it.each([4, 5, 6, 8])('counts the channels of %i as speakers', async (channels) => {
    // Every channel in turn carries a tone of its own, much louder than that of the others.
    // The filter counts the channels at the back of 7.1 like those at the sides, which the standard does not (Annex 3);
    // behind one of the low frequencies these would tell.
    const told = [0, 1, 2, 3, 4, 5, 6, 7].filter((channel) => channels < 8 || channel < 3 || channel > 5);
    const names = told
      .filter((channel) => channel < channels)
      .map((loud) => {
        const tones = Array.from({ length: channels }, (_, channel) => ({
          hertz: 300 + 100 * channel,
          peak: channel === loud ? 0.4 : 0.01,
        }));
        writeFileSync(files.path(`speaker-${loud}.wav`), tonesFile(tones, 2, 48_000, 24));
        return `speaker-${loud}.wav`;
      });
    await expectSame(...names);
  });

  it.each(['flac', 'ogg', 'aiff'])('in a file of %s', async (ending) => {
    files.run(
      'sox',
      '-R',
      '-n',
      '-r',
      '44100',
      '-b',
      '24',
      '-c',
      '2',
      'played.wav',
      'synth',
      '2.2',
      'pinknoise',
      'gain',
      '-9',
    );
    files.run('ffmpeg', '-v', 'error', '-y', '-i', 'played.wav', `played.${ending}`);
    await expectSame(`played.${ending}`);
  });
});
