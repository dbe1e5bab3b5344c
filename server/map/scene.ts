import type { Instrument } from '../model/instrument';
import { keysOff } from '../model/instrument';
import type { Keyswitch } from '../model/overlaps/switchingKeys';
import { findSwitchingKeys } from '../model/overlaps/switchingKeys';
import { nameOf } from '../model/paths';
import type { Span } from '../model/text/span';
import { LayerFinder } from './layers';
import { gapsOf, overlapsOf } from './places';

/** A rectangle of MIDI keys 0..127 and velocities 1..127, all four sides inclusive. */
export interface MapCell {
  lowKey: number;
  highKey: number;
  lowVelocity: number;
  highVelocity: number;
}

/** A region of a shape; its span is that of the region header with its parameters. */
export interface MapRegion extends Span {
  header: number;
  /** The file name of its sample, a generator such as `*sine`, or empty where none is set. */
  sample: string;
  /** MIDI key number, 0..127. */
  rootKey: number;
}

/** Regions of one layer that answer the same keys and velocities: round robins, microphones or a single one. */
export interface MapShape extends MapCell {
  /** Position in {@link MapScene.layers}. */
  layer: number;
  /** The first region's sample without its ending; `no sample` where none is set. */
  label: string;
  /** Different root keys of its regions, in the order of the text. */
  rootKeys: number[];
  /** In the order of the text; never empty. */
  regions: MapRegion[];
}

/** The regions of one group, or of groups that carry the same label. */
export interface MapLayer {
  name: string;
  regionCount: number;
}

/** Keys within the played span that no region answers, or velocities of played keys. */
export interface MapGap extends MapCell {
  kind: 'key' | 'velocity';
}

/** Where regions of a layer sound together without being meant to. */
export interface MapOverlap extends MapCell {
  layer: number;
}

/** A region that has no place on the keyboard. */
export interface UnplacedRegion extends MapRegion {
  layer: number;
  /** `keys-off`: keys do not trigger it; `empty-range`: its low end lies above its high end. */
  reason: 'keys-off' | 'empty-range';
}

/** A keyboard map as plain data that can be sent as JSON. */
export interface MapScene {
  /** What the map is of: the name of the instrument's file unless another was given. */
  name: string;
  /** The paths of the files that spans refer to, as the reader reached them; the main file first. */
  sources: string[];
  /** The span of keys to show: whole octaves (up to key 127), at least three, with all played and switching keys. */
  lowKey: number;
  highKey: number;
  /** The lowest and highest key that a region answers; `null` where none does. */
  played: { lowKey: number; highKey: number } | null;
  regionCount: number;
  /** In the order in which their first regions stand in the text. */
  layers: MapLayer[];
  /** In the order in which their first regions stand in the text. */
  shapes: MapShape[];
  gaps: MapGap[];
  overlaps: MapOverlap[];
  /** By key, ascending. */
  keyswitches: Keyswitch[];
  unplaced: UnplacedRegion[];
}

/** What may be said about a scene beforehand. */
export interface SceneOptions {
  /** What the map is of. */
  name?: string;
}

/**
 * Works out the keyboard map of an instrument: which regions answer which keys and velocities, by layer, what nothing
 * answers and what sounds together. Every region is in one shape or among the unplaced ones. Time grows with the
 * number of regions.
 */
export function buildMapScene(instrument: Instrument, options: SceneOptions = {}): MapScene {
  const layers = new LayerFinder(instrument);
  const shapes: MapShape[] = [];
  const unplaced: UnplacedRegion[] = [];
  const shapeOfCell = new Map<number, MapShape>();
  let lowest = 128;
  let highest = -1;
  for (const header of instrument.regions) {
    const region = mapRegion(instrument, header);
    const layer = layers.layerOf(header);
    const lowKey = instrument.lowKey[header];
    const highKey = instrument.highKey[header];
    // Velocity 0 is a note-off in MIDI 1.0, so a range from 0 starts at 1.
    const lowVelocity = Math.max(1, instrument.lowVelocity[header]);
    const highVelocity = instrument.highVelocity[header];
    if (lowKey === keysOff || highKey === keysOff) {
      unplaced.push({ ...region, layer, reason: 'keys-off' });
      continue;
    }
    if (lowKey > highKey || lowVelocity > highVelocity) {
      unplaced.push({ ...region, layer, reason: 'empty-range' });
      continue;
    }
    if (lowKey < lowest) lowest = lowKey;
    if (highKey > highest) highest = highKey;
    const cell = (((layer * 128 + lowKey) * 128 + highKey) * 128 + lowVelocity) * 128 + highVelocity;
    const shape = shapeOfCell.get(cell);
    if (shape) {
      shape.regions.push(region);
      if (!shape.rootKeys.includes(region.rootKey)) shape.rootKeys.push(region.rootKey);
      continue;
    }
    const added: MapShape = {
      lowKey,
      highKey,
      lowVelocity,
      highVelocity,
      layer,
      label: labelOf(region.sample),
      rootKeys: [region.rootKey],
      regions: [region],
    };
    shapeOfCell.set(cell, added);
    shapes.push(added);
  }
  const played = highest >= 0 ? { lowKey: lowest, highKey: highest } : null;
  const { keyswitches, taken } = findSwitchingKeys(instrument);
  return {
    name: options.name ?? nameOf(instrument.sources[0]?.path ?? ''),
    sources: instrument.sources.map(({ path }) => path),
    ...shownSpan(played, keyswitches),
    played,
    regionCount: instrument.regions.length,
    layers: layers.layers,
    shapes,
    gaps: gapsOf(instrument, taken),
    overlaps: overlapsOf(instrument, (region) => layers.layerOf(region)),
    keyswitches,
    unplaced,
  };
}

function mapRegion(instrument: Instrument, header: number): MapRegion {
  const parameter = instrument.sampleParameter[header];
  let sample = '';
  if (parameter >= 0) {
    sample = instrument.valueText(parameter);
    sample = sample.slice(Math.max(sample.lastIndexOf('/'), sample.lastIndexOf('\\')) + 1);
  }
  return { header, ...instrument.bodySpan(header), sample, rootKey: instrument.rootKey(header) };
}

function labelOf(sample: string): string {
  if (sample === '') return 'no sample';
  const dot = sample.lastIndexOf('.');
  return dot > 0 ? sample.slice(0, dot) : sample;
}

const leastKeys = 36;

function shownSpan(
  played: MapScene['played'],
  keyswitches: readonly Keyswitch[],
): { lowKey: number; highKey: number } {
  // Around middle C where there is nothing to show.
  let low = played?.lowKey ?? 48;
  let high = played?.highKey ?? 83;
  for (const { key } of keyswitches) {
    low = Math.min(low, key);
    high = Math.max(high, key);
  }
  low -= low % 12;
  high += 11 - (high % 12);
  let down = false;
  while (high - low + 1 < leastKeys) {
    if (down && low > 0) low -= 12;
    else high += 12;
    down = !down;
  }
  // The keyboard of MIDI ends with G9, in the middle of an octave.
  if (high > 127) {
    high = 127;
    while (low > 0 && high - low + 1 < leastKeys) low -= 12;
  }
  return { lowKey: low, highKey: high };
}
