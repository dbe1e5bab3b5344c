import { execFile } from 'node:child_process';
import { join } from 'node:path';
import { promisify } from 'node:util';

/** What activating a bundle of the extension came to. */
export interface Activation {
  /** Loading and activating it, to the return of `activate`. */
  milliseconds: number;
  commands: string[];
  /** The scripts that were loaded until then, absolute. */
  scripts: string[];
}

/** Activates a bundle of the extension of the repository `root` in a process of its own, with a stand-in for the editor. */
export async function activateAlone(root: string, bundle: string): Promise<Activation> {
  const program = join(root, 'test/unit/extension/standInEditor.cjs');
  const { stdout } = await promisify(execFile)(process.execPath, [program, bundle]);
  return JSON.parse(stdout) as Activation;
}
