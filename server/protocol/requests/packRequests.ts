import { RequestType } from 'vscode-languageserver-protocol';

/** Names a saved document whose instrument is to be packed, with what goes along; nothing of it is made up. */
export interface MakePackParams {
  uri: string;
  /** The licence of the recordings; missing where that was left out on purpose. */
  licence?: string;
  maker?: string;
  /** Said on purpose: packed although no licence is known. */
  withoutLicence?: boolean;
  /** Samples become FLAC where that changes none; as they are where nothing is said. */
  audio?: 'flac';
}

/** A pack that is ready to be taken. */
export interface MakePackResult {
  /** Names the bytes, which {@link PackPartRequest} gives. */
  pack: number;
  /** The name of the archive. */
  name: string;
  /** The paths of the files in it. */
  contents: string[];
  /** Samples that stay as they are although FLAC was asked for. */
  notFlac: number;
}

/** Why there is no pack, as a sentence. */
export interface PackRefusal {
  problem: string;
}

/** Packs a document's instrument as an archive, whose bytes are then asked for one part after the other. */
export const MakePackRequest = {
  type: new RequestType<MakePackParams, MakePackResult | PackRefusal, void>('zonewright/makePack'),
} as const;

/** The next bytes in base 64, absent at the end; or why there are none. */
export interface PackPartResult {
  data?: string;
  problem?: string;
}

/** The next bytes of a pack. */
export const PackPartRequest = {
  type: new RequestType<{ pack: number }, PackPartResult, void>('zonewright/packPart'),
} as const;
