import type { MiddleC } from '../model/keys';
import type { BuildSteps } from './build/buildSteps';
import type { InstrumentFacts, PackSettings, Pairing } from './libraryFile';

/** What an instrument is converted to. */
export interface LibraryTarget {
  notation: 'sfz' | 'xml' | 'sf2' | 'vocabulary';
  /** The absolute path of the vocabulary, where it is one. */
  vocabulary?: string;
  /** The absolute path of the template that is filled. */
  template?: string;
  /** The folder below the output that its files go to. */
  folder: string;
}

/** An instrument of a library with all that counts for it. Paths are absolute, with `/`. */
export interface LibraryInstrument {
  /** What people call it. */
  name: string;
  /** What its files are called: a portable name that no other instrument of the library has. */
  fileName: string;
  /** The path of a text, a SoundFont, or a folder of recordings. */
  source: string;
  /** Which preset of a SoundFont, as `0:12`. */
  preset?: string;
  /** The folder that the sample names of a table are looked up in; else that of the source. */
  samples?: string;
  middleC?: MiddleC;
  targets: LibraryTarget[];
  facts: InstrumentFacts;
  pack: PackSettings;
  pairing?: Pairing;
}

/** A library file with all that its instruments get from it. */
export interface ResolvedLibrary {
  title: string;
  /** The absolute folder of the library file. */
  folder: string;
  /** The absolute folder that results go to. */
  output: string;
  /** The absolute folders that packs are written to. */
  packs: string[];
  /** What each build does beside converting and checking. */
  steps: BuildSteps;
  /** In the order of the file: those that stand in it, then those found by patterns, by their paths. */
  instruments: LibraryInstrument[];
  /** What makes no sense, as sentences that name the instrument or pattern. */
  problems: string[];
}
