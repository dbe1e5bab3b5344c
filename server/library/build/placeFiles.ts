import type { Files } from '../../model/files';
import type { OutputContent } from '../../model/output';
import { joinPath, nameOf, relativePath } from '../../model/paths';
import { fileChunks } from '../../workspace/fonts/fontSamples';
import { BuildError } from './buildError';
import type { WrittenFile } from './buildState';
import { contentSum, sizeOf } from './contentSum';
import type { FileWriter } from './fileWriter';

/** Where the files of an instrument are put. */
export interface Placing {
  files: Files;
  writer: FileWriter;
  /** The folder of the library. */
  folder: string;
  /** What earlier builds wrote, or were to write when they were ended; paths from the folder of the library. */
  before: readonly WrittenFile[];
  /** Told what is to be written before it is, so that it is known for a build's own when the build is ended in between. */
  plan(files: readonly WrittenFile[]): Promise<void>;
  /** Whether whatever is there may be replaced. */
  force: boolean;
}

/** A file to be put in place, by its absolute path. */
export type PlacedContent = readonly [path: string, content: OutputContent];

/**
 * Puts files in place, in their order. What is there already with the same bytes stays as it is. Fails with a
 * {@link BuildError}, before anything is written, where a file is there that no build wrote, or that was changed since.
 */
export async function placeFiles(placing: Placing, all: readonly PlacedContent[]): Promise<WrittenFile[]> {
  const { files, writer, folder } = placing;
  const known: { path: string; content: OutputContent; sum: string; isThere: boolean }[] = [];
  for (const [path, content] of all) {
    const sum = await contentSum(content);
    known.push({ path, content, sum, isThere: await isThere(placing, path, sum) });
  }
  const written: WrittenFile[] = [];
  for (const { path, content, sum } of known)
    written.push({ path: relativePath(folder, path), size: await sizeOf(content), modified: 0, sum });
  if (known.some(({ isThere }) => !isThere)) await placing.plan(written);
  for (const [at, { path, content, isThere }] of known.entries()) {
    if (!isThere) await writer.write(path, content);
    written[at].modified = (await files.stat(path))?.modified ?? 0;
  }
  return written;
}

/** Takes away what an earlier build wrote and nothing writes any more, as long as it is as it was written. */
export async function removeOutdated(
  { files, writer, folder, before }: Placing,
  written: readonly WrittenFile[],
): Promise<void> {
  const kept = new Set(written.map(({ path }) => path));
  for (const { path, sum } of before) {
    if (kept.has(path)) continue;
    const whole = joinPath(folder, path);
    if ((await sumAt(files, whole)) === sum) await writer.remove(whole);
  }
}

/** Whether a file is there with certain bytes. Fails where it is there with others that are not from a build. */
async function isThere(
  { files, folder, before, force }: Placing,
  path: string,
  sum: string,
): Promise<boolean> {
  const there = await sumAt(files, path);
  if (there === undefined || there === sum) return there === sum;
  const shown = relativePath(folder, path);
  if (force || before.some((one) => one.path === shown && one.sum === there)) return false;
  throw new BuildError(
    `${nameOf(path)} was changed after it was built, or no build wrote it. Move it, or build with --force to replace it.`,
  );
}

async function sumAt(files: Files, path: string): Promise<string | undefined> {
  if ((await files.stat(path))?.kind !== 'file') return undefined;
  return contentSum(await fileChunks(files, path));
}
