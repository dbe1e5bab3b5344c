import { basename } from 'node:path';
import { folderOf } from '../model/paths';
import { sfzNotation } from '../sfz/notation';
import { xmlNotation } from '../xml/notation';
import { CommandError } from './commandError';
import { absolutePath, folderOfInput, readInput } from './input';
import { notesByLine, notesPage } from './notes';
import { readAny, tableOptions } from './readAny';
import type { Terminal } from './terminal';
import { readWords } from './words';

const notations = { sfz: sfzNotation, xml: xmlNotation } as const;

/** `zonewright convert`: an instrument or a copied table in another notation. */
export async function convert(args: readonly string[], terminal: Terminal): Promise<number> {
  const { paths, options } = readWords(args, {
    to: ['sfz', 'xml'],
    output: 'text',
    notes: 'text',
    ...tableOptions,
  });
  const [name, ...more] = paths;
  if (name === undefined || more.length > 0) throw new CommandError('convert takes one file');
  if (options.to === undefined) throw new CommandError('convert needs --to sfz or --to xml');
  const input = await readInput(terminal, name);
  const output = options.output === undefined ? undefined : absolutePath(terminal, options.output);
  const outputFolder = output === undefined ? folderOfInput(input) : folderOf(output);
  const { instrument, notes, fromTable } = await readAny(terminal, input, options, outputFolder);
  // A table's sample names were looked up from the output's folder already, or stand as the table gives them.
  const move = { from: fromTable ? outputFolder : folderOfInput(input), to: outputFolder };
  const written = notations[options.to as keyof typeof notations].write(instrument, { move });
  const all = notesByLine(instrument, [...notes, ...written.notes]);
  if (output === undefined) await terminal.out(written.text);
  else await write(terminal, options.output as string, output, written.text);
  if (options.notes !== undefined) {
    const page = /\.json$/i.test(options.notes)
      ? `${JSON.stringify(all, undefined, 2)}\n`
      : notesPage(`Conversion notes for ${basename(input.path)}`, all);
    await write(terminal, options.notes, absolutePath(terminal, options.notes), page);
  } else {
    for (const note of all) terminal.error(`${input.name}:${note.line}: ${note.kind}: ${note.message}\n`);
  }
  return 0;
}

/** Writes a file whole or says in one line why it cannot be written. */
export async function write(terminal: Terminal, name: string, path: string, text: string): Promise<void> {
  try {
    await terminal.writeFile(path, text);
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown reason';
    const reason =
      code === 'ENOENT'
        ? 'its folder does not exist'
        : code === 'EACCES'
          ? 'writing there is not allowed'
          : code;
    throw new CommandError(`${name}: cannot be written: ${reason}`);
  }
}
