import type { OutputContent, OutputResult } from '../../model/output';
import { folderOf, joinPath } from '../../model/paths';
import { CommandError } from '../commandError';
import type { Terminal } from '../terminal';
import type { OutputFile } from './overwriting';
import { firstBytes, refuseOverwriting } from './overwriting';
import { makeFolder, write } from './writeOutput';

/**
 * Puts the files of an output in place: the main file at `main`, the others in folders beside it; without `main` the
 * one file goes to standard output.
 */
export async function putOutput(
  terminal: Terminal,
  files: OutputResult['files'],
  main: OutputFile | undefined,
): Promise<void> {
  const [[, first], ...others] = files;
  if (main === undefined) {
    if (others.length > 0) throw new CommandError('this writes several files: say where with --output');
    for await (const part of piecesOf(first)) await terminal.out(part);
    return;
  }
  const folder = folderOf(main.path);
  // The main file comes last, so that where it is there, all that it names is there.
  const all: [OutputFile, OutputContent][] = others.map(([path, content]) => [
    { ...main, name: path, path: `${folder}/${path}` },
    content,
  ]);
  all.push([main, first]);
  // All are looked at before one is written.
  for (const [file, content] of all) await refuseOverwriting(terminal, file, await firstBytes(content));
  const folders = new Set(others.map(([path]) => folderOf(path)).filter((inner) => inner !== ''));
  for (const inner of folders) await makeFolder(terminal, inner, joinPath(folder, inner));
  for (const [file, content] of all) await write(terminal, file, content);
}

async function* piecesOf(content: OutputContent): AsyncIterable<string | Uint8Array> {
  if (typeof content === 'object' && 'chunks' in content) yield* content.chunks();
  else yield content;
}
