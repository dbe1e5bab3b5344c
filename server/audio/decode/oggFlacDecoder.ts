import { readFlacFrameHeader } from '../headers/flacFrame';
import { FlacFrameDecoder } from './flacFrameDecoder';
import type { OggCodec, PacketDecoder } from './packetDecoder';

/** Where the stream information ends in the first packet, and where it holds channels and depth. */
const info = { end: 17 + 34, channelsAt: 17 + 12 };

/** FLAC in Ogg: a first packet, then as many packets of metadata as it says (RFC 9639, section 10.1). */
export function oggFlacCodec(metadataPackets: number): OggCodec {
  return { headPackets: 1 + metadataPackets, skipped: 0, make };
}

async function make([head = new Uint8Array(0)]: readonly Uint8Array[]): Promise<PacketDecoder> {
  if (head.length < info.end) throw new Error('The start of the stream is incomplete.');
  const [packed = 0, next = 0] = head.subarray(info.channelsAt);
  const channels = ((packed >> 1) & 7) + 1;
  const decoder = new FlacFrameDecoder(channels, (packed & 1) * 16 + (next >> 4) + 1);
  return {
    async decode(packets) {
      const blocks: Float32Array[][] = [];
      for (const packet of packets) {
        const block = readFlacFrameHeader(packet, 0) && (await decoder.decode(packet));
        if (block) blocks.push(block);
      }
      const length = blocks.reduce((sum, block) => sum + (block[0]?.length ?? 0), 0);
      return Array.from({ length: channels }, (_, channel) => {
        const values = new Float32Array(length);
        let at = 0;
        for (const block of blocks) {
          values.set(block[channel] ?? [], at);
          at += block[channel]?.length ?? 0;
        }
        return values;
      });
    },
    free: () => decoder.free(),
  };
}
