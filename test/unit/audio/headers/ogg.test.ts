import { expect, it } from 'vitest';
import { readSampleFacts } from '../../../../server/audio/readSampleFacts';
import type { SampleFacts } from '../../../../server/model/samples';
import { readerOf, silence, text } from '../byteFiles';
import { block, streamInfo } from '../flacFiles';
import { opusHead, page, vorbis, vorbisHead } from '../oggFiles';

async function factsOf(...parts: number[][]): Promise<SampleFacts> {
  const reading = await readSampleFacts(readerOf(new Uint8Array(parts.flat())));
  if (reading.kind !== 'facts') throw new Error(JSON.stringify(reading));
  return reading.facts;
}

async function reasonFor(...parts: number[][]): Promise<string> {
  const reading = await readSampleFacts(readerOf(new Uint8Array(parts.flat())));
  return reading.kind === 'unreadable' ? reading.reason : `not unreadable: ${reading.kind}`;
}

it('reads a Vorbis file', async () => {
  expect(await factsOf(vorbis(5, 100, 2000))).toEqual({
    container: 'ogg',
    encoding: 'vorbis',
    sampleRate: 44100,
    channels: 2,
    bitsPerSample: 0,
    frames: 2000,
    lengthSeconds: 2000 / 44100,
    loops: [],
    rootKey: null,
    fineTuneCents: null,
    problems: [],
  });
});

it('counts Opus at 48 kHz without its pre-skip (RFC 7845, section 4)', async () => {
  const bytes = [page(9, 2, 0n, opusHead(1, 312, 22050)), page(9, 4, 48312n, silence(80))];
  expect(await factsOf(...bytes)).toMatchObject({
    encoding: 'opus',
    sampleRate: 48000,
    channels: 1,
    frames: 48000,
    lengthSeconds: 1,
    problems: [],
  });
});

it('reads FLAC in Ogg (RFC 9639, section 10.1)', async () => {
  const head = [
    0x7f,
    ...text('FLAC'),
    1,
    0,
    0,
    1,
    ...text('fLaC'),
    ...block(0, streamInfo(48000, 2, 20, 700)),
  ];
  expect(await factsOf(page(1, 2, 0n, head), page(1, 4, 700n, silence(90)))).toMatchObject({
    encoding: 'flac',
    sampleRate: 48000,
    bitsPerSample: 20,
    frames: 700,
    problems: [],
  });
});

it('finds the audio among streams side by side', async () => {
  const bytes = [
    page(1, 2, 0n, [...text('fishead\0'), ...silence(56)]),
    page(2, 2, 0n, vorbisHead(1, 32000)),
    page(2, 0, 640n, silence(900)),
    page(2, 4, 1280n, silence(900)),
    page(1, 4, 77n, silence(30)),
  ];
  expect(await factsOf(...bytes)).toMatchObject({ sampleRate: 32000, frames: 1280, problems: [] });
});

it('counts recordings one behind the other (RFC 3533, section 4)', async () => {
  expect(await factsOf(vorbis(5, 100, 2000), vorbis(6, 100, 300), vorbis(7, 40))).toMatchObject({
    frames: 2340,
    problems: [{ kind: 'size-wrong', message: expect.stringContaining('3 recordings') }],
  });
  // Long ones, whose end is searched for.
  const long = (serial: number, pages: number) =>
    vorbis(serial, ...Array.from({ length: pages }, (_, number) => 1000 * (number + 1)));
  const bytes = new Uint8Array([...long(5, 700), ...long(6, 300), ...long(7, 1)]);
  const reader = readerOf(bytes);
  expect(await readSampleFacts(reader)).toMatchObject({ facts: { frames: 1_001_000 } });
  expect(reader.reads.reduce((sum, { length }) => sum + length, 0)).toBeLessThan(bytes.length / 4);
});

it('leaves out recordings of another kind, and does not guess where it cannot find where one ends', async () => {
  const mono = [...page(8, 2, 0n, vorbisHead(1, 44100)), ...page(8, 4, 500n, silence(700))];
  expect((await factsOf(vorbis(5, 100, 2000), mono, vorbis(6, 300))).frames).toBe(2300);
  const many = Array.from({ length: 40 }, (_, serial) => vorbis(serial, 10));
  expect(await factsOf(...many)).toMatchObject({ frames: 0, problems: [{ kind: 'size-wrong' }] });
});

it('passes pages in which no packet ends, and other bytes at the end', async () => {
  const bytes = [...vorbis(5, 100, 2000), ...page(5, 0, -1n, silence(255))];
  expect((await factsOf(bytes)).frames).toBe(2000);
  expect(await factsOf(vorbis(5, 100, 2000), text('TAG'), silence(125))).toMatchObject({
    frames: 2000,
    problems: [],
  });
});

it('is not misled by what looks like a page', async () => {
  const wrong = [...page(5, 0, 9_000_000n, silence(40))];
  wrong[22] = (wrong[22] ?? 0) ^ 1;
  const facts = await factsOf(vorbis(5, 100, 2000), wrong);
  expect(facts).toMatchObject({ frames: 2000, problems: [{ kind: 'chunk-broken' }] });
  const inside = [page(5, 2, 0n, vorbisHead(1, 8000)), page(5, 4, 50n, [...text('OggS'), ...silence(99)])];
  expect(await factsOf(...inside)).toMatchObject({ frames: 50 });
});

it('reports a file that is cut short and counts what is whole', async () => {
  const whole = vorbis(5, 100, 2000, 3000);
  // Within what the last page carries, and within its header.
  for (const lost of [1, 300, 710]) {
    expect(await factsOf(whole.slice(0, -lost))).toMatchObject({
      frames: 2000,
      problems: [{ kind: 'cut-short' }],
    });
  }
  const last = 27 + 3 + 700;
  expect(await factsOf(whole.slice(0, -last))).toMatchObject({
    frames: 2000,
    problems: [{ kind: 'size-wrong' }],
  });
});

it('reads little of a long file, whatever the size of its pages', async () => {
  for (const [size, most] of [
    [400, 10_000],
    [12_000, 30_000],
    [65_024, 200_000],
  ] as const) {
    const pages = Array.from({ length: 12 }, (_, number) => page(3, 0, BigInt(number * 9), silence(size)));
    const bytes = [page(3, 2, 0n, vorbisHead(1, 8000)), ...pages, page(3, 4, 999n, silence(size))].flat();
    const reader = readerOf(new Uint8Array(bytes), bytes.length);
    expect(await readSampleFacts(reader)).toMatchObject({ kind: 'facts', facts: { frames: 999 } });
    expect(reader.reads.length).toBeLessThanOrEqual(4);
    expect(reader.reads.reduce((sum, read) => sum + read.length, 0)).toBeLessThan(most);
  }
});

it('says why a file cannot be read', async () => {
  const end = page(1, 4, 10n, silence(30));
  expect(await reasonFor(vorbis(5, 100).slice(0, 20))).toContain('first page');
  expect(await reasonFor(vorbis(5, 100).slice(0, 50))).toContain('first page');
  expect(await reasonFor(page(1, 2, 0n, vorbisHead(0, 44100)), end)).toContain('no channels');
  expect(await reasonFor(page(1, 2, 0n, vorbisHead(1, 0)), end)).toContain('rate is 0');
  expect(await reasonFor(page(1, 2, 0n, vorbisHead(1, 8000, 7)), end)).toContain('version 7');
  expect(await reasonFor(page(1, 2, 0n, opusHead(1, 0, 0, 16)), end)).toContain('version 16');
  expect(await reasonFor(page(1, 2, 0n, vorbisHead(1, 8000).slice(0, 20)), end)).toContain('too short');
  expect(await reasonFor(page(1, 2, 0n, text('Speex   1.2')), end)).toContain('no Vorbis audio');
});
