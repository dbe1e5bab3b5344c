/** Decodes the packets of one stream in an Ogg file. */
export interface PacketDecoder {
  /** The numbers that packets give, in the order of channels of WAV files; none for packets that are damaged. */
  decode(packets: readonly Uint8Array[]): Promise<Float32Array[]>;
  free(): void;
}

/** What has to be known to decode a stream. */
export interface OggCodec {
  /** Packets at the start that hold no audio, the first one included. */
  headPackets: number;
  /** Frames at the start that are decoded and not played. */
  skipped: number;
  make(head: readonly Uint8Array[]): Promise<PacketDecoder>;
}
