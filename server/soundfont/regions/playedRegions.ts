import type { SampleHeader, SoundFont } from '../font';
import { SampleType } from '../font';
import { defaultOf, Generator } from '../generators';
import { isRomSample } from '../read/readFont';
import type { FontRegion } from './fontRegions';

/** A stretch of the pool as a file: one sample, or a left and a right one side by side. */
export interface PoolFile {
  /** Positions of the samples, left before right. */
  samples: readonly number[];
  key: string;
}

/** A region with the samples that it plays and how, frames counted from the first of them. */
export interface PlacedRegion {
  region: FontRegion;
  use: PoolFile;
  rootKey: number;
  tuneCents: number;
  pan: number;
  offset: number;
  end: number | undefined;
  loop: { start: number; end: number } | undefined;
}

/** What became of the regions of a preset. */
export interface PlacedRegions {
  regions: PlacedRegion[];
  /** Sentences on regions that cannot be played. */
  leftOut: string[];
}

const hardPan = 500;
const unpitchedKey = 60;
const mostKey = 127;

/** Finds for each region the frames that it plays, and joins those of a left and a right sample to one. */
export function placeRegions(font: SoundFont, regions: readonly FontRegion[]): PlacedRegions {
  const leftOut: string[] = [];
  const placed: PlacedRegion[] = [];
  const waiting = new Map<string, number[]>();
  const joined = new Set<number>();
  for (const region of regions) {
    const header = font.samples[region.sample] as SampleHeader;
    const fault = faultOf(header, font);
    if (fault !== undefined) {
      leftOut.push(`Left out: a region of the sample "${header.name}", ${fault}.`);
      continue;
    }
    const one = placeRegion(region, header, font);
    const side = Math.abs(one.pan) === hardPan ? one.pan : undefined;
    const key = side === undefined ? undefined : pairKey(one, header);
    const partner =
      key !== undefined &&
      waiting
        .get(`${-(side as number)} ${key}`)
        ?.find((at) => !joined.has(at) && belongTogether(font, placed[at] as PlacedRegion, one));
    if (typeof partner === 'number') {
      joined.add(partner);
      placed[partner] = joinedRegion(placed[partner] as PlacedRegion, one);
      continue;
    }
    if (key !== undefined) {
      const list = waiting.get(`${side} ${key}`);
      if (list) list.push(placed.length);
      else waiting.set(`${side} ${key}`, [placed.length]);
    }
    placed.push(one);
  }
  return { regions: placed, leftOut };
}

function faultOf(header: SampleHeader, { pool }: SoundFont): string | undefined {
  if (isRomSample(header)) return 'which lies in the memory of a sound card and not in the file';
  if (header.end <= header.start) return 'which has no frames';
  if (header.end > pool.frames)
    return `which ends at frame ${header.end} of the audio; there are ${pool.frames}`;
  if (header.rate === 0) return 'which has no sample rate';
  return undefined;
}

/** Frames that a coarse offset counts in. */
const coarse = 32768;

function placeRegion(region: FontRegion, header: SampleHeader, font: SoundFont): PlacedRegion {
  const value = (generator: number) => region.generators.get(generator) ?? defaultOf(generator);
  const moved = (fine: number, big: number) => value(fine) + coarse * value(big);
  const length = fileFrames(header, font);
  const offset = moved(Generator.startOffset, Generator.startCoarseOffset);
  const endMoved = moved(Generator.endOffset, Generator.endCoarseOffset);
  const mode = value(Generator.sampleModes);
  const loopStart =
    header.loopStart - header.start + moved(Generator.loopStartOffset, Generator.loopStartCoarseOffset);
  const loopEnd =
    header.loopEnd - header.start + moved(Generator.loopEndOffset, Generator.loopEndCoarseOffset) - 1;
  const loops = (mode === 1 || mode === 3) && loopStart >= 0 && loopEnd > loopStart && loopEnd < length;
  const override = value(Generator.rootKey);
  const own = header.rootKey > mostKey ? unpitchedKey : header.rootKey;
  return {
    region,
    use: { samples: [region.sample], key: String(region.sample) },
    rootKey: override >= 0 ? override : own,
    tuneCents: 100 * value(Generator.coarseTune) + value(Generator.fineTune) + header.correctionCents,
    pan: value(Generator.pan),
    offset: Math.min(offset, length - 1),
    end: endMoved < 0 ? Math.max(0, header.end - header.start - 1 + endMoved) : undefined,
    loop: loops ? { start: loopStart, end: loopEnd } : undefined,
  };
}

/** Frames of a sample as a file: those of a loop that goes on past its end are among them. */
export function fileFrames({ start, end, loopEnd }: SampleHeader, { pool }: SoundFont): number {
  return Math.max(end, loopEnd <= pool.frames && loopEnd > start ? loopEnd : 0) - start;
}

/** The same for both regions of a pair; pan and sample aside. */
function pairKey(
  { region, rootKey, tuneCents, offset, end, loop }: PlacedRegion,
  { rate }: SampleHeader,
): string {
  const { lowKey, highKey, lowVelocity, highVelocity, layer, generators, modulators } = region;
  const others = [...generators]
    .filter(([generator]) => generator !== Generator.pan && generator !== Generator.rootKey)
    .sort(([a], [b]) => a - b);
  return JSON.stringify([
    [layer, lowKey, highKey, lowVelocity, highVelocity, rate, rootKey, tuneCents, offset, end, loop],
    others,
    modulators.map((one) => Object.values(one)),
  ]);
}

/** Whether two samples are the sides of one recording: by their links, their kinds or their names. */
function belongTogether(font: SoundFont, a: PlacedRegion, b: PlacedRegion): boolean {
  const [first, second] = [a.region.sample, b.region.sample];
  if (first === second) return false;
  const one = font.samples[first] as SampleHeader;
  const other = font.samples[second] as SampleHeader;
  const sides = [one.type, other.type];
  const stated = sides.includes(SampleType.left) && sides.includes(SampleType.right);
  if (stated && one.link === second && other.link === first) return true;
  const stem = nameWithoutSide(one.name);
  return stem !== undefined && stem === nameWithoutSide(other.name) && one.name !== other.name;
}

/** The name of a side without what says which side it is; `undefined` where nothing does. */
export function nameWithoutSide(name: string): string | undefined {
  const found = /^(.*?)[\s_.-]*(?:[([]?[LR][)\]]?|left|right)$/i.exec(name);
  return found?.[1] || undefined;
}

function joinedRegion(first: PlacedRegion, second: PlacedRegion): PlacedRegion {
  const [left, right] = first.pan < 0 ? [first, second] : [second, first];
  const samples = [left.region.sample, right.region.sample];
  // Generators of the left side stand for both: they differ in the pan alone.
  const generators = new Map(left.region.generators);
  generators.delete(Generator.pan);
  return {
    ...left,
    region: { ...left.region, generators },
    use: { samples, key: samples.join(' ') },
    pan: 0,
  };
}
