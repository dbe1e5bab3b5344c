import { existsSync } from 'node:fs';
import { cp, mkdir, readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { runProgram } from './processes.mjs';

/**
 * Gives a fresh copy, below `parent`, of the demonstration instrument with its generated samples: the folder that
 * the editor opens, without the programs that make it. Tests may write into it.
 */
export async function copyWorkspace(repository, parent) {
  const source = join(repository, 'samples-demo');
  const generator = join(source, 'make.mjs');
  const workspace = join(parent, 'workspace');
  await mkdir(workspace, { recursive: true });
  if (existsSync(source)) {
    await cp(source, workspace, { recursive: true, filter: (path) => !path.endsWith('.mjs') });
  }
  if (existsSync(generator)) await runProgram(process.execPath, [generator, workspace], { cwd: repository });
  if ((await readdir(workspace)).length === 0) {
    await writeFile(join(workspace, 'empty.sfz'), '// no demonstration instrument yet\n');
  }
  return workspace;
}
