import type { FileReader } from '../../model/files';
import { ByteWindow } from '../headers/byteWindow';
import { readOggStream } from '../headers/oggStream';
import type { AudioSource } from './audioSource';
import { ByteStream } from './byteStream';
import { oggFlacCodec } from './oggFlacDecoder';
import { oggPages } from './oggPages';
import { opusCodec } from './opusDecoder';
import type { OggCodec, PacketDecoder } from './packetDecoder';
import type { StreamFormat } from './streamedSource';
import { StreamedSource } from './streamedSource';
import { vorbisCodec } from './vorbisDecoder';

/** Channels that are decoded at the most: the speaker layouts of Vorbis and Opus end there. */
const mostChannels = 8;

/**
 * The audio of an Ogg file: its first stream of Vorbis, Opus or FLAC, and streams of the same kind that follow it in the
 * same file. `undefined` for more than 8 channels.
 */
export function oggSource(reader: FileReader, format: StreamFormat): AudioSource | undefined {
  if (format.channels > mostChannels) return undefined;
  return new StreamedSource(format, () => decodeOgg(reader, format));
}

async function* decodeOgg(reader: FileReader, format: StreamFormat): AsyncGenerator<Float32Array[]> {
  let link: Link | undefined;
  let codec: OggCodec | undefined;
  let isOver = true;
  const wanted = (_serial: number, firstPacket: Uint8Array) => {
    if (!isOver) return false;
    const found = codecOf(firstPacket, format);
    if (!found) return false;
    codec = found;
    isOver = false;
    return true;
  };
  try {
    for await (const page of oggPages(new ByteStream(reader), wanted)) {
      if (page.isFirst && codec) {
        link?.decoder?.free();
        link = { codec, head: [], decoded: 0 };
      }
      if (!link) continue;
      const block = await decodePage(link, page);
      if (block && (block[0]?.length ?? 0) > 0) yield block;
      if (page.isLast) isOver = true;
    }
  } finally {
    link?.decoder?.free();
  }
}

/** One stream, as far as it has been decoded. */
interface Link {
  codec: OggCodec;
  head: Uint8Array[];
  decoder?: PacketDecoder;
  /** Frames that the packets gave. */
  decoded: number;
  /** The position before the first packet of audio: 0 for a stream that is not a part of a longer one. */
  start?: number;
}

type Page = { packets: Uint8Array[]; position: number | undefined; isLast: boolean };

async function decodePage(
  link: Link,
  { packets, position, isLast }: Page,
): Promise<Float32Array[] | undefined> {
  const { codec } = link;
  const missing = codec.headPackets - link.head.length;
  link.head.push(...packets.slice(0, missing));
  const audio = packets.slice(missing);
  if (audio.length === 0) return undefined;
  link.decoder ??= await codec.make(link.head);
  const block = await link.decoder.decode(audio);
  const length = block[0]?.length ?? 0;
  const before = link.decoded;
  link.decoded += length;
  if (length === 0) return undefined;
  if (position !== undefined && link.start === undefined) {
    // A first page that ends before as many frames as it gives has frames at its start that are not played; on a last
    // page they are at its end (Vorbis I specification, section A.2; RFC 7845, section 4).
    link.start = isLast ? 0 : position - link.decoded;
  }
  const start = link.start ?? 0;
  const first = Math.min(length, Math.max(0, codec.skipped - Math.min(0, start) - before));
  const end = isLast && position !== undefined ? Math.min(length, position - start - before) : length;
  return end > first ? block.map((values) => values.subarray(first, end)) : undefined;
}

/** How a stream is decoded, by its first packet; `undefined` where it is not like what the file starts with. */
function codecOf(packet: Uint8Array, format: StreamFormat): OggCodec | undefined {
  const bytes = new ByteWindow(
    { size: packet.length, read: async () => packet, close: async () => {} },
    packet,
  );
  const stream = readOggStream(bytes, 0, packet.length);
  if (!stream || 'damage' in stream) return undefined;
  if (stream.channels !== format.channels || stream.sampleRate !== format.sampleRate) return undefined;
  if (stream.encoding === 'vorbis') return vorbisCodec;
  if (stream.encoding === 'opus') return opusCodec(stream.skipped);
  return oggFlacCodec((packet[7] ?? 0) * 256 + (packet[8] ?? 0));
}
