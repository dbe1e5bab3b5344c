import type { SampleFacts, SampleLoop } from '../../../../server/model/samples';

/** One of 200 regions: four velocity layers of 25 zones, four keys wide, with two recordings each. */
export interface Invented {
  layer: number;
  zone: number;
  take: 1 | 2;
  low: number;
  high: number;
  root: number;
  lowVelocity: number;
  highVelocity: number;
  /** The note name of the root, middle C being C4. */
  rootName: string;
  /** A number from 0 to `below` − 1 that varies from region to region. */
  vary(below: number): number;
  frames: number;
  loopStart: number;
  /** The last frame of the loop. */
  loopEnd: number;
}

export const layerWords = ['soft', 'middling', 'firm', 'loud'] as const;
const lowest = 12;
const zones = 25;
const zoneWidth = 4;

const noteNames = ['C', 'C#', 'D', 'D#', 'E', 'F', 'F#', 'G', 'G#', 'A', 'A#', 'B'];

/** The note name of a key, where `octave` is the octave number of the C that is key 60. */
export function nameOf(key: number, octave: number): string {
  return `${noteNames[key % 12]}${Math.floor(key / 12) - 5 + octave}`;
}

/** The 200 regions, layer by layer. */
export function invented(): Invented[] {
  return layerWords.flatMap((_, layer) =>
    Array.from({ length: zones }, (_, zone) =>
      ([1, 2] as const).map((take) => inventedAt(layer, zone, take)),
    ).flat(),
  );
}

function inventedAt(layer: number, zone: number, take: 1 | 2): Invented {
  const low = lowest + zone * zoneWidth;
  const seed = layer * 50 + zone * 2 + take;
  const vary = (below: number) => (seed * 7919 + ((seed * seed) % 89) * 31) % below;
  const root = low + ((zone + layer) % zoneWidth);
  const frames = 30_000 + vary(9973);
  const loopStart = 4000 + vary(3511);
  return {
    layer,
    zone,
    take,
    low,
    high: low + zoneWidth - 1,
    root,
    lowVelocity: layer * 32,
    highVelocity: layer * 32 + 31,
    rootName: nameOf(root, 4),
    vary,
    frames,
    loopStart,
    loopEnd: loopStart + 9000 + vary(2111),
  };
}

/** What the header of a WAV file of so many frames says. */
export function facts(
  frames: number,
  sampleRate: number,
  more: { rootKey?: number; loop?: readonly [start: number, end: number] } = {},
): SampleFacts {
  const loops: SampleLoop[] = more.loop ? [{ start: more.loop[0], end: more.loop[1], type: 'forward' }] : [];
  return {
    container: 'wav',
    encoding: 'pcm',
    sampleRate,
    channels: 2,
    bitsPerSample: 16,
    frames,
    lengthSeconds: frames / sampleRate,
    loops,
    rootKey: more.rootKey ?? null,
    fineTuneCents: null,
    problems: [],
  };
}

/** `name="value"` for each pair, those without a value left out. */
export function attributes(values: Record<string, string | number | undefined>): string {
  return Object.entries(values)
    .filter(([, value]) => value !== undefined)
    .map(([name, value]) => ` ${name}="${value}"`)
    .join('');
}
