import type { MapScene } from '../../map/mapScene';
import { buildMapScene } from '../../map/scene';
import { HeaderKind } from '../../model/headerKinds';
import type { Instrument } from '../../model/instrument';
import type { SampleLookup } from '../../model/samples';
import type { InstrumentFigures } from './instrumentRecord';

/** Shapes that the small drawing of a map has at the most. */
const mostShapes = 400;

/** What an instrument is like, with its map. Samples are those that are known. */
export function figuresOf(
  instrument: Instrument,
  samples: SampleLookup,
  name: string,
): { figures: InstrumentFigures; scene: MapScene } {
  const scene = buildMapScene(instrument, { name });
  const paths = samplePaths(instrument);
  const missing = [...paths].filter((path) => ['missing', 'folder'].includes(samples.state(path).kind));
  let groups = 0;
  for (let header = 0; header < instrument.headers.count; header++)
    if (instrument.kind(header) === HeaderKind.group) groups++;
  const played = scene.shapes.map(({ lowKey, highKey }) => [lowKey, highKey] as const);
  const figures: InstrumentFigures = {
    regions: instrument.regions.length,
    groups,
    ...(played.length > 0 && {
      keys: [Math.min(...played.map(([low]) => low)), Math.max(...played.map(([, high]) => high))],
    }),
    layers: mostLayers(scene),
    samples: paths.size,
    missing: missing.length,
    shapes: scene.shapes
      .slice(0, mostShapes)
      .map((one) => [one.lowKey, one.highKey, one.lowVelocity, one.highVelocity]),
  };
  return { figures, scene };
}

/** The sample paths that regions name, generators aside. */
function samplePaths(instrument: Instrument): Set<string> {
  const paths = new Set<string>();
  for (const region of instrument.regions) {
    const path = instrument.samplePath(region);
    if (path !== undefined && path !== '' && !path.startsWith('*')) paths.add(path);
  }
  return paths;
}

/** The most velocity ranges that any key has. */
function mostLayers({ shapes }: MapScene): number {
  const ranges = Array.from({ length: 128 }, () => new Set<number>());
  for (const { lowKey, highKey, lowVelocity, highVelocity } of shapes)
    for (let key = Math.max(0, lowKey); key <= Math.min(127, highKey); key++)
      ranges[key].add(lowVelocity * 128 + highVelocity);
  return Math.max(0, ...ranges.map(({ size }) => size));
}
