import { LitElement } from 'lit';
import type { FrameMessage } from '../frameMessage';
import { editor } from './editor';

/**
 * A page as an element: it takes typed messages of its host, tells it others, and remembers a state while it is hidden
 * or the window is reloaded. It renders into the document itself, so that one style sheet holds for all of it. Fields
 * that templates read are plain; `requestUpdate` draws anew.
 */
export abstract class PageElement<ToPage, FromPage, State extends object> extends LitElement {
  #state: State;

  /** `initial` counts for what is not remembered. */
  constructor(initial: State) {
    super();
    this.#state = { ...initial, ...(editor.getState() as Partial<State> | undefined) };
  }

  /** What the page remembers. */
  protected get state(): Readonly<State> {
    return this.#state;
  }

  /** Remembers some values more; the others stay. */
  protected remember(change: Partial<State>): void {
    this.#state = { ...this.#state, ...change };
    editor.setState(this.#state);
  }

  /** Takes a message of the host. */
  protected abstract receive(message: ToPage): void;

  protected tell(message: FromPage): void {
    editor.postMessage(message);
  }

  protected override createRenderRoot(): this {
    return this;
  }

  protected override firstUpdated(): void {
    window.addEventListener('message', ({ data }: MessageEvent<ToPage>) => this.receive(data));
    const ready: FrameMessage = { type: 'ready' };
    editor.postMessage(ready);
  }
}

/** Puts a page into the document. Its name is one of custom elements, with a hyphen. */
export function startPage(
  name: string,
  page: new () => PageElement<never, never, never> | HTMLElement,
): void {
  customElements.define(name, page as CustomElementConstructor);
  document.querySelector('main')?.append(document.createElement(name));
}
