import { Zip, ZipDeflate, ZipPassThrough } from 'fflate';
import type { ByteChunks, OutputContent } from '../../model/output';

/** Bytes that an archive can hold without the long form of the format (PKWARE Application Note 6.3.10, section 4.4). */
export const mostZipBytes = 0xffff_ffff - (1 << 24);
/** Files that it can hold without that. */
export const mostZipFiles = 0xfffe;

/** A zip archive of files by their paths, in that order, made while it is taken. Texts are compressed, audio is stored. */
export function zipBytes(files: ReadonlyMap<string, OutputContent>): ByteChunks {
  return {
    async *chunks() {
      // All files have the first time that the format can say, so that the same input gives the same bytes in any zone.
      const time = new Date(1980, 0, 1);
      const made: Uint8Array[] = [];
      let fault: Error | undefined;
      const zip = new Zip((error, bytes) => {
        fault ??= error ?? undefined;
        if (bytes?.length > 0) made.push(bytes);
      });
      for (const [path, content] of files) {
        const file =
          typeof content === 'string' ? new ZipDeflate(path, { level: 9 }) : new ZipPassThrough(path);
        file.mtime = time;
        zip.add(file);
        for await (const piece of piecesOf(content)) {
          file.push(piece, false);
          yield* taken(made, fault);
        }
        file.push(new Uint8Array(0), true);
        yield* taken(made, fault);
      }
      zip.end();
      yield* taken(made, fault);
    },
  };
}

function* taken(made: Uint8Array[], fault: Error | undefined): Generator<Uint8Array> {
  if (fault) throw fault;
  yield* made.splice(0);
}

async function* piecesOf(content: OutputContent): AsyncIterable<Uint8Array> {
  if (typeof content === 'string') yield new TextEncoder().encode(content);
  // The archive takes what it is given as its own.
  else if (content instanceof Uint8Array) yield content.slice();
  else for await (const piece of content.chunks()) yield piece.slice();
}
