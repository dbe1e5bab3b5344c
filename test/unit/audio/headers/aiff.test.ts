import fc from 'fast-check';
import { expect, it } from 'vitest';
import { readSampleFacts } from '../../../../server/audio/readSampleFacts';
import type { SampleFacts } from '../../../../server/model/samples';
import { b16, bigChunk, common, form, instrument, marks, sound } from '../bigEndianFiles';
import { readerOf, silence, text } from '../byteFiles';

// Layouts are those of Audio Interchange File Format 1.3, Apple, 1989, and the AIFF-C draft, Apple, 1991, from memory;
// the tests against general audio tools check them.

async function factsOf(bytes: Uint8Array): Promise<SampleFacts> {
  const reading = await readSampleFacts(readerOf(bytes));
  if (reading.kind !== 'facts') throw new Error(JSON.stringify(reading));
  return reading.facts;
}

async function reasonFor(bytes: Uint8Array): Promise<string> {
  const reading = await readSampleFacts(readerOf(bytes));
  return reading.kind === 'unreadable' ? reading.reason : `not unreadable: ${reading.kind}`;
}

const stereo = bigChunk('COMM', common(2, 100, 16));
const audio = bigChunk('SSND', sound(silence(400)));

it('reads a plain file', async () => {
  expect(await factsOf(form('AIFF', stereo, audio))).toEqual({
    container: 'aiff',
    encoding: 'pcm',
    sampleRate: 44100,
    channels: 2,
    bitsPerSample: 16,
    frames: 100,
    lengthSeconds: 100 / 44100,
    loops: [],
    rootKey: null,
    fineTuneCents: null,
    problems: [],
  });
});

it('reads chunks in any order, with and without their pad byte', async () => {
  const odd = bigChunk('SSND', sound(silence(41)));
  const mono = bigChunk('COMM', common(1, 41, 8));
  const name = bigChunk('NAME', text('Bright tone'));
  const inst = bigChunk('INST', instrument(61, 0));
  for (const bytes of [
    form('AIFF', mono, name, inst, odd),
    form('AIFF', inst, odd, name, mono),
    form('AIFF', odd.slice(0, -1), mono, inst),
  ]) {
    expect(await factsOf(bytes)).toMatchObject({ frames: 41, rootKey: 61, problems: [] });
  }
});

it.each([
  ['NONE', 24, 3, 'pcm', 24],
  ['twos', 16, 2, 'pcm', 16],
  ['sowt', 16, 2, 'pcm', 16],
  ['in24', 24, 3, 'pcm', 24],
  ['42ni', 24, 3, 'pcm', 24],
  ['in32', 32, 4, 'pcm', 32],
  ['fl32', 32, 4, 'float', 32],
  ['FL32', 32, 4, 'float', 32],
  ['fl64', 64, 8, 'float', 64],
  ['FL64', 64, 8, 'float', 64],
  // The type says what a sample takes, while the size in the chunk is that of what it is unpacked to.
  ['ulaw', 16, 1, 'mulaw', 8],
  ['alaw', 16, 1, 'alaw', 8],
])('knows compression type %s', async (type, bits, bytes, encoding, shown) => {
  const whole = form(
    'AIFC',
    bigChunk('COMM', common(2, 30, bits, type)),
    bigChunk('SSND', sound(silence(60 * bytes))),
  );
  expect(await factsOf(whole)).toMatchObject({ encoding, bitsPerSample: shown, frames: 30, problems: [] });
  const cut = await factsOf(whole.slice(0, -10 * bytes));
  expect(cut).toMatchObject({ frames: 25, problems: [{ kind: 'cut-short' }] });
});

it('shows a compression type of another kind as it is and takes its frames from the header', async () => {
  const bytes = form('AIFC', bigChunk('COMM', common(1, 999, 12, 'Zed ')), audio);
  expect(await factsOf(bytes)).toMatchObject({ encoding: 'type-Zed', frames: 999, problems: [] });
});

it('counts only the audio behind the offset in the sound chunk', async () => {
  const bytes = form('AIFF', stereo, bigChunk('SSND', sound(silence(400), 16)));
  expect(await factsOf(bytes)).toMatchObject({ frames: 100, problems: [] });
  expect(await factsOf(bytes.slice(0, -4))).toMatchObject({ frames: 99 });
});

it('reads root key, fine tuning and loops between markers', async () => {
  const mark = bigChunk('MARK', marks([7, 10, 'start'], [2, 90, 'end'], [3, 95, 'tail'], [4, 100, '']));
  // Played lower by 20 cents, so it sounds above the key.
  const inst = bigChunk('INST', instrument(57, -20, [1, 7, 2], [2, 3, 4]));
  for (const bytes of [
    form('AIFF', stereo, mark, inst, audio),
    form('AIFF', inst, stereo, audio, mark),
    form('AIFF', stereo, audio, bigChunk('ANNO', silence(9000)), mark, inst),
  ]) {
    expect(await factsOf(bytes)).toMatchObject({
      rootKey: 57,
      fineTuneCents: 20,
      // The marker stands before the frame of its number, so that frame is the first one that is not played.
      loops: [
        { start: 10, end: 89, type: 'forward' },
        { start: 95, end: 99, type: 'alternating' },
      ],
      problems: [],
    });
  }
});

it('leaves absurd values out and says so', async () => {
  const mark = bigChunk('MARK', marks([1, 50, 'a'], [2, 20, 'b'], [3, 500, 'c']));
  const said = async (inst: number[]) => {
    const facts = await factsOf(form('AIFF', stereo, mark, bigChunk('INST', inst), audio));
    return [facts.loops, facts.problems.map((problem) => problem.message).join('\n')] as const;
  };
  expect(await said(instrument(60, 0, [1, 1, 2]))).toEqual([[], expect.stringContaining('at frame 20, not')]);
  expect(await said(instrument(60, 0, [1, 1, 9]))).toEqual([[], expect.stringContaining('marker 9')]);
  expect((await said(instrument(60, 0, [5, 2, 1])))[1]).toContain('unknown type 5');
  expect((await said(instrument(60, 0, [1, 1, 3])))[1]).toContain('the last frame is 99');
  expect((await said(instrument(200, 0)))[1]).toContain('root key in the file is 200');
  expect((await said(instrument(60, 99)))[1]).toContain('99 cents');
});

it.each([0, 0x7f000008, 0xffffffff])(
  'takes the audio from the file where a size of %i was never filled in',
  async (size) => {
    const facts = await factsOf(form('AIFF', stereo, bigChunk('SSND', sound(silence(200)), size)));
    expect(facts.frames).toBe(50);
    expect(facts.problems.map((problem) => problem.kind)).toEqual(['size-wrong']);
  },
);

it('reads any whole sample rate as the number formula of IEEE 754 writes it', async () => {
  await fc.assert(
    fc.asyncProperty(fc.integer({ min: 1, max: 2 ** 32 - 1 }), async (rate) => {
      const exponent = Math.floor(Math.log2(rate));
      let mantissa = BigInt(rate) << BigInt(63 - exponent);
      const bytes: number[] = [];
      for (let count = 0; count < 8; count++, mantissa >>= 8n) bytes.unshift(Number(mantissa & 255n));
      const comm = common(1, 200, 16, undefined, [...b16(16383 + exponent), ...bytes]);
      expect((await factsOf(form('AIFF', bigChunk('COMM', comm), audio))).sampleRate).toBe(rate);
    }),
  );
});

it('reads little of a long file', async () => {
  const names = Array.from({ length: 3000 }, (_, id): [number, number, string] => [
    id + 1,
    id,
    'A long name',
  ]);
  const bytes = form(
    'AIFF',
    bigChunk('COMM', common(1, 100_000, 16)),
    bigChunk('SSND', sound(silence(200_000))),
    bigChunk('MARK', marks(...names)),
    bigChunk('INST', instrument(60, 0, [1, 5, 9])),
  );
  const reader = readerOf(bytes);
  expect(await readSampleFacts(reader)).toMatchObject({
    kind: 'facts',
    facts: { loops: [{ start: 4, end: 7 }] },
  });
  expect(reader.reads.reduce((sum, read) => sum + read.length, 0)).toBeLessThan(20_000);
});

it('says why a file cannot be read', async () => {
  const whole = form('AIFF', stereo, audio);
  expect(await reasonFor(whole.slice(0, 30))).toContain('inside its header');
  expect(await reasonFor(whole.slice(0, 40))).toContain('before its audio');
  expect(await reasonFor(form('AIFF', audio))).toContain('no common chunk');
  expect(await reasonFor(form('AIFF', stereo, bigChunk('ANNO', silence(40))))).toContain('no sound chunk');
  expect(await reasonFor(form('AIFF', bigChunk('COMM', common(0, 1, 16)), audio))).toContain('no channels');
  expect(await reasonFor(form('AIFF', bigChunk('COMM', common(1, 1, 0)), audio))).toContain('0 bits');
  for (const rate of [silence(10), [0x7f, 0xff, ...silence(8)], [0xc0, 0x0e, 0xac, 0x44, ...silence(6)]]) {
    const comm = common(1, 1, 16, undefined, rate);
    expect(await reasonFor(form('AIFF', bigChunk('COMM', comm), audio))).toContain('sample rate');
  }
});
