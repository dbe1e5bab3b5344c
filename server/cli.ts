import * as nodeModule from 'node:module';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { keepCompiledChunks } from './commandLine/compiledChunks';
import { userCacheFolder } from './workspace/measuring/userCacheFolder';

startQuickly();
void Promise.all([import('./commandLine/run'), import('./commandLine/terminal')])
  .then(([{ runCommandLine }, { processTerminal }]) =>
    runCommandLine(process.argv.slice(2), processTerminal(__dirname)),
  )
  .then((status) => {
    process.exitCode = status;
  });

/** Half of the time that a short command takes would go into compiling; what comes of it is kept in the user's cache folder. */
function startQuickly(): void {
  if (process.argv.includes('--no-cache')) return;
  const { platform, env: environment } = process;
  const folder = userCacheFolder({ platform, home: homedir(), environment });
  if (folder === undefined) return;
  const kept = join(folder, 'compiled');
  // Node does it itself from version 22.1 on.
  const { enableCompileCache } = nodeModule as { enableCompileCache?: (folder: string) => void };
  if (enableCompileCache) enableCompileCache(kept);
  else keepCompiledChunks(join(__dirname, 'cli'), kept);
}
