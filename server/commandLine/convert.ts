import { basename } from 'node:path';
import { notesPage } from '../features/notesPage';
import { folderOf } from '../model/paths';
import { lineNotes } from '../model/writing/lineNotes';
import { convertInstrument } from '../workspace/convertInstrument';
import { SampleStore } from '../workspace/samples/sampleStore';
import { CommandError } from './commandError';
import { folderOfInput, readInput } from './input';
import { tellNotes } from './notes';
import { readAny, tableOptions } from './readAny';
import { targetNotation } from './target';
import type { Terminal } from './terminal';
import { absolutePath } from './terminalPaths';
import { readWords } from './words';
import { write } from './writeOutput';

/** `zonewright convert`: an instrument or a copied table in another notation. */
export async function convert(args: readonly string[], terminal: Terminal): Promise<number> {
  const { paths, options, switches } = readWords(args, {
    to: 'text',
    output: 'text',
    notes: 'text',
    inline: 'switch',
    ...tableOptions,
  });
  const [name, ...more] = paths;
  if (name === undefined || more.length > 0) throw new CommandError('convert takes one file');
  const notation = await targetNotation(terminal, options.to);
  const input = await readInput(terminal, name);
  const output = options.output === undefined ? undefined : absolutePath(terminal, options.output);
  const outputFolder = output === undefined ? folderOfInput(input) : folderOf(output);
  const { fromTable, ...read } = await readAny(terminal, input, options, outputFolder);
  // A table's sample names were looked up from the output's folder already, or stand as the table gives them.
  const folder = fromTable ? outputFolder : folderOfInput(input);
  const { text, notes, kept } = await convertInstrument(
    { ...read, folder },
    notation,
    { move: { from: folder, to: outputFolder }, directives: switches.has('inline') ? 'inline' : 'keep' },
    new SampleStore(terminal.files),
  );
  const all = lineNotes(read.instrument, notes);
  if (output === undefined) await terminal.out(text);
  else await write(terminal, options.output as string, output, text);
  if (options.notes === undefined) tellNotes(terminal, input.name, all);
  else {
    const page = /\.json$/i.test(options.notes)
      ? `${JSON.stringify(all, undefined, 2)}\n`
      : notesPage(`Conversion notes for ${basename(input.path)}`, all, kept);
    await write(terminal, options.notes, absolutePath(terminal, options.notes), page);
  }
  return 0;
}
