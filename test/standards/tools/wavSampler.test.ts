import { execFileSync, spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import wavefile from 'wavefile';
import { readSampleFacts } from '../../../server/audio/readSampleFacts';
import { temporaryFolder } from '../../temporaryFolder';
import { readerOf } from '../../unit/audio/byteFiles';

// The layout of `smpl`, `fact` and `fmt ` as the general libraries wavefile (writing) and libsndfile (reading) know it. `fmt `
// and `fact` are of Multimedia Programming Interface and Data Specifications 1.0, IBM and Microsoft, August 1991; `smpl` and `inst`
// of Microsoft's Multimedia Data Standards Update, revision 3.0, April 15, 1994, new WAVE chunks. The section, and that the
// fraction counts up from the key, 0x80000000 being 50 cents, are from memory.

const folder = temporaryFolder('wav-sampler');
const hasSndfile = spawnSync('sndfile-info', []).error === undefined;

const loops = [
  { dwName: 0, dwType: 0, dwStart: 100, dwEnd: 899, dwFraction: 0, dwPlayCount: 0 },
  { dwName: 1, dwType: 1, dwStart: 5, dwEnd: 77, dwFraction: 0, dwPlayCount: 3 },
];

function written(bitDepth = '16'): Uint8Array {
  const wav = new wavefile.WaveFile();
  wav.fromScratch(1, 22050, bitDepth, new Float64Array(1000));
  Object.assign(wav.smpl, {
    chunkId: 'smpl',
    dwMIDIUnityNote: 67,
    dwMIDIPitchFraction: 0x40000000,
    dwNumSampleLoops: loops.length,
    loops,
  });
  return wav.toBuffer();
}

it('reads the smpl chunk that wavefile writes', async () => {
  expect(await readSampleFacts(readerOf(written()))).toMatchObject({
    kind: 'facts',
    facts: {
      rootKey: 67,
      // Half of 0x80000000, which is 50 cents.
      fineTuneCents: 25,
      loops: [
        { start: 100, end: 899, type: 'forward' },
        { start: 5, end: 77, type: 'alternating' },
      ],
      problems: [],
    },
  });
});

it.skipIf(!hasSndfile)('finds root key and loops where libsndfile finds them', async () => {
  const path = join(folder, 'loops.wav');
  writeFileSync(path, written());
  const text = execFileSync('sndfile-info', [path], { encoding: 'utf8' });
  const reading = await readSampleFacts(readerOf(written()));
  if (reading.kind !== 'facts') throw new Error(reading.kind);
  const { facts } = reading;
  expect(Number(/Midi Note\s*:\s*(\d+)/.exec(text)?.[1])).toBe(facts.rootKey);
  const found = [...text.matchAll(/Start\s*:\s*(\d+)\s+End\s*:\s*(\d+)/g)].map((match) => [
    Number(match[1]),
    Number(match[2]),
  ]);
  expect(found).toEqual(facts.loops.map((loop) => [loop.start, loop.end]));
});

it.each([
  ['8', 'pcm', 8],
  ['16', 'pcm', 16],
  ['24', 'pcm', 24],
  ['32', 'pcm', 32],
  ['32f', 'float', 32],
  ['64', 'float', 64],
])('agrees with wavefile on a file of depth %s', async (depth, encoding, bits) => {
  const bytes = written(depth);
  const read = new wavefile.WaveFile(bytes);
  const fmt = read.fmt as { numChannels: number; sampleRate: number; bitsPerSample: number };
  const frames = read.getSamples(true).length / fmt.numChannels;
  expect(fmt.bitsPerSample).toBe(bits);
  expect(await readSampleFacts(readerOf(bytes))).toMatchObject({
    kind: 'facts',
    facts: { encoding, sampleRate: fmt.sampleRate, channels: fmt.numChannels, bitsPerSample: bits, frames },
  });
});
