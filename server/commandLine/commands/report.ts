import { csvTable } from '../../features/sampleReport/csv';
import { markdownReport } from '../../features/sampleReport/markdown';
import { reportViews } from '../../features/sampleReport/page/reportViews';
import { samplePage } from '../../features/sampleReport/page/samplePage';
import {
  sampleCells,
  sampleHeadings,
  tuningCells,
  tuningHeadings,
} from '../../features/sampleReport/reportCells';
import type { SampleReport } from '../../features/sampleReport/sampleReport';
import { sampleReport } from '../../features/sampleReport/sampleReport';
import { nameOf } from '../../model/paths';
import { CommandError } from '../commandError';
import { folderOfInput, loadInstrument, readInput } from '../input/input';
import { openSamples } from '../input/openSamples';
import { outputFile } from '../output/overwriting';
import { write } from '../output/writeOutput';
import type { Terminal } from '../terminal';
import { readWords } from '../words';

/** Rounds of asking: for folders, for files, for measures. */
const mostRounds = 70;

/** `zonewright report`: what is known of each sample of an instrument, and its tuning over the keys. */
export async function report(args: readonly string[], terminal: Terminal): Promise<number> {
  const { paths, options, switches } = readWords(args, {
    format: ['csv', 'html', 'markdown'],
    table: ['samples', 'tuning'],
    output: 'text',
    force: 'switch',
    'no-cache': 'switch',
  });
  const [name, ...more] = paths;
  if (name === undefined || more.length > 0) throw new CommandError('report takes one instrument');
  const isCsv = options.format === 'csv';
  if (options.table !== undefined && !isCsv)
    throw new CommandError('--table is for --format csv; the others hold both tables');
  const input = await readInput(terminal, name);
  const loaded = await loadInstrument(terminal, input);
  if (!loaded)
    throw new CommandError(
      `${input.name}: this is a zone table; convert it first, then report on the result`,
    );
  const { samples, close } = openSamples(terminal, !switches.has('no-cache'));
  try {
    const lookup = samples.lookup(folderOfInput(input));
    const isPage = options.format === 'html';
    const { instrument, notation } = loaded;
    // What a check works out is kept with its context, so that each round has one of its own.
    const make = () => ({
      report: sampleReport(instrument, notation, lookup),
      views: isPage ? reportViews({ instrument, notation, samples: lookup }) : undefined,
    });
    let made = make();
    for (let round = 0; samples.wants && round < mostRounds; round++) {
      await samples.loadWanted();
      made = make();
    }
    const title = `Samples of ${nameOf(input.path)}`;
    const text = made.views
      ? samplePage(title, made.report, made.views)
      : isCsv
        ? csvOf(made.report, options.table)
        : markdownReport(title, made.report);
    if (options.output === undefined) await terminal.out(text);
    else {
      const inputs = [input.path, ...instrument.sources.map((source) => source.path)];
      await write(terminal, outputFile(terminal, options.output, switches.has('force'), inputs), text);
    }
  } finally {
    await close();
  }
  return 0;
}

function csvOf({ tuning, samples }: SampleReport, table: string | undefined): string {
  return table === 'tuning'
    ? csvTable(tuningHeadings, tuning.map(tuningCells))
    : csvTable(sampleHeadings, samples.map(sampleCells));
}
