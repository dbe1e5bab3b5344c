import type { Disposable, TextDocumentContentProvider } from 'vscode';
import { commands, l10n, Uri, ViewColumn, workspace } from 'vscode';
import type { FileFixes } from '../../server/protocol/requests/fixRequests';
import type { ServerClient } from '../serverClient';

const scheme = 'zonewright-fixes';

/** Shows files as they would be with fixes, beside what they are. */
export class FixedTexts implements TextDocumentContentProvider, Disposable {
  readonly #texts = new Map<string, string>();
  readonly #registration = workspace.registerTextDocumentContentProvider(scheme, this);
  #serial = 0;

  provideTextDocumentContent(uri: Uri): string {
    return this.#texts.get(uri.toString()) ?? '';
  }

  /** Opens the difference that fixes make in a file; the list that it is chosen from keeps the focus. */
  async show(file: Uri, { edits, name }: FileFixes, client: ServerClient): Promise<void> {
    const document = await workspace.openTextDocument(file);
    const places = (await client.asTextEdits(edits)).map(({ range, newText }) => ({
      start: document.offsetAt(range.start),
      end: document.offsetAt(range.end),
      newText,
    }));
    let text = document.getText();
    for (const { start, end, newText } of places.sort((a, b) => b.start - a.start || b.end - a.end))
      text = text.slice(0, start) + newText + text.slice(end);
    const uri = Uri.from({ scheme, path: file.path, query: String(++this.#serial) });
    this.#texts.clear();
    this.#texts.set(uri.toString(), text);
    await commands.executeCommand('vscode.diff', file, uri, l10n.t('{0}, now and fixed', name), {
      viewColumn: ViewColumn.Active,
      preview: true,
      preserveFocus: true,
    });
  }

  dispose(): void {
    this.#registration.dispose();
  }
}
