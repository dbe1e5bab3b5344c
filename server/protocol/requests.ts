import type { Range, TextEdit } from 'vscode-languageserver-protocol';
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

export interface ConvertTableParams {
  /** The document that the regions go into. */
  uri: string;
  /** What the regions take the place of; empty for a cursor. */
  range: Range;
  /** The copied zone table. */
  text: string;
  /** Which note name the table gives to key 60, over what the settings say. */
  middleC?: 'auto' | 'C3' | 'C4' | 'C5';
}

export interface ConvertTableResult {
  /** What to write in the place of the range; absent where there is a problem or the change is not confined to the range. */
  insertText?: string;
  /** The whole change, the replacing of the range included; absent where there is a problem. */
  edits?: TextEdit[];
  /** Lines are those of the table. */
  notes: LineNote[];
  regionCount: number;
  /** Why the text was not taken for a table, as a sentence. */
  problem?: string;
}

/** Makes regions of a copied zone table, in the notation and style of a document; `null` where the document holds no instrument. */
export const ConvertTableRequest = {
  type: new RequestType<ConvertTableParams, ConvertTableResult | null, void>('zonewright/convertTable'),
} as const;

export interface LooksLikeTableParams {
  text: string;
}

/** Asks whether a text is likely to be a copied zone table. Quick, so that it can be asked at every paste. */
export const LooksLikeTableRequest = {
  type: new RequestType<LooksLikeTableParams, boolean, void>('zonewright/looksLikeTable'),
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
