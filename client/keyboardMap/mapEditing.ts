import type { Uri } from 'vscode';
import { commands, l10n, window, workspace } from 'vscode';
import type { Arrangement } from '../../server/gestures/arrangement';
import { ArrangeMapRequest } from '../../server/protocol/requests/requests';
import type { ServerClient } from '../serverClient';

/** What changing a map needs of its panel. */
export interface MapEditingParts {
  /** The document that the map shows, in the version that it shows. */
  shown(): { uri: Uri; version: number } | undefined;
  /** Tells the page what came of a change. */
  answer(message: string): void;
  /** Puts the focus back into the map. */
  focus(): Promise<void>;
}

/** Changes the text of a document as its map was changed: each gesture is one edit and one step of undoing. */
export class MapEditing {
  readonly #client: ServerClient;
  readonly #parts: MapEditingParts;

  constructor(client: ServerClient, parts: MapEditingParts) {
    this.#client = client;
    this.#parts = parts;
  }

  /** Makes an arrangement of the scene that is shown. */
  async arrange(arrangement: Arrangement): Promise<void> {
    const shown = this.#parts.shown();
    if (!shown) return;
    const uri = shown.uri.toString();
    const { version } = shown;
    try {
      const answer = await this.#client.sendRequest(ArrangeMapRequest.type, { uri, version, arrangement });
      const edit = answer.edit && (await this.#client.asWorkspaceEdit(answer.edit));
      if (!edit) this.#parts.answer(answer.refusal ?? failed());
      else if (await workspace.applyEdit(edit)) this.#parts.answer(l10n.t('Changed in the text.'));
      else this.#parts.answer(failed());
    } catch (error) {
      this.#parts.answer(failed());
      throw error;
    }
  }

  /** Takes the last change of the document back, or makes it again; the focus stays in the map. */
  async takeBack(what: 'undo' | 'redo'): Promise<void> {
    const shown = this.#parts.shown();
    if (!shown) return;
    const document = await workspace.openTextDocument(shown.uri);
    const open = window.visibleTextEditors.find((editor) => editor.document === document);
    await window.showTextDocument(document, { viewColumn: open?.viewColumn });
    await commands.executeCommand(what);
    await this.#parts.focus();
  }
}

function failed(): string {
  return l10n.t('The text could not be changed. Check that it can be written to, and try again.');
}
