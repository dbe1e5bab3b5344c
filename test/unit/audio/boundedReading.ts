import assert from 'node:assert/strict';
import { readSampleFacts } from '../../../server/audio/readSampleFacts';
import { readerOf } from './byteFiles';

/** A page, a kilobyte for each of a bounded number of reads, and the end of an Ogg file, where the largest pages stand. */
const mostBytes = 4096 + 48 * 1024 + 200_000;

/** Reads a file, whatever is in it, and expects that this costs little and gives facts that make sense or none. */
export async function readBounded(bytes: Uint8Array, size = bytes.length): Promise<void> {
  const reader = readerOf(bytes, size);
  const reading = await readSampleFacts(reader);
  const bytesRead = reader.reads.reduce((sum, read) => sum + read.length, 0);
  assert(bytesRead <= mostBytes, `${bytesRead} bytes are read`);
  if (reading.kind !== 'facts') return;
  const { facts } = reading;
  assert(Number.isSafeInteger(facts.frames) && facts.frames >= 0);
  assert(Number.isFinite(facts.lengthSeconds));
  assert(facts.sampleRate > 0 && facts.channels > 0);
  assert(facts.loops.every((loop) => loop.start <= loop.end));
  assert(facts.rootKey === null || facts.rootKey <= 127);
}

/** The same for a file that is cut at many lengths and has bytes at its start and end changed. */
export async function readDamaged(bytes: Uint8Array): Promise<void> {
  const lengths = [
    ...Array.from({ length: 160 }, (_, count) => count),
    ...Array.from({ length: 80 }, (_, part) => Math.floor((bytes.length * part) / 80)),
  ];
  for (const length of lengths) await readBounded(bytes.subarray(0, length));
  const near = 220;
  // One copy for all, each byte put right again: to copy a file of a megabyte 1,500 times took most of the time of these tests.
  const damaged = bytes.slice();
  for (let at = 0; at < bytes.length; at++) {
    if (at >= near && at < bytes.length - near) continue;
    for (const mask of [1, 128, 255]) {
      damaged[at] = bytes[at] ^ mask;
      await readBounded(damaged);
    }
    damaged[at] = bytes[at];
  }
}
