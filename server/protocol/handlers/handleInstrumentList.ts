import { nameOf } from '../../model/paths';
import { instrumentFilesBelow } from '../../workspace/files/instrumentFiles';
import { judgedFile } from '../../workspace/judgedFiles';
import { stopIfCancelled } from '../cancellation';
import { pathOfUri, uriOfPath } from '../conversion/uris';
import type { InstrumentState } from '../requests/instrumentListRequests';
import {
  CheckInstrumentRequest,
  IncludedByRequest,
  InstrumentListRequest,
} from '../requests/instrumentListRequests';
import type { ServerContext } from '../serverContext';

/** Answers what instruments the open folders hold, and in what state one is. */
export function handleInstrumentList(server: ServerContext): void {
  const { connection, documents } = server;
  connection.onRequest(InstrumentListRequest.type, async (_params, token) => {
    const paths = await instrumentFilesBelow(documents.files, server.folders);
    const uris: string[] = [];
    for (const path of paths.sort()) {
      stopIfCancelled(token);
      if (!(await documents.mainOf(path))) uris.push(documents.openDocument(path)?.uri ?? uriOfPath(path));
    }
    return uris;
  });

  connection.onRequest(IncludedByRequest.type, async ({ uri }) => {
    const path = pathOfUri(uri);
    const main = path === undefined ? undefined : await documents.mainOf(path);
    return main?.path !== undefined && /\.sfzh?$/i.test(main.path) ? { name: nameOf(main.path) } : null;
  });

  connection.onRequest(CheckInstrumentRequest.type, async ({ uri }, token) => {
    const path = pathOfUri(uri);
    const judged = path === undefined ? undefined : await judgedFile(documents, path);
    stopIfCancelled(token);
    if (!judged) return null;
    const state: InstrumentState = { errors: 0, warnings: 0, others: 0, missingSamples: 0 };
    for (const { severity, code } of judged.findings) {
      if (severity === 'error') state.errors++;
      else if (severity === 'warning') state.warnings++;
      else state.others++;
      if (code === 'sample-missing') state.missingSamples++;
    }
    return state;
  });
}
