import { realpath } from 'node:fs/promises';
import { UnusedSamples } from '../../checks/rules/sampleUnused';
import { isInstrumentFileName, isSampleFileName, isWholeInstrumentFileName } from '../../model/fileNames';
import { refusalWords } from '../../workspace/files/refusalWords';
import { CommandError } from '../commandError';
import type { Terminal } from '../terminal';
import { absolutePath } from '../terminalPaths';
import { readFontInput } from './fontInput';

/** What a folder holds for `check`. */
export interface FoundFiles {
  /** The folders that were named, absolute paths. */
  folders: string[];
  /** SFZ and XML files and SoundFonts, absolute paths, sorted. */
  texts: string[];
  /** The audio files in folders, absolute paths. */
  audio: UnusedSamples;
  /** Whether a path was named itself, not found in a folder. */
  named: ReadonlySet<string>;
}

/** Looks through files and folders named on the command line. Hidden folders are passed over, and each real folder is seen once. */
export async function findInstruments(terminal: Terminal, paths: readonly string[]): Promise<FoundFiles> {
  const texts = new Set<string>();
  const audio = new UnusedSamples();
  const named = new Set<string>();
  const folders: string[] = [];
  const seen = new Set<string>();
  const walk = async (folder: string): Promise<void> => {
    const real = await realpath(folder).catch(() => folder);
    if (seen.has(real)) return;
    seen.add(real);
    const entries = await terminal.files.list(folder);
    if (!entries) {
      const refusal = await terminal.files.refusal?.(folder);
      const reason = refusal ? refusalWords(refusal) : 'cannot be read';
      terminal.error(`zonewright: ${folder}: this folder ${reason}; it is left out\n`);
      return;
    }
    for (const { name, kind, isLink } of entries) {
      const path = `${folder === '/' ? '' : folder}/${name}`;
      if (name.startsWith('.') || name === 'node_modules') continue;
      if (kind === 'special') continue;
      if (kind === 'folder') await walk(path);
      else if (isLink && isInstrumentFileName(name) && !(await leadsToInstrument(terminal, path)))
        terminal.error(`zonewright: ${path}: this link leads to a file of another kind and is left out\n`);
      else if (isWholeInstrumentFileName(name) || /\.sf2$/i.test(name)) texts.add(path);
      else if (isSampleFileName(name)) audio.add(folder, name);
    }
  };
  for (const name of paths) {
    const path = absolutePath(terminal, name);
    const stat = await terminal.files.stat(path);
    const isPreset = !stat && (await readFontInput(terminal, name)) !== undefined;
    if (!stat && !isPreset) {
      const refusal = await terminal.files.refusal?.(path);
      throw new CommandError(
        `${name}: ${refusal ? `it ${refusalWords(refusal)}` : 'there is no such file or folder'}`,
      );
    }
    if (stat?.kind === 'special') throw new CommandError(`${name}: it ${refusalWords('special')}`);
    if (stat?.kind === 'folder') {
      folders.push(path);
      await walk(path);
    } else {
      named.add(path);
      texts.add(path);
    }
  }
  return { folders, texts: [...texts].sort(), audio, named };
}

/** Whether the file behind a link bears the name of an instrument too: what any other holds is not to be shown. */
async function leadsToInstrument({ files }: Terminal, path: string): Promise<boolean> {
  const end = await files.realPath?.(path);
  return end === undefined || isInstrumentFileName(end);
}
