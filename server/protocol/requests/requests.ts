import type { WorkDoneProgressParams, WorkspaceEdit } from 'vscode-languageserver-protocol';
import { NotificationType, RequestType } from 'vscode-languageserver-protocol';
import type { Arrangement } from '../../gestures/arrangement';
import type { MapScene } from '../../map/mapScene';
import type { RegionFinding } from '../../map/regionFindings';
import type { MapMeasures } from '../../map/views/mapMeasures';
import type { PresetNumbers } from '../../soundfont/font';

/** Names an instrument: that of an open document, or a preset of a SoundFont. */
export interface InstrumentPlace {
  uri: string;
  /** The preset, where the URI is that of a SoundFont. */
  preset?: PresetNumbers;
}

export type KeyboardMapParams = InstrumentPlace;

export interface KeyboardMapResult {
  /** The map of the document as it is now; `null` where there is none. */
  scene: MapScene | null;
  /** The version of the text that it is of. */
  version: number;
  /** Why there is no map, as a sentence. */
  reason?: string;
}

/** Asks for the keyboard map of an instrument. Who has asked is told of changes by {@link InstrumentChangedNotification}. */
export const KeyboardMapRequest = {
  type: new RequestType<KeyboardMapParams, KeyboardMapResult, void>('zonewright/keyboardMap'),
} as const;

export interface ArrangeMapParams {
  uri: string;
  /** The version of the text that the map was of. */
  version: number;
  /** What changes; headers are those of the map. */
  arrangement: Arrangement;
}

export interface ArrangeMapResult {
  /** The change of the text, in the document's own style; missing where it cannot be made. */
  edit?: WorkspaceEdit;
  /** Why it cannot be made, as a sentence. */
  refusal?: string;
}

/** Asks for the change of text that gives regions the values which a gesture on their map shows. */
export const ArrangeMapRequest = {
  type: new RequestType<ArrangeMapParams, ArrangeMapResult, void>('zonewright/arrangeMap'),
} as const;

export interface AddSamplesParams extends WorkDoneProgressParams {
  uri: string;
  /** The version of the text that the map was of. */
  version: number;
  /** Audio files, and folders of them. */
  sampleUris: string[];
  /** The key that a sample without a root of its own gets. */
  key?: number;
  /** The region behind which a single sample goes; headers are those of the map. */
  after?: number;
}

export interface AddSamplesResult extends ArrangeMapResult {
  /** What was decided, each as a sentence. */
  told?: string[];
}

/** Asks for the change of text that adds samples to an instrument, each on its root key. */
export const AddSamplesRequest = {
  type: new RequestType<AddSamplesParams, AddSamplesResult, void>('zonewright/addSamples'),
} as const;

export interface MapMeasuresParams {
  uri: string;
  /** The key whose velocities are wanted. */
  key: number;
}

/** Asks for what the views of a document's map show; it comes when all samples are measured, `null` where there is no instrument. */
export const MapMeasuresRequest = {
  type: new RequestType<MapMeasuresParams, MapMeasures | null, void>('zonewright/mapMeasures'),
} as const;

export interface MapFindingsResult {
  /** The version of the text that was checked. */
  version: number;
  /** What was found wrong with its regions, in the files that it includes too; headers are those of its map. */
  findings: RegionFinding[];
}

/** Asks for what was found wrong with the regions of a document's map; `null` where there is no instrument. */
export const MapFindingsRequest = {
  type: new RequestType<{ uri: string }, MapFindingsResult | null, void>('zonewright/mapFindings'),
} as const;

export interface InstrumentChangedParams {
  uri: string;
  /** The version of the document that was read. */
  version: number;
}

/** Says that a document was read anew, so that its map may look different. */
export const InstrumentChangedNotification = {
  type: new NotificationType<InstrumentChangedParams>('zonewright/instrumentChanged'),
} as const;
