import type { Instrument } from '../../model/instrument';
import type { Notation } from '../../model/notation';
import type { ConversionNote } from '../../model/notes';
import { folderOf, joinPath } from '../../model/paths';
import { decodeText } from '../../model/text/decodeText';
import { readInstrument } from '../../workspace/analyse';
import { IncludeStore } from '../../workspace/files/includeStore';
import { Reach } from '../../workspace/files/reach';
import type { WholeText } from '../../workspace/files/readWhole';
import { readWholeText } from '../../workspace/files/readWhole';
import { refusalWords } from '../../workspace/files/refusalWords';
import type { FoundNotation } from '../../workspace/notations/notationFinder';
import { NotationFinder } from '../../workspace/notations/notationFinder';
import { SampleStore } from '../../workspace/samples/sampleStore';
import { CommandError } from '../commandError';
import type { Terminal } from '../terminal';
import { absolutePath } from '../terminalPaths';
import { onePreset, presetInput, readFontInput } from './fontInput';

/** The text of an input, with the path that it is known by. */
export interface Input {
  /** As the person wrote it. */
  name: string;
  /** Absolute, with `/`. */
  path: string;
  text: string;
  /** How the text is read, where that does not need to be found out. */
  notation?: Notation;
  /** What was noted on making the text, where it was made of something else. */
  notes?: readonly ConversionNote[];
  /** Said of a folder of recordings, which has no text. */
  isFolder?: true;
}

/** As {@link readInput}, for those who take a folder of recordings too. */
export async function readInputOrFolder(
  terminal: Terminal,
  name: string,
  options: Readonly<Record<string, string | undefined>> = {},
): Promise<Input> {
  const path = absolutePath(terminal, name);
  const isFolder = name !== '-' && (await terminal.files.stat(path))?.kind === 'folder';
  return isFolder ? { name, path, text: '', isFolder } : readInput(terminal, name, options);
}

/** Reads an input as text; `-` is standard input, and a SoundFont gives the text of one preset, read as `options` say. Fails with a {@link CommandError} that names the input. */
export async function readInput(
  terminal: Terminal,
  name: string,
  options: Readonly<Record<string, string | undefined>> = {},
): Promise<Input> {
  if (name === '-') {
    const whole = decodeText(await terminal.standardInput());
    if (whole.kind !== 'text') throw new CommandError('standard input is not text');
    return { name: 'standard input', path: joinPath(terminal.folder, 'standard-input'), text: whole.text };
  }
  const path = absolutePath(terminal, name);
  const stat = await terminal.files.stat(path);
  if (stat?.kind === 'folder') throw new CommandError(`${name}: this is a folder, a file is needed`);
  const font = await readFontInput(terminal, name);
  if (font) return presetInput(font, onePreset(terminal, font), options);
  return { name, path, text: textOf(name, await readWholeText(terminal.files, path)) };
}

function textOf(name: string, whole: WholeText): string {
  switch (whole.kind) {
    case 'text':
      return whole.text;
    case 'missing':
      throw new CommandError(`${name}: there is no such file, or it cannot be read`);
    case 'refused':
      throw new CommandError(`${name}: it ${refusalWords(whole.refusal)}`);
    case 'binary':
      throw new CommandError(`${name}: this is not a text file`);
    case 'too-large':
      throw new CommandError(
        `${name}: ${Math.round(whole.size / 1024 / 1024)} MB are too much for an instrument's text`,
      );
  }
}

/** An instrument that was read, with how it was read. */
export interface LoadedInstrument extends FoundNotation {
  instrument: Instrument;
}

/** Reads an input that must be an instrument; `undefined` where it is a table. */
export async function loadInstrument(
  terminal: Terminal,
  input: Input,
): Promise<LoadedInstrument | undefined> {
  if (input.text.trim() === '') throw new CommandError(`${input.name}: the file is empty`);
  const finder = notationFinder(terminal, new SampleStore(terminal.files));
  const found = input.notation ? { notation: input.notation } : await finder.find(input);
  if (!found) {
    const { detect } = await import('../../workspace/notations/detect');
    const { lackOfZoneTable } = await import('../../table/looksLikeZoneTable');
    if (detect(input.path, input.text).kind === 'table') return undefined;
    const { lackOfInstrument } = await import('../../vocabulary/infer/lackOfInstrument');
    const lack =
      lackOfInstrument(input.text) ?? lackOfZoneTable(input.text) ?? 'it may be a table that was cut short';
    throw new CommandError(`${input.name}: this is neither SFZ, instrument XML nor a zone table: ${lack}`);
  }
  const source = { ...input, notation: found.notation, ...finder.readingOf(found) };
  return { ...found, instrument: await readInstrument(source, includeStore(terminal)) };
}

/**
 * The files that instruments include: those in the folder that the command runs in, or in one that was named to it, may
 * include from all of that folder.
 */
export function includeStore(terminal: Terminal, named: readonly string[] = []): IncludeStore {
  const { files, folder, includeFolders = [] } = terminal;
  // Who works at the root of the disk has not opened all of it by that.
  const open = [folder, ...named].filter((one) => folderOf(one) !== one);
  return new IncludeStore(files, undefined, new Reach(files, open, includeFolders));
}

/** Finds how texts are read; says on standard error which vocabulary files make no sense. */
export function notationFinder(terminal: Terminal, samples: SampleStore): NotationFinder {
  return new NotationFinder(terminal.files, samples, (message) => terminal.error(`zonewright: ${message}\n`));
}

/** The folder that the samples of an input are relative to. */
export function folderOfInput(input: Input): string {
  return input.isFolder ? input.path : folderOf(input.path);
}
