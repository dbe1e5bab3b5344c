import { closeSync, ftruncateSync, mkdirSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { sampleFrames } from './largeInstrument';

/** A folder of generated WAV files that is taken away when the measuring is over. */
export class SampleFolder {
  readonly path = mkdtempSync(join(tmpdir(), 'bench-')).replaceAll('\\', '/');
  readonly files: string[];

  /** Makes a 16-bit mono file of silence for each of some paths; every second one has a `smpl` chunk behind its audio. */
  constructor(paths: Iterable<string>) {
    this.files = [...new Set(paths)].map((path) => `${this.path}/${path}`);
    const folders = new Set(this.files.map((file) => dirname(file)));
    for (const folder of folders) mkdirSync(folder, { recursive: true });
    for (const [number, file] of this.files.entries()) writeSilence(file, number % 2 === 1);
  }

  remove(): void {
    rmSync(this.path, { recursive: true, force: true });
  }
}

function writeSilence(path: string, withSampler: boolean): void {
  const audioBytes = sampleFrames * 2;
  const sampler = withSampler ? samplerChunk() : Buffer.alloc(0);
  const head = Buffer.alloc(44);
  head.write('RIFF', 0, 'latin1');
  head.writeUInt32LE(36 + audioBytes + sampler.length, 4);
  head.write('WAVEfmt ', 8, 'latin1');
  const format = [16, 1 | (1 << 16), 44100, 88200, 2 | (16 << 16)];
  for (const [at, value] of format.entries()) head.writeUInt32LE(value, 16 + at * 4);
  head.write('data', 36, 'latin1');
  head.writeUInt32LE(audioBytes, 40);
  const file = openSync(path, 'w');
  writeSync(file, head, 0, head.length, 0);
  // Silence is left to the file system, which stores a gap without its zeros where it can.
  ftruncateSync(file, head.length + audioBytes);
  if (withSampler) writeSync(file, sampler, 0, sampler.length, head.length + audioBytes);
  closeSync(file);
}

/** A `smpl` chunk with root key 60 and one forward loop. */
function samplerChunk(): Buffer {
  const values = [60, 0, 0, 22676, 60, 0, 0, 0, 1, 0, 0, 0, 2000, 4000, 0, 0];
  const chunk = Buffer.alloc(4 + values.length * 4);
  chunk.write('smpl', 0, 'latin1');
  for (const [at, value] of values.entries()) chunk.writeUInt32LE(value, 4 + at * 4);
  return chunk;
}
