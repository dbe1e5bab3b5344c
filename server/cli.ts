import * as nodeModule from 'node:module';

// From version 22.1 on, Node can keep what it has compiled for the next start.
const { enableCompileCache } = nodeModule as { enableCompileCache?: () => void };
enableCompileCache?.();

void Promise.all([import('./commandLine/run'), import('./commandLine/terminal')])
  .then(([{ runCommandLine }, { processTerminal }]) =>
    runCommandLine(process.argv.slice(2), processTerminal(__dirname)),
  )
  .then((status) => {
    process.exitCode = status;
  });
