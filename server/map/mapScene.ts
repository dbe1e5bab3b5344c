import type { Keyswitch } from '../model/overlaps/switchingKeys';
import type { Span } from '../model/text/span';

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
  /** What starts it, as `trigger` says; absent for the attack of a note. */
  trigger?: string;
  /** The lowest and highest of the keyswitches that let it sound; absent where none must have been pressed. */
  switchedBy?: [lowKey: number, highKey: number];
  /** Which of how many strikes in turn it answers, 1 the first; absent where it answers each. */
  turn?: [position: number, length: number];
  /** The controllers that it waits for, each with its lowest and highest value; absent where it waits for none. */
  controllers?: [number: number, low: number, high: number][];
}

/** Regions of one layer that answer the same keys and velocities: round robins, microphones or a single one. */
export interface MapShape extends MapCell {
  /** Position in {@link MapScene.layers}. */
  layer: number;
  /** The first region's sample without its ending; `no sample` where none is set. */
  label: string;
  /** The part of the label that the other shapes of its layer do not share; empty where that is nothing. */
  shortLabel: string;
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
  /** How many regions at the end of the text are in no shape because there are too many to be shown. */
  leftOut: number;
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
