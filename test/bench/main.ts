import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { largeInstrument } from './largeInstrument';
import { measureLoops } from './loops';
import { measureCached } from './measureCached';
import { measureComparison } from './measureComparison';
import { measureConversion } from './measureConversion';
import { measureKeystroke } from './measureKeystroke';
import { measureMap } from './measureMap';
import { measureOverlaps } from './measureOverlaps';
import { measurePlaying } from './measurePlaying';
import { measureProtocol } from './measureProtocol';
import { measureSamples } from './measureSamples';
import { measureSfz } from './measureSfz';
import { measureStart } from './measureStart';
import { measureTable } from './measureTable';
import { measureVocabulary } from './measureVocabulary';
import { measureVoices } from './measureVoices';
import { measureXml } from './measureXml';
import { measurePitches } from './pitch';
import { SampleFolder } from './sampleFolder';
import type { Row } from './table';
import { tableOf } from './table';

/** The bundle stands in out/bench. */
const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');
const rows: Row[] = [];
const add = (row: Row) => {
  rows.push(row);
  process.stderr.write(`${row.what}: ${row.result} ${row.remark && `(${row.remark})`}\n`);
};

if (process.argv.includes('start')) {
  await measureStart(add, root);
  process.stdout.write(`\n${tableOf(rows)}\n`);
  process.exit();
}
if (process.argv.includes('voices')) {
  measureVoices(add);
  process.stdout.write(`\n${tableOf(rows)}\n`);
  process.exit();
}
await measureStart(add, root);
await measureSfz(add);
await measureXml(add);
await measureVocabulary(add);
await measureConversion(add);
const text = largeInstrument(10_000, 'region-per-line');
const folder = new SampleFolder(text.match(/Samples\/[^=]+\.wav/g) ?? []);
try {
  await measureSamples(add, folder.files);
  await measureCached(add, folder.files);
  await measureKeystroke(add, text, folder.path);
  await measureProtocol(add, text, folder.path, join(root, 'dist', 'server.js'));
} finally {
  folder.remove();
}
await measureOverlaps(add);
await measureMap(add);
await measurePlaying(add);
await measureTable(add);
await measurePitches(add);
await measureLoops(add);
measureVoices(add);
await measureComparison(add);
process.stdout.write(`\n${tableOf(rows)}\n`);
