import { inWavOrder } from './channelOrder';
import type { OggCodec, PacketDecoder } from './packetDecoder';
import { quietly } from './quietly';

/** Bytes of a packet that the decoder has room for, a channel. */
const bytesPerChannel = 3840;
/** Bytes of a first packet without a table of channels. */
const shortestHead = 19;

/** Opus: two packets before the audio: identification and comments (RFC 7845, section 3). */
export function opusCodec(skipped: number): OggCodec {
  return { headPackets: 2, skipped, make };
}

/** Layout of the first packet: RFC 7845, section 5.1. */
async function make([head = new Uint8Array(0)]: readonly Uint8Array[]): Promise<PacketDecoder> {
  const channels = head[9] ?? 0;
  const family = head[18] ?? 0;
  const table = family === 0 ? [0, 1].slice(0, channels) : [...head.subarray(21, 21 + channels)];
  const streamCount = family === 0 ? 1 : (head[19] ?? 0);
  const coupledStreamCount = family === 0 ? channels - 1 : (head[20] ?? 0);
  const isSound =
    head.length >= shortestHead &&
    channels > 0 &&
    table.length === channels &&
    streamCount > 0 &&
    coupledStreamCount <= streamCount &&
    table.every((stream) => stream === 255 || stream < streamCount + coupledStreamCount);
  if (!isSound) throw new Error('The start of the stream makes no sense.');
  const { OpusDecoder } = await import('opus-decoder');
  const decoder = new OpusDecoder({ channels, streamCount, coupledStreamCount, channelMappingTable: table });
  await decoder.ready;
  const gainBits = (head[16] ?? 0) + (head[17] ?? 0) * 256;
  // A gain in 256ths of a decibel, below 0 with its highest bit set.
  const gain = 10 ** ((gainBits >= 0x8000 ? gainBits - 0x10000 : gainBits) / (20 * 256));
  return {
    async decode(packets) {
      const sound = packets.filter(({ length }) => length > 0 && length <= bytesPerChannel * channels);
      const { channelData } = quietly(() => decoder.decodeFrames(sound));
      const played =
        gain === 1 ? channelData : channelData.map((values) => values.map((value) => value * gain));
      return family === 1 ? inWavOrder(played) : played;
    },
    free: () => decoder.free(),
  };
}
