/** The value of each byte of µ-law or A-law audio, full scale from −1 to 1 (ITU-T G.711, expanded to 16 bits). */
export const logarithmic: Readonly<Record<'mulaw' | 'alaw', Float32Array>> = {
  mulaw: Float32Array.from({ length: 256 }, (_, byte) => {
    const code = ~byte & 255;
    const magnitude = (((code & 15) * 8 + 132) << ((code >> 4) & 7)) - 132;
    return (code & 128 ? -magnitude : magnitude) / 32_768;
  }),
  alaw: Float32Array.from({ length: 256 }, (_, byte) => {
    const code = byte ^ 0x55;
    const segment = (code >> 4) & 7;
    const step = (code & 15) * 16 + 8;
    const magnitude = segment === 0 ? step : (step + 256) << (segment - 1);
    return (code & 128 ? magnitude : -magnitude) / 32_768;
  }),
};
