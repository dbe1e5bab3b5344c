import { joinPath } from '../../../server/model/paths';
import { sfzNotation } from '../../../server/sfz/notation';
import type { FontOptions, FontSource } from '../../../server/soundfont/write/writeSoundFont';
import { writeSoundFont } from '../../../server/soundfont/write/writeSoundFont';
import { chunk, format, sampler, u16, wave } from '../audio/byteFiles';
import { MemoryFiles } from '../workspace/memoryFiles';

const usualOptions: FontOptions = {
  name: 'Test',
  bits: 'samples',
  attenuation: 1,
  rates: 'keep',
  keyswitches: 'presets',
  takes: 'first',
};

/** A WAV file of 16 bits, a list of frames for each channel. */
export function wav(
  channels: number[][],
  { rate = 44100, loop, root = 60 }: { rate?: number; loop?: [number, number]; root?: number } = {},
): Uint8Array {
  const data = (channels[0] as number[]).flatMap((_, frame) =>
    channels.flatMap((one) => u16((one[frame] as number) & 0xffff)),
  );
  return wave(
    chunk('fmt ', format(1, channels.length, rate, 16)),
    ...(loop ? [chunk('smpl', sampler(root, 0, [[0, loop[0], loop[1]]]))] : []),
    chunk('data', data),
  );
}

/** A WAV file of 24 bits and one channel. */
export function wav24(frames: number[]): Uint8Array {
  const data = frames.flatMap((value) => [value & 255, (value >> 8) & 255, (value >> 16) & 255]);
  return wave(chunk('fmt ', format(1, 1, 44100, 24)), chunk('data', data));
}

export interface WrittenTest {
  bytes: Uint8Array;
  messages: string[];
  kept: number;
  presets: string[];
}

/** Writes SFZ texts as one font, with samples beside them; a text `name|bank:program` says its place. */
export async function writeFont(
  texts: Record<string, string>,
  samples: Record<string, Uint8Array>,
  options: Partial<FontOptions> = {},
): Promise<WrittenTest> {
  const files = new MemoryFiles(
    Object.fromEntries(Object.entries(samples).map(([name, bytes]) => [joinPath('/kit', name), bytes])),
  );
  const sources = Object.entries(texts).map(([title, text]): FontSource => {
    const [name = '', place] = title.split('|');
    const [bank = 0, program = 0] = place?.split(':').map(Number) ?? [];
    return {
      name,
      instrument: sfzNotation.read(text, { path: '/kit/a.sfz' }),
      folder: '/kit',
      place: place === undefined ? undefined : { bank, program },
    };
  });
  const { bytes, accounts, presets } = await writeSoundFont(sources, { ...usualOptions, ...options }, files);
  const parts: Uint8Array[] = [];
  for await (const part of bytes.chunks()) parts.push(part.slice());
  const whole = new Uint8Array(Buffer.concat(parts));
  if (whole.length !== bytes.length) throw new Error(`said ${bytes.length} bytes, gave ${whole.length}`);
  if (files.closed !== files.opened.length) throw new Error('a file was left open');
  return {
    bytes: whole,
    messages: accounts.flatMap(({ notes }) => notes.map(({ kind, message }) => `${kind}: ${message}`)),
    kept: accounts.reduce((sum, { kept }) => sum + kept, 0),
    presets: presets.map(({ bank, program, name }) => `${bank}:${program} ${name}`),
  };
}
