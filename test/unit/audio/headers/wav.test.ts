import { expect, it } from 'vitest';
import { readSampleFacts } from '../../../../server/audio/readSampleFacts';
import type { SampleFacts } from '../../../../server/model/samples';
import { chunk, format, readerOf, sampler, silence, text, u16, u32, wave } from '../byteFiles';

// Layouts are those of Multimedia Programming Interface and Data Specifications 1.0, IBM and Microsoft, August 1991;
// `smpl` and `inst` are of Microsoft's Multimedia Data Standards Update, revision 3.0, April 15, 1994, new WAVE chunks (section
// from memory); `bext`, 602 bytes and more, is of EBU Tech 3285, version 2, May 2011, section 2.3 (edition and section from memory).

async function factsOf(bytes: Uint8Array): Promise<SampleFacts> {
  const reading = await readSampleFacts(readerOf(bytes));
  if (reading.kind !== 'facts') throw new Error(JSON.stringify(reading));
  return reading.facts;
}

async function reasonFor(bytes: Uint8Array): Promise<string> {
  const reading = await readSampleFacts(readerOf(bytes));
  return reading.kind === 'unreadable' ? reading.reason : `not unreadable: ${reading.kind}`;
}

const stereo = chunk('fmt ', format(1, 2, 44100, 16));

it('reads a plain file', async () => {
  expect(await factsOf(wave(stereo, chunk('data', silence(400))))).toEqual({
    container: 'wav',
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

it.each([8, 12, 16, 20, 24, 32, 64])('counts frames of %i bits', async (bits) => {
  const bytes = wave(
    chunk('fmt ', format(1, 1, 48000, bits)),
    chunk('data', silence(Math.ceil(bits / 8) * 30)),
  );
  expect(await factsOf(bytes)).toMatchObject({ frames: 30, bitsPerSample: bits, problems: [] });
});

it.each([
  [1, 16, 'pcm'],
  [3, 32, 'float'],
  [6, 8, 'alaw'],
  [7, 8, 'mulaw'],
])('names the encoding of format tag %i', async (tag, bits, encoding) => {
  expect(
    await factsOf(wave(chunk('fmt ', format(tag, 1, 8000, bits)), chunk('data', silence(8)))),
  ).toMatchObject({
    encoding,
    frames: 64 / bits,
  });
});

const guidEnd = [0, 0, 0, 0, 0x10, 0, 0x80, 0, 0, 0xaa, 0, 0x38, 0x9b, 0x71];

it('takes the encoding of an extensible file from its sub-format', async () => {
  const body = [...format(0xfffe, 2, 96000, 32), ...u16(22, 24), ...u32(3), ...u16(3), ...guidEnd];
  expect(await factsOf(wave(chunk('fmt ', body), chunk('data', silence(80))))).toMatchObject({
    encoding: 'float',
    frames: 10,
  });
});

it('shows a sub-format of another kind as it is', async () => {
  const body = [
    ...format(0xfffe, 1, 96000, 16),
    ...u16(22, 16),
    ...u32(4),
    ...u16(1),
    ...guidEnd.map(() => 7),
  ];
  const facts = await factsOf(wave(chunk('fmt ', body), chunk('data', silence(80))));
  expect(facts.encoding).toBe('extensible:01000707070707070707070707070707');
  expect(facts.frames).toBe(40);
});

it('passes chunks of odd size before the data, with and without their pad byte', async () => {
  const before = [chunk('LIST', silence(7)), chunk('JUNK', silence(5001)), chunk('bext', silence(603))];
  const padded = wave(...before, stereo, chunk('data', silence(40)));
  expect(await factsOf(padded)).toMatchObject({ frames: 10, problems: [] });
  const mono = chunk('fmt ', format(1, 1, 44100, 8));
  const unpadded = chunk('data', silence(41)).slice(0, -1);
  const facts = await factsOf(wave(mono, unpadded, chunk('smpl', sampler(61, 0, []))));
  expect(facts).toMatchObject({ frames: 41, rootKey: 61, problems: [] });
  expect(
    await factsOf(wave(mono, chunk('data', silence(41)), chunk('smpl', sampler(61, 0, [])))),
  ).toMatchObject({
    frames: 41,
    rootKey: 61,
  });
});

it('passes cue points, their labels and broadcast facts, in any order of chunks', async () => {
  const cue = chunk('cue ', [...u32(1), ...u32(1, 50), ...text('data'), ...u32(0, 0, 50)]);
  const labels = chunk('LIST', [...text('adtl'), ...chunk('labl', [...u32(1), ...text('Hit\0')])]);
  const smpl = chunk('smpl', sampler(57, 0, [[0, 10, 99]]));
  const data = chunk('data', silence(400));
  for (const bytes of [
    wave(chunk('bext', silence(602)), cue, labels, smpl, stereo, data),
    wave(data, labels, cue, smpl, chunk('bext', silence(602)), stereo),
    wave(smpl, data, stereo, cue, labels),
  ]) {
    expect(await factsOf(bytes)).toMatchObject({
      frames: 100,
      rootKey: 57,
      loops: [{ start: 10, end: 99 }],
      problems: [],
    });
  }
});

it('reads root key, fine tuning and loops, also from behind the data', async () => {
  const smpl = chunk(
    'smpl',
    sampler(57, 0x80000000, [
      [0, 10, 99],
      [1, 20, 80],
      [2, 0, 50],
    ]),
  );
  for (const bytes of [
    wave(stereo, smpl, chunk('data', silence(400))),
    wave(stereo, chunk('data', silence(400)), smpl),
    wave(stereo, chunk('data', silence(400)), chunk('LIST', silence(9000)), smpl),
  ]) {
    expect(await factsOf(bytes)).toMatchObject({
      frames: 100,
      rootKey: 57,
      fineTuneCents: 50,
      loops: [
        { start: 10, end: 99, type: 'forward' },
        { start: 20, end: 80, type: 'alternating' },
        { start: 0, end: 50, type: 'backward' },
      ],
      problems: [],
    });
  }
});

it('rounds the fine tuning to a hundredth of a cent', async () => {
  const bytes = wave(stereo, chunk('data', silence(4)), chunk('smpl', sampler(60, 0x15555555, [])));
  // 0x15555555 / 0x80000000 · 50 cents = 8.3333…
  expect((await factsOf(bytes)).fineTuneCents).toBe(8.33);
});

it('falls back to the inst chunk', async () => {
  const inst = chunk('inst', [62, 256 - 12, 0, 0, 127, 1, 127]);
  expect(await factsOf(wave(stereo, chunk('data', silence(4)), inst))).toMatchObject({
    rootKey: 62,
    // To be lowered by 12 cents, so it sounds as much above the key.
    fineTuneCents: 12,
    problems: [],
  });
  const both = wave(stereo, chunk('data', silence(4)), inst, chunk('smpl', sampler(64, 0, [])));
  expect(await factsOf(both)).toMatchObject({ rootKey: 64, fineTuneCents: 0 });
});

it('leaves absurd values out and says so', async () => {
  const smpl = sampler(
    4711,
    5,
    [
      [0, 90, 10],
      [9, 5, 6],
      [0, 1, 500],
    ],
    4_000_000,
  );
  const facts = await factsOf(wave(stereo, chunk('data', silence(400)), chunk('smpl', smpl)));
  expect(facts).toMatchObject({
    rootKey: null,
    fineTuneCents: null,
    loops: [
      { start: 5, end: 6, type: 'forward' },
      { start: 1, end: 500, type: 'forward' },
    ],
  });
  const said = facts.problems.map((problem) => problem.message).join('\n');
  for (const part of ['4711', '4,000,000 loops', 'frame 10, before', 'unknown type 9', 'last frame is 99']) {
    expect(said).toContain(part);
  }
  const inst = await factsOf(
    wave(stereo, chunk('data', silence(4)), chunk('inst', [200, 99, 0, 0, 0, 0, 0])),
  );
  expect(inst).toMatchObject({ rootKey: null, fineTuneCents: null, problems: [{ kind: 'value-absurd' }] });
});

it.each([0, 0xffffffff, 0x7ffff000])(
  'takes a data size of %i that was never filled in from the file',
  async (size) => {
    const facts = await factsOf(wave(stereo, chunk('data', silence(402), size)));
    expect(facts.frames).toBe(100);
    expect(facts.problems.map((problem) => problem.kind)).toEqual(['size-wrong']);
  },
);

it('tells audio of no length from a size that was not filled in', async () => {
  const facts = await factsOf(wave(stereo, chunk('data', []), chunk('LIST', text('INFO'))));
  expect(facts.frames).toBe(0);
  expect(facts.problems).toEqual([
    { kind: 'chunk-broken', message: 'The file holds no audio: it is 0 frames long.' },
  ]);
});

it('reports a file that is cut short', async () => {
  const whole = wave(stereo, chunk('data', silence(400)));
  const cut = await factsOf(whole.slice(0, -120));
  expect(cut.frames).toBe(70);
  expect(cut.problems).toEqual([
    { kind: 'cut-short', message: 'The file says that it holds 400 bytes of audio, but only 280 are there.' },
  ]);
  // Less than a frame is lost.
  expect((await factsOf(whole.slice(0, -1))).problems.map((problem) => problem.kind)).toEqual(['size-wrong']);
});

it('reads RF64 by its ds64 chunk (EBU Tech 3306)', async () => {
  const ds64 = chunk('ds64', [...u32(0, 0), ...u32(400, 0), ...u32(100, 0), ...u32(0)]);
  const bytes = wave(
    ds64,
    stereo,
    chunk('data', silence(400), 0xffffffff),
    chunk('smpl', sampler(70, 0, [])),
  );
  for (const form of ['RF64', 'BW64']) {
    bytes.set(text(form));
    expect(await factsOf(bytes)).toMatchObject({ frames: 100, rootKey: 70, problems: [] });
  }
});

it('reads a size over 4 GiB and reports what is missing', async () => {
  const ds64 = chunk('ds64', [...u32(0, 0), ...u32(0, 2), ...u32(0, 0), ...u32(0)]);
  const bytes = wave(ds64, stereo, chunk('data', silence(400), 0xffffffff));
  bytes.set(text('RF64'));
  const facts = await factsOf(bytes);
  expect(facts.problems).toEqual([
    {
      kind: 'cut-short',
      message: 'The file says that it holds 8589934592 bytes of audio, but only 400 are there.',
    },
  ]);
  // The same file at its full size, without its bytes in memory.
  const whole = await readSampleFacts(readerOf(bytes, bytes.length - 400 + 2 ** 33));
  expect(whole).toMatchObject({ kind: 'facts', facts: { frames: 2 ** 31, problems: [] } });
});

it('reads big-endian RIFX', async () => {
  const bytes = new Uint8Array([
    ...text('RIFX'),
    ...[0, 0, 0, 44],
    ...text('WAVEfmt '),
    ...[0, 0, 0, 16, 0, 1, 0, 1, 0, 0, 0x56, 0x22, 0, 0, 0xac, 0x44, 0, 2, 0, 16],
    ...text('data'),
    ...[0, 0, 0, 8, ...silence(8)],
  ]);
  expect(await factsOf(bytes)).toMatchObject({ sampleRate: 22050, channels: 1, frames: 4, problems: [] });
});

it('never reads the audio', async () => {
  const audio = 100_000;
  const reader = readerOf(
    wave(stereo, chunk('data', silence(audio)), chunk('smpl', sampler(60, 0, [[0, 1, 2]]))),
  );
  expect(await readSampleFacts(reader)).toMatchObject({
    kind: 'facts',
    facts: { loops: [{ start: 1, end: 2 }] },
  });
  expect(reader.reads.length).toBe(2);
  expect(reader.reads.reduce((sum, read) => sum + read.length, 0)).toBeLessThan(6000);
});

it('says why a file cannot be read', async () => {
  const whole = wave(stereo, chunk('data', silence(400)));
  expect(await reasonFor(new Uint8Array())).toContain('empty');
  expect(await reasonFor(whole.slice(0, 10))).toContain('cut short');
  expect(await reasonFor(whole.slice(0, 30))).toContain('cut short');
  expect(await reasonFor(whole.slice(0, 40))).toContain('cut short');
  expect(await reasonFor(new Uint8Array(text('Take two was better.\r\n')))).toContain('text');
  expect(await reasonFor(new Uint8Array(silence(100)))).toContain('not audio');
  expect(await reasonFor(wave(chunk('data', silence(4)), chunk('LIST', silence(40))))).toContain(
    'no format chunk',
  );
  expect(await reasonFor(wave(stereo, chunk('LIST', silence(40))))).toContain('no data chunk');
  expect(await reasonFor(wave(chunk('fmt ', format(1, 0, 44100, 16)), chunk('data', silence(40))))).toContain(
    'no channels',
  );
  expect(await reasonFor(wave(chunk('fmt ', format(1, 1, 0, 16)), chunk('data', silence(40))))).toContain(
    'rate is 0',
  );
  expect(await reasonFor(wave(chunk('fmt ', format(1, 1, 1, 0)), chunk('data', silence(40))))).toContain(
    '0 bits',
  );
  const video = wave(stereo);
  video.set(text('AVI '), 8);
  expect(await reasonFor(video)).toContain('no WAVE audio');
});

it('says when the disk fails', async () => {
  const failing = { ...readerOf(wave(stereo)), read: () => Promise.reject(new Error('gone')) };
  expect(await readSampleFacts(failing)).toEqual({
    kind: 'unreadable',
    reason: 'The file could not be read from its disk.',
  });
});
