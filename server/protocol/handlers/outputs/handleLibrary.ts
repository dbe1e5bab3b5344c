import type { CancellationToken } from 'vscode-languageserver';
import { version } from '../../../../package.json';
import type { BuildHost } from '../../../library/build/runBuild';
import { runBuild } from '../../../library/build/runBuild';
import { libraryFileName } from '../../../library/libraryFile';
import { openLibrary } from '../../../library/openLibrary';
import { libraryReport } from '../../../library/report/libraryReport';
import { filesBelow } from '../../../workspace/files/instrumentFiles';
import type { AnswerRequest } from '../../answerLater';
import { pathOfUri, uriOfPath } from '../../conversion/uris';
import type { BuildLibraryResult, LibraryView } from '../../requests/libraryRequests';
import {
  BuildLibraryRequest,
  LibrariesRequest,
  LibraryProgressNotification,
} from '../../requests/libraryRequests';
import type { ServerContext } from '../../serverContext';

/** Milliseconds between two words on how far a build is. */
const toldEvery = 100;

/** Answers the requests about libraries; `host` builds where the machine can, and only in folders that are trusted. */
export function handleLibrary(
  answer: AnswerRequest,
  context: ServerContext,
  host: BuildHost | undefined,
  isTrusted: () => boolean,
): void {
  let isBuilding = false;
  answer(LibrariesRequest.type, () => librariesIn(context));
  answer(BuildLibraryRequest.type, async ({ uri }, token) => {
    const path = pathOfUri(uri);
    if (!host || path === undefined)
      return {
        problem: 'Libraries are built on a disk: open the folder on the desktop or on a remote machine.',
      };
    if (!isTrusted()) return { problem: 'Trust the folder first: building writes files.' };
    if (isBuilding) return { problem: 'A library is being built already.' };
    isBuilding = true;
    try {
      return await build(context, host, path, uri, token);
    } finally {
      isBuilding = false;
    }
  });
}

async function librariesIn({ documents, folders }: ServerContext): Promise<LibraryView[]> {
  const paths = await filesBelow(documents.files, folders, (name) => name === libraryFileName);
  const views: LibraryView[] = [];
  for (const path of paths.sort()) {
    const opened = await openLibrary(documents.files, path);
    if (opened.kind === 'refused') {
      const nothing = { uri: uriOfPath(path), title: libraryFileName, rows: [], folder: '', output: '' };
      views.push({ ...nothing, problems: [opened.reason] });
      continue;
    }
    const { library } = opened;
    const { instruments, title } = await libraryReport(documents.files, library);
    views.push({
      uri: uriOfPath(path),
      title,
      rows: instruments.map(({ row }) => row),
      problems: library.problems,
      folder: uriOfPath(library.folder),
      output: uriOfPath(library.output),
    });
  }
  return views;
}

async function build(
  { connection, documents }: ServerContext,
  host: BuildHost,
  path: string,
  uri: string,
  token: CancellationToken,
): Promise<BuildLibraryResult> {
  const opened = await openLibrary(documents.files, path);
  if (opened.kind === 'refused') return { problem: `${libraryFileName}: ${opened.reason}.` };
  const stop = new AbortController();
  const cancelling = token.onCancellationRequested(() => stop.abort());
  let told = 0;
  try {
    const outcomes = await runBuild(host, opened.library, {
      ...{ program: version, force: false, keeps: true, signal: stop.signal },
      onBuilt: ({ name }, done, all) => {
        if (Date.now() - told < toldEvery && done < all) return;
        told = Date.now();
        void connection.sendNotification(LibraryProgressNotification.type, { uri, done, all, name });
      },
    });
    const count = (state: string) => outcomes.filter((one) => one.state === state).length;
    return { built: count('built'), unchanged: count('unchanged'), failed: count('failed') };
  } finally {
    cancelling.dispose();
  }
}
