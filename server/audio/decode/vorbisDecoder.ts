import { inWavOrder } from './channelOrder';
import type { OggCodec, PacketDecoder } from './packetDecoder';

/** Bytes of the longest packet that the decoder has room for. */
const longestPacket = 128 * 1024;

type Decoder = InstanceType<typeof import('@wasm-audio-decoders/ogg-vorbis')['OggVorbisDecoder']>;
type Pages = Parameters<Decoder['decodeOggPages']>[0];

/** Vorbis: three packets before the audio: identification, comments and setup (Vorbis I specification, section 4.2). */
export const vorbisCodec: OggCodec = { headPackets: 3, skipped: 0, make };

async function make([identification, , setup]: readonly Uint8Array[]): Promise<PacketDecoder> {
  if (!identification || !setup || Math.max(identification.length, setup.length) > longestPacket) {
    throw new Error('The start of the stream is incomplete.');
  }
  const { OggVorbisDecoder } = await import('@wasm-audio-decoders/ogg-vorbis');
  const decoder = new OggVorbisDecoder();
  await decoder.ready;
  // Pages in the shape that the decoder looks at; it takes its setup from the first packet of audio.
  const decode = async (data: Uint8Array, frames: object[]) => {
    const page = { data, codecFrames: frames, isLastPage: false };
    return inWavOrder((await decoder.decodeOggPages([page] as unknown as Pages)).channelData);
  };
  await decode(identification, []);
  let header: object = { vorbisSetup: setup };
  return {
    decode(packets) {
      const frames = packets
        .filter(({ length }) => length > 0 && length <= longestPacket)
        .map((data) => ({ data, header }));
      if (frames.length > 0) header = {};
      return decode(new Uint8Array(1), frames);
    },
    free: () => decoder.free(),
  };
}
