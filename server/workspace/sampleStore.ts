import { readSampleFacts } from '../audio/readSampleFacts';
import type { Files } from '../model/files';
import { nearestWords } from '../model/nearest';
import { folderOf, joinPath, nameOf, relativePath } from '../model/paths';
import type { SampleLookup, SampleMeasures, SampleReading, SampleState } from '../model/samples';
import { isAudioName } from '../model/samples';
import { FolderIndex } from './folderIndex';
import { Measurements } from './measurements';

/** Files that are open at one time. */
const openAtOnce = 32;
/** Rounds of fetching for one sample: its folder, folders in another letter case, the file. */
const mostRounds = 20;

/**
 * What is known of the sample files of all open instruments. Answers never wait; what they lacked is fetched by
 * {@link loadWanted} and remembered until {@link forget} says that a file changed.
 */
export class SampleStore {
  readonly folders: FolderIndex;
  readonly #files: Files;
  readonly #readings = new Map<string, SampleReading>();
  readonly #wanted = new Set<string>();
  /** Counts what was told of changes: what was under way meanwhile may be out of date and is not kept. */
  #changes = 0;
  readonly #lookups = new Map<string, FolderLookup>();
  /** What was measured in the audio; missing where the host does not measure. */
  readonly measurements: Measurements | undefined;

  /** With `measures`, checks are given what is measured in the audio, which takes some milliseconds a file. */
  constructor(files: Files, { measures = false } = {}) {
    this.#files = files;
    this.folders = new FolderIndex(files);
    this.measurements = measures ? new Measurements(files) : undefined;
  }

  /** What is known of samples, by paths relative to a folder. */
  lookup(folder: string): SampleLookup {
    let lookup = this.#lookups.get(folder);
    if (!lookup) {
      lookup = new FolderLookup(this, folder);
      this.#lookups.set(folder, lookup);
    }
    return lookup;
  }

  /** What was found in a file that is there; asks for it to be read where it was not. */
  reading(path: string): SampleReading | undefined {
    const reading = this.#readings.get(path);
    if (!reading) this.#wanted.add(path);
    return reading;
  }

  /** Whether answers lacked something that {@link loadWanted} can fetch. */
  get wants(): boolean {
    return this.folders.wants || this.#wanted.size > 0 || this.measurements?.wants === true;
  }

  /** Fetches what answers lacked: lists folders, reads the headers of files. `stopped` ends it early. */
  async loadWanted(stopped: () => boolean = () => false): Promise<void> {
    await this.folders.loadWanted();
    const paths = [...this.#wanted];
    this.#wanted.clear();
    let next = 0;
    const work = async () => {
      while (next < paths.length && !stopped()) {
        const path = paths[next++] as string;
        const changes = this.#changes;
        const reading = await this.#read(path);
        if (changes === this.#changes) this.#readings.set(path, reading);
      }
    };
    await Promise.all(Array.from({ length: Math.min(openAtOnce, paths.length) }, work));
    await this.measurements?.loadWanted(stopped);
    this.#clearAnswers();
  }

  /** What is known of one sample, fetched where it was not looked at yet. */
  async fetchState(folder: string, path: string): Promise<SampleState> {
    const lookup = this.lookup(folder);
    let state = lookup.state(path);
    for (let round = 0; state.kind === 'pending' && round < mostRounds; round++) {
      await this.loadWanted();
      state = lookup.state(path);
    }
    return state;
  }

  /** Says that a file or folder came, went or changed. */
  forget(path: string): void {
    this.#changes++;
    this.folders.forget(path);
    this.measurements?.forget(path);
    for (const known of this.#readings.keys()) {
      if (known === path || known.startsWith(`${path}/`)) this.#readings.delete(known);
    }
    this.#clearAnswers();
  }

  /** Forgets which files there are; the headers of files are read again too. */
  forgetAll(): void {
    this.#changes++;
    this.folders.forgetAll();
    this.#readings.clear();
    this.measurements?.forgetAll();
    this.#clearAnswers();
  }

  #clearAnswers(): void {
    for (const lookup of this.#lookups.values()) lookup.clear();
  }

  async #read(path: string): Promise<SampleReading> {
    const reader = await this.#files.open(path);
    if (!reader) return { kind: 'unreadable', reason: 'The file cannot be opened.' };
    try {
      return await readSampleFacts(reader);
    } catch (error) {
      return {
        kind: 'unreadable',
        reason: `The file cannot be read: ${error instanceof Error ? error.message : 'unknown reason'}.`,
      };
    } finally {
      await reader.close();
    }
  }
}

class FolderLookup implements SampleLookup {
  readonly #store: SampleStore;
  readonly #folder: string;
  readonly #states = new Map<string, SampleState>();
  version = 0;
  readonly measures?: SampleMeasures;

  constructor(store: SampleStore, folder: string) {
    this.#store = store;
    this.#folder = folder;
    const { measurements } = store;
    if (measurements) {
      this.measures = {
        pitch: (path) => this.#measured(path, (file) => measurements.pitch(file)),
        loopSeam: (path, start, end) =>
          this.#measured(path, (file) => measurements.loopSeam(file, start, end)),
      };
    }
  }

  /** Asks for a measure of the file that a path leads to; `null` where it leads to none. */
  #measured<T>(path: string, measure: (file: string) => T | null | undefined): T | null | undefined {
    const state = this.state(path);
    if (state.kind === 'pending') return undefined;
    if (state.kind !== 'file' && state.kind !== 'otherCase') return null;
    return measure(joinPath(this.#folder, state.kind === 'otherCase' ? state.actual : path));
  }

  state(path: string): SampleState {
    const known = this.#states.get(path);
    if (known) return known;
    const state = this.#find(path);
    if (state.kind !== 'pending') this.#states.set(path, state);
    return state;
  }

  nearest(path: string, count: number): string[] {
    const folder = folderOf(path);
    const names = this.#store.folders.names(joinPath(this.#folder, folder));
    const audio = names
      ? [...names].filter(([name, kind]) => kind === 'file' && isAudioName(name)).map(([name]) => name)
      : [];
    return nearestWords(nameOf(path), audio, count).map((name) =>
      folder === '' ? name : `${folder}/${name}`,
    );
  }

  clear(): void {
    this.version++;
    this.#states.clear();
  }

  #find(path: string): SampleState {
    if (path.includes('\0')) return { kind: 'missing' };
    const whole = joinPath(this.#folder, path);
    const entry = this.#store.folders.entry(whole);
    switch (entry.kind) {
      case 'unknown':
        return { kind: 'pending' };
      case 'missing':
        return { kind: 'missing' };
      case 'folder':
        return { kind: 'folder' };
      case 'otherCase': {
        const reading = this.#store.reading(entry.actual);
        return reading
          ? { kind: 'otherCase', actual: relativePath(this.#folder, entry.actual), reading }
          : { kind: 'pending' };
      }
      case 'file': {
        const reading = this.#store.reading(whole);
        return reading ? { kind: 'file', reading } : { kind: 'pending' };
      }
    }
  }
}
