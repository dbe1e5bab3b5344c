import type { FileStat, Files } from '../../model/files';
import { folderOf } from '../../model/paths';
import type { SampleLookup, SampleReading, SampleState } from '../../model/samples';
import type { MeasureCache } from '../measuring/measureCache';
import type { MeasuredFile } from '../measuring/measuredFile';
import { Measurements } from '../measuring/measurements';
import { readingOf } from '../measuring/readingOf';
import type { FileVisit } from '../measuring/visitFile';
import { FolderIndex } from './folderIndex';
import { FolderLookup, unreadableFor } from './folderLookup';

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
    this.#readings.set(path, reading ?? unreadableFor(await this.#files.refusal?.(path)));
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
    if (!reader) return unreadableFor(await this.#files.refusal?.(path));
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
