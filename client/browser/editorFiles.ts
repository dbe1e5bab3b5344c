import type { Disposable } from 'vscode';
import { FileType, Uri, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { FileStat, FolderEntry } from '../../server/model/files';
import {
  FileRangeRequest,
  FileStatRequest,
  FolderListRequest,
} from '../../server/protocol/requests/fileRequests';
import { WholeFiles } from './wholeFiles';

/** Gives the server the files of the editor, wherever those are. */
export function registerEditorFiles(client: BaseLanguageClient): Disposable[] {
  const whole = new WholeFiles((file) => workspace.fs.readFile(Uri.parse(file)));
  return [
    client.onRequest(FileStatRequest.type, ({ file }) => stat(file)),
    client.onRequest(FolderListRequest.type, ({ file }) => list(file)),
    client.onRequest(FileRangeRequest.type, ({ start, length, ...state }) =>
      whole.range(state, start, length),
    ),
  ];
}

async function stat(file: string): Promise<FileStat | null> {
  try {
    const { type, size, mtime } = await workspace.fs.stat(Uri.parse(file));
    return { kind: kindOf(type), size, modified: mtime };
  } catch {
    return null;
  }
}

async function list(folder: string): Promise<FolderEntry[] | null> {
  try {
    const entries = await workspace.fs.readDirectory(Uri.parse(folder));
    return entries.map(([name, type]) => ({ name, kind: kindOf(type) }));
  } catch {
    return null;
  }
}

/** The kind of a symbolic link is that of what it leads to; it has a bit beside it. */
function kindOf(type: FileType): FileStat['kind'] {
  return (type & FileType.Directory) === 0 ? 'file' : 'folder';
}
