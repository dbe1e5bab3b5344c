import type { AudioSource } from '../../audio/decode/audioSource';
import type { KnownSample, SampleCatalogue } from './sampleCatalogue';
import type { FramePiece, SampleLayout } from './samplePieces';
import { equalFrames, loopLayout, sustainLayout, wholeLayout } from './samplePieces';
import type { SampleRequest, ZoneDraft } from './zoneDraft';

/** A file with one layout of its frames, which becomes one sample, or two for a stereo file. */
export interface PlannedSample {
  known: KnownSample;
  layout: SampleLayout;
  /** The root key that is written with the sample. */
  rootKey: number;
}

/** The samples of all zones, each with the zones that play it. */
export interface SamplePlan {
  samples: PlannedSample[];
  /** The sample of each zone, in the order of the zones. */
  ofZone: PlannedSample[];
}

/**
 * Plans how the samples of zones are laid out. Zones that play one file in one way share a sample; one that does not loop
 * shares that of a loop which needs no repair. `stepOf` says for a rate that only one of so many frames is kept afterwards.
 */
export async function planSamples(
  zones: readonly ZoneDraft[],
  catalogue: SampleCatalogue,
  stepOf: (rate: number) => number,
): Promise<SamplePlan> {
  const byPath = new Map<string, Map<string, SampleRequest>>();
  for (const { sample } of zones) {
    const requests = byPath.get(sample.path) ?? new Map<string, SampleRequest>();
    byPath.set(sample.path, requests);
    if (!requests.has(keyOf(sample))) requests.set(keyOf(sample), sample);
  }
  const planned = new Map<string, PlannedSample>();
  const samples: PlannedSample[] = [];
  for (const [path, requests] of byPath) {
    const known = catalogue.get(path);
    if (!known) continue;
    const layouts = await layoutsOf(requests, known, catalogue, stepOf(known.rate));
    let shared: PlannedSample | undefined;
    for (const [key, layout] of layouts) {
      const sample: PlannedSample = { known, layout, rootKey: -1 };
      if (!layout.loop && shared) planned.set(`${path} ${key}`, shared);
      else {
        samples.push(sample);
        planned.set(`${path} ${key}`, sample);
        if (!layout.isRepaired) shared ??= sample;
      }
    }
  }
  const ofZone = zones.map(({ sample, rootKey }) => {
    const found = planned.get(`${sample.path} ${keyOf(sample)}`) as PlannedSample;
    if (found.rootKey < 0) found.rootKey = rootKey;
    return found;
  });
  return { samples, ofZone };
}

function keyOf({ loop, mode }: SampleRequest): string {
  return loop ? `${mode} ${loop.start} ${loop.end}` : 'none';
}

/** The layouts of one file, those with loops first. */
async function layoutsOf(
  requests: ReadonlyMap<string, SampleRequest>,
  known: KnownSample,
  catalogue: SampleCatalogue,
  step: number,
): Promise<[string, SampleLayout][]> {
  const layouts: [string, SampleLayout][] = [];
  const looped = [...requests].filter(([, { loop }]) => loop);
  const opened = looped.some(([, { mode }]) => mode === 'loop')
    ? await catalogue.open(known.path)
    : undefined;
  try {
    for (const [key, { loop: written, mode }] of looped) {
      const loop = { start: written?.start ?? 0, end: (written?.end ?? 0) + 1 };
      layouts.push([
        key,
        mode === 'untilRelease'
          ? sustainLayout(known.frames, loop, step)
          : loopLayout(known.frames, loop, opened !== undefined && (await isEven(opened.source, loop)), step),
      ]);
    }
  } finally {
    await opened?.close();
  }
  if (looped.length < requests.size) layouts.push(['none', wholeLayout(known.frames, step)]);
  return layouts;
}

/** Whether the frames around the start of a loop are those around its end. */
async function isEven(source: AudioSource, { start, end }: FramePiece): Promise<boolean> {
  if (start < equalFrames) return false;
  const first = await source.read(start - equalFrames, 2 * equalFrames);
  const last = await source.read(end - equalFrames, 2 * equalFrames);
  return first.every((channel, at) => {
    const other = last[at];
    return (
      channel.length === 2 * equalFrames &&
      other?.length === channel.length &&
      channel.every((value, frame) => value === other[frame])
    );
  });
}
