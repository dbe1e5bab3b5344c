import type { MiddleC } from '../model/keys';
import type { JsonProblem } from '../vocabulary/jsonTree';
import { readJson } from '../vocabulary/jsonTree';
import { libraryShape } from './libraryShape';
import { readShape } from './readShape';

/** The name of the file that says what belongs to a library and what is made of it. */
export const libraryFileName = 'zonewright.library.json';

/** The ending of a file beside a source, such as `felt.zonewright.json` beside `felt.tsv`, with the settings of that one. */
export const settingsEnding = '.zonewright.json';

/** The folder that results go to where nothing else is said. */
export const defaultOutput = 'built';
/** The folder that packs go to where nothing else is said. */
export const defaultPacks = 'packs';

/** What goes with an instrument when it is shared. Nothing of it is ever made up. */
export interface InstrumentFacts {
  title?: string;
  maker?: string;
  /** The licence of the recordings and texts, as a name or a sentence. */
  licence?: string;
  /** Where the recordings come from, as an address or a sentence. */
  source?: string;
  credits?: string[];
  tags?: string[];
  /** Whom to tell of faults: an address or a sentence. */
  contact?: string;
  /** The path of a picture. */
  picture?: string;
}

/** How an instrument is packed to be shared. */
export interface PackSettings {
  /** One archive, or a folder of files. */
  form?: 'zip' | 'folder';
  /** Whether audio is packed as it is, or as FLAC with the same samples. */
  audio?: 'keep' | 'flac';
  /** The folder that packs are written to. */
  output?: string;
  /** Said on purpose: packed although no licence is known. */
  withoutLicence?: boolean;
}

/** What every build of a library does beside converting and checking. */
export interface BuildSettings {
  /** Measures the audio. */
  measure?: boolean;
  /** Plays each conversion against its source. */
  prove?: boolean;
  /** Packs each instrument. */
  pack?: boolean;
}

/** A notation to convert to, as `sfz`, `xml`, `sf2` or the path of a vocabulary, with what goes for it alone. */
export interface TargetSettings {
  notation: string;
  /** The path of the template that is filled. */
  template?: string;
  /** The folder below the output that files of this target go to. */
  folder?: string;
}

/** What can be set for the whole library, for the files of a pattern, and for one instrument; the nearest counts. */
export interface InstrumentSettings {
  /** The folder that sample names of a table are looked up in. */
  samples?: string;
  /** Which note name a table gives to key 60. */
  middleC?: MiddleC;
  targets?: (string | TargetSettings)[];
  /** The path of a template, for the target that is written in its notation. */
  template?: string;
  facts?: InstrumentFacts;
  pack?: PackSettings;
}

/** How sure it is that what stands in an entry belongs together. */
export interface Pairing {
  /** From 0 to 1. */
  confidence: number;
  /** What speaks for it, as sentences. */
  because: string[];
  /** What is to be looked at, as sentences. */
  doubts: string[];
}

/** One instrument. */
export interface InstrumentEntry extends InstrumentSettings {
  name: string;
  /** The path of a text, of a SoundFont with `#bank:preset` behind it, or of a folder of recordings. */
  source: string;
  pairing?: Pairing;
  /** Stays in the file and is not built. */
  leaveOut?: boolean;
}

/** Files that are instruments each, named after the file. */
export interface SourceSettings extends InstrumentSettings {
  /** Patterns of paths: `*` stands for any part of a name, `**` for folders, `?` for one character. */
  files: string[];
  /** Patterns of those that are no instruments. */
  except?: string[];
}

/** Something that was found and is no instrument of the library, or is not known to be one. */
export interface LeftOut {
  path: string;
  because: string;
}

/** What a library file says. Paths in it have `/` and start from its folder. */
export interface LibraryFile extends InstrumentSettings {
  /** What people call the library. */
  title?: string;
  /** The folder that results go to. */
  output?: string;
  build?: BuildSettings;
  sources?: SourceSettings[];
  instruments?: InstrumentEntry[];
  leftOut?: LeftOut[];
}

/** Something that a library file has wrong, with its place in the text. */
export type LibraryProblem = JsonProblem;

/**
 * Reads a library file; never throws. Every fault is told with its place, and what makes no sense is left out; there is no
 * library where the text is no JSON object.
 */
export function parseLibraryFile(text: string): { library?: LibraryFile; problems: LibraryProblem[] } {
  const { root, problem } = readJson(text);
  if (!root) return { problems: problem ? [problem] : [] };
  const problems: LibraryProblem[] = [];
  const library = readShape(root, libraryShape, problems) as LibraryFile | undefined;
  return library ? { library, problems } : { problems };
}
