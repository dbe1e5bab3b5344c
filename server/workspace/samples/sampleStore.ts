import { isSampleFileName } from '../../model/fileNames';
import type { FileStat, Files, Refusal } from '../../model/files';
import { folderOf, joinPath, leadsToOtherHost, nameOf, relativePath } from '../../model/paths';
import type { SampleLookup, SampleMeasures, SampleReading, SampleState } from '../../model/samples';
import { nearestWords } from '../../model/text/nearest';
import { refusalWords } from '../files/refusalWords';
import type { MeasureCache } from '../measuring/measureCache';
import type { MeasuredFile } from '../measuring/measuredFile';
import { Measurements } from '../measuring/measurements';
import { readingOf } from '../measuring/readingOf';
import type { FileVisit } from '../measuring/visitFile';
import { FolderIndex } from './folderIndex';

/** Files that are open at one time. */
const openAtOnce = 32;
/** Files whose state is compared with what is remembered in one go. */
const recalledAtOnce = 1000;
/** Files that a thread is given at one time to read their headers. */
const visitedAtOnce = 64;
/** Rounds of fetching for one sample: its folder, folders in another letter case, the file. */
const mostRounds = 20;

/** A file that has to be read, with its state where that was asked for. */
interface UnreadFile {
  path: string;
  stat: FileStat | undefined;
}

/**
 * What is known of the sample files of all open instruments. Answers never wait; what they lacked is fetched by
 * {@link loadWanted} and remembered until {@link forget} says that a file changed.
 */
export class SampleStore {
  readonly folders: FolderIndex;
  readonly #files: Files;
  readonly #readsInThreads: boolean;
  readonly #readings = new Map<string, SampleReading>();
  readonly #wanted = new Set<string>();
  /** Counts what was told of changes: what was under way meanwhile may be out of date and is not kept. */
  #changes = 0;
  /** Counts how often what answers lacked was fetched, by whoever. */
  loads = 0;
  readonly #lookups = new Map<string, FolderLookup>();
  #cache: MeasureCache | undefined;
  /** What was measured in the audio; missing where the host does not measure. */
  readonly measurements: Measurements | undefined;
  /** Whether lookups give what is measured, where the host measures. */
  givesMeasures = true;

  /**
   * With `measures`, checks are given what is measured in the audio, which takes some milliseconds a file: `true` for
   * measuring in the same thread. With `readsInThreads`, what measures reads the headers too, where the host gains by that.
   */
  constructor(
    files: Files,
    {
      measures = false,
      readsInThreads = false,
    }: { measures?: boolean | Measurements; readsInThreads?: boolean } = {},
  ) {
    this.#files = files;
    this.#readsInThreads = readsInThreads;
    this.folders = new FolderIndex(files);
    this.measurements = measures === true ? new Measurements(files) : measures || undefined;
  }

  /** Keeps what was found out of files over restarts. */
  useCache(cache: MeasureCache): void {
    this.#cache = cache;
    if (this.measurements) this.measurements.cache = cache;
  }

  /** What is known of samples, by paths relative to a folder. */
  lookup(folder: string): SampleLookup {
    return this.#folderLookup(folder);
  }

  #folderLookup(folder: string): FolderLookup {
    let lookup = this.#lookups.get(folder);
    if (!lookup) {
      lookup = new FolderLookup(this, folder);
      this.#lookups.set(folder, lookup);
    }
    return lookup;
  }

  /** As {@link lookup}, with what is measured even where lookups do not give it now. */
  measuringLookup(folder: string): SampleLookup {
    const lookup = this.#folderLookup(folder);
    return {
      state: (path) => lookup.state(path),
      nearest: (path, count) => lookup.nearest(path, count),
      ...(lookup.ownMeasures && { measures: lookup.ownMeasures }),
    };
  }

  /**
   * The file that a path relative to a folder leads to, with what was measured in it by now, where lookups give that.
   * What is lacking is measured in the background; nothing is waited for.
   */
  glance(folder: string, path: string): MeasuredFile | undefined {
    const { measurements } = this;
    const file = this.givesMeasures ? this.#folderLookup(folder).measuredFile(path) : undefined;
    if (!file || !measurements) return undefined;
    measurements.release(this);
    measurements.collect(this, () => [measurements.pitch(file), measurements.survey(file)]);
    return file;
  }

  /** Whether a path may be looked at now; of one that may not, nothing is known and nothing asked. */
  admits(path: string): boolean {
    return this.#files.admits?.(path) ?? true;
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
    const visitor = this.#readsInThreads ? this.measurements?.visitor : undefined;
    if (visitor) await this.#visitAll(paths, visitor, stopped);
    else await this.#readAll(paths, stopped);
    await this.measurements?.loadWanted(stopped);
    this.#clearAnswers();
    this.loads++;
  }

  async #readAll(paths: readonly string[], stopped: () => boolean): Promise<void> {
    for (let from = 0; from < paths.length && !stopped(); from += recalledAtOnce) {
      const unknown = await this.#recall(paths.slice(from, from + recalledAtOnce));
      let next = 0;
      const work = async () => {
        while (next < unknown.length && !stopped()) await this.#read(unknown[next++]);
      };
      await Promise.all(Array.from({ length: Math.min(openAtOnce, unknown.length) }, work));
    }
  }

  /** Has threads read the headers of files that are not remembered in their present state. */
  async #visitAll(
    wanted: readonly string[],
    visitor: NonNullable<Measurements['visitor']>,
    stopped: () => boolean,
  ): Promise<void> {
    const paths = await this.#notRecalled(wanted, stopped);
    const { signal } = new AbortController();
    let next = 0;
    const work = async () => {
      while (next < paths.length && !stopped()) {
        const some = paths.slice(next, next + visitedAtOnce);
        next += visitedAtOnce;
        const visits = await visitor(
          some.map((path) => ({ path, requests: [] })),
          signal,
        );
        for (const [at, path] of some.entries()) await this.#takeVisit(path, visits[at] ?? {});
      }
    };
    await Promise.all(Array.from({ length: 8 }, work));
  }

  /** Takes in what is remembered of files; answers the others. A file of which nothing is remembered is not looked at. */
  async #notRecalled(paths: readonly string[], stopped: () => boolean): Promise<string[]> {
    const cache = this.#cache;
    await cache?.open(foldersOf(paths));
    const others: string[] = [];
    const remembered: string[] = [];
    for (const path of paths) (cache?.hasFacts(path) ? remembered : others).push(path);
    for (let from = 0; from < remembered.length && !stopped(); from += recalledAtOnce)
      for (const { path } of await this.#recall(remembered.slice(from, from + recalledAtOnce)))
        others.push(path);
    return others;
  }

  async #takeVisit(path: string, { stat, reading }: FileVisit): Promise<void> {
    if (stat && reading?.kind === 'facts') await this.#cache?.add(path, stat, { facts: reading.facts });
    if (stat) this.measurements?.learn(path, stat, this.#cache?.known(path, stat));
    this.#readings.set(path, reading ?? unreadable(await this.#files.refusal?.(path)));
  }

  /** Lets go of what is known of files one by one; what the cache remembers of them is asked of it again. */
  release(): void {
    this.#readings.clear();
    this.measurements?.letGo();
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
    for (const known of this.#readings.keys()) {
      if (known === path || known.startsWith(`${path}/`)) this.#readings.delete(known);
    }
    this.#clearAnswers();
  }

  /** How often files were told to have changed. */
  get changes(): number {
    return this.#changes;
  }

  /** Forgets which files there are; the headers of files are read again too. */
  forgetAll(): void {
    this.#changes++;
    this.folders.forgetAll();
    this.#readings.clear();
    this.#clearAnswers();
  }

  #clearAnswers(): void {
    for (const lookup of this.#lookups.values()) lookup.clear();
  }

  /** Takes in what is remembered of files; answers those of which the facts are not. */
  async #recall(paths: readonly string[]): Promise<UnreadFile[]> {
    const cache = this.#cache;
    if (!cache && !this.measurements) return paths.map((path) => ({ path, stat: undefined }));
    const changes = this.#changes;
    const opening = cache?.open(foldersOf(paths));
    const stats = this.#files.stats
      ? await this.#files.stats(paths)
      : await Promise.all(paths.map((path) => this.#files.stat(path)));
    await opening;
    const unknown: UnreadFile[] = [];
    for (let at = 0; at < paths.length; at++) {
      const path = paths[at];
      const stat = stats[at];
      const remembered = stat && cache?.known(path, stat);
      if (stat) this.measurements?.learn(path, stat, remembered);
      const facts = remembered?.facts;
      if (!facts) unknown.push({ path, stat });
      else if (changes === this.#changes) this.#readings.set(path, { kind: 'facts', facts });
    }
    return unknown;
  }

  async #read({ path, stat }: UnreadFile): Promise<void> {
    const changes = this.#changes;
    const reading = await this.#readFile(path);
    if (changes !== this.#changes) return;
    if (stat && reading.kind === 'facts') await this.#cache?.add(path, stat, { facts: reading.facts });
    this.#readings.set(path, reading);
  }

  async #readFile(path: string): Promise<SampleReading> {
    const reader = await this.#files.open(path);
    if (!reader) return unreadable(await this.#files.refusal?.(path));
    try {
      return await readingOf(reader);
    } finally {
      await reader.close();
    }
  }
}

/** The folders of files, each once. */
function foldersOf(paths: readonly string[]): Set<string> {
  const folders = new Set<string>();
  let last: string | undefined;
  for (const path of paths) {
    // Most lie in the folder of the one before.
    if (last !== undefined && path.lastIndexOf('/') === last.length && path.startsWith(last)) continue;
    last = folderOf(path);
    folders.add(last);
  }
  return folders;
}

function unreadable(refusal: Refusal | undefined): SampleReading {
  const reason = refusal ? `It ${refusalWords(refusal)}.` : 'The file cannot be opened.';
  return { kind: 'unreadable', reason };
}

const elsewhere: SampleReading = {
  kind: 'unreadable',
  reason:
    'It is on another computer than the instrument. It is not fetched, because that would tell that computer who you are. Copy it to where the instrument is.',
};

/** One for all: a text can name a million files that are not there. */
const missing: SampleState = { kind: 'missing' };

class FolderLookup implements SampleLookup {
  readonly #store: SampleStore;
  readonly #folder: string;
  readonly #states = new Map<string, SampleState>();
  version = 0;
  /** What is measured, whether or not it is given now. */
  readonly ownMeasures: SampleMeasures | undefined;
  /** The files that paths lead to; `null` for a path that leads to none. */
  readonly #measured = new Map<string, MeasuredFile | null>();
  #lastPath: string | undefined;
  #lastFile: MeasuredFile | null | undefined;

  constructor(store: SampleStore, folder: string) {
    this.#store = store;
    this.#folder = folder;
    const { measurements } = store;
    if (!measurements) return;
    const measured = <T>(path: string, measure: (file: MeasuredFile) => T | null | undefined) => {
      const file = this.measuredFile(path);
      return file ? measure(file) : file;
    };
    this.ownMeasures = {
      pitch: (path) => measured(path, (file) => measurements.pitch(file)),
      survey: (path) => measured(path, (file) => measurements.survey(file)),
      loopSeam: (path, start, end) => measured(path, (file) => measurements.loopSeam(file, start, end)),
      get version() {
        return measurements.version;
      },
    };
  }

  get measures(): SampleMeasures | undefined {
    return this.#store.givesMeasures ? this.ownMeasures : undefined;
  }

  /** The file that a path leads to, `null` where it leads to none, `undefined` while that is not known. */
  measuredFile(path: string): MeasuredFile | null | undefined {
    // Several things are asked of a path, one after the other.
    if (path === this.#lastPath) return this.#lastFile;
    const known = this.#measured.get(path);
    if (known !== undefined) {
      this.#lastPath = path;
      this.#lastFile = known;
      return known;
    }
    const state = this.state(path);
    if (state.kind === 'pending') return undefined;
    const isFile = state.kind === 'file' || state.kind === 'otherCase';
    const actual = state.kind === 'otherCase' ? state.actual : path;
    const file = isFile ? (this.#store.measurements?.file(joinPath(this.#folder, actual)) ?? null) : null;
    this.#measured.set(path, file);
    return file;
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
      ? [...names].filter(([name, kind]) => kind === 'file' && isSampleFileName(name)).map(([name]) => name)
      : [];
    return nearestWords(nameOf(path), audio, count).map((name) =>
      folder === '' ? name : `${folder}/${name}`,
    );
  }

  clear(): void {
    this.version++;
    this.#states.clear();
    this.#measured.clear();
    this.#lastPath = undefined;
  }

  #find(path: string): SampleState {
    if (path.includes('\0')) return missing;
    const whole = joinPath(this.#folder, path);
    if (!this.#store.admits(whole)) return { kind: 'pending' };
    if (leadsToOtherHost(this.#folder, path)) return { kind: 'file', reading: elsewhere };
    const entry = this.#store.folders.entry(whole);
    switch (entry.kind) {
      case 'unknown':
        return { kind: 'pending' };
      case 'missing':
        return missing;
      case 'folder':
        return { kind: 'folder' };
      case 'refused':
        return { kind: 'file', reading: unreadable(entry.refusal) };
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
