import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { largeInstrument } from './largeInstrument';
import { measureLoops } from './measures/loops';
import { measureCached } from './measures/measureCached';
import { measureComparison } from './measures/measureComparison';
import { measureConversion } from './measures/measureConversion';
import { measureKeystroke } from './measures/measureKeystroke';
import { measureMap } from './measures/measureMap';
import { measureOverlaps } from './measures/measureOverlaps';
import { measurePlaying } from './measures/measurePlaying';
import { measureProtocol } from './measures/measureProtocol';
import { measureSamples } from './measures/measureSamples';
import { measureSfz } from './measures/measureSfz';
import { measureStart } from './measures/measureStart';
import { measureTable } from './measures/measureTable';
import { measureVocabulary } from './measures/measureVocabulary';
import { measureVoices } from './measures/measureVoices';
import { measureXml } from './measures/measureXml';
import { measurePitches } from './measures/pitch';
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
