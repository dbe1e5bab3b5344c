import type { OutputContent } from '../../model/output';
import { folderOf, joinPath, nameOf } from '../../model/paths';
import { CommandError } from '../commandError';
import { contentKind, kindBytes } from '../input/contentKind';
import type { Terminal } from '../terminal';
import { absolutePath } from '../terminalPaths';

/** A file that a command is to write. */
export interface OutputFile {
  /** As the person wrote it. */
  name: string;
  /** Absolute, with `/`. */
  path: string;
  /** `--force`: whatever is there may be replaced. */
  force: boolean;
  /** Absolute paths of what the command reads. */
  inputs: ReadonlySet<string>;
}

/** The file that an option names. */
export function outputFile(
  terminal: Terminal,
  name: string,
  force: boolean,
  inputs: Iterable<string | undefined>,
): OutputFile {
  const known = [...inputs].filter((one) => one !== undefined);
  return { name, path: absolutePath(terminal, name), force, inputs: new Set(known) };
}

/**
 * Refuses an output that would replace what the command reads, by whatever link, or a file of another kind than it writes;
 * `--force` allows it. `start` is the beginning of what is to be written.
 */
export async function refuseOverwriting(
  terminal: Terminal,
  { name, path, force, inputs }: OutputFile,
  start: Uint8Array,
): Promise<void> {
  const { files } = terminal;
  const stat = await files.stat(path);
  if (stat?.kind === 'folder') throw new CommandError(`${name}: this is a folder, a file is needed`);
  if (force || !stat || stat.kind === 'special') return;
  const refuse = (reason: string) => {
    throw new CommandError(`${name}: ${reason}; choose another name, or --force`);
  };
  const end = await endOf(terminal, path);
  for (const input of inputs)
    if (input === path || (await endOf(terminal, input)) === end)
      refuse('this would replace a file that the command reads');
  if (stat.size === 0) return;
  const reader = await files.open(path);
  if (!reader) return refuse('a file that cannot be read is there');
  try {
    const there = await reader.read(0, kindBytes);
    if (contentKind(there) !== contentKind(start)) refuse('a file of another kind is there');
  } finally {
    await reader.close();
  }
}

/** Where a path leads when links are followed; for a name that is not there yet, those of its folder. */
async function endOf({ files }: Terminal, path: string): Promise<string> {
  const whole = await files.realPath?.(path);
  if (whole !== undefined) return whole;
  const folder = await files.realPath?.(folderOf(path));
  return folder === undefined ? path : joinPath(folder, nameOf(path));
}

/** The first bytes of what is to be written. */
export async function firstBytes(content: OutputContent): Promise<Uint8Array> {
  if (typeof content === 'string') return new TextEncoder().encode(content.slice(0, kindBytes));
  if (content instanceof Uint8Array) return content.subarray(0, kindBytes);
  for await (const chunk of content.chunks()) if (chunk.length > 0) return chunk.subarray(0, kindBytes);
  return new Uint8Array(0);
}
