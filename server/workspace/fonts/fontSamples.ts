import { openAudio } from '../../audio/decode/openAudio';
import { readSampleFacts } from '../../audio/readSampleFacts';
import type { FileReader, Files } from '../../model/files';
import type { ByteChunks } from '../../model/output';
import { audioFilesBelow } from '../samples/audioFilesBelow';

/** Bytes that are read at one time. */
const blockBytes = 1 << 18;
/** Frames that are compared at one time. */
const blockFrames = 1 << 16;

/** A file as bytes that are read while they are taken. Fails where the file is gone. */
export async function fileChunks(files: Files, path: string): Promise<ByteChunks> {
  const reader = await opened(files, path);
  const { size } = reader;
  await reader.close();
  return {
    length: size,
    async *chunks() {
      const again = await opened(files, path);
      try {
        for (let at = 0; at < size; ) {
          const block = await again.read(at, Math.min(blockBytes, size - at));
          if (block.length === 0) throw new Error(`${path}: the file ended early; it may have changed`);
          yield block;
          at += block.length;
        }
      } finally {
        await again.close();
      }
    },
  };
}

async function opened(files: Files, path: string): Promise<FileReader> {
  const reader = await files.open(path);
  if (!reader) throw new Error(`${path}: the file cannot be opened any more`);
  return reader;
}

/** Whether two files hold the same bytes. */
export async function haveSameBytes(files: Files, first: string, second: string): Promise<boolean> {
  const [one, other] = [await files.open(first), await files.open(second)];
  try {
    if (!one || one.size !== other?.size) return false;
    for (let at = 0; at < one.size; at += blockBytes) {
      const [a, b] = await Promise.all([one.read(at, blockBytes), other.read(at, blockBytes)]);
      if (a.length !== b.length || a.some((byte, index) => byte !== b[index])) return false;
    }
    return true;
  } finally {
    await one?.close();
    await other?.close();
  }
}

/** What two files must share before their audio is compared. */
async function shapeOf(files: Files, path: string): Promise<string | undefined> {
  const reader = await files.open(path);
  if (!reader) return undefined;
  try {
    const reading = await readSampleFacts(reader);
    if (reading.kind !== 'facts') return undefined;
    const { sampleRate, channels, frames } = reading.facts;
    return `${sampleRate} ${channels} ${frames}`;
  } finally {
    await reader.close();
  }
}

/** For each of some files, one in a folder or below it that holds the same audio, in whatever container, where there is one. */
export async function filesWithSameAudio(
  files: Files,
  paths: readonly string[],
  folder: string,
): Promise<Map<string, string>> {
  const byShape = new Map<string, string[]>();
  for (const path of await audioFilesBelow(files, folder)) {
    const shape = await shapeOf(files, path);
    if (shape === undefined) continue;
    const same = byShape.get(shape);
    if (same) same.push(path);
    else byShape.set(shape, [path]);
  }
  const found = new Map<string, string>();
  for (const path of paths) {
    const shape = await shapeOf(files, path);
    for (const candidate of (shape === undefined ? undefined : byShape.get(shape)) ?? []) {
      if (!(await haveSameAudio(files, path, candidate))) continue;
      found.set(path, candidate);
      break;
    }
  }
  return found;
}

async function haveSameAudio(files: Files, first: string, second: string): Promise<boolean> {
  const readers = [await files.open(first), await files.open(second)];
  try {
    const [one, other] = await Promise.all(readers.map((reader) => reader && openAudio(reader)));
    if (!one || !other) return false;
    for (let at = 0; ; ) {
      const [a, b] = await Promise.all([one.read(at, blockFrames), other.read(at, blockFrames)]);
      const length = a[0]?.length ?? 0;
      if (a.length !== b.length || a.some((channel, index) => !areEqual(channel, b[index]))) return false;
      if (length === 0) return true;
      at += length;
    }
  } finally {
    for (const reader of readers) await reader?.close();
  }
}

function areEqual(a: Float32Array, b: Float32Array): boolean {
  return a.length === b.length && a.every((value, at) => value === b[at]);
}
