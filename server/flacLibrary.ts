import * as compiled from 'libflacjs/dist/libflac.js';
import type { FlacLibrary } from './audio/encode/flacEncoder';

/** The compiled encoder, in a bundle of its own: a megabyte that only packing as FLAC needs. */
export const flacLibrary: FlacLibrary = compiled;
