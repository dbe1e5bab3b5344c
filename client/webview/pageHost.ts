import type { Disposable, ExtensionContext, Webview } from 'vscode';
import { env, l10n, Uri } from 'vscode';
import type { FrameMessage } from './frameMessage';
import { freshNonce } from './nonce';
import { pageDocument } from './pageDocument';

/** Which page a web view shows. */
export interface PageChoice {
  /** The folder of the page below `client`, which is the name of its bundle. */
  name: string;
  /** The `id` of the element that the page fills. */
  id: string;
  /** What a screen reader calls the page. */
  title: string;
  /** Whether the page plays sound; only then its policy allows what sound needs. */
  playsSound?: boolean;
  /** Whether the page makes pictures of its own drawings; only then its policy allows what that needs. */
  makesPictures?: boolean;
}

/** What a host does about its page. */
export interface PageEvents<FromPage> {
  /** The page listens, for the first time or anew after it was hidden: it knows nothing yet. */
  ready(): void;
  receive(message: FromPage): void;
}

/**
 * The host's end of a page in a web view: gives the web view its document and passes typed messages. One is made for
 * each web view; the page tells it when it can be sent to.
 */
export class PageHost<ToPage, FromPage> implements Disposable {
  readonly #webview: Webview;
  readonly #listener: Disposable;
  #isReady = false;

  constructor(context: ExtensionContext, webview: Webview, choice: PageChoice, events: PageEvents<FromPage>) {
    this.#webview = webview;
    const folder = Uri.joinPath(context.extensionUri, 'dist', 'pages');
    const address = (file: string) => webview.asWebviewUri(Uri.joinPath(folder, file)).toString();
    webview.options = { enableScripts: true, localResourceRoots: [folder] };
    this.#listener = webview.onDidReceiveMessage((message: FromPage | FrameMessage) => {
      if (!isFrameMessage(message)) {
        events.receive(message);
        return;
      }
      this.#isReady = true;
      events.ready();
    });
    webview.html = pageDocument({
      title: choice.title,
      id: choice.id,
      playsSound: choice.playsSound,
      makesPictures: choice.makesPictures,
      scriptUri: address(`${choice.name}.js`),
      styleUri: address(`${choice.name}.css`),
      cspSource: webview.cspSource,
      nonce: freshNonce(),
      language: env.language,
      strings: l10n.bundle,
    });
  }

  /** Whether the page listens. */
  get isReady(): boolean {
    return this.#isReady;
  }

  /** Sends to the page; what is sent before it is ready is dropped, for `ready` follows. */
  send(message: ToPage): void {
    if (this.#isReady) void this.#webview.postMessage(message);
  }

  dispose(): void {
    this.#listener.dispose();
  }
}

function isFrameMessage(message: unknown): message is FrameMessage {
  return typeof message === 'object' && message !== null && 'type' in message && message.type === 'ready';
}
