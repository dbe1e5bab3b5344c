import type { Files } from '../../model/files';
import type { Instrument } from '../../model/instrument';
import { Source } from '../../model/text/source';
import { readInstrument } from '../../workspace/analyse';
import type { IncludeStore } from '../../workspace/files/includeStore';
import { instrumentFilesBelow } from '../../workspace/files/instrumentFiles';
import { readWholeText } from '../../workspace/files/readWhole';
import type { NotationFinder } from '../../workspace/notations/notationFinder';
import type { NamedPlace } from './workspaceSymbols';
import { namedPlaces } from './workspaceSymbols';

/** Longer texts are written by a program and left out, unless they are open. */
const mostBytes = 16 * 1024 * 1024;
/** Places that are remembered in all files together. */
const mostPlaces = 500_000;
/** Milliseconds for which the list of files counts, so that a person who types a query waits for it once. */
const freshFor = 5000;

/** A place in a file, counted from 0 as lines and characters. */
export interface PlaceInFile extends Omit<NamedPlace, 'start' | 'end'> {
  path: string;
  start: { line: number; character: number };
  end: { line: number; character: number };
}

interface Known {
  size: number;
  modified: number;
  places: PlaceInFile[];
}

/** What can be found by name in the instruments of folders; looked through when first asked and where files changed. */
export class SymbolIndex {
  readonly #files: Files;
  readonly #includes: IncludeStore;
  readonly #notations: NotationFinder;
  readonly #known = new Map<string, Known>();
  #folders: readonly string[] = [];
  #updated = Number.NEGATIVE_INFINITY;
  #update: Promise<void> | undefined;

  constructor(files: Files, includes: IncludeStore, notations: NotationFinder) {
    this.#files = files;
    this.#includes = includes;
    this.#notations = notations;
  }

  /** The places in all files of the folders. */
  async places(folders: readonly string[]): Promise<PlaceInFile[]> {
    const isFresh = performance.now() - this.#updated < freshFor && sameFolders(folders, this.#folders);
    if (!isFresh) {
      this.#update ??= this.#look(folders).finally(() => {
        this.#update = undefined;
      });
      await this.#update;
    }
    return [...this.#known.values()].flatMap(({ places }) => places);
  }

  async #look(folders: readonly string[]): Promise<void> {
    const paths = await instrumentFilesBelow(this.#files, folders);
    const gone = new Set(this.#known.keys());
    let count = 0;
    for (const path of paths.sort()) {
      gone.delete(path);
      if (count >= mostPlaces) break;
      count += (await this.#lookAt(path)).length;
    }
    for (const path of gone) this.#known.delete(path);
    this.#folders = [...folders];
    this.#updated = performance.now();
  }

  async #lookAt(path: string): Promise<PlaceInFile[]> {
    const stat = await this.#files.stat(path);
    const known = this.#known.get(path);
    if (stat && known && known.size === stat.size && known.modified === stat.modified) return known.places;
    const isReadable = stat?.kind === 'file' && stat.size <= mostBytes;
    const places = isReadable ? await this.#read(path).catch(() => []) : [];
    this.#known.set(path, { size: stat?.size ?? 0, modified: stat?.modified ?? 0, places });
    return places;
  }

  async #read(path: string): Promise<PlaceInFile[]> {
    const whole = await readWholeText(this.#files, path);
    const text = whole.kind === 'text' ? whole.text : '';
    const found = await this.#notations.find({ path, text });
    if (!found) return [];
    const source = { path, text, notation: found.notation, ...this.#notations.readingOf(found) };
    return placesIn(path, await readInstrument(source, this.#includes));
  }
}

const placesOf = new WeakMap<Instrument, PlaceInFile[]>();

/** The places in the main file of an open instrument, worked out once for each reading. */
export function openPlaces(path: string, instrument: Instrument): PlaceInFile[] {
  let places = placesOf.get(instrument);
  if (!places) {
    places = placesIn(path, instrument);
    placesOf.set(instrument, places);
  }
  return places;
}

function placesIn(path: string, instrument: Instrument): PlaceInFile[] {
  const source = instrument.sources[0] ?? new Source(path, '');
  const at = (offset: number) => {
    const { line, column } = source.positionAt(offset);
    return { line: line - 1, character: column - 1 };
  };
  return namedPlaces(instrument).map(({ name, kind, start, end }) => ({
    name,
    kind,
    path,
    start: at(start),
    end: at(end),
  }));
}

function sameFolders(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((folder, at) => folder === b[at]);
}
