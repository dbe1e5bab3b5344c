import { URI } from 'vscode-uri';

/** The path of a file URI with `/`; `undefined` for a document that is no file. */
export function pathOfUri(uri: string): string | undefined {
  try {
    const parsed = URI.parse(uri);
    return parsed.scheme === 'file' ? parsed.fsPath.replaceAll('\\', '/') : undefined;
  } catch {
    return undefined;
  }
}

/** The file URI of an absolute path. */
export function uriOfPath(path: string): string {
  return URI.file(path).toString();
}
