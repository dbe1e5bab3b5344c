import { base64Bytes } from '../../../server/protocol/conversion/base64';

/** The 32-bit floats of a base 64 text. */
export function floatsOf(text: string): Float32Array {
  return new Float32Array(base64Bytes(text).buffer as ArrayBuffer);
}
