import type { PageMessage } from '../messages';

interface EditorApi {
  postMessage(message: PageMessage): void;
}

declare function acquireVsCodeApi(): EditorApi;

/** The editor's side of the web view; it can be asked for once only. */
export const host: EditorApi = acquireVsCodeApi();
