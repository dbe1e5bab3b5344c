import type { Uri } from 'vscode';
import { MapFindingsRequest } from '../../server/protocol/requests/requests';
import type { ServerClient } from '../serverClient';
import type { MapProblem } from './messages';

/** What telling the problems of a map needs of its panel. */
export interface MapProblemsParts {
  /** The document that the map shows, in the version that it shows. */
  shown(): { uri: Uri; version: number } | undefined;
  /** The paths of all files of the instrument that is shown. */
  paths(): readonly string[];
  tell(problems: MapProblem[]): void;
}

/** What was found wrong with the regions of a map, also in files that its document includes and that are closed. */
export class MapProblems {
  readonly #client: ServerClient;
  readonly #parts: MapProblemsParts;

  constructor(client: ServerClient, parts: MapProblemsParts) {
    this.#client = client;
    this.#parts = parts;
  }

  /** Says that the findings of files may be others. */
  changed(uris: readonly Uri[]): void {
    const shown = this.#parts.shown()?.uri.toString();
    const paths = new Set(this.#parts.paths());
    if (uris.some((uri) => uri.toString() === shown || paths.has(uri.path))) void this.tell();
  }

  /** Asks for the problems of what is shown and tells them, unless it is another by then. */
  async tell(): Promise<void> {
    const asked = this.#parts.shown();
    if (!asked) return;
    const uri = asked.uri.toString();
    const answer = await this.#client.sendRequest(MapFindingsRequest.type, { uri });
    const shown = this.#parts.shown();
    if (answer && shown?.uri === asked.uri && shown.version === answer.version)
      this.#parts.tell(answer.findings);
  }
}
