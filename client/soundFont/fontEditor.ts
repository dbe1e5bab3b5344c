import type { CustomDocument, CustomReadonlyEditorProvider, Disposable, ExtensionContext, Uri } from 'vscode';
import { type WebviewPanel, window } from 'vscode';
import type { ServerClient } from '../serverClient';
import { FontPanel } from './fontPanel';

/** The kind of editor that a SoundFont opens in. */
const viewType = 'zonewright.soundFont';

/** Opens SoundFonts: what is in them, to be read, heard and taken along, never to be changed. */
export class FontEditor implements CustomReadonlyEditorProvider {
  readonly #context: ExtensionContext;
  readonly #client: ServerClient;

  private constructor(context: ExtensionContext, client: ServerClient) {
    this.#context = context;
    this.#client = client;
  }

  static register(context: ExtensionContext, client: ServerClient): Disposable {
    return window.registerCustomEditorProvider(viewType, new FontEditor(context, client));
  }

  openCustomDocument(uri: Uri): CustomDocument {
    return { uri, dispose: () => {} };
  }

  resolveCustomEditor({ uri }: CustomDocument, panel: WebviewPanel): void {
    new FontPanel(this.#context, this.#client, uri, panel);
  }
}
