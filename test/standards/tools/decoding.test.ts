import { writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { openAudio } from '../../../server/audio/decode/openAudio';
import { measureLoopSeam } from '../../../server/audio/measure/loops/loopSeam';
import { measureSamplePitch } from '../../../server/audio/measure/measureSample';
import { surveySample } from '../../../server/audio/measure/survey';
import { temporaryFolder } from '../../temporaryFolder';
import { readerOf } from '../../unit/audio/byteFiles';
import { hasTools, SoundFiles } from './soundFiles';
import { tonesFile } from './tonesFile';

// Files that ffmpeg, libsndfile and the reference encoders of FLAC and Vorbis wrote, decoded by ffmpeg and by this
// project. For FLAC and Vorbis, ffmpeg has decoders of its own; no code is shared but libopus, which both use for Opus.

const folder = temporaryFolder('decoding');
const files = new SoundFiles(folder);

/** Has ffmpeg decode files into others beside them, in numbers of 64 bits; all at once, since it takes longer to start than to decode. */
function decodeByFfmpeg(...names: readonly string[]): void {
  const inputs = names.flatMap((name) => ['-i', name]);
  const outputs = names.flatMap((name, at) => [
    '-map',
    `${at}:a`,
    '-f',
    'f64le',
    '-c:a',
    'pcm_f64le',
    `${name}.raw`,
  ]);
  files.run('ffmpeg', '-v', 'error', '-y', ...inputs, ...outputs);
}

/** The channels of a file that ffmpeg has decoded. */
function byFfmpeg(name: string, channels: number): Float64Array[] {
  const raw = files.bytes(`${name}.raw`);
  const values = new Float64Array(raw.buffer, raw.byteOffset, raw.byteLength / 8);
  return Array.from({ length: channels }, (_, channel) => {
    const own = new Float64Array(values.length / channels);
    for (let frame = 0; frame < own.length; frame++) own[frame] = values[frame * channels + channel];
    return own;
  });
}

/** The channels of a file as this project decodes them, and the frames that it expects. */
async function decoded(bytes: Uint8Array): Promise<{ frames: number; channels: Float64Array[] }> {
  const audio = await openAudio(readerOf(bytes));
  if (!audio) throw new Error('The file is not decoded.');
  const blocks: ArrayLike<number>[][] = [];
  for await (const block of audio.blocks()) blocks.push(block.map((values) => values.slice()));
  await audio.close();
  const length = blocks.reduce((sum, block) => sum + (block[0]?.length ?? 0), 0);
  const channels = Array.from({ length: audio.channels }, (_, channel) => {
    const all = new Float64Array(length);
    let at = 0;
    for (const block of blocks) {
      all.set(block[channel] ?? [], at);
      at += block[channel]?.length ?? 0;
    }
    return all;
  });
  return { frames: audio.frames, channels };
}

/** Expects the frames of a file that ffmpeg has decoded to be those that ffmpeg gives, but for the count of those that it gives at the end. */
async function expectSame(
  name: string,
  channels: number,
  tolerance: number,
  isLengthSame = true,
): Promise<void> {
  const expected = byFfmpeg(name, channels);
  const found = await decoded(files.bytes(name));
  expect(found.channels).toHaveLength(channels);
  found.channels.forEach((values, channel) => {
    const other = expected[channel] ?? new Float64Array(0);
    expect(values.length).toBe(found.frames);
    expect(Math.abs(other.length - values.length)).toBeLessThanOrEqual(isLengthSame ? 0 : 4096);
    let greatest = 0;
    for (let frame = 0; frame < Math.min(values.length, other.length); frame++) {
      greatest = Math.max(greatest, Math.abs(values[frame] - other[frame]));
    }
    expect(greatest).toBeLessThanOrEqual(tolerance);
  });
}

/** A source in which every channel has another tone, so that their order shows. */
function writeSource(name: string, rate: number, channels: number, bits: 8 | 16 | 24): void {
  const tones = Array.from({ length: channels }, (_, number) => ({ hertz: 200 + 130 * number, peak: 0.4 }));
  writeFileSync(files.path(name), tonesFile(tones, 0.4123, rate, bits));
}

describe.skipIf(!hasTools('ffmpeg', 'flac', 'sox'))('FLAC', () => {
  const kinds = ([8, 16, 24] as const).flatMap((bits) =>
    [1, 2, 6, 8].map((channels) => [bits, channels] as const),
  );

  it.each(kinds)('of %i bits and %i channels is decoded exactly', async (bits, channels) => {
    writeSource('source.wav', 44_100, channels, bits);
    const coded: [string, string[]][] = [
      ['fast.flac', ['-0']],
      ['small.flac', ['-8']],
      ['lax.flac', ['--blocksize=576', '--lax']],
      ['coded.ogg', ['--ogg']],
    ];
    for (const [name, options] of coded)
      files.run('flac', '-s', '-f', '--channel-map=none', ...options, 'source.wav', '-o', name);
    decodeByFfmpeg(...coded.map(([name]) => name));
    for (const [name] of coded) await expectSame(name, channels, 0);
  });

  it('of an unusual rate and depth, which only the stream information tells, is decoded exactly', async () => {
    files.run(
      'sox',
      '-R',
      '-n',
      '-r',
      '700001',
      '-b',
      '24',
      '-c',
      '1',
      'odd.wav',
      'synth',
      '0.05',
      'sine',
      '440',
    );
    const raw = ['--force-raw-format', '--endian=little', '--sign=signed', '--channels=1'];
    files.run('sox', 'odd.wav', '-t', 'raw', 'odd.raw');
    files.run(
      'flac',
      '-s',
      '-f',
      '--lax',
      ...raw,
      '--bps=24',
      '--sample-rate=655351',
      'odd.raw',
      '-o',
      'odd.flac',
    );
    decodeByFfmpeg('odd.flac');
    await expectSame('odd.flac', 1, 0);
  });

  it('of unknown length, as it is written into a pipe, is as long as what was written', async () => {
    const raw =
      '-s --force-raw-format --endian=little --sign=signed --channels=2 --bps=16 --sample-rate=44100';
    for (const frames of [1, 4096, 50_001]) {
      files.synthesise('source.wav', frames / 44_100, '-r', '44100', '-b', '16', '-c', '2');
      files.run('sox', 'source.wav', '-t', 'raw', 'source.raw', 'trim', '0', `${frames}s`);
      const written = files.bytes('source.raw').length / 4;
      const piped = `cat source.raw | flac ${raw} -c - | cat > piped.flac`;
      files.run('sh', '-c', piped);
      expect(files.run('metaflac', '--show-total-samples', 'piped.flac').trim()).toBe('0');
      expect(await files.facts('piped.flac')).toMatchObject({ frames: written, problems: [] });
      decodeByFfmpeg('piped.flac');
      await expectSame('piped.flac', 2, 0);
    }
  });
});

describe.skipIf(!hasTools('ffmpeg', 'oggenc', 'sox'))('Vorbis', () => {
  // The order of channels does not depend on the rate; the sizes of blocks do.
  const kinds = [
    ...[1, 2, 3, 5, 6, 7, 8].map((count) => [44_100, count] as const),
    ...[8000, 96_000].flatMap((rate) => [1, 2, 6].map((count) => [rate, count] as const)),
  ];

  it.each(kinds)('at %i Hz with %i channels is decoded as ffmpeg does', async (rate, channels) => {
    writeSource('source.wav', rate, channels, 16);
    files.run('oggenc', '-Q', '-q', '4', 'source.wav', '-o', 'coded.ogg');
    // ffmpeg does not always end where the last page says (Vorbis I specification, A.2); the encoder keeps the length.
    decodeByFfmpeg('coded.ogg');
    await expectSame('coded.ogg', channels, 2e-6, false);
    expect((await files.facts('coded.ogg')).frames).toBe((await files.facts('source.wav')).frames);
  });

  it('counts recordings one behind the other as sox does, and decodes them all', async () => {
    for (const [number, seconds] of [1.5, 7, 0.4].entries()) {
      files.synthesise('part.wav', seconds, '-r', '44100', '-b', '16', '-c', '2');
      files.run('oggenc', '-Q', '--serial', String(number), 'part.wav', '-o', `part${number}.ogg`);
    }
    files.run('sh', '-c', 'cat part0.ogg part1.ogg part2.ogg > chain.ogg');
    const facts = await files.facts('chain.ogg');
    expect(facts).toMatchObject(files.bySox('chain.ogg'));
    expect(facts.problems.map(({ kind }) => kind)).toEqual(['size-wrong']);
    const { channels } = await decoded(files.bytes('chain.ogg'));
    const parts = [0, 1, 2].map((number) => files.bytes(`part${number}.ogg`));
    const one = (await Promise.all(parts.map((bytes) => decoded(bytes)))).map(
      (part) => part.channels[0] ?? [],
    );
    expect(Array.from(channels[0] ?? [])).toEqual(one.flatMap((values) => Array.from(values ?? [])));
    expect(channels[0]).toHaveLength(facts.frames);
  });
});

describe.skipIf(!hasTools('ffmpeg', 'sox', 'opusenc'))('Opus', () => {
  it.each([1, 2, 3, 5, 6, 8])('with %i channels is decoded as ffmpeg does', async (channels) => {
    writeSource('source.wav', 48_000, channels, 16);
    files.run('opusenc', '--quiet', 'source.wav', 'coded.opus');
    // ffmpeg decodes it in floating point as well, but converts in between; 16 bits are 3e-5.
    decodeByFfmpeg('coded.opus');
    await expectSame('coded.opus', channels, 3e-4);
  });

  it('is played with the gain that its header says (RFC 7845, section 5.1)', async () => {
    writeSource('source.wav', 48_000, 2, 16);
    files.run('opusenc', '--quiet', 'source.wav', 'coded.opus');
    const plain = await decoded(files.bytes('coded.opus'));
    const bytes = files.bytes('coded.opus');
    // ffmpeg sets the gain and the checksum anew where the stream is copied with this filter.
    files.run(
      'ffmpeg',
      '-v',
      'error',
      '-y',
      '-i',
      'coded.opus',
      '-c',
      'copy',
      '-bsf:a',
      'opus_metadata=gain=-1536',
      'quiet.opus',
    );
    expect(files.bytes('quiet.opus').length).toBeGreaterThan(bytes.length / 2);
    const quiet = await decoded(files.bytes('quiet.opus'));
    // 1536 / 256 = 6 dB.
    const factor = 10 ** (-6 / 20);
    for (const frame of [1000, 5000, 20_000]) {
      const [value = 0, other = 0] = [plain.channels[0]?.[frame], quiet.channels[0]?.[frame]];
      expect(other).toBeCloseTo(value * factor, 6);
    }
  });
});

describe.skipIf(!hasTools('ffmpeg', 'flac', 'oggenc', 'opusenc', 'sox'))(
  'measures of compressed samples',
  () => {
    const kinds: [string, string[]][] = [
      ['tone.flac', ['flac', '-s', '-f', 'tone.wav', '-o', 'tone.flac']],
      ['vorbis.ogg', ['oggenc', '-Q', 'tone.wav', '-o', 'vorbis.ogg']],
      ['tone.opus', ['opusenc', '--quiet', 'tone.wav', 'tone.opus']],
      ['flac.ogg', ['flac', '-s', '-f', '--ogg', 'tone.wav', '-o', 'flac.ogg']],
    ];

    it.each(kinds)('%s', async (name, [tool = '', ...args]) => {
      // At 48 kHz, 440 Hz has 109.09 frames a period, 11 periods 1200.
      files.synthesise('tone.wav', 2, '-r', '48000', '-b', '16', '-c', '2');
      files.run(tool, ...args);
      const bytes = files.bytes(name);
      const pitch = await measureSamplePitch(readerOf(bytes));
      expect(pitch?.key).toBe(69);
      expect(Math.abs(pitch?.cents ?? 99)).toBeLessThan(0.5);
      expect(await measureLoopSeam(readerOf(bytes), 24_000, 24_000 + 36_000 - 1)).toMatchObject({
        isAudible: false,
      });
      expect(await measureLoopSeam(readerOf(bytes), 24_000, 24_000 + 36_000 - 1 + 50)).toMatchObject({
        isAudible: true,
      });
      const survey = await surveySample(readerOf(bytes));
      expect(survey).toMatchObject({ frames: 96_000, clipping: null });
      expect(survey?.channelCorrelation).toBeCloseTo(1, 3);
      expect(survey?.peak).toBeCloseTo(10 ** (-3 / 20), 1);
    });

    it.each(kinds)('of damaged %s never fail', async (name, [tool = '', ...args]) => {
      files.synthesise('tone.wav', 0.4, '-r', '48000', '-b', '16', '-c', '2');
      files.run(tool, ...args);
      const whole = files.bytes(name);
      const survey = async (bytes: Uint8Array) => {
        const found = await surveySample(readerOf(bytes));
        if (found) expect(found.frames).toBeLessThanOrEqual(48_000);
        await measureLoopSeam(readerOf(bytes), 1000, 9000);
        return found;
      };
      for (let part = 0; part < 10; part++)
        await survey(whole.slice(0, Math.floor((whole.length * part) / 10)));
      for (let at = 0; at < whole.length; at += at < 150 ? 7 : 2411) {
        const damaged = whole.slice();
        damaged[at] = (damaged[at] ?? 0) ^ 0xff;
        await survey(damaged);
      }
      // Something is left of a file whose last tenth is missing.
      writeFileSync(files.path(`cut-${name}`), whole.slice(0, Math.floor(whole.length * 0.9)));
      const cut = await survey(files.bytes(`cut-${name}`));
      if (name === 'tone.flac') expect(cut?.frames).toBeGreaterThan(0.6 * 0.4 * 48_000);
    });
  },
);
