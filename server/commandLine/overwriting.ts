import { CommandError } from './commandError';
import type { Terminal } from './terminal';

/** What an output must not replace unasked. */
export interface Kept {
  /** Absolute paths of what the command reads. */
  inputs: ReadonlySet<string>;
  /** The first bytes of files that may be replaced, as text; others are of another kind. */
  mark: string;
}

/**
 * Refuses an output that would replace what the command reads, or a file of another kind than it writes; `--force` allows
 * it. `path` is absolute.
 */
export async function refuseOverwriting(
  terminal: Terminal,
  name: string,
  path: string,
  { inputs, mark }: Kept,
): Promise<void> {
  const refuse = (reason: string) => {
    throw new CommandError(`${name}: ${reason}; choose another name, or --force`);
  };
  if (inputs.has(path)) refuse('this would replace a file that the command reads');
  const stat = await terminal.files.stat(path);
  if (stat?.kind === 'folder') throw new CommandError(`${name}: this is a folder, a file is needed`);
  const reader = stat?.kind === 'file' && stat.size > 0 ? await terminal.files.open(path) : undefined;
  if (!reader) return;
  try {
    const start = String.fromCharCode(...(await reader.read(0, mark.length)));
    if (start !== mark) refuse('there is a file of another kind');
  } finally {
    await reader.close();
  }
}
