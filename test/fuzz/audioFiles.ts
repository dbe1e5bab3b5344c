import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { openAudio } from '../../server/audio/decode/openAudio';
import { readFrameLayout } from '../../server/audio/decode/readFrameLayout';
import { measureLoopSeam } from '../../server/audio/measure/loops/loopSeam';
import { measureSamplePitch } from '../../server/audio/measure/measureSample';
import { mostMeasuredValues } from '../../server/audio/measure/openMeasured';
import { surveySample } from '../../server/audio/measure/survey';
import { bigChunk, common, form, instrument, marks, sound } from '../unit/audio/bigEndianFiles';
import { readBounded } from '../unit/audio/boundedReading';
import { chunk, format, readerOf, sampler, silence, text, wave } from '../unit/audio/byteFiles';
import { block, flac, silentFrame, streamInfo, verbatimFrame } from '../unit/audio/flacFiles';
import { opusHead, page, vorbis } from '../unit/audio/oggFiles';
import { target } from './target';

const zigzag = (frames: number) => Array.from({ length: frames }, (_, at) => ((at * 37) % 200) - 100);
const loops = sampler(60, 1, [[0, 10, 90]]);
const files: Uint8Array[] = [
  wave(chunk('fmt ', format(1, 2, 44_100, 16)), chunk('data', zigzag(800)), chunk('smpl', loops)),
  wave(chunk('fmt ', format(3, 1, 48_000, 32)), chunk('data', zigzag(800)), chunk('smpl', loops)),
  form(
    'AIFC',
    bigChunk('FVER', [0xa2, 0x80, 0x51, 0x40]),
    bigChunk('COMM', common(2, 100, 16, 'sowt')),
    bigChunk('MARK', marks([1, 10, 'start'], [2, 90, 'end'])),
    bigChunk('SSND', sound(silence(400))),
    bigChunk('INST', instrument(60, 3, [1, 1, 2])),
  ),
  flac(
    block(0, streamInfo(44_100, 2, 16, 300, 14)),
    block(2, [...text('riff'), ...chunk('smpl', loops)]),
    block(1, silence(20), true),
    verbatimFrame(0, [zigzag(100), zigzag(100)]),
    silentFrame(1, 2, 100),
    verbatimFrame(2, [zigzag(100), zigzag(100)]),
  ),
  new Uint8Array(vorbis(5, 100, 2000)),
  new Uint8Array([...page(9, 2, 0n, opusHead(1, 312, 22_050)), ...page(9, 4, 4000n, silence(80))]),
];
const samples = 'samples-demo/millrace-chimes/Samples';
for (const name of readdirSync(samples).slice(0, 2))
  files.push(new Uint8Array(readFileSync(join(samples, name))).slice(0, 6000));

interface Damage {
  at: number;
  value: number;
  kind: 'set' | 'flip' | 'drop' | 'put' | 'cut' | 'length';
}

const damage: fc.Arbitrary<Damage> = fc.record({
  // Headers matter more than what follows.
  at: fc.oneof(fc.nat(80), fc.nat(400), fc.nat(7000)),
  value: fc.oneof(fc.nat(255), fc.constantFrom(0, 1, 127, 128, 254, 255)),
  kind: fc.constantFrom('set', 'set', 'flip', 'flip', 'drop', 'put', 'cut', 'length'),
});

function damagedBytes(bytes: Uint8Array, list: readonly Damage[]): Uint8Array {
  let now: Uint8Array = bytes.slice();
  for (const { at: place, value, kind } of list) {
    const at = now.length === 0 ? 0 : place % now.length;
    const few = 1 + (value & 7);
    if (kind === 'set') now.fill(value, at, at + 1);
    else if (kind === 'flip') now[at] ^= 1 << (value & 7);
    else if (kind === 'drop') now = joined(now.subarray(0, at), now.subarray(at + few));
    else if (kind === 'put')
      now = joined(now.subarray(0, at), new Uint8Array(few).fill(value), now.subarray(at));
    else if (kind === 'length') now.fill(value, at & ~3, (at & ~3) + 4);
    else now = now.subarray(0, at);
  }
  return now;
}

function joined(...parts: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}

const damagedFile = fc
  .record({ bytes: fc.constantFrom(...files), list: fc.array(damage, { maxLength: 5 }) })
  .map(({ bytes, list }) => damagedBytes(bytes, list));

/**
 * Headers of every file are read by few bytes, its audio is decoded and measured within bounds, and nothing throws. Headers alone
 * too: they take a hundredth of the time, and most of what can go wrong is in them.
 */
export const audioTargets = [
  target('headers', 'audio files', damagedFile, async (bytes) => {
    await readBounded(bytes);
    const layout = await readFrameLayout(readerOf(bytes));
    if (!layout) return;
    const { dataStart, frames, channels, bytesPerSample } = layout;
    assert(
      frames === 0 || dataStart + frames * channels * bytesPerSample <= bytes.length,
      'audio past the end',
    );
  }),
  target('audio', 'audio files', damagedFile, async (bytes) => {
    await readBounded(bytes);
    const reader = readerOf(bytes);
    const survey = await surveySample(reader);
    if (survey) {
      assert(Number.isFinite(survey.peak) && survey.dcOffset.every(Number.isFinite), 'a level is no number');
      assert(survey.frames * survey.dcOffset.length <= 2 * mostMeasuredValues, 'too much is looked at');
      assert(survey.leadingSilenceFrames <= survey.frames && survey.trailingSilenceFrames <= survey.frames);
    }
    const pitch = await measureSamplePitch(reader);
    assert(
      !pitch || (Number.isFinite(pitch.hertz) && pitch.confidence >= 0 && pitch.confidence <= 1),
      'pitch',
    );
    await measureLoopSeam(reader, 10, 90);
    const audio = await openAudio(reader);
    if (!audio) return;
    const frames = await audio.read(20, 50).catch(() => []);
    assert(frames.every((values) => values.length <= 50));
    await audio.close();
  }),
];
