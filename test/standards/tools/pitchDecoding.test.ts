import { execFileSync, spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { readFrameLayout } from '../../../server/audio/decode/readFrameLayout';
import { readFrames } from '../../../server/audio/decode/readFrames';
import { temporaryFolder } from '../../temporaryFolder';
import { readerOf } from '../../unit/audio/byteFiles';

// General audio tools (sox, ffmpeg) write one sound in many kinds of files and turn each back into raw numbers of 64
// bits; the frames decoded here have to be the same. No code is shared.

const hasSox = spawnSync('sox', ['--version']).error === undefined;
const hasFfmpeg = spawnSync('ffmpeg', ['-version']).error === undefined;
const folder = temporaryFolder('pitch-decoding');

const ffmpeg = (...args: string[]) =>
  execFileSync('ffmpeg', ['-loglevel', 'error', ...args], { cwd: folder });
const sox = (...args: string[]) => execFileSync('sox', args, { cwd: folder });

/** Holds the frames of a stereo file against raw numbers of 64 bits, low byte first. */
async function expectFrames(name: string, raw: Buffer): Promise<void> {
  const expected = new Float64Array(raw.buffer.slice(raw.byteOffset, raw.byteOffset + raw.byteLength));
  const reader = readerOf(new Uint8Array(readFileSync(join(folder, name))));
  const layout = await readFrameLayout(reader);
  if (!layout) throw new Error(`${name} has no layout`);
  expect(layout.frames).toBe(expected.length / 2);
  const channels = await readFrames(reader, layout, 0, layout.frames);
  const errors = [0, 1].map((channel) =>
    Array.from({ length: layout.frames }, (_, frame) =>
      Math.abs((channels[channel]?.[frame] ?? Number.NaN) - expected[2 * frame + channel]),
    ),
  );
  expect(Math.max(...errors.flat())).toBeLessThan(5e-7);
}

describe.skipIf(!hasSox)('frames are what sox decodes', () => {
  const kinds: [name: string, options: string[]][] = [
    ['u8.wav', ['-b', '8']],
    ['s16.wav', ['-b', '16']],
    ['s24.wav', ['-b', '24']],
    ['s32.wav', ['-b', '32']],
    ['f32.wav', ['-b', '32', '-e', 'floating-point']],
    ['f64.wav', ['-b', '64', '-e', 'floating-point']],
    ['alaw.wav', ['-e', 'a-law']],
    ['mulaw.wav', ['-e', 'mu-law']],
    ['s8.aiff', ['-b', '8']],
    ['s16.aiff', ['-b', '16']],
    ['s24.aiff', ['-b', '24']],
    ['s32.aiff', ['-b', '32']],
    ['f32.aifc', ['-b', '32', '-e', 'floating-point']],
    ['s16.aifc', ['-b', '16']],
  ];

  it.each(kinds)('%s', async (name, options) => {
    sox(
      '-R',
      '-n',
      '-r',
      '44100',
      '-c',
      '2',
      ...options,
      name,
      'synth',
      '0.05',
      'sine',
      '300',
      'sine',
      '777',
      'gain',
      '-3',
    );
    const raw = sox(name, '-t', 'raw', '-e', 'floating-point', '-b', '64', '-L', '-');
    await expectFrames(name, raw);
  });
});

describe.skipIf(!hasFfmpeg)('frames are what ffmpeg decodes', () => {
  const kinds: [codec: string, name: string, options: string[]][] = [
    // With its low byte first, ffmpeg writes the compression type sowt.
    ...['s16le', 's16be', 's24be', 's32be', 'f32be', 'f64be', 'alaw', 'mulaw'].map(
      (kind): [string, string, string[]] => [`pcm_${kind}`, `${kind}.aiff`, []],
    ),
    ['pcm_s64le', 'wide.wav', []],
    ['pcm_s24le', 'long-24.wav', ['-rf64', 'always']],
    ['pcm_f32le', 'long-float.wav', ['-rf64', 'always']],
  ];

  // One process writes all, and one decodes all: it takes longer to start than to do that.
  beforeAll(() => {
    const sound = ['-f', 'lavfi', '-i', 'aevalsrc=0.5*sin(2*PI*t*300)|0.4*sin(2*PI*t*777):d=0.05'];
    const written = kinds.flatMap(([codec, name, options]) => ['-c:a', codec, ...options, name]);
    ffmpeg('-y', ...sound, ...written);
    const inputs = kinds.flatMap(([, name]) => ['-i', name]);
    const raw = ['-f', 'f64le', '-c:a', 'pcm_f64le'];
    const outputs = kinds.flatMap(([, name], at) => ['-map', `${at}:a`, ...raw, `${name}.raw`]);
    ffmpeg('-y', ...inputs, ...outputs);
  });

  it.each(kinds)('%s in %s %j', async (_codec, name) => {
    await expectFrames(name, readFileSync(join(folder, `${name}.raw`)));
  });
});
