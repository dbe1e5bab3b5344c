import { createRequire } from 'node:module';
import { join } from 'node:path';
import type { FlacLibrary } from '../../audio/encode/flacEncoder';

/** The encoder of FLAC among the program's bundles in a folder; it is large, so it is loaded when it is asked for. */
export async function flacLibraryIn(program: string): Promise<FlacLibrary> {
  const loaded: { flacLibrary: FlacLibrary } = createRequire(join(program, 'cli.js'))('./flacLibrary.js');
  return loaded.flacLibrary;
}
