import type { AiffCommon } from '../headers/aiffCommon';
import { longestCommon, readAiffCommon, shortestCommon } from '../headers/aiffCommon';
import type { ByteWindow } from '../headers/byteWindow';
import { fourCharacters } from '../headers/byteWindow';
import { chunkHeaderBytes } from '../headers/chunkEnds';
import type { FrameLayout } from '../headers/frameLayout';
import { isLaidOut } from '../headers/frameLayout';

const chunk = { comm: fourCharacters('COMM'), ssnd: fourCharacters('SSND') } as const;
const compressedForm = fourCharacters('AIFC');
/** Compression types whose numbers have their low byte first. */
const littleEndianTypes: ReadonlySet<number> = new Set(['sowt', '42ni', '42n1', '23ni'].map(fourCharacters));
/** Bytes counted from 0 with silence at 128. */
const unsignedType = fourCharacters('raw ');
const firstChunk = 12;
const mostChunks = 1000;
/** Bytes of an `SSND` chunk before its audio: an offset and a block size. */
const soundHeaderBytes = 8;

/**
 * Where the audio of an AIFF or AIFF-C file lies; `undefined` where the file has none or where it is not plain numbers.
 * `bytes` holds the start of the file. Layout: Audio Interchange File Format 1.3, Apple, 1989; AIFF-C draft, Apple, 1991.
 */
export async function readAiffLayout(bytes: ByteWindow): Promise<FrameLayout | undefined> {
  bytes.littleEndian = false;
  const isCompressed = bytes.identifier(8) === compressedForm;
  let common: AiffCommon | undefined;
  let type = 0;
  let sound: { start: number; bytes: number } | undefined;
  let at = firstChunk;
  for (let count = 0; count < mostChunks && (await bytes.hold(at, chunkHeaderBytes)); count++) {
    const name = bytes.identifier(at);
    const length = bytes.uint32(at + 4);
    const body = at + chunkHeaderBytes;
    if (name === chunk.comm && !common) {
      const needed = Math.max(shortestCommon, Math.min(length, longestCommon));
      if (!(await bytes.hold(body, needed))) return undefined;
      const read = readAiffCommon(bytes, body, needed, isCompressed);
      if (typeof read === 'string') return undefined;
      common = read;
      if (isCompressed && needed >= longestCommon) type = bytes.identifier(body + shortestCommon);
    } else if (name === chunk.ssnd && !sound) {
      if (!(await bytes.hold(body, soundHeaderBytes))) return undefined;
      const start = body + soundHeaderBytes + bytes.uint32(body);
      sound = { start, bytes: Math.max(0, Math.min(body + length, bytes.size) - start) };
    }
    if (common && sound) break;
    at = body + length + (length % 2);
  }
  if (!common || !sound) return undefined;
  const { encoding, channels, sampleRate, blocks, blockBytes, framesPerBlock } = common;
  if (!isLaidOut(encoding) || framesPerBlock !== 1 || blockBytes === 0) return undefined;
  return {
    encoding,
    littleEndian: littleEndianTypes.has(type),
    unsignedBytes: type === unsignedType,
    channels,
    sampleRate,
    bytesPerSample: blockBytes / channels,
    dataStart: sound.start,
    frames: Math.min(blocks, Math.floor(sound.bytes / blockBytes)),
  };
}
