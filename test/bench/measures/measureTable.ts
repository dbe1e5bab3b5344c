import Papa from 'papaparse';
import type { Files } from '../../../server/model/files';
import { writeSfz } from '../../../server/sfz/write';
import { readZoneTable } from '../../../server/table/readTable';
import { readTableWithSamples } from '../../../server/workspace/readTableWithSamples';
import { compare, times } from '../compare';
import type { AddRow } from '../table';
import { quantilesRow, ratioRow } from '../table';

/** A zone table to SFZ text, against papaparse reading the same text into cells; and a very large one. */
export async function measureTable(add: AddRow): Promise<void> {
  const text = zoneTable(10_000);
  const convert = (table: string) => writeSfz(readZoneTable(table).instrument).text.length;
  const cells = () => Papa.parse(text).data.length;
  const options = { warmUp: 6, pairs: 21 };
  add(
    ratioRow(
      'Zone table to regions, 10,000 rows, to papaparse',
      await compare(() => readZoneTable(text).instrument.regions.length, cells, options),
      '',
    ),
  );
  add(
    ratioRow(
      'Zone table to SFZ, 10,000 rows, to papaparse',
      await compare(() => convert(text), cells, options),
      '≤ 3',
    ),
  );
  const large = zoneTable(100_000);
  add(
    quantilesRow(
      'Zone table to SFZ, 100,000 rows',
      await times(() => convert(large), { warmUp: 1, rounds: 5 }),
      '≤ 2000 ms',
    ),
  );
  const inSteps = () => readTableWithSamples(noFiles, large, folders);
  add(
    quantilesRow(
      'The same, samples looked up, other work let run in between',
      await times(async () => writeSfz((await inSteps()).instrument), { warmUp: 1, rounds: 5 }),
      '≤ 2000 ms',
    ),
  );
  const waits: number[] = [];
  for (let round = 0; round < 5; round++) waits.push(await longestWait(inSteps));
  add(quantilesRow('Longest that other work waits while it is read', waits, '≤ 50 ms'));
}

const folders = { path: 'table', samplesFolder: '/', outputFolder: '/' };
const noFiles: Files = {
  stat: async () => undefined,
  list: async () => undefined,
  open: async () => undefined,
};

/** The longest time, in milliseconds, for which other work cannot run while `work` does. */
async function longestWait(work: () => Promise<unknown>): Promise<number> {
  let longest = 0;
  let last = performance.now();
  let isDone = false;
  const look = () => {
    const now = performance.now();
    longest = Math.max(longest, now - last);
    last = now;
    if (!isDone) setImmediate(look);
  };
  setImmediate(look);
  await work();
  look();
  isDone = true;
  return longest;
}

/** A table of thirteen columns, parted by tabs. */
function zoneTable(rows: number): string {
  const lines = [
    'Sample,Group,Round robin,Root,Low key,High key,Low vel,High vel,Tune,Volume,Pan,Loop start,Loop end'
      .split(',')
      .join('\t'),
  ];
  for (let row = 0; row < rows; row++) {
    const low = row % 120;
    const layer = row % 4;
    const cells = [
      `Samples/note ${row}.wav`,
      `Layer ${row % 8}`,
      layer + 1,
      low + 2,
      low,
      low + 4,
      layer * 32,
      layer * 32 + 31,
      (row % 21) - 10,
      (-(row % 13) / 2).toFixed(1),
      row % 3 === 0 ? 'L20' : 'C',
      1000 + row,
      50_000 + row,
    ];
    lines.push(cells.join('\t'));
  }
  return lines.join('\n');
}
