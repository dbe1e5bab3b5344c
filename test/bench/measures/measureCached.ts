import { mkdtempSync, rmSync } from 'node:fs';
import { stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { nodeFiles } from '../../../server/workspace/files/nodeFiles';
import { cacheFolder } from '../../../server/workspace/measuring/cacheFolder';
import { MeasureCache } from '../../../server/workspace/measuring/measureCache';
import { Measurements } from '../../../server/workspace/measuring/measurements';
import { SampleStore } from '../../../server/workspace/samples/sampleStore';
import { compare, timeOf } from '../compare';
import type { AddRow } from '../table';
import { ratioRow } from '../table';

/** Files that are asked for at one time, as the store does. */
const atOnce = 32;

/** Facts and measures of 10,000 files that nothing is known of, and that all is remembered of, against a stat of each. */
export async function measureCached(add: AddRow, files: readonly string[]): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'bench-cache-'));
  const few = { warmUp: 1, pairs: 7 };
  const count = files.length.toLocaleString('en');
  try {
    let run = 0;
    const cold = await compare(
      () => readAll(`${folder}/${run++}`, files, false),
      () => statAll(files),
      few,
    );
    add(ratioRow(`Facts of ${count} files, cold, to a stat of each`, cold, ''));
    await readAll(`${folder}/kept`, files, false);
    const warm = await compare(
      () => readAll(`${folder}/kept`, files, false),
      () => statAll(files),
      few,
    );
    add(ratioRow('The same from a warm cache', warm, 'near 1'));
    const measuring = await timeOf(() => readAll(`${folder}/measured`, files, true));
    const again = await compare(
      () => readAll(`${folder}/measured`, files, true),
      () => statAll(files),
      few,
    );
    const row = ratioRow('With pitch and survey, from a warm cache', again, 'near 1');
    add({ ...row, remark: `${row.remark}; measuring them took ${(measuring / 1000).toFixed(1)} s` });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** What a program that starts anew finds out of files; `measures` adds pitch and survey. */
async function readAll(folder: string, files: readonly string[], measures: boolean): Promise<void> {
  const measurements = new Measurements(nodeFiles);
  const samples = new SampleStore(nodeFiles, { measures: measurements });
  samples.useCache(new MeasureCache(cacheFolder(folder)));
  for (const path of files) samples.reading(path);
  await samples.loadWanted();
  if (measures) {
    for (const path of files) {
      const file = measurements.file(path);
      measurements.pitch(file);
      measurements.survey(file);
    }
    await samples.loadWanted();
  }
  await measurements.close();
}

async function statAll(files: readonly string[]): Promise<void> {
  let next = 0;
  const work = async () => {
    while (next < files.length) await stat(files[next++]);
  };
  await Promise.all(Array.from({ length: atOnce }, work));
}
