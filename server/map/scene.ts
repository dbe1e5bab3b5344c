import { keysOff } from '../model/inForce/headerRanges';
import type { Instrument } from '../model/instrument';
import { highKeyIn, highVelocityIn, lowKeyIn, rectangleCodesOf } from '../model/overlaps/rectangles';
import type { Keyswitch } from '../model/overlaps/switchingKeys';
import { findSwitchingKeys } from '../model/overlaps/switchingKeys';
import { nameOf, nameWithoutEnding } from '../model/paths';
import type { Steps } from '../model/steps';
import { finish, piecesInStep } from '../model/steps';
import { groupNamesInSteps } from '../trade/names/groupNames';
import { isSameWord, SharedWords, wordsOfName } from '../trade/names/nameWords';
import { LayerFinder } from './layers';
import type { MapRegion, MapScene, MapShape, UnplacedRegion } from './mapScene';
import { gapsOf, overlapsOf } from './places';
import { RegionConditions } from './regionConditions';

/** What may be said about a scene beforehand. */
export interface SceneOptions {
  /** What the map is of. */
  name?: string;
  /** Regions that are shown, the first of the text; 20,000 where nothing is said. */
  most?: number;
}

/** Regions that a map shows; nobody can tell more of them apart, and an editor takes very long to draw them. */
const mostShown = 20_000;

/**
 * Works out the keyboard map of an instrument: which regions answer which keys and velocities, by layer, what nothing
 * answers and what sounds together. Every region is in one shape or among the unplaced ones, but those that are
 * too many to be shown; gaps and the played span are of all. Time grows with the number of regions.
 */
export function buildMapScene(instrument: Instrument, options: SceneOptions = {}): MapScene {
  return finish(mapSceneInSteps(instrument, options));
}

/** As {@link buildMapScene}, in steps. */
export function* mapSceneInSteps(instrument: Instrument, options: SceneOptions = {}): Steps<MapScene> {
  const most = options.most ?? mostShown;
  const layers = new LayerFinder(instrument);
  // Layers without a label are named by their samples.
  yield* groupNamesInSteps(instrument);
  const played = yield* playedSpan(instrument, layers);
  const shown = Math.min(most, instrument.regions.length);
  const { shapes, unplaced } = yield* placeRegions(instrument, layers, shown);
  yield* shortenLabels(shapes);
  const { keyswitches, taken } = findSwitchingKeys(instrument);
  yield 1;
  const gaps = gapsOf(instrument, taken);
  const overlaps = yield* overlapsOf(instrument, (region) => layers.layerOf(region), most);
  return {
    name: options.name ?? nameOf(instrument.sources[0]?.path ?? ''),
    sources: instrument.sources.map(({ path }) => path),
    ...shownSpan(played, keyswitches),
    played,
    regionCount: instrument.regions.length,
    leftOut: instrument.regions.length - shown,
    layers: layers.layers,
    shapes,
    gaps,
    overlaps,
    keyswitches,
    unplaced,
  };
}

/** The lowest and highest key that a region answers; finds the layers of all regions on the way. */
function* playedSpan(instrument: Instrument, layers: LayerFinder): Steps<MapScene['played']> {
  const codes = rectangleCodesOf(instrument);
  let lowest = 128;
  let highest = -1;
  for (const [at, code] of codes.entries()) {
    if (at % piecesInStep === piecesInStep - 1) yield at / codes.length;
    layers.layerOf(instrument.regions[at]);
    // Velocity 0 is a note-off in MIDI 1.0, so a range that ends there is never struck.
    if (code < 0 || highVelocityIn(code) < 1) continue;
    lowest = Math.min(lowest, lowKeyIn(code));
    highest = Math.max(highest, highKeyIn(code));
  }
  return highest >= 0 ? { lowKey: lowest, highKey: highest } : null;
}

/** Regions that are looked at in a step. */
const regionsInStep = 1024;

/** Puts each of the first regions into a shape or among those without a place. */
function* placeRegions(
  instrument: Instrument,
  layers: LayerFinder,
  count: number,
): Steps<Pick<MapScene, 'shapes' | 'unplaced'>> {
  const shapes: MapShape[] = [];
  const unplaced: UnplacedRegion[] = [];
  const shapeOfCell = new Map<number, MapShape>();
  const conditions = new RegionConditions(instrument);
  for (let position = 0; position < count; position++) {
    if (position % regionsInStep === 0) yield position / count;
    const header = instrument.regions[position];
    const region = { ...mapRegion(instrument, header), ...conditions.of(position) };
    const layer = layers.layerOf(header);
    const lowKey = instrument.lowKey[header];
    const highKey = instrument.highKey[header];
    // Velocity 0 is a note-off in MIDI 1.0, so a range from 0 starts at 1.
    const lowVelocity = Math.max(1, instrument.lowVelocity[header]);
    const highVelocity = instrument.highVelocity[header];
    const areKeysOff = lowKey === keysOff || highKey === keysOff;
    if (areKeysOff || lowKey > highKey || lowVelocity > highVelocity) {
      unplaced.push({ ...region, layer, reason: areKeysOff ? 'keys-off' : 'empty-range' });
      continue;
    }
    const cell = (((layer * 128 + lowKey) * 128 + highKey) * 128 + lowVelocity) * 128 + highVelocity;
    const shape = shapeOfCell.get(cell);
    if (shape) {
      shape.regions.push(region);
      if (!shape.rootKeys.includes(region.rootKey)) shape.rootKeys.push(region.rootKey);
      continue;
    }
    const added: MapShape = {
      ...{ lowKey, highKey, lowVelocity, highVelocity, layer },
      label: labelOf(region.sample),
      shortLabel: '',
      rootKeys: [region.rootKey],
      regions: [region],
    };
    shapeOfCell.set(cell, added);
    shapes.push(added);
  }
  return { shapes, unplaced };
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
  return sample === '' ? 'no sample' : nameWithoutEnding(sample);
}

/** Gives each shape what tells it from the others of its layer. */
function* shortenLabels(shapes: readonly MapShape[]): Steps<void> {
  const words: ReturnType<typeof wordsOfName>[] = [];
  const shared = new Map<number, SharedWords>();
  for (const [at, { label, layer }] of shapes.entries()) {
    if (at % regionsInStep === 0) yield at / shapes.length;
    words.push(wordsOfName(label));
    const known = shared.get(layer) ?? new SharedWords();
    shared.set(layer, known);
    known.add(words[at]);
  }
  for (const [at, shape] of shapes.entries()) {
    if (at % regionsInStep === 0) yield at / shapes.length;
    const common = shared.get(shape.layer)?.words ?? [];
    const own = words[at].filter((word) => !common.some((other) => isSameWord(word, other)));
    shape.shortLabel = own.join(' ');
  }
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
