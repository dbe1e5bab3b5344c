import type { Files, Refusal } from '../../model/files';
import type { DecodedText } from '../../model/text/decodeText';
import { decodeText } from '../../model/text/decodeText';

/** Longer text cannot be held as one string. */
const mostBytes = 256 * 1024 * 1024;

/** The text of a file, or why there is none. */
export type WholeText =
  | DecodedText
  | { kind: 'missing' }
  | { kind: 'refused'; refusal: Refusal }
  | { kind: 'too-large'; size: number };

/** Reads a text file as a whole. */
export async function readWholeText(files: Files, path: string): Promise<WholeText> {
  const reader = await files.open(path);
  if (!reader) {
    const refusal = await files.refusal?.(path);
    return refusal ? { kind: 'refused', refusal } : { kind: 'missing' };
  }
  try {
    if (reader.size > mostBytes) return { kind: 'too-large', size: reader.size };
    return decodeText(await reader.read(0, reader.size));
  } catch {
    return { kind: 'missing' };
  } finally {
    await reader.close();
  }
}
