import { availableParallelism } from 'node:os';
import { createConnection, ProposedFeatures } from 'vscode-languageserver/node';
import { fewAtOnce } from './protocol/fewAtOnce';
import { LanguageServer } from './protocol/languageServer';
import { sessionOrder } from './protocol/sessionOrder';
import { nodeFiles } from './workspace/files/nodeFiles';
import { cacheFolder } from './workspace/measuring/cacheFolder';
import { nodeMeasurer } from './workspace/measuring/nodeMeasureThread';

const transport = /^--(stdio|node-ipc|socket|pipe)\b/;

// An answer that can no longer be delivered is no reason to give up the others.
process.on('unhandledRejection', (reason) => {
  process.stderr.write(`zonewright: ${reason instanceof Error ? reason.message : String(reason)}\n`);
});

if (process.argv.some((word) => transport.test(word))) {
  new LanguageServer(
    createConnection(ProposedFeatures.all, { messageStrategy: fewAtOnce(sessionOrder()) }),
    nodeFiles,
    {
      measurer: (files) => nodeMeasurer(files, __dirname),
      storage: (folder) => cacheFolder(folder),
    },
    // A thread is always used: the server's own answers meanwhile. One core is left to it where there are several.
    async () => {
      const { buildHost } = await import('./commandLine/buildHost');
      return buildHost({ files: nodeFiles, program: __dirname }, Math.max(2, availableParallelism() - 1));
    },
  ).listen();
} else {
  process.stderr.write(
    'The Zonewright language server talks to an editor; start it with --stdio, --node-ipc, --socket=PORT or --pipe=NAME.\n',
  );
  process.exitCode = 2;
}
