import type { FlacLibrary } from '../../audio/encode/flacEncoder';
import { encodeFlac } from '../../audio/encode/flacEncoder';
import type { Files } from '../../model/files';
import type { Severity } from '../../model/finding';
import { OutputError } from '../../model/output';
import { folderOf, joinPath, nameOf } from '../../model/paths';
import { checkFetching } from '../../workspace/analyse';
import { SampleStore } from '../../workspace/samples/sampleStore';
import type { FileWriter } from '../build/fileWriter';
import { noFindings } from '../build/instrumentRecord';
import type { PackSettings } from '../libraryFile';
import { packInstrument } from './packOutput';
import type { PackSource } from './packSource';

/** With what packs are made and written. */
export interface PackTools {
  files: Files;
  writer: Pick<FileWriter, 'write' | 'writeFolder'>;
  /** The encoder of FLAC, loaded when it is asked for. */
  flacLibrary(): Promise<FlacLibrary>;
  /** Whether whatever is there may be replaced. */
  force: boolean;
}

/** A pack that was written. */
export interface WrittenPack {
  /** Its archive or folder, absolute. */
  path: string;
  /** The files that were written, absolute. */
  files: string[];
  /** Samples that stay as they are although FLAC was asked for. */
  notFlac: number;
}

/**
 * Packs an instrument and puts the pack into a folder, in the place of an older one. Fails with an {@link OutputError} where it
 * cannot be packed or something that is no pack is there, and with the system's error where nothing can be written.
 */
export async function putPack(
  source: PackSource,
  { form = 'zip', audio, withoutLicence = false }: PackSettings,
  output: string,
  tools: PackTools,
): Promise<WrittenPack> {
  const { files, writer, force } = tools;
  const library = audio === 'flac' ? await tools.flacLibrary() : undefined;
  const flac = library && ((reader: Parameters<typeof encodeFlac>[1]) => encodeFlac(library, reader));
  const { files: packed, notFlac } = await packInstrument(source, { form, flac, withoutLicence }, files);
  if (form === 'zip') {
    const [[name, content]] = packed;
    const path = joinPath(output, name);
    if (!force && !(await isArchiveOrNothing(files, path))) throw new OutputError(noPack(path));
    await writer.write(path, content);
    return { path, files: [path], notFlac: notFlac.length };
  }
  const path = joinPath(output, source.name);
  const isThere = (await files.stat(path)) !== undefined;
  const isPack = (await files.stat(joinPath(path, 'CREDITS.txt'))) !== undefined;
  if (isThere && !isPack && !force) throw new OutputError(noPack(path));
  const inner = new Map([...packed].map(([name, content]) => [name.slice(source.name.length + 1), content]));
  await writer.writeFolder(path, inner);
  return { path, files: [...inner.keys()].map((one) => joinPath(path, one)), notFlac: notFlac.length };
}

function noPack(path: string): string {
  return `${nameOf(path)} in ${nameOf(folderOf(path))} is no pack; choose another folder, or --force`;
}

/** Whether a zip archive, an empty file or nothing is at a path; an archive begins with PK (PKWARE Application Note, 4.3.7). */
async function isArchiveOrNothing(files: Files, path: string): Promise<boolean> {
  const stat = await files.stat(path);
  if (!stat) return true;
  const reader = stat.kind === 'file' ? await files.open(path) : undefined;
  if (!reader) return false;
  try {
    const start = await reader.read(0, 2);
    return start.length === 0 || (start[0] === 0x50 && start[1] === 0x4b);
  } finally {
    await reader.close();
  }
}

/** How many findings of each severity the texts of an instrument have. */
export async function findingsOf({ texts }: PackSource, files: Files): Promise<Record<Severity, number>> {
  const totals = noFindings();
  const samples = new SampleStore(files);
  for (const { instrument, notation } of texts) {
    const folder = folderOf(instrument.sources[0].path);
    const findings = await checkFetching({ instrument, notation, samples: samples.lookup(folder) }, samples);
    for (const { severity } of findings) totals[severity]++;
  }
  return totals;
}
