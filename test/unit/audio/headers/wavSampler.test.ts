import { describe, expect, it } from 'vitest';
import { ByteWindow } from '../../../../server/audio/headers/byteWindow';
import {
  instrumentBytes,
  mostLoops,
  readInstrumentChunk,
  readSamplerChunk,
  samplerHeaderBytes,
  samplerLoopBytes,
} from '../../../../server/audio/headers/wavSampler';
import { readerOf, sampler } from '../byteFiles';

type Loop = [type: number, start: number, end: number];

/** Reads a sampler chunk that stands behind some other bytes. */
function read(key: number, fraction: number, loops: Loop[], count = loops.length, cut = 0) {
  const body = sampler(key, fraction, loops, count);
  const bytes = Uint8Array.from([9, 9, 9, ...body]);
  return readSamplerChunk(new ByteWindow(readerOf(bytes), bytes), 3, body.length - cut);
}

function readInstrument(...body: number[]) {
  const bytes = Uint8Array.from([9, 9, 9, ...body]);
  return readInstrumentChunk(new ByteWindow(readerOf(bytes), bytes), 3);
}

const forward: Loop = [0, 100, 200];

/**
 * The chunks `smpl` and `inst` of Microsoft's Multimedia Data Standards Update, revision 3.0, April 15, 1994, new WAVE chunks
 * (section and layout from memory). Judged by libraries in `standards/tools`: nine numbers of 32 bits, then six for each loop; the pitch fraction counts up from the key, 2^31 of it
 * being 50 cents; types 0, 1 and 2 are forward, alternating and backward.
 */
describe('a sampler chunk', () => {
  it('is as long as its numbers', () => {
    expect(samplerHeaderBytes).toBe(9 * 4);
    expect(samplerLoopBytes).toBe(6 * 4);
    expect(instrumentBytes).toBe(7);
  });

  it('gives the root key and its tuning', () => {
    expect(read(60, 0, [])).toEqual({ loops: [], rootKey: 60, fineTuneCents: 0, problems: [] });
    expect(read(127, 2 ** 31, [])).toMatchObject({ rootKey: 127, fineTuneCents: 50 });
    expect(read(0, 2 ** 30, [])).toMatchObject({ rootKey: 0, fineTuneCents: 25 });
    expect(read(60, 2 ** 31 / 3, []).fineTuneCents).toBe(16.67);
  });

  it('tells of a root key that is none', () => {
    const { rootKey, fineTuneCents, problems } = read(128, 2 ** 30, []);
    expect([rootKey, fineTuneCents]).toEqual([null, null]);
    expect(problems).toEqual([
      { kind: 'value-absurd', message: expect.stringMatching(/root key .* 128; .*0 to 127/) },
    ]);
  });

  it('gives loops of each type', () => {
    expect(read(60, 0, [forward, [1, 5, 6], [2, 7, 7]]).loops).toEqual([
      { start: 100, end: 200, type: 'forward' },
      { start: 5, end: 6, type: 'alternating' },
      { start: 7, end: 7, type: 'backward' },
    ]);
  });

  it('takes a loop of an unknown type for one that runs forward, and says so', () => {
    const { loops, problems } = read(60, 0, [forward, [3, 5, 6]]);
    expect(loops[1]).toEqual({ start: 5, end: 6, type: 'forward' });
    expect(problems).toEqual([
      { kind: 'value-absurd', message: expect.stringMatching(/^Loop 2 .* unknown type 3/) },
    ]);
  });

  it('leaves a loop out that ends before it starts, and says so', () => {
    const { loops, problems } = read(60, 0, [[0, 9, 8], forward]);
    expect(loops).toEqual([{ start: 100, end: 200, type: 'forward' }]);
    expect(problems).toEqual([
      {
        kind: 'value-absurd',
        message: expect.stringMatching(/^Loop 1 .* ends at frame 8, before its start at 9/),
      },
    ]);
  });

  it('reads no more loops than are there', () => {
    const less = read(60, 0, [forward, forward], 5);
    expect(less.loops).toHaveLength(2);
    expect(less.problems).toEqual([
      { kind: 'chunk-broken', message: expect.stringMatching(/promises 5 loops; the first 2 can be read/) },
    ]);
    expect(read(60, 0, [], 1).problems[0]?.message).toMatch(/promises 1 loop; none can be read/);
    const cut = read(60, 0, [forward, forward], 2, 1);
    expect(cut.loops).toHaveLength(1);
    expect(cut.problems[0]?.kind).toBe('chunk-broken');
    // Bytes behind the promised loops are none.
    expect(read(60, 0, [forward, forward], 1)).toMatchObject({ loops: [{ start: 100 }], problems: [] });
  });

  it('reads no more loops than an instrument could want', () => {
    const many = read(
      60,
      0,
      Array.from({ length: mostLoops + 1 }, () => forward),
    );
    expect(many.loops).toHaveLength(mostLoops);
    expect(many.problems[0]?.kind).toBe('value-absurd');
    expect(
      read(
        60,
        0,
        Array.from({ length: mostLoops }, () => forward),
      ).problems,
    ).toEqual([]);
  });
});

/** The same source, instrument chunk: the note first, then the cents that it has to be shifted by, from -50 to 50. */
describe('an instrument chunk', () => {
  it('gives the root key, and how far above it the file sounds', () => {
    expect(readInstrument(60, 10)).toEqual({ loops: [], rootKey: 60, fineTuneCents: -10, problems: [] });
    expect(readInstrument(127, 256 - 50)).toMatchObject({ rootKey: 127, fineTuneCents: 50 });
    expect(readInstrument(0, 50)).toMatchObject({ rootKey: 0, fineTuneCents: -50 });
    expect(readInstrument(60, 0).fineTuneCents).toBe(0);
  });

  it('tells of a key and of a tuning that are none', () => {
    expect(readInstrument(128, 10)).toEqual({
      loops: [],
      rootKey: null,
      fineTuneCents: null,
      problems: [{ kind: 'value-absurd', message: expect.stringMatching(/root key .* 128;/) }],
    });
    expect(readInstrument(60, 51)).toEqual({
      loops: [],
      rootKey: 60,
      fineTuneCents: null,
      problems: [
        { kind: 'value-absurd', message: expect.stringMatching(/fine tuning .* 51 cents; .*-50 to 50/) },
      ],
    });
    expect(readInstrument(60, 256 - 51).fineTuneCents).toBeNull();
  });
});
