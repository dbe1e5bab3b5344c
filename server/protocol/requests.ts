import { NotificationType, RequestType } from 'vscode-languageserver-protocol';
import type { MapScene } from '../map/scene';
import type { NoteKind } from '../model/notes';

/** A note of a conversion; its line counts from 1. */
export interface LineNote {
  kind: NoteKind;
  message: string;
  line: number;
}

export interface KeyboardMapParams {
  uri: string;
}

export interface KeyboardMapResult {
  /** The map of the document as it is now; `null` where there is none. */
  scene: MapScene | null;
  /** Why there is no map, as a sentence. */
  reason?: string;
}

/** Asks for the keyboard map of a document. Who has asked is told of changes by {@link InstrumentChangedNotification}. */
export const KeyboardMapRequest = {
  type: new RequestType<KeyboardMapParams, KeyboardMapResult, void>('zonewright/keyboardMap'),
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

export interface ConvertParams {
  uri: string;
  to: 'sfz' | 'xml';
}

export interface ConvertResult {
  text: string;
  /** Lines are those of the document. */
  notes: LineNote[];
}

/** Writes a document's instrument in a notation; `null` where the document holds no instrument. */
export const ConvertRequest = {
  type: new RequestType<ConvertParams, ConvertResult | null, void>('zonewright/convert'),
} as const;
