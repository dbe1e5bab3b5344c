import type { ByteChunks } from '../../model/output';
import { OutputError } from '../../model/output';
import { ByteWriter } from '../byteWriter';
import { fewerFrames } from './fewerFrames';
import type { FontParts } from './fontParts';
import { laidOutBlocks } from './laidOutSample';
import { asciiOf } from './names';
import { recordLists, silenceBetween } from './recordLists';
import type { SampleCatalogue } from './sampleCatalogue';
import type { PlannedSample } from './samplePlan';

/** One channel of a planned sample, in the order in which samples are written. */
export interface WrittenChannel {
  sample: PlannedSample;
  channel: number;
  /** Keeps one of so many frames. */
  step: number;
}

/** Texts about a font. */
export interface FontInfo {
  name: string;
  comment: string;
}

const mostBytes = 2 ** 32 - 1;
const engine = 'EMU8000';
const tool = 'Zonewright:Zonewright';
const mostInfoBytes = 256;

/**
 * The bytes of a font: samples are read while they are written, first their high bytes, then, for 24 bits, their low ones, so
 * that little is held whatever the size. The same parts give the same bytes. Fails with a {@link OutputError} where the
 * format cannot hold so much.
 */
export function fontBytes(
  info: FontInfo,
  parts: FontParts,
  channels: readonly WrittenChannel[],
  bits: 16 | 24,
  catalogue: SampleCatalogue,
): ByteChunks {
  const frames = parts.samples.reduce((sum, one) => sum + one.frames + silenceBetween, 0);
  const lowBytes = bits === 24 ? frames + (frames % 2) : 0;
  const infoList = infoBytes(info, bits);
  const lists = recordLists(parts);
  const lowHeader = bits === 24 ? 8 : 0;
  const audioSize = 4 + 8 + 2 * frames + lowHeader + lowBytes;
  const size = 12 + 8 + infoList.length + 8 + audioSize + 8 + lists.length;
  if (size > mostBytes)
    throw new OutputError(
      `The SoundFont would have ${(size / 2 ** 30).toFixed(1)} GB; the format holds 4 GB. Write fewer instruments into one file, or 16 bits.`,
    );
  return {
    length: size,
    async *chunks() {
      const head = new ByteWriter()
        .letters('RIFF')
        .u32(size - 8)
        .letters('sfbk');
      head.letters('LIST').u32(infoList.length).bytes(infoList);
      head.letters('LIST').u32(audioSize).letters('sdta');
      yield head
        .letters('smpl')
        .u32(2 * frames)
        .finish();
      for (const one of channels) yield* channelBytes(one, catalogue, bits, 'high');
      if (bits === 24) {
        yield new ByteWriter().letters('sm24').u32(lowBytes).finish();
        for (const one of channels) yield* channelBytes(one, catalogue, bits, 'low');
        if (frames % 2 === 1) yield new Uint8Array(1);
      }
      yield new ByteWriter().letters('LIST').u32(lists.length).finish();
      yield lists;
    },
  };
}

function infoBytes({ name, comment }: FontInfo, bits: 16 | 24): Uint8Array {
  const writer = new ByteWriter()
    .letters('INFO')
    .letters('ifil')
    .u32(4)
    .u16(2, bits === 24 ? 4 : 1);
  for (const [id, text] of [
    ['isng', engine],
    ['INAM', asciiOf(name) || 'Unnamed'],
    ...(comment === '' ? [] : [['ICMT', asciiOf(comment)]]),
    ['ISFT', tool],
  ] as [string, string][]) {
    const cut = text.slice(0, mostInfoBytes - 2);
    // One zero ends the text, a second one makes its size even.
    const bytes = cut.length + (cut.length % 2 === 0 ? 2 : 1);
    writer.letters(id).u32(bytes).field(cut, bytes);
  }
  return writer.finish();
}

const scale = { 16: 2 ** 15, 24: 2 ** 23 } as const;

async function* channelBytes(
  { sample, channel, step }: WrittenChannel,
  catalogue: SampleCatalogue,
  bits: 16 | 24,
  part: 'high' | 'low',
): AsyncGenerator<Uint8Array> {
  const { known, layout } = sample;
  const opened = await catalogue.open(known.path);
  const full = scale[bits] / known.peak;
  const highest = scale[bits] - 1;
  let left = layout.frames / step;
  try {
    for await (const block of fewerFrames(laidOutBlocks(sample, channel, opened.source), step)) {
      const count = Math.min(left, block.length);
      left -= count;
      const bytes = new Uint8Array(part === 'high' ? 2 * count : count);
      for (let frame = 0; frame < count; frame++) {
        const value = Math.max(-scale[bits], Math.min(highest, Math.round((block[frame] as number) * full)));
        if (part === 'low') bytes[frame] = value & 255;
        else {
          const high = bits === 24 ? value >> 8 : value;
          bytes[2 * frame] = high & 255;
          bytes[2 * frame + 1] = (high >> 8) & 255;
        }
      }
      if (count > 0) yield bytes;
    }
  } finally {
    await opened.close();
  }
  yield new Uint8Array((left + silenceBetween) * (part === 'high' ? 2 : 1));
}
