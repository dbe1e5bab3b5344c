/** A second of a 441 Hz sine, 16 bits up to a peak, 44,100 frames a second (Multimedia Programming Interface 1.0). */
export function sineWave(peak = 16_000): Uint8Array {
  const frames = 44_100;
  const bytes = new DataView(new ArrayBuffer(44 + 2 * frames));
  const name = (at: number, text: string) => {
    for (let letter = 0; letter < 4; letter++) bytes.setUint8(at + letter, text.charCodeAt(letter));
  };
  name(0, 'RIFF');
  bytes.setUint32(4, 36 + 2 * frames, true);
  name(8, 'WAVE');
  name(12, 'fmt ');
  bytes.setUint32(16, 16, true);
  bytes.setUint16(20, 1, true);
  bytes.setUint16(22, 1, true);
  bytes.setUint32(24, 44_100, true);
  bytes.setUint32(28, 88_200, true);
  bytes.setUint16(32, 2, true);
  bytes.setUint16(34, 16, true);
  name(36, 'data');
  bytes.setUint32(40, 2 * frames, true);
  for (let frame = 0; frame < frames; frame++) {
    bytes.setInt16(44 + 2 * frame, Math.round(peak * Math.sin((2 * Math.PI * frame) / 100)), true);
  }
  return new Uint8Array(bytes.buffer);
}
