import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readSfz } from '../../../server/sfz/read';
import { bareScan } from '../bareScan';
import { compare } from '../compare';
import { largeInstrument } from '../largeInstrument';
import type { AddRow } from '../table';
import { ratioRow } from '../table';

/** SFZ text to effective regions, against a bare scan of the same text. */
export async function measureSfz(add: AddRow): Promise<void> {
  const measure = async (what: string, texts: readonly string[]) => {
    const comparison = await compare(
      () => texts.reduce((sum, text) => sum + readSfz(text, { path: '/a.sfz' }).regions.length, 0),
      () => texts.reduce((sum, text) => sum + bareScan(text), 0),
    );
    add(ratioRow(`SFZ to regions, ${what}, to a bare scan`, comparison, '≤ 3'));
  };
  await measure('one opcode a line', [largeInstrument(10_000, 'opcode-per-line')]);
  await measure('one region a line', [largeInstrument(10_000, 'region-per-line')]);
  const folder = process.env.ZONEWRIGHT_BENCH_SFZ;
  if (folder) await measure('files of the given folder', sfzTextsBelow(folder));
}

function sfzTextsBelow(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.sfzh?$/i.test(name))
    .map((name) => readFileSync(join(folder, name), 'utf8'));
}
