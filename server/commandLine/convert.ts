import { basename } from 'node:path';
import { folderOf } from '../model/paths';
import { sampleFactsIn } from '../workspace/sampleFactsIn';
import { SampleStore } from '../workspace/sampleStore';
import { CommandError } from './commandError';
import { absolutePath, folderOfInput, readInput } from './input';
import { notesByLine, notesPage } from './notes';
import { readAny, tableOptions } from './readAny';
import { targetNotation } from './target';
import type { Terminal } from './terminal';
import { readWords } from './words';
import { write } from './writeOutput';

/** Rounds of writing while what is known of samples grows. */
const mostRounds = 20;

/** `zonewright convert`: an instrument or a copied table in another notation. */
export async function convert(args: readonly string[], terminal: Terminal): Promise<number> {
  const { paths, options } = readWords(args, {
    to: 'text',
    output: 'text',
    notes: 'text',
    ...tableOptions,
  });
  const [name, ...more] = paths;
  if (name === undefined || more.length > 0) throw new CommandError('convert takes one file');
  const notation = await targetNotation(terminal, options.to);
  const input = await readInput(terminal, name);
  const output = options.output === undefined ? undefined : absolutePath(terminal, options.output);
  const outputFolder = output === undefined ? folderOfInput(input) : folderOf(output);
  const { instrument, notes, fromTable } = await readAny(terminal, input, options, outputFolder);
  // A table's sample names were looked up from the output's folder already, or stand as the table gives them.
  const move = { from: fromTable ? outputFolder : folderOfInput(input), to: outputFolder };
  const samples = new SampleStore(terminal.files);
  const writing = { move, sampleFacts: sampleFactsIn(samples, move.from) };
  let written = notation.write(instrument, writing);
  for (let round = 0; samples.wants && round < mostRounds; round++) {
    await samples.loadWanted();
    written = notation.write(instrument, writing);
  }
  const all = notesByLine(instrument, [...notes, ...written.notes]);
  if (output === undefined) await terminal.out(written.text);
  else await write(terminal, options.output as string, output, written.text);
  if (options.notes !== undefined) {
    const page = /\.json$/i.test(options.notes)
      ? `${JSON.stringify(all, undefined, 2)}\n`
      : notesPage(`Conversion notes for ${basename(input.path)}`, all, written.kept);
    await write(terminal, options.notes, absolutePath(terminal, options.notes), page);
  } else {
    for (const note of all) terminal.error(`${input.name}:${note.line}: ${note.kind}: ${note.message}\n`);
  }
  return 0;
}
