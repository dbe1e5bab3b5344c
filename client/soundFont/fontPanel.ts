import type { ExtensionContext, TextDocument, WebviewPanel } from 'vscode';
import { l10n, Range, Selection, TextEditorRevealType, Uri, window } from 'vscode';
import { FontRequest, FontTextRequest } from '../../server/protocol/requests/fontRequests';
import { KeyboardMapRequest } from '../../server/protocol/requests/requests';
import type { PresetNumbers } from '../../server/soundfont/font';
import type { AudibleSource } from '../audition/host';
import { AuditionHost } from '../audition/host';
import type { ServerClient } from '../serverClient';
import { sideColumn } from '../sideGroup';
import { openNewInstrument } from '../tablePreview/newInstrument';
import { PageHost } from '../webview/pageHost';
import { convertFont } from './convertFont';
import type { FontFromPage, FontToPage } from './messages';

const fontPage = { name: 'soundFont', id: 'sound-font', title: l10n.t('SoundFont'), playsSound: true };

/** A SoundFont in an editor: tells its page what is in it, and what of a preset is to be seen and heard. */
export class FontPanel {
  readonly #client: ServerClient;
  readonly #uri: Uri;
  readonly #page: PageHost<FontToPage, FontFromPage>;
  readonly #audition: AuditionHost;
  /** The preset that is shown. */
  #shown: (AudibleSource & { preset: PresetNumbers }) | undefined;
  /** What presets are called, and the text of those that were opened, by their numbers. */
  readonly #titles = new Map<string, string>();
  readonly #texts = new Map<string, { document: TextDocument; text: string }>();

  constructor(context: ExtensionContext, client: ServerClient, uri: Uri, panel: WebviewPanel) {
    this.#client = client;
    this.#uri = uri;
    this.#page = new PageHost<FontToPage, FontFromPage>(context, panel.webview, fontPage, {
      ready: () => void this.#tell(),
      receive: (message) => this.#receive(message),
    });
    this.#audition = new AuditionHost(client, {
      send: (message) => this.#page.send(message),
      shown: () => this.#shown,
      placeOf: () => undefined,
    });
    panel.onDidDispose(() => {
      this.#page.dispose();
      this.#audition.dispose();
    });
  }

  get #address(): string {
    return this.#uri.toString();
  }

  #receive(message: FontFromPage): void {
    switch (message.type) {
      case 'show':
        void this.#show(message.preset);
        break;
      case 'open':
        void this.#open(message.preset);
        break;
      case 'choose':
        if (this.#shown) void this.#open(this.#shown.preset, message);
        break;
      case 'convert':
        void convertFont(this.#client, this.#uri, message.preset);
        break;
      default:
        this.#audition.receive(message);
    }
  }

  async #tell(): Promise<void> {
    this.#audition.pageReady();
    const file = this.#uri.path.slice(this.#uri.path.lastIndexOf('/') + 1);
    const facts = await this.#client.sendRequest(FontRequest.type, { uri: this.#address });
    if (!('problem' in facts))
      for (const one of facts.presets) this.#titles.set(numbers(one), `${numbers(one)} ${one.name}`.trim());
    this.#page.send(
      'problem' in facts ? { type: 'problem', file, reason: facts.problem } : { type: 'font', file, facts },
    );
  }

  async #show(preset: PresetNumbers): Promise<void> {
    const shown = { uri: this.#uri, preset };
    this.#shown = shown;
    this.#audition.changed();
    const { scene, reason } = await this.#client.sendRequest(KeyboardMapRequest.type, {
      uri: this.#address,
      preset,
    });
    if (shown !== this.#shown) return;
    const document = this.#titles.get(numbers(preset)) ?? numbers(preset);
    if (scene) this.#page.send({ type: 'scene', scene, document });
    else this.#page.send({ type: 'empty', reason: reason ?? '' });
  }

  /** A preset as text beside the font, to be worked on; `span` is what is to be seen in it, in offsets. */
  async #open(preset: PresetNumbers, span?: { start: number; end: number }): Promise<void> {
    const show = (document: TextDocument) =>
      window.showTextDocument(document, {
        viewColumn:
          window.visibleTextEditors.find((one) => one.document === document)?.viewColumn ?? sideColumn(),
        preview: false,
        preserveFocus: span !== undefined,
      });
    const document = await this.#textOf(preset, show);
    if (!document) return;
    const editor = await show(document);
    if (!span) return;
    const range = new Range(document.positionAt(span.start), document.positionAt(span.end));
    editor.selection = new Selection(range.start, range.start);
    editor.revealRange(range, TextEditorRevealType.InCenterIfOutsideViewport);
  }

  /** The text of a preset: where it was opened and nobody changed it, that again, else a new one that is shown. */
  async #textOf(
    preset: PresetNumbers,
    show: (document: TextDocument) => Thenable<unknown>,
  ): Promise<TextDocument | undefined> {
    const name = numbers(preset);
    const known = this.#texts.get(name);
    if (known && !known.document.isClosed && known.document.getText() === known.text) return known.document;
    const result = await this.#client.sendRequest(FontTextRequest.type, { uri: this.#address, preset });
    if ('problem' in result) {
      await window.showWarningMessage(result.problem);
      return undefined;
    }
    const [text] = result.texts;
    if (!text) return undefined;
    const document = await openNewInstrument(
      text.text,
      'sfz',
      Uri.joinPath(this.#uri, '..'),
      text.file.replace(/\.sfz$/, ''),
      show,
    );
    this.#texts.set(name, { document, text: document.getText() });
    return document;
  }
}

function numbers({ bank, program }: PresetNumbers): string {
  return `${bank}:${program}`;
}
