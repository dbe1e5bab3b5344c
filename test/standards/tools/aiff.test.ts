import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readSampleFacts } from '../../../server/audio/readSampleFacts';
import { temporaryFolder } from '../../temporaryFolder';
import { bigChunk, common, form, instrument, marks, sound } from '../../unit/audio/bigEndianFiles';
import { readDamaged } from '../../unit/audio/boundedReading';
import { readerOf, silence } from '../../unit/audio/byteFiles';
import { hasTools, SoundFiles } from './soundFiles';

// AIFF and AIFF-C files that one general audio tool (sox) or library (libsndfile) wrote, read by both and by this
// project, which shares no code with them.

const folder = temporaryFolder('aiff-tools');
const files = new SoundFiles(folder);
const tools = hasTools('sox', 'sndfile-info', 'sndfile-convert');

describe.skipIf(!tools)('AIFF facts against sox and libsndfile', () => {
  const depths = [8, 16, 24, 32].flatMap((bits) => [1, 2, 6].map((channels) => [bits, channels] as const));

  it.each(depths)('%i bits, %i channels, written by sox', async (bits, channels) => {
    for (const [ending, rate] of [
      ['aiff', '44100'],
      ['aifc', '96000'],
    ] as const) {
      const name = `${bits}-${channels}.${ending}`;
      files.synthesise(name, 0.1017, '-r', rate, '-b', String(bits), '-c', String(channels));
      const facts = await files.facts(name);
      const bySox = files.bySox(name);
      expect(facts).toMatchObject(bySox);
      expect(facts).toMatchObject(files.bySndfile(name));
      expect(facts).toMatchObject({ container: 'aiff', encoding: 'pcm', bitsPerSample: bits, problems: [] });
      expect(facts.lengthSeconds).toBeCloseTo(bySox.frames / bySox.sampleRate, 5);
    }
  });

  it.each([8000, 11025, 22050, 32000, 37800, 48000, 88200, 192000])('a sample rate of %i', async (rate) => {
    const name = `rate-${rate}.aiff`;
    files.synthesise(name, 0.01, '-r', String(rate), '-b', '16');
    expect(await files.facts(name)).toMatchObject(files.bySndfile(name));
    expect((await files.facts(name)).sampleRate).toBe(rate);
  });

  it.each([
    ['NONE', ['-pcms8'], 'pcm', 8],
    ['raw', ['-pcmu8'], 'pcm', 8],
    ['NONE', ['-pcm24'], 'pcm', 24],
    ['sowt', ['-endian=little', '-pcm16'], 'pcm', 16],
    ['42n1', ['-endian=little', '-pcm24'], 'pcm', 24],
    ['23ni', ['-endian=little', '-pcm32'], 'pcm', 32],
    ['FL32', ['-float32'], 'float', 32],
    ['FL64', ['-float64'], 'float', 64],
    ['ulaw', ['-ulaw'], 'mulaw', 8],
    ['alaw', ['-alaw'], 'alaw', 8],
    ['DWVW', ['-dwvw16'], 'dwvw', 16],
  ])('compression type %s (%j), written by libsndfile', async (type, options, encoding, bits) => {
    files.synthesise('plain.wav', 0.1017, '-r', '22050', '-b', '24', '-c', '1');
    const name = `libsndfile${options.join('')}.aif`;
    files.run('sndfile-convert', ...options, 'plain.wav', name);
    expect(files.run('sndfile-info', name)).toMatch(new RegExp(`Encoding\\s*:\\s*${type}`));
    const facts = await files.facts(name);
    expect(facts).toMatchObject(files.bySndfile(name));
    expect(facts).toMatchObject({ encoding, bitsPerSample: bits, problems: [] });
  });

  it('counts the frames of a file that is cut short as libsndfile does', async () => {
    files.synthesise('whole.aiff', 0.1, '-r', '44100', '-b', '24', '-c', '2');
    const whole = files.bytes('whole.aiff');
    for (const length of [500, 7777, whole.length - 1, whole.length - 6]) {
      writeFileSync(files.path('cut.aiff'), whole.slice(0, length));
      const facts = await files.facts('cut.aiff');
      expect(facts).toMatchObject(files.bySndfile('cut.aiff'));
      expect(facts.problems.map((problem) => problem.kind)).toEqual(['cut-short']);
    }
  });

  it('takes the frames of a file that sox wrote into a pipe from its size', async () => {
    const bytes = execFileSync('sox', '-r 8000 -n -b 16 -t aiff - synth 800s sine 440'.split(' '), {
      stdio: ['ignore', 'pipe', 'ignore'],
    });
    expect(await readSampleFacts(readerOf(new Uint8Array(bytes)))).toMatchObject({
      kind: 'facts',
      facts: { frames: 800, problems: [{ kind: 'size-wrong' }] },
    });
  });

  const played = form(
    'AIFF',
    bigChunk('COMM', common(1, 1000, 16)),
    bigChunk('MARK', marks([1, 100, 'start'], [2, 900, 'end'], [3, 950, 'tail'])),
    bigChunk('INST', instrument(67, -12, [1, 1, 2], [1, 2, 3])),
    bigChunk('SSND', sound(silence(2000))),
  );

  it('finds root key and loops where libsndfile finds them', async () => {
    writeFileSync(files.path('played.aiff'), played);
    const { rootKey, loops } = await files.facts('played.aiff');
    const text = files.run('sndfile-info', '--instrument', 'played.aiff');
    expect(Number(/Base note\s*:\s*(\d+)/.exec(text)?.[1])).toBe(rootKey);
    // It prints the first frame that is no longer played.
    const found = [...text.matchAll(/Start\s*:\s*(\d+)\s+End\s*:\s*(\d+)/g)];
    expect(found.map((match) => [Number(match[1]), Number(match[2]) - 1])).toEqual(
      loops.map((loop) => [loop.start, loop.end]),
    );
    expect(loops.length).toBe(2);
  });

  it('reads the same loops from the WAV file that libsndfile makes of it', async () => {
    writeFileSync(files.path('played.aiff'), played);
    files.run('sndfile-convert', 'played.aiff', 'played.wav');
    const { rootKey, loops } = await files.facts('played.aiff');
    expect(await files.facts('played.wav')).toMatchObject({ container: 'wav', rootKey, loops });
  });

  it('reads the root key from the AIFF file that sox makes of it', async () => {
    // Its loops name markers that sox does not write.
    writeFileSync(files.path('played.aiff'), played);
    files.run('sox', 'played.aiff', 'again.aiff');
    expect((await files.facts('again.aiff')).rootKey).toBe(67);
  });

  it('reads damaged files', async () => {
    files.synthesise('plain.aiff', 0.1, '-r', '44100', '-b', '24', '-c', '2');
    files.run('sndfile-convert', '-ulaw', 'plain.aiff', 'mulaw.aif');
    for (const name of ['plain.aiff', 'mulaw.aif']) await readDamaged(files.bytes(name));
    await readDamaged(played);
  });
});
