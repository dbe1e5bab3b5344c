import type { FileReader } from '../../model/files';

/** A chunk of a WAV or AIFF file that says how the sample is played. */
export interface KeptChunk {
  /** Whose it is, as the identifier of a FLAC block says it. */
  owner: 'riff' | 'aiff';
  /** The chunk with its own header. */
  bytes: Uint8Array;
}

/**
 * The chunks that say root keys, loops and marks: `smpl` and `inst` of the Multimedia Data Standards Update, revision 3.0 (1994), `cue `
 * of Multimedia Programming Interface and Data Specifications 1.0 (1991), and those of AIFF 1.3 (1989).
 */
const kept = { riff: ['smpl', 'inst', 'cue '], aiff: ['INST', 'MARK'] } as const;

const headerBytes = 8;
const formBytes = 12;
/** More chunks, or a longer one, is no sampler's. */
const mostChunks = 1000;
const mostBytes = 1 << 20;

/** The chunks of an open WAV or AIFF file that say how it is played, in their order; none of other files. */
export async function keptChunks(reader: FileReader): Promise<KeptChunk[]> {
  const chunks: KeptChunk[] = [];
  const owner = ownerOf(await reader.read(0, formBytes));
  if (!owner) return chunks;
  const names: readonly string[] = kept[owner];
  for (let at = formBytes, count = 0; at + headerBytes <= reader.size && count < mostChunks; count++) {
    const header = await reader.read(at, headerBytes);
    if (header.length < headerBytes) break;
    const size = new DataView(header.buffer, header.byteOffset).getUint32(4, owner === 'riff');
    const whole = headerBytes + size;
    if (names.includes(textAt(header, 0)) && size <= mostBytes && at + whole <= reader.size)
      chunks.push({ owner, bytes: await reader.read(at, whole) });
    // Chunks start at even bytes.
    at += whole + (size % 2);
  }
  return chunks;
}

function ownerOf(form: Uint8Array): KeptChunk['owner'] | undefined {
  if (form.length < formBytes) return undefined;
  const [start, kind] = [textAt(form, 0), textAt(form, 8)];
  if (start === 'RIFF' && kind === 'WAVE') return 'riff';
  return start === 'FORM' && (kind === 'AIFF' || kind === 'AIFC') ? 'aiff' : undefined;
}

function textAt(bytes: Uint8Array, at: number): string {
  return String.fromCharCode(...bytes.subarray(at, at + 4));
}
