import type { FileOperationRegistrationOptions } from 'vscode-languageserver';
import { LSPErrorCodes, MessageType, ResponseError, ShowMessageNotification } from 'vscode-languageserver';
import type { EditedFile } from '../../features/fileEdits';
import type { Renaming } from '../../features/rename/rename';
import { changingTogether, renameLabel, renameVariable, renamingAt } from '../../features/rename/rename';
import { MergedPaths, movedPaths } from '../../features/rename/renameFiles';
import type { FileMove } from '../../model/fileMoves';
import { FileMoves } from '../../model/fileMoves';
import { instrumentEndings, sampleEndings } from '../../model/fileNames';
import { folderOf, joinPath, nameOf } from '../../model/paths';
import { counted } from '../../model/wording/counted';
import { includedPaths } from '../../workspace/files/includeIndex';
import type { CurrentInstrument } from '../../workspace/instrumentsAround';
import { instrumentsAround, mainsOf, notationOfParts } from '../../workspace/instrumentsAround';
import { actualPaths } from '../../workspace/samples/actualPaths';
import { stopIfCancelled } from '../cancellation';
import { rangeOf } from '../conversion/positions';
import { pathOfUri } from '../conversion/uris';
import { renamesFiles, renamingEdit, workspaceEditOf } from '../conversion/workspaceEdits';
import type { ServerContext } from '../serverContext';
import { contextAt } from './handleNavigation';

/** The files and folders whose moves change what instruments have to say, of whatever scheme the files are served from. */
export const movedFiles: FileOperationRegistrationOptions = {
  filters: [
    {
      pattern: {
        glob: `**/*.{${[...sampleEndings, ...instrumentEndings].join(',')}}`,
        matches: 'file',
        options: { ignoreCase: true },
      },
    },
    { pattern: { glob: '**', matches: 'folder' } },
  ],
};

/** Problems that are told at the most; the rest is counted. */
const mostProblems = 5;

/** Renames variables, labels and samples, and keeps paths right when files move. */
export function handleRename(server: ServerContext): void {
  const { connection } = server;

  connection.onPrepareRename(async ({ textDocument: { uri }, position }, token) => {
    const at = await contextAt(server, uri, position);
    if (!at) return null;
    stopIfCancelled(token);
    const renaming = renamingAt(at.context, at.offset);
    return renaming ? { range: rangeOf(at.source, renaming), placeholder: renaming.name } : null;
  });

  connection.onRenameRequest(async ({ textDocument: { uri }, position, newName }, token) => {
    const at = await contextAt(server, uri, position);
    const renaming = at && renamingAt(at.context, at.offset);
    if (!at || !renaming) return refuse('There is no variable, label or sample here to rename.');
    stopIfCancelled(token);
    if (renaming.kind === 'sample') return renameSample(server, renaming, newName);
    const { path } = at.whole.document;
    const own = { ...at.whole, path: path ?? '' };
    const all = path === undefined ? [own] : mainsOf(await readAround(server, renaming));
    stopIfCancelled(token);
    const first = all.find((one) => one.path === path) ?? own;
    const others = all.filter((one) => one !== first);
    const together = changingTogether<CurrentInstrument>(first, others, renaming).map((one) => ({
      ...one,
      notationOf: notationOfParts(one),
    }));
    const renamed =
      renaming.kind === 'variable'
        ? renameVariable(together, renaming.name, newName)
        : renameLabel(together, renaming, newName);
    return renamed.files ? workspaceEditOf(server, renamed.files, { unsaved: uri }) : refuse(renamed.refusal);
  });

  connection.workspace.onWillRenameFiles(async ({ files }, token) => {
    const moves = files.flatMap(({ oldUri, newUri }): FileMove[] => {
      const from = pathOfUri(oldUri);
      const to = pathOfUri(newUri);
      return from !== undefined && to !== undefined && from !== to ? [{ from, to }] : [];
    });
    if (moves.length === 0) return null;
    const moved = await pathsAfter(server, moves, () => stopIfCancelled(token));
    stopIfCancelled(token);
    if (moved.problems.length > 0) {
      void connection.sendNotification(ShowMessageNotification.type, {
        type: MessageType.Warning,
        message: problemText(moved.problems),
      });
    }
    return moved.files.length > 0 ? workspaceEditOf(server, moved.files) : null;
  });

  // Who watches files is not always told of what lies in a folder that moves.
  connection.workspace.onDidRenameFiles(({ files }) => {
    const paths = files.flatMap(({ oldUri, newUri }) => [pathOfUri(oldUri), pathOfUri(newUri)]);
    server.documents.filesMoved(paths.filter((path) => path !== undefined));
  });
}

function refuse(message: string): never {
  throw new ResponseError(LSPErrorCodes.RequestFailed, message);
}

function problemText(problems: readonly string[]): string {
  const more = problems.length - mostProblems;
  const shown = problems.slice(0, mostProblems).join(' ');
  return `Not all paths can follow. ${shown}${more > 0 ? ` The same holds for ${counted(more, 'more place')}.` : ''}`;
}

/** The instruments in which a name stands, as they are now, with what they include. */
async function readAround(server: ServerContext, { name }: Renaming) {
  const found: (CurrentInstrument & { included: ReadonlySet<string> })[] = [];
  for await (const one of around(server)) {
    // Most instruments have nothing to do with the name and need not be kept.
    if (!one.instrument.sources.some(({ text }) => text.includes(name)) && !hasReferences(one)) continue;
    found.push({ ...one, included: includedPaths(one.instrument) });
  }
  return found;
}

/** Whether a name could be written in an instrument in a way that does not look like it. */
function hasReferences({ instrument }: CurrentInstrument): boolean {
  return instrument.parameters.values.size > 0;
}

function around(server: ServerContext): AsyncIterable<CurrentInstrument> {
  const { files, notations } = server.documents;
  return instrumentsAround(files, notations, server.folders, server.openDocuments, server.documents.reach);
}

/** What changes in the instruments of the open folders when files move, and what could not be kept right. */
export async function pathsAfter(
  server: ServerContext,
  moves: readonly FileMove[],
  goOn: () => void,
): Promise<{ files: EditedFile[]; problems: string[] }> {
  const fileMoves = new FileMoves(moves);
  const actual = actualPaths(server.documents.files, fileMoves);
  const all = [];
  for await (const one of around(server)) {
    goOn();
    const spelt = await actual(one.instrument);
    all.push({
      path: one.path,
      instrument: one.instrument,
      included: includedPaths(one.instrument),
      moved: movedPaths({ ...one, notationOf: notationOfParts(one), moves: fileMoves, actual: spelt }),
    });
  }
  const merged = new MergedPaths();
  for (const { instrument, moved } of mainsOf(all)) merged.add(instrument, moved);
  return { files: merged.files, problems: merged.problems };
}

async function renameSample(server: ServerContext, renaming: Renaming & { kind: 'sample' }, typed: string) {
  const { files, samples } = server.documents;
  if (!renamesFiles(server)) refuse('This editor renames no files together with text.');
  const folder = folderOf(renaming.path);
  const state = await samples.fetchState(folder, nameOf(renaming.path));
  if (state.kind !== 'file' && state.kind !== 'otherCase')
    refuse(`There is no file "${renaming.name}" to rename.`);
  const from = state.kind === 'otherCase' ? joinPath(folder, state.actual) : renaming.path;
  const newName = withEnding(typed.trim(), nameOf(from));
  if (newName === nameOf(from)) return { documentChanges: [] };
  const problem = fileNameProblem(newName);
  if (problem !== undefined) refuse(problem);
  const to = joinPath(folderOf(from), newName);
  const isOtherCase = to.toLowerCase() === from.toLowerCase();
  if (!isOtherCase && (await files.stat(to)))
    refuse(`There is a file "${newName}" already. Choose another name.`);
  const move = { from, to };
  const moved = await pathsAfter(server, [move], () => {});
  const [first] = moved.problems;
  if (first !== undefined) refuse(`The sample cannot be renamed to "${newName}". ${first}`);
  return renamingEdit(server, { files: moved.files, move });
}

/** A file keeps its ending where none is typed. */
function withEnding(name: string, before: string): string {
  const ending = before.slice(before.lastIndexOf('.'));
  return name === '' || /\.[A-Za-z0-9]+$/.test(name) ? name : name + ending;
}

function fileNameProblem(name: string): string | undefined {
  if (name === '') return 'A sample file needs a name.';
  if (/[\\/]/.test(name)) return 'Type a name without folders. Move the file in the explorer instead.';
  const bad = [...name].find((character) => '\0<>:"|?*'.includes(character) || character < ' ');
  return bad === undefined
    ? undefined
    : `"${name}" holds a character that not every computer takes in file names.`;
}
