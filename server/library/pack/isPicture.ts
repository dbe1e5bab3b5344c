import type { Files } from '../../model/files';

/** Enough of a file to see what it is. */
const looked = 1024;

/**
 * Whether a file is a picture by its first bytes, whatever its name: PNG (W3C Recommendation, 5.2), JPEG (ITU-T T.81, B.1.1.3), GIF (GIF89a
 * specification, 17), WebP (RFC 9649, 2.4), BMP or SVG.
 */
export async function isPicture(files: Files, path: string): Promise<boolean> {
  const reader = await files.open(path);
  if (!reader) return false;
  try {
    const head = await reader.read(0, Math.min(looked, reader.size));
    const text = Array.from(head, (byte) => String.fromCharCode(byte)).join('');
    if (/^(?:\x89PNG|\xff\xd8\xff|GIF8|BM|RIFF[\s\S]{4}WEBP)/.test(text)) return true;
    return /^(?:\xef\xbb\xbf)?\s*</.test(text) && /<svg[\s>]/.test(text);
  } finally {
    await reader.close();
  }
}
