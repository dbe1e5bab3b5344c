import { execFileSync } from 'node:child_process';
import { mkdtemp, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { activateAlone } from '../../unit/extension/activateAlone';
import { EditorClient } from '../../unit/server/host/editorClient';
import { buildReleased } from '../../unit/server/host/releasedBundle';
import { quantile, timeOf } from '../compare';
import { largeInstrument } from '../largeInstrument';
import { SampleFolder } from '../sampleFolder';
import type { AddRow } from '../table';
import { milliseconds, quantilesRow } from '../table';

const rounds = 9;
const regions = 356;

/** What a person waits for before the first document has its findings: each time in processes of their own, as released. */
export async function measureStart(add: AddRow, root: string): Promise<void> {
  const folder = await mkdtemp(join(tmpdir(), 'zonewright-start-'));
  try {
    const server = await buildReleased(root, 'server/main.ts', join(folder, 'server'));
    add(await bytesRow('Loaded when the server starts', server.atStart, '≤ 1000 kB'));
    const client = await buildReleased(root, 'client/main.ts', join(folder, 'client'));
    add(await bytesRow('Loaded before the extension is there', client.atStart, ''));
    await measureActivation(add, root, folder, client.atStart[0]);
    await measureFirstFile(add, server.atStart[0]);
  } finally {
    await rm(folder, { recursive: true });
  }
}

async function bytesRow(what: string, paths: readonly string[], aim: string) {
  let bytes = 0;
  for (const path of paths) bytes += (await stat(path)).size;
  const result = `${Math.round(bytes / 1000)} kB`;
  return { what, result, aim, remark: `${paths.length} ${paths.length === 1 ? 'file' : 'files'}, released` };
}

/** Loading and activating the extension, beside one that does nothing; both against a stand-in for the editor. */
async function measureActivation(add: AddRow, root: string, folder: string, bundle: string): Promise<void> {
  const empty = join(folder, 'empty.js');
  await writeFile(empty, 'exports.activate = () => {};\n');
  const own: number[] = [];
  const emptyOnes: number[] = [];
  for (let round = 0; round < rounds; round++) {
    own.push((await activateAlone(root, bundle)).milliseconds);
    emptyOnes.push((await activateAlone(root, empty)).milliseconds);
  }
  const row = quantilesRow('Activation, to the return of `activate`', own, '≤ 50 ms');
  add({ ...row, remark: `${row.remark}; an empty extension ${milliseconds(quantile(emptyOnes))}` });
}

/** From the start of the server's process to the findings of a first document. */
async function measureFirstFile(add: AddRow, bundle: string): Promise<void> {
  const text = largeInstrument(regions, 'region-per-line');
  const samples = new SampleFolder(text.match(/Samples\/[^=]+\.wav/g) ?? []);
  const times: number[] = [];
  const bare: number[] = [];
  try {
    for (let round = 0; round < rounds; round++) {
      bare.push(await timeOf(() => execFileSync(process.execPath, ['-e', ''])));
      times.push(
        await timeOf(async () => {
          const client = await EditorClient.start(bundle, { folder: samples.path });
          await client.pull(await client.open('first.sfz', text));
        }),
      );
      EditorClient.endAll();
    }
  } finally {
    samples.remove();
  }
  const row = quantilesRow(
    `Findings of a first file of ${regions} regions, from a cold start`,
    times,
    '≤ 1000 ms',
  );
  add({ ...row, remark: `${row.remark}; a process that does nothing ${milliseconds(quantile(bare))}` });
}
