import type { OutputContent } from '../../model/output';

/** Bytes that are summed up at one time, so that no large file stands whole in memory. */
const blockBytes = 1 << 20;

/** A sum that tells contents apart: SHA-256 of up to a megabyte, else of the sums of its megabytes; hexadecimal digits. */
export async function contentSum(content: OutputContent): Promise<string> {
  const sums: Uint8Array[] = [];
  for await (const block of blocksOf(content)) sums.push(await sha256(block));
  const whole = sums.length === 1 ? sums[0] : await sha256(joined(sums));
  return [...whole].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** How many bytes a content has. */
export async function sizeOf(content: OutputContent): Promise<number> {
  if (typeof content === 'string') return new TextEncoder().encode(content).length;
  if (content.length !== undefined) return content.length;
  let size = 0;
  for await (const piece of piecesOf(content)) size += piece.length;
  return size;
}

async function sha256(bytes: Uint8Array): Promise<Uint8Array> {
  return new Uint8Array(await crypto.subtle.digest('SHA-256', new Uint8Array(bytes)));
}

async function* blocksOf(content: OutputContent): AsyncGenerator<Uint8Array> {
  let waiting: Uint8Array[] = [];
  let size = 0;
  for await (const piece of piecesOf(content)) {
    let rest = piece;
    while (size + rest.length >= blockBytes) {
      const taken = rest.subarray(0, blockBytes - size);
      yield joined([...waiting, taken]);
      rest = rest.subarray(taken.length);
      waiting = [];
      size = 0;
    }
    waiting.push(rest);
    size += rest.length;
  }
  if (size > 0) yield joined(waiting);
}

async function* piecesOf(content: OutputContent): AsyncGenerator<Uint8Array> {
  if (typeof content === 'string') yield new TextEncoder().encode(content);
  else if (content instanceof Uint8Array) yield content;
  else yield* content.chunks();
}

function joined(parts: readonly Uint8Array[]): Uint8Array {
  if (parts.length === 1) return parts[0];
  const whole = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
