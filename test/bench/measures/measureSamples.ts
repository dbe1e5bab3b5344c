import { open } from 'node:fs/promises';
import { readSampleFacts } from '../../../server/audio/readSampleFacts';
import { nodeFiles } from '../../../server/workspace/files/nodeFiles';
import { SampleStore } from '../../../server/workspace/samples/sampleStore';
import { compare } from '../compare';
import type { AddRow } from '../table';
import { ratioRow } from '../table';

/** Facts of 500 sample files, against opening, reading once and closing each of the same files. */
export async function measureSamples(add: AddRow, files: readonly string[]): Promise<void> {
  const some = files.slice(0, 500);
  const facts = await compare(
    async () => {
      for (const path of some) await readFacts(path);
    },
    async () => {
      for (const path of some) await bareRead(path);
    },
  );
  add(ratioRow('Facts of 500 WAV files, to a bare open, read, close', facts, '≤ 2'));
  const store = await compare(
    async () => {
      const samples = new SampleStore(nodeFiles);
      for (const path of some) samples.reading(path);
      await samples.loadWanted();
    },
    async () => {
      for (const path of some) await bareRead(path);
    },
  );
  add(ratioRow('The same, several files at a time', store, '≤ 2'));
}

async function readFacts(path: string): Promise<void> {
  const reader = await nodeFiles.open(path);
  if (!reader) throw new Error(`${path} cannot be opened.`);
  const reading = await readSampleFacts(reader);
  await reader.close();
  if (reading.kind !== 'facts') throw new Error(`${path} was not read.`);
}

async function bareRead(path: string): Promise<void> {
  const file = await open(path, 'r');
  await file.read(new Uint8Array(4096), 0, 4096, 0);
  await file.close();
}
