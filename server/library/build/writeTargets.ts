import type { Notation } from '../../model/notation';
import type { ConversionNote } from '../../model/notes';
import type { OutputContent } from '../../model/output';
import { joinPath } from '../../model/paths';
import { fileChunks } from '../../workspace/fonts/fontSamples';
import { notations } from '../../workspace/notations/notationOf';
import { notationOutput } from '../../workspace/notations/notationOutput';
import type { LibraryInstrument } from '../libraryInstrument';
import type { BuiltText } from './checkBuilt';
import type { ReadingTools, ReadSource } from './readSource';
import { targetOutput } from './targetOutput';

/** The files of an instrument in all its targets, and what is said of them. */
export interface WrittenTargets {
  /** Contents by path from the output folder, with the target that they are of. */
  files: { path: string; target: string; content: OutputContent }[];
  notes: ConversionNote[];
  /** Values that were carried over exactly, in the target where these are fewest. */
  kept: number;
  /** The first text, which is checked; one in SFZ that is not written where all targets are binary. */
  text: BuiltText;
}

/** Converts an instrument to its targets. Nothing is written to a disk. `output` is the absolute output folder. */
export async function writeTargets(
  one: LibraryInstrument,
  source: ReadSource,
  output: string,
  tools: ReadingTools,
): Promise<WrittenTargets> {
  const files: WrittenTargets['files'] = [];
  const notes = new Map<string, ConversionNote>();
  const kept: number[] = [];
  let text: BuiltText | undefined;
  const first = one.targets[0]?.folder ?? '';
  for (const [path, inFont] of source.fontSamples)
    files.push({ path: `${first}/${path}`, target: first, content: await fileChunks(tools.files, inFont) });
  for (const target of one.targets) {
    const { output: to, notation } = await targetOutput(one, target, tools);
    const folder = joinPath(output, target.folder);
    const name = one.fileName + to.ending;
    const { instrument, vocabulary, folder: from } = source;
    const converted = { name: one.name, instrument, folder: from, notes: source.notes, vocabulary };
    const result = await to.write([converted], { fileName: name, folder }, tools.files);
    for (const [path, content] of result.files)
      files.push({ path: `${target.folder}/${path}`, target: targetName(target.folder, one), content });
    const [account] = result.accounts;
    for (const note of account.notes)
      notes.set(`${note.kind} ${note.source} ${note.start} ${note.message}`, note);
    kept.push(account.kept);
    const content = result.files.get(name);
    if (notation && typeof content === 'string')
      text ??= { name: one.name, path: joinPath(folder, name), text: content, notation };
  }
  return {
    files,
    notes: [...notes.values()],
    kept: Math.min(...kept),
    text: text ?? (await unwrittenText(one, source, output, tools)),
  };
}

function targetName(folder: string, { targets }: LibraryInstrument): string {
  const target = targets.find((one) => one.folder === folder);
  return target?.notation === 'vocabulary' || !target ? folder : target.notation;
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
