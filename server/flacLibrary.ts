import compiled from 'libflacjs/dist/libflac.js';
import type { FlacLibrary } from './audio/encode/flacEncoder';

/** The compiled encoder, in a bundle of its own that only packing as FLAC needs; `bundles.mjs` makes WebAssembly of it. */
export const flacLibrary: FlacLibrary = compiled;
