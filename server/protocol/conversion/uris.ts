import { URI } from 'vscode-uri';

/** What the URIs of all files that are served have in common. */
interface FilePlace {
  scheme: string;
  authority: string;
}

/** Where the files are; `undefined` for the disk of this machine. */
let place: FilePlace | undefined;

/**
 * Has paths stand for files of the place that a URI names by its scheme and authority, as in an editor that a browser
 * hosts. Without it they stand for files of this machine's disk.
 */
export function serveFilesOf(uri: string): void {
  const { scheme, authority } = URI.parse(uri);
  place = scheme === 'file' ? undefined : { scheme, authority };
}

/** The path of a file URI with `/`; `undefined` for a document that is no file, or a file of another place. */
export function pathOfUri(uri: string): string | undefined {
  try {
    const parsed = URI.parse(uri);
    if (place) return isIn(place, parsed) ? parsed.path : undefined;
    return parsed.scheme === 'file' ? parsed.fsPath.replaceAll('\\', '/') : undefined;
  } catch {
    return undefined;
  }
}

/** The file URI of an absolute path. */
export function uriOfPath(path: string): string {
  if (!place) return URI.file(path).toString();
  // Behind an authority a path begins with one slash, without one not with two (RFC 3986, 3.3).
  return URI.from({ ...place, path: path.replace(/^\/*/, '/') }).toString();
}

/** Authorities know no letter case (RFC 3986, 3.2.2). A query is for another version of a file. */
function isIn({ scheme, authority }: FilePlace, uri: URI): boolean {
  return uri.scheme === scheme && uri.authority.toLowerCase() === authority.toLowerCase() && uri.query === '';
}
