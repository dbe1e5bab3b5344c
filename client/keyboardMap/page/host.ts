import type { PageMessage } from '../messages';

/** What the page remembers while it is hidden or the window is reloaded. */
export interface PageState {
  zoom: number;
  /** Names of the layers that are switched off. */
  hiddenLayers: string[];
}

interface EditorApi {
  postMessage(message: PageMessage): void;
  getState(): PageState | undefined;
  setState(state: PageState): void;
}

declare function acquireVsCodeApi(): EditorApi;

/** The editor's side of the web view; it can be asked for once only. */
export const host: EditorApi = acquireVsCodeApi();
