import type { FileReader } from '../../model/files';
import type { AudioSource } from './audioSource';
import { ByteStream } from './byteStream';
import { FlacFrameDecoder } from './flacFrameDecoder';
import { flacFrames } from './flacFrames';
import type { StreamFormat } from './streamedSource';
import { StreamedSource } from './streamedSource';

const markerBytes = 4;
const blockHeaderBytes = 4;
const mostBlocks = 1000;
const lastBlockFlag = 128;

/** The audio of a FLAC file whose marker `fLaC` stands at `start`. */
export function flacSource(reader: FileReader, start: number, format: StreamFormat): AudioSource {
  return new StreamedSource(format, async function* () {
    const stream = new ByteStream(reader, start);
    if (!(await passMetadata(stream))) return;
    const decoder = new FlacFrameDecoder(format.channels, format.bitsPerSample);
    try {
      let left = format.frames;
      for await (const { bytes } of flacFrames(stream, format.channels)) {
        const block = await decoder.decode(bytes);
        const length = block?.[0]?.length ?? 0;
        if (!block || length === 0) continue;
        yield length > left ? block.map((values) => values.subarray(0, left)) : block;
        left -= length;
        if (left <= 0) return;
      }
    } finally {
      decoder.free();
    }
  });
}

/** Passes the blocks of metadata (RFC 9639, section 8); false where the file ends in them. */
async function passMetadata(stream: ByteStream): Promise<boolean> {
  stream.skip(markerBytes);
  for (let count = 0; count < mostBlocks; count++) {
    const header = await stream.peek(blockHeaderBytes);
    if (header.length < blockHeaderBytes) return false;
    const [first = 0, high = 0, middle = 0, low = 0] = header;
    stream.skip(blockHeaderBytes + high * 65536 + middle * 256 + low);
    if ((first & lastBlockFlag) !== 0) return true;
  }
  return false;
}
