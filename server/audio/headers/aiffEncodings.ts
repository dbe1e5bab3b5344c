import { fourCharacters } from './byteWindow';

/** How an AIFF-C compression type stores audio. */
export interface AiffEncoding {
  /** Named as for WAV files. */
  encoding: string;
  /** Bits of a sample, where they follow from the type alone. */
  bits?: number;
  /** Bytes of a block of one channel, where every block has as many; several frames stand in a block. */
  block?: { bytes: number; frames: number };
}

/**
 * Compression types. NONE, ACE, MACE: AIFF-C draft, Apple, 1991. The others came later; general audio libraries write
 * and read them (common practice).
 */
const types: ReadonlyMap<number, AiffEncoding> = new Map(
  (
    [
      ['NONE', { encoding: 'pcm' }],
      ['twos', { encoding: 'pcm' }],
      ['sowt', { encoding: 'pcm' }],
      ['raw ', { encoding: 'pcm' }],
      ['in24', { encoding: 'pcm', bits: 24 }],
      ['42n1', { encoding: 'pcm', bits: 24 }],
      ['42ni', { encoding: 'pcm', bits: 24 }],
      ['in32', { encoding: 'pcm', bits: 32 }],
      ['23ni', { encoding: 'pcm', bits: 32 }],
      ['fl32', { encoding: 'float', bits: 32 }],
      ['FL32', { encoding: 'float', bits: 32 }],
      ['fl64', { encoding: 'float', bits: 64 }],
      ['FL64', { encoding: 'float', bits: 64 }],
      ['alaw', { encoding: 'alaw', bits: 8 }],
      ['ALAW', { encoding: 'alaw', bits: 8 }],
      ['ulaw', { encoding: 'mulaw', bits: 8 }],
      ['ULAW', { encoding: 'mulaw', bits: 8 }],
      ['ima4', { encoding: 'ima-adpcm', bits: 4, block: { bytes: 34, frames: 64 } }],
      ['DWVW', { encoding: 'dwvw' }],
      ['GSM ', { encoding: 'gsm610' }],
    ] as [string, AiffEncoding][]
  ).map(([name, encoding]) => [fourCharacters(name), encoding]),
);

/** What a compression type means; one that is not known is shown by its four characters. */
export function aiffEncodingOf(type: number): AiffEncoding {
  const known = types.get(type);
  if (known) return known;
  const characters = [24, 16, 8, 0].map((shift) => String.fromCharCode((type >>> shift) & 255)).join('');
  return { encoding: `type-${characters.trim()}` };
}

/** Whether every frame takes the same whole number of bytes. */
export function isFixed({ encoding }: AiffEncoding): boolean {
  return encoding === 'pcm' || encoding === 'float' || encoding === 'alaw' || encoding === 'mulaw';
}
