import type { Disposable, ExtensionContext, TextEditor, WebviewView, WebviewViewProvider } from 'vscode';
import {
  commands,
  l10n,
  languages,
  Range,
  Selection,
  TextEditorRevealType,
  Uri,
  window,
  workspace,
} from 'vscode';
import type { MapScene } from '../../server/map/mapScene';
import {
  InstrumentChangedNotification,
  KeyboardMapRequest,
  MapMeasuresRequest,
} from '../../server/protocol/requests/requests';
import type { AudibleSource } from '../audition/host';
import { AuditionHost } from '../audition/host';
import type { Played } from '../audition/messages';
import { mayHoldInstrument } from '../languages';
import type { ServerClient } from '../serverClient';
import { PageHost } from '../webview/pageHost';
import { addSamples } from './addSamples';
import { MapEditing } from './mapEditing';
import { MapProblems } from './mapProblems';
import type { MapFromPage, MapToPage } from './messages';
import { savePicture } from './savePicture';
import { selectStretch } from './selectStretch';

const viewId = 'zonewright.keyboardMap';
const mapPage = {
  name: 'keyboardMap',
  id: 'keyboard-map',
  title: l10n.t('Keyboard map'),
  playsSound: true,
  makesPictures: true,
};

/** The keyboard map of the instrument in the active editor, in step with its text and cursor. */
export class KeyboardMapPanel implements WebviewViewProvider {
  readonly #context: ExtensionContext;
  readonly #client: ServerClient;
  #view: WebviewView | undefined;
  #page: PageHost<MapToPage, MapFromPage> | undefined;
  /** The document that the map shows; it stays when the focus goes to something that is no instrument. */
  #shown: Uri | undefined;
  /** The same for {@link AuditionHost}. */
  #played: AudibleSource | undefined;
  #scene: MapScene | undefined;
  /** The scene that is being fetched, and whether it will be out of date when it comes. */
  #fetching: Promise<void> | undefined;
  #outOfDate = false;
  #selected: number[] = [];
  readonly #audition: AuditionHost;
  /** What is to be played as soon as the page is there. */
  #asked: Played | undefined;
  readonly #arranging: MapEditing;
  readonly #problems: MapProblems;
  #version = 0;

  private constructor(context: ExtensionContext, client: ServerClient) {
    this.#context = context;
    this.#client = client;
    const shown = () => this.#shown && { uri: this.#shown, version: this.#version };
    this.#problems = new MapProblems(client, {
      shown,
      paths: () => this.#scene?.sources ?? [],
      tell: (problems) => this.#send({ type: 'problems', problems }),
    });
    this.#arranging = new MapEditing(client, {
      shown,
      answer: (message) => this.#send({ type: 'arranged', message }),
      focus: async () => {
        await commands.executeCommand(`${viewId}.focus`);
        this.#send({ type: 'focus' });
      },
    });
    this.#audition = new AuditionHost(client, {
      send: (message) => this.#send(message),
      shown: () => this.#played,
      placeOf: (header) => this.#placeOf(header),
    });
  }

  static register(context: ExtensionContext, client: ServerClient): Disposable[] {
    const panel = new KeyboardMapPanel(context, client);
    return [
      window.registerWebviewViewProvider(viewId, panel),
      commands.registerCommand('zonewright.showKeyboardMap', async (uri?: unknown, range?: unknown) => {
        await selectStretch(uri, range);
        await commands.executeCommand(`${viewId}.focus`);
      }),
      window.onDidChangeActiveTextEditor((editor) => panel.#follow(editor)),
      window.onDidChangeTextEditorSelection(({ textEditor }) => panel.#showSelection(textEditor)),
      commands.registerCommand('zonewright.playRegions', (uri?: unknown, range?: unknown) =>
        panel.#play('regions', uri, range),
      ),
      commands.registerCommand('zonewright.playSample', (uri?: unknown, range?: unknown) =>
        panel.#play('sample', uri, range),
      ),
      commands.registerCommand('zonewright.addSamples', (one?: unknown, all?: unknown) =>
        panel.#addChosen(one, all),
      ),
      commands.registerCommand('zonewright.playKeys', () => panel.#play('keys')),
      commands.registerCommand('zonewright.playLayers', () => panel.#play('layers')),
      panel.#audition,
      workspace.onDidCloseTextDocument((document) => panel.#forget(document.uri)),
      languages.onDidChangeDiagnostics(({ uris }) => panel.#problems.changed(uris)),
      client.onNotification(InstrumentChangedNotification.type, ({ uri }) => panel.#changed(uri)),
    ];
  }

  resolveWebviewView(view: WebviewView): void {
    this.#view = view;
    const page = new PageHost<MapToPage, MapFromPage>(this.#context, view.webview, mapPage, {
      ready: () => void this.#start(),
      receive: (message) => {
        if (message.type === 'choose') void this.#reveal(message);
        else if (message.type === 'arrange') void this.#arranging.arrange(message.arrangement);
        else if (message.type === 'addSamples') void this.#add(message.uris, message.key, message.after);
        else if (message.type === 'report')
          void commands.executeCommand('zonewright.sampleReport', this.#shown);
        else if (message.type === 'picture') void savePicture(this.#shown, message);
        else if (message.type === 'wantMeasures') void this.#measure(message.key);
        else if (message.type === 'undo' || message.type === 'redo')
          void this.#arranging.takeBack(message.type);
        else this.#audition.receive(message);
      },
    });
    this.#page = page;
    view.onDidChangeVisibility(() => this.#refresh());
    view.onDidDispose(() => {
      page.dispose();
      this.#view = undefined;
      this.#page = undefined;
    });
  }

  async #start(): Promise<void> {
    this.#follow(window.activeTextEditor);
    if (!this.#shown) this.#sayNothingOpen();
    else {
      this.#audition.pageReady();
      await this.#refresh();
      const asked = this.#asked;
      this.#asked = undefined;
      if (asked !== undefined) this.#playSelected(asked);
    }
  }

  /** Plays the regions that a stretch of a document touches, or those at the cursor, in turn; or keys or layers. */
  async #play(what: Played, uri?: unknown, range?: unknown): Promise<void> {
    await selectStretch(uri, range);
    await commands.executeCommand(`${viewId}.focus`);
    this.#follow(window.activeTextEditor);
    // A page that is shown for the first time plays as soon as it listens.
    if (!this.#page?.isReady) {
      this.#asked = what;
      return;
    }
    await this.#refresh();
    this.#playSelected(what);
  }

  #playSelected(what: Played): void {
    const editor = window.activeTextEditor;
    if (!this.#scene || !editor) return;
    const ranges = editor.selections.map(
      ({ start, end }) => [editor.document.offsetAt(start), editor.document.offsetAt(end)] as const,
    );
    const headers = regionsAt(this.#scene, ranges);
    if (headers.length === 0 && what !== 'keys') {
      void window.showInformationMessage(l10n.t('Put the cursor into a region to hear it.'));
      return;
    }
    this.#audition.play(headers, what);
  }

  #placeOf(header: number): { path: string | undefined; start: number; end: number } | undefined {
    for (const { regions } of this.#scene?.shapes ?? []) {
      const region = regions.find((one) => one.header === header);
      if (region) {
        const { source, start, end } = region;
        return { path: source === 0 ? undefined : this.#scene?.sources[source], start, end };
      }
    }
    return undefined;
  }

  #follow(editor: TextEditor | undefined): void {
    if (!editor || !mayHoldInstrument(editor.document)) return;
    const isOther = this.#shown?.toString() !== editor.document.uri.toString();
    this.#shown = editor.document.uri;
    if (isOther) {
      this.#played = { uri: this.#shown };
      this.#audition.changed();
    }
    void this.#refresh();
  }

  #changed(uri: string): void {
    if (!this.#shown || this.#shown.toString() !== uri) return;
    this.#audition.changed();
    void this.#refresh();
  }

  #forget(uri: Uri): void {
    if (this.#shown?.toString() !== uri.toString()) return;
    this.#shown = undefined;
    this.#played = undefined;
    this.#scene = undefined;
    this.#sayNothingOpen();
  }

  #sayNothingOpen(): void {
    this.#send({
      type: 'empty',
      reason: l10n.t('Open an SFZ or instrument XML document to see its keyboard map.'),
    });
  }

  /** Brings the map up to date. One scene is fetched at a time, so that typing in a long text does not pile them up. */
  #refresh(): Promise<void> {
    this.#outOfDate = true;
    this.#fetching ??= this.#fetchAll().finally(() => {
      this.#fetching = undefined;
    });
    return this.#fetching;
  }

  async #fetchAll(): Promise<void> {
    while (this.#outOfDate) {
      this.#outOfDate = false;
      await this.#fetch();
    }
  }

  async #fetch(): Promise<void> {
    const shown = this.#shown;
    if (!shown || !this.#view?.visible || !this.#page?.isReady) return;
    const uri = shown.toString();
    const answer = await this.#client.sendRequest(KeyboardMapRequest.type, { uri });
    if (shown !== this.#shown) return;
    this.#scene = answer.scene ?? undefined;
    if (!answer.scene) {
      this.#send({ type: 'empty', reason: answer.reason ?? l10n.t('This document holds no instrument.') });
      return;
    }
    const { scene, version } = answer;
    this.#version = version;
    this.#send({ type: 'scene', scene, document: workspace.asRelativePath(shown), version });
    void this.#problems.tell();
    const editor = window.activeTextEditor;
    if (editor) this.#showSelection(editor, true);
  }

  /** Adds samples to the instrument that is shown, and has the page told what came of it. */
  async #add(samples: readonly string[], key?: number, after?: number): Promise<void> {
    const uri = this.#shown;
    if (!uri) return;
    const told = await addSamples(this.#client, samples, { uri, version: this.#version, key, after });
    this.#send({ type: 'arranged', message: told });
  }

  /** The command that adds what is chosen in the explorer, as dropping it does. */
  async #addChosen(one?: unknown, all?: unknown): Promise<void> {
    const uris = (Array.isArray(all) && all.length > 0 ? all : [one]).filter((each) => each instanceof Uri);
    if (!this.#shown) this.#follow(window.activeTextEditor);
    const shown = this.#shown && (await workspace.openTextDocument(this.#shown));
    if (!shown || uris.length === 0) {
      void window.showInformationMessage(
        l10n.t('Open the instrument first, then choose samples in the explorer to add to it.'),
      );
      return;
    }
    const samples = uris.map((uri) => uri.toString());
    const told = await addSamples(this.#client, samples, { uri: shown.uri, version: shown.version });
    this.#send({ type: 'arranged', message: told });
    void window.showInformationMessage(told);
  }

  /** Has the page told what its views show. */
  async #measure(key: number): Promise<void> {
    const shown = this.#shown;
    const version = this.#version;
    if (!shown) return;
    const uri = shown.toString();
    const measures = await this.#client.sendRequest(MapMeasuresRequest.type, { uri, key });
    // What comes of an earlier text names other regions.
    if (measures && shown === this.#shown && version === this.#version)
      this.#send({ type: 'measures', measures });
  }

  #showSelection(editor: TextEditor, always = false): void {
    const { document, selections } = editor;
    if (!this.#scene || document.uri.toString() !== this.#shown?.toString()) return;
    const ranges = selections.map(
      ({ start, end }) => [document.offsetAt(start), document.offsetAt(end)] as const,
    );
    const selected = regionsAt(this.#scene, ranges);
    if (
      !always &&
      selected.length === this.#selected.length &&
      selected.every((one, at) => one === this.#selected[at])
    )
      return;
    this.#selected = selected;
    this.#send({ type: 'select', regions: selected });
  }

  async #reveal(choice: Extract<MapFromPage, { type: 'choose' }>): Promise<void> {
    const path = this.#scene?.sources[choice.source];
    const uri = choice.source === 0 || path === undefined ? this.#shown : this.#shown?.with({ path });
    if (!uri) return;
    const document = await workspace.openTextDocument(uri);
    const range = new Range(document.positionAt(choice.start), document.positionAt(choice.end));
    const open = window.visibleTextEditors.find((editor) => editor.document === document);
    const editor = await window.showTextDocument(document, {
      viewColumn: open?.viewColumn,
      preserveFocus: true,
    });
    editor.selection = new Selection(range.start, range.start);
    editor.revealRange(range, TextEditorRevealType.InCenterIfOutsideViewport);
  }

  #send(message: MapToPage): void {
    this.#page?.send(message);
  }
}

/** The regions whose text a selection touches, by their header positions; spans are in the main file. */
function regionsAt(scene: MapScene, ranges: readonly (readonly [start: number, end: number])[]): number[] {
  const found: number[] = [];
  for (const { regions } of scene.shapes) {
    for (const { source, start, end, header } of regions) {
      if (source === 0 && ranges.some(([from, to]) => from <= end && to >= start)) found.push(header);
    }
  }
  return found;
}
