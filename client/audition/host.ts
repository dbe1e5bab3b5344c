import type { Disposable, TextEditorDecorationType, Uri } from 'vscode';
import { commands, DecorationRangeBehavior, Range, ThemeColor, window } from 'vscode';
import type { Message } from '../../server/playing/player/playMessage';
import type { InstrumentPlace } from '../../server/protocol/requests/requests';
import { SampleAudioRequest, SoundRequest } from '../../server/protocol/requests/soundRequests';
import type { PresetNumbers } from '../../server/soundfont/font';
import type { ServerClient } from '../serverClient';
import type { AuditionFromPage, AuditionToPage, Played } from './messages';

/** Milliseconds after a change of the text until it is heard; several changes in a row are taken as one. */
const settleMs = 60;

/** Something that can be played. */
export interface AudibleSource {
  uri: Uri;
  preset?: PresetNumbers;
}

/** What the host needs of the page and of the map it shows. */
export interface AuditionPage {
  send(message: AuditionToPage): void;
  /** What is played: a document, or a preset of a SoundFont. The answer is the same object while it is the same. */
  shown(): AudibleSource | undefined;
  /** Where the text of a region stands, by its header: the path of its file where that is not the document itself. */
  placeOf(header: number): { path: string | undefined; start: number; end: number } | undefined;
}

/** The host's side of sound: fetches what a page wants to play from the server, and marks lines whose regions sound. */
export class AuditionHost implements Disposable {
  /** All that there are, for what silences every one of them. */
  static readonly #all = new Set<AuditionHost>();
  readonly #client: ServerClient;
  readonly #page: AuditionPage;
  readonly #mark: TextEditorDecorationType;
  #isOn = false;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(client: ServerClient, page: AuditionPage) {
    this.#client = client;
    this.#page = page;
    AuditionHost.#all.add(this);
    this.#mark = window.createTextEditorDecorationType({
      isWholeLine: true,
      rangeBehavior: DecorationRangeBehavior.ClosedClosed,
      borderWidth: '0 0 0 2px',
      borderStyle: 'solid',
      borderColor: new ThemeColor('charts.foreground'),
      overviewRulerColor: new ThemeColor('charts.foreground'),
    });
  }

  /** Takes a message of the page; answers whether it was one about sound. */
  receive(message: AuditionFromPage | { type: string }): boolean {
    const known = message as AuditionFromPage;
    switch (known.type) {
      case 'wantSound':
        this.#isOn = true;
        // The one turned on last stands last.
        AuditionHost.#all.delete(this);
        AuditionHost.#all.add(this);
        void this.#sendSound();
        return true;
      case 'wantSample':
        void this.#sendSample(known.header);
        return true;
      case 'wantAudio':
        void this.#sendAudio(known);
        return true;
      case 'sounding':
        this.#markLines(known.headers);
        return true;
      case 'soundOff':
        this.#isOn = false;
        this.#markLines([]);
        return true;
      default:
        return false;
    }
  }

  /** Plays on the page whose sound was turned on last, as far as it is on. */
  static play(message: Message): void {
    const playing = [...AuditionHost.#all].filter((host) => host.#isOn);
    const last = playing.at(-1);
    if (last) last.#page.send({ type: 'midi', message });
  }

  /** The page listens, for the first time or anew, and has no sound yet. */
  pageReady(): void {
    this.#isOn = false;
  }

  /** Plays notes in turn, from regions given by their headers, on a page that listens. */
  play(headers: number[], what: Played): void {
    this.#page.send({ type: 'play', headers, what });
  }

  /** Ends all sound, wherever it is played: by a command, and when the window loses the focus. */
  static registerSilencing(): Disposable[] {
    const silence = () => {
      for (const host of AuditionHost.#all) host.#page.send({ type: 'silence' });
    };
    return [
      commands.registerCommand('zonewright.stopSound', silence),
      window.onDidChangeWindowState(({ focused }) => {
        if (!focused) silence();
      }),
    ];
  }

  /** The instrument or the document that is shown is another one now. */
  changed(): void {
    if (!this.#isOn) return;
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.#sendSound(), settleMs);
  }

  async #sendSound(): Promise<void> {
    const shown = this.#page.shown();
    if (!shown || !this.#isOn) return;
    const place = this.#placeOf(shown);
    const { instrument, reason } = await this.#client.sendRequest(SoundRequest.type, place);
    if (shown === this.#page.shown())
      this.#page.send({ type: 'sound', instrument, ...(reason && { reason }) });
  }

  async #sendSample(header: number): Promise<void> {
    const shown = this.#page.shown();
    if (!shown) return;
    const { instrument } = await this.#client.sendRequest(SoundRequest.type, {
      ...this.#placeOf(shown),
      sampleOf: header,
    });
    if (shown === this.#page.shown() && instrument !== null)
      this.#page.send({ type: 'sampleSound', instrument });
  }

  async #sendAudio({
    sample,
    startFrame,
    frames,
  }: Extract<AuditionFromPage, { type: 'wantAudio' }>): Promise<void> {
    const shown = this.#page.shown();
    if (!shown) return;
    const audio = await this.#client.sendRequest(SampleAudioRequest.type, {
      ...this.#placeOf(shown),
      sample,
      startFrame,
      frames,
    });
    this.#page.send({ type: 'audio', sample, startFrame, ...audio });
  }

  #placeOf({ uri, preset }: AudibleSource): InstrumentPlace {
    return { uri: uri.toString(), ...(preset && { preset }) };
  }

  #markLines(headers: readonly number[]): void {
    const shown = this.#page.shown();
    const places = headers.map((header) => this.#page.placeOf(header)).filter((place) => place !== undefined);
    for (const editor of window.visibleTextEditors) {
      const { uri } = editor.document;
      const isShown = uri.toString() === shown?.uri.toString();
      const here = places.filter(({ path }) => (path === undefined ? isShown : path === uri.path));
      const ranges = here.map(({ start }) => {
        const at = editor.document.positionAt(start);
        return new Range(at, at);
      });
      editor.setDecorations(this.#mark, ranges);
    }
  }

  dispose(): void {
    AuditionHost.#all.delete(this);
    clearTimeout(this.#timer);
    this.#mark.dispose();
  }
}
