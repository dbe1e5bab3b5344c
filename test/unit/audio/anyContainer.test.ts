import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readSampleFacts } from '../../../server/audio/readSampleFacts';
import { bigChunk, common, form, instrument, marks, sound } from './bigEndianFiles';
import { readBounded } from './boundedReading';
import { chunk, readerOf, sampler, silence, text } from './byteFiles';
import { block, flac, streamInfo } from './flacFiles';
import { opusHead, page, vorbis } from './oggFiles';

const samples: [string, Uint8Array][] = [
  [
    'AIFF-C',
    form(
      'AIFC',
      bigChunk('FVER', [0xa2, 0x80, 0x51, 0x40]),
      bigChunk('COMM', common(2, 100, 16, 'sowt')),
      bigChunk('MARK', marks([1, 10, 'start'], [2, 90, 'end'])),
      bigChunk('SSND', sound(silence(400))),
      bigChunk('INST', instrument(60, 3, [1, 1, 2])),
    ),
  ],
  [
    'FLAC',
    flac(
      block(0, streamInfo(44100, 2, 16, 100, 14)),
      block(2, [...text('riff'), ...chunk('smpl', sampler(60, 1, [[0, 10, 90]]))]),
      block(2, [...text('aiff'), ...bigChunk('MARK', marks([1, 10, 'start'], [2, 90, 'end']))]),
      block(2, [...text('aiff'), ...bigChunk('INST', instrument(60, 3, [1, 1, 2]))]),
      block(1, silence(20), true),
      silence(60),
    ),
  ],
  ['Ogg Vorbis', new Uint8Array(vorbis(5, 100, 2000))],
  [
    'Ogg Opus',
    new Uint8Array([...page(9, 2, 0n, opusHead(1, 312, 22050)), ...page(9, 4, 4000n, silence(80))]),
  ],
];

describe.each(samples)('damaged %s', (_, sample) => {
  it('starts from a file without fault', async () => {
    expect(await readSampleFacts(readerOf(sample))).toMatchObject({ kind: 'facts', facts: { problems: [] } });
  });

  it('reads every truncation', async () => {
    for (let length = 0; length < sample.length; length++) {
      await readBounded(sample.slice(0, length));
      // A file that shrinks while it is read.
      await readBounded(sample.slice(0, length), sample.length);
    }
  });

  it('reads a file with any bytes changed', async () => {
    const change = fc.tuple(fc.nat(sample.length - 1), fc.constantFrom(0, 1, 127, 128, 255));
    await fc.assert(
      fc.asyncProperty(fc.array(change, { minLength: 1, maxLength: 4 }), fc.boolean(), (changes, isLong) => {
        const bytes = sample.slice();
        for (const [at, value] of changes) bytes[at] = value;
        return readBounded(bytes, isLong ? 2 ** 40 : bytes.length);
      }),
      { numRuns: 500 },
    );
  });

  it('reads any bytes behind its first ones', async () => {
    await fc.assert(
      fc.asyncProperty(fc.nat(60), fc.uint8Array({ maxLength: 300 }), (kept, rest) =>
        readBounded(new Uint8Array([...sample.slice(0, kept), ...rest])),
      ),
    );
  });
});

it('stays within bounds on bytes made to look like pages', async () => {
  const head = page(5, 2, 0n, [...text('\x01vorbis'), 0, 0, 0, 0, 1, 64, 31, 0, 0, ...silence(12), 0xb8, 1]);
  const like = [...text('OggS'), 0, 0, ...silence(8), 5, 0, 0, 0, ...silence(8), 1, 255];
  const many = new Array<number[]>(8000).fill(like).flat();
  await readBounded(new Uint8Array([...head, ...many]));
});
