import { basename } from 'node:path';
import { notesPage } from '../features/notesPage';
import { folderOf, nameOf, titleOf } from '../model/paths';
import { lineNotes } from '../model/writing/lineNotes';
import type { VocabularySource } from '../workspace/notations/notationOutput';
import { CommandError } from './commandError';
import { folderOfInput, readInput } from './input';
import { tellNotes } from './notes';
import { putOutput } from './putOutput';
import { readAny, tableOptions } from './readAny';
import { targetOutput } from './target';
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
  const target = await targetOutput(terminal, options.to);
  const input = await readInput(terminal, name);
  const output = options.output === undefined ? undefined : absolutePath(terminal, options.output);
  const outputFolder = output === undefined ? folderOfInput(input) : folderOf(output);
  const { fromTable, instrument, ...read } = await readAny(terminal, input, options, outputFolder);
  // A table's sample names were looked up from the output's folder already, or stand as the table gives them.
  const folder = fromTable ? outputFolder : folderOfInput(input);
  const source: VocabularySource = { ...read, instrument, name: titleOf(input.path), folder };
  const { files, accounts } = await target.write(
    [source],
    {
      fileName: output === undefined ? undefined : nameOf(output),
      folder: outputFolder,
      directives: switches.has('inline') ? 'inline' : 'keep',
    },
    terminal.files,
  );
  await putOutput(
    terminal,
    files,
    output === undefined ? undefined : { name: options.output as string, path: output },
  );
  const [{ notes, kept }] = accounts;
  const all = lineNotes(instrument, notes);
  if (options.notes === undefined) tellNotes(terminal, input.name, all);
  else {
    const page = /\.json$/i.test(options.notes)
      ? `${JSON.stringify(all, undefined, 2)}\n`
      : notesPage(`Conversion notes for ${basename(input.path)}`, all, kept);
    await write(terminal, options.notes, absolutePath(terminal, options.notes), page);
  }
  return 0;
}
