import fc from 'fast-check';
import { expect, it } from 'vitest';
import { readSampleFacts } from '../../../server/audio/readSampleFacts';
import { chunk, format, readerOf, sampler, silence, u16, u32, wave } from './byteFiles';

const guid = [1, 0, 0, 0, 0, 0, 0x10, 0, 0x80, 0, 0, 0xaa, 0, 0x38, 0x9b, 0x71];
const extensible = [...format(0xfffe, 2, 44100, 24), ...u16(22, 24), ...u32(3), ...guid];
const sample = wave(
  chunk('ds64', [...u32(0, 0), ...u32(600, 0), ...u32(100, 0), ...u32(0)]),
  chunk('fmt ', extensible),
  chunk('fact', u32(100)),
  chunk('data', silence(600)),
  chunk('inst', [60, 0, 0, 0, 127, 1, 127]),
  chunk('smpl', sampler(60, 1, [[0, 10, 90]])),
);

/** The most that a file may cost: a page, and a kilobyte for each of a bounded number of reads. */
const mostBytes = 4096 + 48 * 1024;

async function readBounded(bytes: Uint8Array, size = bytes.length): Promise<void> {
  const reader = readerOf(bytes, size);
  const reading = await readSampleFacts(reader);
  expect(reader.reads.reduce((sum, read) => sum + read.length, 0)).toBeLessThanOrEqual(mostBytes);
  if (reading.kind !== 'facts') return;
  const { facts } = reading;
  expect(Number.isSafeInteger(facts.frames) && facts.frames >= 0).toBe(true);
  expect(Number.isFinite(facts.lengthSeconds)).toBe(true);
  expect(facts.loops.every((loop) => loop.start <= loop.end)).toBe(true);
  expect(facts.rootKey === null || facts.rootKey <= 127).toBe(true);
}

it('reads any bytes within bounds', async () => {
  await fc.assert(fc.asyncProperty(fc.uint8Array({ maxLength: 300 }), (bytes) => readBounded(bytes)));
});

it('reads any bytes behind the start of a WAV file within bounds', async () => {
  const starts = ['RIFF', 'RIFX', 'RF64', 'BW64'];
  const part = fc.tuple(
    fc.constantFrom('fmt ', 'data', 'smpl', 'inst', 'fact', 'ds64', 'LIST', '\0\0\0\0'),
    fc.oneof(fc.nat(60), fc.constantFrom(0xffffffff, 0x7fffffff, 0x80000000)),
    fc.uint8Array({ maxLength: 80 }),
  );
  await fc.assert(
    fc.asyncProperty(fc.constantFrom(...starts), fc.array(part, { maxLength: 12 }), (start, parts) => {
      const bytes = wave(...parts.map(([name, size, body]) => chunk(name, [...body], size)));
      bytes.set([...start].map((character) => character.charCodeAt(0)));
      return readBounded(bytes);
    }),
  );
});

it('reads every truncation of a file', async () => {
  for (let length = 0; length < sample.length; length++) {
    await readBounded(sample.slice(0, length));
    // A file that shrinks while it is read.
    await readBounded(sample.slice(0, length), sample.length);
  }
});

it('reads a file with any byte changed', async () => {
  await fc.assert(
    fc.asyncProperty(fc.nat(sample.length - 1), fc.nat(255), fc.boolean(), (at, value, long) => {
      const bytes = sample.slice();
      if (long) bytes.set([0x52, 0x46, 0x36, 0x34]);
      bytes[at] = value;
      return readBounded(bytes);
    }),
    { numRuns: 500 },
  );
});

it('stays within bounds on a file of very many chunks', async () => {
  const tiny = Array.from({ length: 200 }, () => chunk('LIST', silence(1100)));
  await readBounded(wave(chunk('fmt ', format(1, 1, 8000, 8)), chunk('data', silence(10)), ...tiny));
  await readBounded(wave(...Array.from({ length: 5000 }, () => chunk('LIST', []))));
});
