import { measureReadSfz } from './readSfz';
import type { Row } from './table';
import { tableOf } from './table';

const measures = [measureReadSfz];

const rows: Row[] = [];
for (const measure of measures) {
  await measure((row) => {
    rows.push(row);
    process.stderr.write(`${row.what}: ${row.result}\n`);
  });
}
process.stdout.write(`${tableOf(rows)}\n`);
