import { expect, it } from 'vitest';
import { readSampleFacts } from '../../../../server/audio/readSampleFacts';
import type { SampleFacts } from '../../../../server/model/samples';
import { bigChunk, instrument, marks } from '../bigEndianFiles';
import { chunk, readerOf, sampler, silence, text } from '../byteFiles';
import { block, flac, streamInfo, verbatimFrame } from '../flacFiles';

// Layouts are those of RFC 9639, section 8.

async function factsOf(bytes: Uint8Array): Promise<SampleFacts> {
  const reading = await readSampleFacts(readerOf(bytes));
  if (reading.kind !== 'facts') throw new Error(JSON.stringify(reading));
  return reading.facts;
}

async function reasonFor(bytes: Uint8Array): Promise<string> {
  const reading = await readSampleFacts(readerOf(bytes));
  return reading.kind === 'unreadable' ? reading.reason : `not unreadable: ${reading.kind}`;
}

const info = block(0, streamInfo(44100, 2, 24, 100));
const audio = silence(60);

it('reads a plain file', async () => {
  expect(await factsOf(flac(block(0, streamInfo(96000, 8, 24, 2 ** 36 - 1), true), audio))).toEqual({
    container: 'flac',
    encoding: 'flac',
    sampleRate: 96000,
    channels: 8,
    bitsPerSample: 24,
    frames: 2 ** 36 - 1,
    lengthSeconds: (2 ** 36 - 1) / 96000,
    loops: [],
    rootKey: null,
    fineTuneCents: null,
    problems: [],
  });
});

it('passes a tag before the marker, with and without its footer', async () => {
  const whole = [...flac(info, block(1, silence(10), true), audio)];
  const tag = (flags: number, bytes: number) => [...text('ID3\x04\0'), flags, 0, 0, 2, 4, ...silence(bytes)];
  // 2 · 128 + 4 bytes, seven bits in each byte of the size.
  for (const before of [tag(0, 260), tag(0x10, 270)]) {
    expect(await factsOf(new Uint8Array([...before, ...whole]))).toMatchObject({ frames: 100, problems: [] });
  }
});

it('reads root key and loops that were kept from a WAV file', async () => {
  const kept = block(2, [...text('riff'), ...chunk('smpl', sampler(57, 0x80000000, [[1, 10, 99]]))]);
  const bytes = flac(info, block(4, silence(5000)), kept, block(1, silence(9000), true), audio);
  const facts = { rootKey: 57, fineTuneCents: 50, loops: [{ start: 10, end: 99, type: 'alternating' }] };
  expect(await factsOf(bytes)).toMatchObject({ ...facts, problems: [] });
  const note = block(2, [...text('riff'), ...chunk('inst', [62, 10, 0, 0, 127, 1, 127])]);
  expect(await factsOf(flac(info, note, block(1, [], true), audio))).toMatchObject({
    rootKey: 62,
    fineTuneCents: -10,
  });
});

it('reads root key and loops that were kept from an AIFF file', async () => {
  const keep = (part: number[]) => block(2, [...text('aiff'), ...part]);
  const bytes = flac(
    info,
    keep(bigChunk('INST', instrument(48, 5, [1, 1, 2]))),
    keep(bigChunk('MARK', marks([1, 20, 'a'], [2, 80, 'b']))),
    block(1, [], true),
    audio,
  );
  expect(await factsOf(bytes)).toMatchObject({
    rootKey: 48,
    fineTuneCents: -5,
    loops: [{ start: 20, end: 79, type: 'forward' }],
    problems: [],
  });
});

it('leaves alone what other programs keep', async () => {
  const kept = block(2, [...text('ownd'), ...chunk('smpl', sampler(57, 0, []))]);
  expect(await factsOf(flac(info, kept, block(1, [], true), audio))).toMatchObject({
    rootKey: null,
    problems: [],
  });
});

it('reports a file that cannot hold what it promises', async () => {
  // Four stretches of 4096 frames, each of 50 bytes or more, the last one perhaps less.
  const long = block(0, streamInfo(44100, 1, 16, 4 * 4096, 50), true);
  const kinds = async (bytes: number) =>
    (await factsOf(flac(long, silence(bytes)))).problems.map((problem) => problem.kind);
  expect(await kinds(150)).toEqual([]);
  expect(await kinds(149)).toEqual(['cut-short']);
  expect(await kinds(0)).toEqual(['cut-short']);
  expect((await factsOf(flac(info, block(4, silence(400))).slice(0, 200))).problems[0]?.kind).toBe(
    'cut-short',
  );
});

it('says when the file does not say how long it is', async () => {
  const facts = await factsOf(flac(block(0, streamInfo(44100, 1, 16, 0), true), audio));
  expect(facts).toMatchObject({ frames: 0, problems: [{ kind: 'size-wrong' }] });
});

it('counts the frames of a stream that does not say how long it is, from its end', async () => {
  const head = block(0, streamInfo(44100, 2, 16, 0), true);
  const values = Array.from({ length: 4096 }, (_, frame) => (frame * 7919) % 30_000);
  const frames = [0, 1, 2].map((number) => verbatimFrame(number, [values, values]));
  const last = verbatimFrame(3, [values.slice(0, 99), values.slice(0, 99)]);
  const whole = flac(head, ...frames, last);
  expect(await factsOf(whole)).toMatchObject({ frames: 3 * 4096 + 99, problems: [] });
  const tagged = new Uint8Array([...whole, ...text('TAG'), ...silence(125)]);
  expect(await factsOf(tagged)).toMatchObject({ frames: 3 * 4096 + 99, problems: [] });
  for (const lost of [1, 200, last.length - 1]) {
    const problems = [{ kind: 'cut-short' }];
    expect(await factsOf(whole.slice(0, -lost))).toMatchObject({ frames: 3 * 4096, problems });
  }
});

it('says why a file cannot be read', async () => {
  const whole = flac(info, block(1, [], true), audio);
  for (const length of [5, 20, 41]) expect(await reasonFor(whole.slice(0, length))).toContain('cut short');
  expect(await reasonFor(flac(block(0, silence(20), true), audio))).toContain('too short');
  expect(await reasonFor(flac(block(0, streamInfo(0, 1, 16, 9), true), audio))).toContain('rate is 0');
  expect(await reasonFor(flac(block(0, streamInfo(8000, 1, 2, 9), true), audio))).toContain('2 bits');
  expect(await reasonFor(flac(block(1, silence(40), true), audio))).toContain('does not start with');
});
