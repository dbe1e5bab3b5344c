/**
 * Bytes of a tag of the kind that MP3 files start with, which stands before FLAC at times (common practice); 0 where
 * there is none. Its size has 7 bits a byte and leaves out the tag's own header, and its footer where a flag says that
 * there is one.
 */
export function leadingTagBytes(head: Uint8Array): number {
  if (head.length < 10 || head[0] !== 0x49 || head[1] !== 0x44 || head[2] !== 0x33) return 0;
  let size = 0;
  for (let at = 6; at < 10; at++) size = size * 128 + ((head[at] ?? 0) & 127);
  return 10 + size + ((head[5] ?? 0) & 0x10 ? 10 : 0);
}
