import type { Notation } from '../../model/notation';
import type { ConversionNote } from '../../model/notes';
import type { OutputContent } from '../../model/output';
import { joinPath } from '../../model/paths';
import { fileChunks } from '../../workspace/fonts/fontSamples';
import { notations } from '../../workspace/notations/notationOf';
import { notationOutput } from '../../workspace/notations/notationOutput';
import type { LibraryInstrument, LibraryTarget } from '../libraryInstrument';
import { BuildError, reasonOf } from './buildError';
import type { BuiltText } from './checkBuilt';
import type { ReadingTools, ReadSource } from './readSource';
import { libraryOutput } from './targetOutput';

/** A text that is to stand in its place, with what was noted on writing it. */
export interface WrittenText extends BuiltText {
  target: string;
  notes: readonly ConversionNote[];
  isInTemplate: boolean;
}

/** The files of an instrument in all its targets, and what is said of them. */
export interface WrittenTargets {
  /** Contents by path from the output folder, with the target that they are of. */
  files: { path: string; target: string; content: OutputContent }[];
  notes: ConversionNote[];
  /** Values that were carried over exactly, in the target where these are fewest. */
  kept: number;
  /** The text that is checked: the first, or one in SFZ that is not written where all targets are binary. */
  text: BuiltText;
  /** All texts that are written. */
  texts: WrittenText[];
  /** Targets that cannot be written, each with the reason. */
  failed: { target: string; reason: string }[];
}

/**
 * Converts an instrument to its targets. Nothing is written to a disk. `output` is the absolute output folder. One target that
 * cannot be written keeps no other from it; fails with a {@link BuildError} where none can be.
 */
export async function writeTargets(
  one: LibraryInstrument,
  source: ReadSource,
  output: string,
  tools: ReadingTools,
): Promise<WrittenTargets> {
  const files: WrittenTargets['files'] = [];
  const notes = new Map<string, ConversionNote>();
  const kept: number[] = [];
  const texts: WrittenText[] = [];
  const failed: WrittenTargets['failed'] = [];
  for (const target of one.targets) {
    try {
      const written = await writeTarget(one, target, source, output, tools);
      files.push(...written.files);
      for (const note of written.notes)
        notes.set(`${note.kind} ${note.source} ${note.start} ${note.message}`, note);
      kept.push(written.kept);
      if (written.text) texts.push(written.text);
    } catch (error) {
      failed.push({ target: target.folder, reason: reasonOf(error) });
    }
  }
  const first = one.targets[0]?.folder ?? '';
  // A SoundFont has its samples within itself.
  for (const [path, inFont] of texts.length > 0 ? source.fontSamples : [])
    files.unshift({
      path: `${first}/${path}`,
      target: first,
      content: await fileChunks(tools.files, inFont),
    });
  if (kept.length === 0) throw new BuildError(failedText(failed, one.targets.length > 1));
  return {
    files,
    notes: [...notes.values()],
    kept: Math.min(...kept),
    text: texts[0] ?? (await unwrittenText(one, source, output, tools)),
    texts,
    failed,
  };
}

/** What is said of targets that could not be written. */
export function failedText(failed: WrittenTargets['failed'], isNamed = true): string {
  return failed.map(({ target, reason }) => (isNamed ? `${target}: ${reason}` : reason)).join(' ');
}

async function writeTarget(
  one: LibraryInstrument,
  target: LibraryTarget,
  { instrument, vocabulary, folder: from, notes }: ReadSource,
  output: string,
  tools: ReadingTools,
): Promise<Pick<WrittenTargets, 'files' | 'notes' | 'kept'> & { text?: WrittenText }> {
  const { output: to, notation } = await libraryOutput(one, target, tools);
  const folder = joinPath(output, target.folder);
  const name = one.fileName + to.ending;
  const converted = { name: one.name, instrument, folder: from, notes, vocabulary };
  const result = await to.write([converted], { fileName: name, folder }, tools.files);
  const called = targetName(target);
  const files = [...result.files].map(([path, content]) => ({
    path: `${target.folder}/${path}`,
    target: called,
    content,
  }));
  const [account] = result.accounts;
  const content = result.files.get(name);
  if (!notation || typeof content !== 'string') return { files, ...account };
  const text: WrittenText = {
    name: one.name,
    path: joinPath(folder, name),
    text: content,
    notation,
    target: called,
    notes: account.notes,
    isInTemplate: target.template !== undefined,
  };
  return { files, ...account, text };
}

function targetName({ notation, folder }: LibraryTarget): string {
  return notation === 'vocabulary' ? folder : notation;
}

async function unwrittenText(
  { name, fileName }: LibraryInstrument,
  { instrument, vocabulary, folder }: ReadSource,
  output: string,
  { samples, files }: ReadingTools,
): Promise<BuiltText> {
  const notation: Notation = notations.sfz;
  const path = joinPath(output, `${fileName}.sfz`);
  const written = await notationOutput(notation, samples).write(
    [{ name, instrument, folder, ...(vocabulary && { vocabulary }) }],
    { fileName: `${fileName}.sfz`, folder: output },
    files,
  );
  const text = written.files.get(`${fileName}.sfz`);
  return { name, path, text: typeof text === 'string' ? text : '', notation };
}
