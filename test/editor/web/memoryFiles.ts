// An extension that has the files of the tests, in memory, as an editor has them that no machine is behind.
import * as vscode from 'vscode';

export async function activate(context: vscode.ExtensionContext): Promise<void> {
  const answer = await fetch(vscode.Uri.joinPath(context.extensionUri, 'files.json').toString(true));
  const given = (await answer.json()) as Record<string, string>;
  const provider = new MemoryFiles(
    Object.entries(given).map(([path, text]) => [
      path,
      Uint8Array.from(atob(text), (character) => character.charCodeAt(0)),
    ]),
  );
  context.subscriptions.push(
    vscode.workspace.registerFileSystemProvider('memory-files', provider, { isCaseSensitive: true }),
  );
}

class MemoryFiles implements vscode.FileSystemProvider {
  readonly #changed = new vscode.EventEmitter<vscode.FileChangeEvent[]>();
  readonly onDidChangeFile = this.#changed.event;
  readonly #files: Map<string, { content: Uint8Array; mtime: number }>;

  constructor(files: (readonly [path: string, content: Uint8Array])[]) {
    this.#files = new Map(files.map(([path, content]) => [path, { content, mtime: 1 }]));
  }

  watch(): vscode.Disposable {
    return new vscode.Disposable(() => {});
  }

  stat(uri: vscode.Uri): vscode.FileStat {
    const file = this.#files.get(uri.path);
    if (file) return { type: vscode.FileType.File, ctime: 1, mtime: file.mtime, size: file.content.length };
    if (this.readDirectory(uri).length === 0) throw vscode.FileSystemError.FileNotFound(uri);
    return { type: vscode.FileType.Directory, ctime: 1, mtime: 1, size: 0 };
  }

  readDirectory({ path }: vscode.Uri): [string, vscode.FileType][] {
    const folder = path.endsWith('/') ? path : `${path}/`;
    const below = [...this.#files.keys()].filter((one) => one.startsWith(folder));
    const entries = below.map((one): [string, vscode.FileType] => {
      const [name = '', ...more] = one.slice(folder.length).split('/');
      return [name, more.length > 0 ? vscode.FileType.Directory : vscode.FileType.File];
    });
    return [...new Map(entries)];
  }

  readFile(uri: vscode.Uri): Uint8Array {
    const file = this.#files.get(uri.path);
    if (!file) throw vscode.FileSystemError.FileNotFound(uri);
    return file.content;
  }

  writeFile(uri: vscode.Uri, content: Uint8Array): void {
    const type = this.#files.has(uri.path) ? vscode.FileChangeType.Changed : vscode.FileChangeType.Created;
    this.#files.set(uri.path, { content, mtime: Date.now() });
    this.#changed.fire([{ type, uri }]);
  }

  delete(uri: vscode.Uri): void {
    if (!this.#files.delete(uri.path)) throw vscode.FileSystemError.FileNotFound(uri);
    this.#changed.fire([{ type: vscode.FileChangeType.Deleted, uri }]);
  }

  createDirectory(uri: vscode.Uri): void {
    throw vscode.FileSystemError.NoPermissions(uri);
  }

  rename(uri: vscode.Uri): void {
    throw vscode.FileSystemError.NoPermissions(uri);
  }
}
