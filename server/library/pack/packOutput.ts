import { fitsFlac } from '../../audio/encode/flacEncoder';
import { readSampleFacts } from '../../audio/readSampleFacts';
import type { FileReader, Files } from '../../model/files';
import type { ByteChunks, OutputContent } from '../../model/output';
import { OutputError } from '../../model/output';
import { fileChunks } from '../../workspace/fonts/fontSamples';
import { checkPack } from './checkPack';
import { licenceTexts } from './licenceTexts';
import type { PackPlan } from './packPlan';
import { planPack } from './packPlan';
import type { PackSource } from './packSource';
import { packTexts } from './packTexts';
import { mostZipBytes, mostZipFiles, zipBytes } from './zipBytes';

/** Writes an open WAV or AIFF file as FLAC and proves it. */
export type FlacWriter = (reader: FileReader) => Promise<Uint8Array>;

/** How an instrument is packed. */
export interface PackOptions {
  form: 'zip' | 'folder';
  /** Writes samples as FLAC where that changes no sample; missing where they stay as they are. */
  flac?: FlacWriter | undefined;
  /** Said on purpose: packed although no licence is known. */
  withoutLicence: boolean;
  signal?: AbortSignal | undefined;
}

/** A pack that is ready to be written. */
export interface Pack {
  /** Contents by path: one archive, or the files of a folder; made while they are taken. */
  files: ReadonlyMap<string, OutputContent>;
  /** What the archive or folder holds, by path, in its order. */
  contents: readonly string[];
  /** Samples that stay as they are although FLAC was asked for. */
  notFlac: readonly string[];
}

/**
 * Packs an instrument: its texts, only the samples that they use, licence, credits, notes and picture, under portable names.
 * Fails with an {@link OutputError} where no licence is known and that was not said on purpose, where a sample is missing, or
 * where a path cannot be written.
 */
export async function packInstrument(source: PackSource, options: PackOptions, files: Files): Promise<Pack> {
  if (source.facts.licence === undefined && !options.withoutLicence)
    throw new OutputError(
      `${source.name}: no licence is known, and recordings belong to their makers; ask the maker, then give the licence or choose to pack without one`,
    );
  const notFlac: string[] = [];
  const plan = await planPack(source, files, async (path) => {
    if (!options.flac || !/\.(?:wave?|aiff?|aifc)$/i.test(path)) return false;
    const fits = await canBeFlac(files, path);
    if (!fits) notFlac.push(path);
    return fits;
  });
  const inside = new Map<string, OutputContent>();
  for (const text of source.texts) {
    const texts = packTexts(text, plan);
    checkPack(text, texts, plan);
    for (const [path, content] of texts) inside.set(path, content);
  }
  for (const [path, text] of licenceTexts(source.name, source.facts)) inside.set(path, text);
  if (source.notes !== undefined) inside.set('NOTES.md', source.notes);
  const size = await addFiles(inside, plan, options, files);
  const contents = [...inside.keys()].map((path) => `${source.name}/${path}`);
  const whole = new Map([...inside].map(([path, content]) => [`${source.name}/${path}`, content]));
  if (options.form === 'folder') return { files: whole, contents, notFlac };
  if (size > mostZipBytes || whole.size > mostZipFiles)
    throw new OutputError(`${source.name}: it is too large for a zip archive; pack it as a folder`);
  return { files: new Map([[`${source.name}.zip`, zipBytes(whole)]]), contents, notFlac };
}

async function canBeFlac(files: Files, path: string): Promise<boolean> {
  const reader = await files.open(path);
  if (!reader) return false;
  try {
    const reading = await readSampleFacts(reader);
    return reading.kind === 'facts' && reading.facts.problems.length === 0 && fitsFlac(reading.facts);
  } finally {
    await reader.close();
  }
}

/** Adds the files of a plan, each read while it is taken; answers how many bytes they have at the most. */
async function addFiles(
  inside: Map<string, OutputContent>,
  plan: PackPlan,
  { flac, signal }: PackOptions,
  files: Files,
): Promise<number> {
  let size = 0;
  for (const [path, { from, isFlac }] of [...plan.files].sort(([a], [b]) => (a < b ? -1 : 1))) {
    const bytes = await fileChunks(files, from);
    size += bytes.length ?? 0;
    inside.set(path, stoppable(isFlac && flac ? flacChunks(files, from, flac) : bytes, signal));
  }
  return size;
}

function stoppable(content: ByteChunks, signal: AbortSignal | undefined): ByteChunks {
  if (!signal) return content;
  return {
    async *chunks() {
      for await (const piece of content.chunks()) {
        signal.throwIfAborted();
        yield piece;
      }
    },
  };
}

/** One sample as FLAC; of an instrument only the one that is being written is in memory. */
function flacChunks(files: Files, path: string, flac: FlacWriter): ByteChunks {
  return {
    async *chunks() {
      const reader = await files.open(path);
      if (!reader) throw new OutputError(`${path}: the file cannot be opened any more`);
      try {
        yield await flac(reader);
      } catch (error) {
        throw new OutputError(`${path}: ${error instanceof Error ? error.message : error}`);
      } finally {
        await reader.close();
      }
    },
  };
}
