import type {
  CustomDocument,
  CustomReadonlyEditorProvider,
  Disposable,
  ExtensionContext,
  WebviewPanel,
} from 'vscode';
import { l10n, Uri, ViewColumn, window } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { FontRequest, FontTextRequest } from '../../server/protocol/requests/fontRequests';
import { openNewInstrument } from '../tablePreview/newInstrument';
import { PageHost } from '../webview/pageHost';
import { convertFont } from './convertFont';
import type { FontFromPage, FontToPage, PresetPlace } from './messages';

/** The kind of editor that a SoundFont opens in. */
const viewType = 'zonewright.soundFont';
const fontPage = { name: 'soundFont', id: 'sound-font', title: l10n.t('SoundFont') };

/** Opens SoundFonts: what is in them, to be read and taken along, never to be changed. */
export class FontEditor implements CustomReadonlyEditorProvider {
  readonly #context: ExtensionContext;
  readonly #client: BaseLanguageClient;

  private constructor(context: ExtensionContext, client: BaseLanguageClient) {
    this.#context = context;
    this.#client = client;
  }

  static register(context: ExtensionContext, client: BaseLanguageClient): Disposable {
    return window.registerCustomEditorProvider(viewType, new FontEditor(context, client));
  }

  openCustomDocument(uri: Uri): CustomDocument {
    return { uri, dispose: () => {} };
  }

  resolveCustomEditor({ uri }: CustomDocument, panel: WebviewPanel): void {
    const page = new PageHost<FontToPage, FontFromPage>(this.#context, panel.webview, fontPage, {
      ready: () => void this.#tell(uri, page),
      receive: (message) => {
        if (message.type === 'open') void this.#open(uri, message.preset);
        else void convertFont(this.#client, uri, message.preset);
      },
    });
    panel.onDidDispose(() => page.dispose());
  }

  async #tell(uri: Uri, page: PageHost<FontToPage, FontFromPage>): Promise<void> {
    const file = uri.path.slice(uri.path.lastIndexOf('/') + 1);
    const facts = await this.#client.sendRequest(FontRequest.type, { uri: this.#address(uri) });
    page.send(
      'problem' in facts ? { type: 'problem', file, reason: facts.problem } : { type: 'font', file, facts },
    );
  }

  /** A preset as text beside the font: what works on instruments, the map and sound, works on it. */
  async #open(uri: Uri, preset: PresetPlace): Promise<void> {
    const result = await this.#client.sendRequest(FontTextRequest.type, { uri: this.#address(uri), preset });
    if ('problem' in result) {
      await window.showWarningMessage(result.problem);
      return;
    }
    const [text] = result.texts;
    if (!text) return;
    const document = await openNewInstrument(
      text.text,
      'sfz',
      Uri.joinPath(uri, '..'),
      text.file.replace(/\.sfz$/, ''),
    );
    await window.showTextDocument(document, { viewColumn: ViewColumn.Beside, preview: false });
  }

  #address(uri: Uri): string {
    return this.#client.code2ProtocolConverter.asUri(uri);
  }
}
