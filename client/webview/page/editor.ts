/** The editor's side of a web view, as the editor gives it to a page. */
interface EditorApi {
  postMessage(message: unknown): void;
  getState(): unknown;
  setState(state: unknown): void;
}

declare function acquireVsCodeApi(): EditorApi;

/** The editor's side of this web view; it can be asked for once only. */
export const editor: EditorApi = acquireVsCodeApi();
