import type { FileStat, Files } from '../../model/files';
import type { LoopSeam, MeasuredPitch, SampleSurvey } from '../../model/samples';
import { HeldWishes } from './heldWishes';
import type { MeasureCache, RememberedFile } from './measureCache';
import type { Wish } from './measuredFile';
import { MeasuredFile } from './measuredFile';
import type { MeasureRequest, MeasureResult } from './measureRequest';
import type { Measurer } from './measurer';
import { sameThreadMeasurer } from './measurer';
import { isSameState } from './sameState';
import type { FileOrder, FileVisit } from './visitFile';

export interface MeasurementOptions {
  /** Who measures; the same thread where nothing is said. */
  measurer?: Measurer;
  /**
   * Whether nobody waits for what answers lacked: what an owner holds is measured, see {@link Measurements.hold}, and
   * nothing else. Without it {@link Measurements.loadWanted} measures all that was asked for.
   */
  inBackground?: boolean;
  /** Whether what was asked for first is measured first, as for one who needs all of it in that order. */
  oldestFirst?: boolean;
}

/** Files that a thread is given at one time where the host gains by that. */
const filesAtOnce = 16;
/** Orders for each thread, so that none waits for the next. */
const ordersEach = 2;

/** One visit to a file. */
interface Visit {
  wishes: Wish[];
  stop: AbortController;
}

const pitchRequest: MeasureRequest = { what: 'pitch' };
const surveyRequest: MeasureRequest = { what: 'survey' };

/**
 * What was measured in the audio of sample files, by absolute path. Answers never wait. What they lacked is wished for
 * and measured: what was asked for last comes first, all that is wished of a file in one visit to it, and not at all
 * what nobody wishes for any more.
 */
export class Measurements {
  readonly #files: Files;
  readonly #measurer: Measurer;
  readonly #oldestFirst: boolean;
  readonly #known = new Map<string, MeasuredFile>();
  readonly #held = new HeldWishes();
  /** Owners whose wishes are not heard. */
  readonly #declined = new Set<unknown>();
  readonly #visits = new Set<Visit>();
  readonly #settling: { owner: unknown; resolve: () => void }[] = [];
  /** Wishes of nobody in particular. */
  readonly #ownerless: Set<Wish> | undefined;
  /** Where wishes are gathered now. */
  #asked: Set<Wish> | undefined;
  #workers = 0;
  #done = 0;
  #isClosed = false;
  /** Counts how often something that was known was forgotten. */
  version = 0;
  /** What is kept over restarts. */
  cache: MeasureCache | undefined;
  /** Told of owners who can be answered better than before. */
  onMeasured: (owners: ReadonlySet<unknown>) => void = () => {};
  /** Told whenever {@link progress} is another. */
  onProgress: () => void = () => {};

  constructor(
    files: Files,
    { measurer, inBackground = false, oldestFirst = false }: MeasurementOptions = {},
  ) {
    this.#files = files;
    this.#oldestFirst = oldestFirst;
    this.#measurer = measurer ?? sameThreadMeasurer(files);
    if (inBackground) return;
    this.#ownerless = new Set();
    this.#asked = this.#ownerless;
    this.#held.set(undefined, this.#ownerless);
  }

  /** A file with what is known of it. */
  file(path: string): MeasuredFile {
    let file = this.#known.get(path);
    if (!file) {
      file = new MeasuredFile(path);
      this.#known.set(path, file);
    }
    return file;
  }

  /** The pitch of a file: `null` where it has none, `undefined` while it is not known. */
  pitch(file: MeasuredFile): MeasuredPitch | null | undefined {
    return this.#answer(file, file.pitch, pitchRequest);
  }

  /** The survey of a file: `null` where it cannot be decoded, `undefined` while it is not known. */
  survey(file: MeasuredFile): SampleSurvey | null | undefined {
    return this.#answer(file, file.survey, surveyRequest);
  }

  /** The seam of a loop in a file: `null` where it cannot be measured, `undefined` while it is not known. */
  loopSeam(file: MeasuredFile, start: number, end: number): LoopSeam | null | undefined {
    const known = file.loopSeam(start, end);
    return known === undefined ? this.#answer(file, known, { what: 'loopSeam', start, end }) : known;
  }

  /** Runs work that asks, without waiting; answers what it gave and what it lacked, for {@link hold}. */
  gather<T>(work: () => T): { result: T; asked: Set<Wish> } {
    const before = this.#asked;
    const asked = new Set<Wish>();
    this.#asked = asked;
    try {
      return { result: work(), asked };
    } finally {
      this.#asked = before;
    }
  }

  /** Measures from now on what an owner asked for, in the place of what the owner wished for before. */
  hold(owner: unknown, asked: Set<Wish>): void {
    for (const wish of asked) if (wish.file.result(wish.key) !== undefined) asked.delete(wish);
    this.#held.drop(owner);
    if (asked.size > 0 && !this.#declined.has(owner)) this.#held.set(owner, asked);
    this.#stopUnwanted();
    this.#startWork();
    this.#settle();
    this.onProgress();
  }

  /** {@link gather} and {@link hold} in one. */
  collect<T>(owner: unknown, work: () => T): T {
    const { result, asked } = this.gather(work);
    this.hold(owner, asked);
    return result;
  }

  /** Whether something that an owner wished for is not measured yet. */
  isWaiting(owner: unknown): boolean {
    return this.#held.count(owner) > 0;
  }

  /** Waits until nothing is left of what an owner wished for: it was measured or given up. */
  settled(owner: unknown): Promise<void> {
    if (!this.isWaiting(owner)) return Promise.resolve();
    return new Promise((resolve) => this.#settling.push({ owner, resolve }));
  }

  /** Gives up what an owner wished for. */
  release(owner: unknown): void {
    this.#declined.delete(owner);
    this.#held.drop(owner);
    this.#stopUnwanted();
    this.#settle();
    this.onProgress();
  }

  /** Gives up all that is wished for; the owners are not heard again before they are released. */
  decline(): void {
    for (const owner of this.#held.owners) {
      if (owner === undefined) continue;
      this.#declined.add(owner);
      this.#held.drop(owner);
    }
    this.#stopUnwanted();
    this.#settle();
    this.onProgress();
  }

  /** Whether anything is wished for that is not measured yet. */
  get isWorking(): boolean {
    return !this.#held.isEmpty;
  }

  /** Files that were measured since there was nothing to do, and all that were or are to be. */
  get progress(): { done: number; total: number } {
    return { done: this.#done, total: this.#done + this.#held.files.size };
  }

  /** Whether answers lacked something that {@link loadWanted} can measure. */
  get wants(): boolean {
    return this.#ownerless !== undefined && this.#ownerless.size > 0;
  }

  /** Measures what answers lacked. `stopped` ends it early. */
  async loadWanted(stopped: () => boolean = () => false): Promise<void> {
    const work = async () => {
      while (!stopped() && this.wants) {
        const visits = this.#nextVisits();
        if (visits.length === 0) return;
        await this.#makeAll(visits);
      }
    };
    await Promise.all(Array.from({ length: this.#workersWanted }, work));
  }

  /**
   * Takes in the present state of a file, and what is remembered of it in that state. What was measured in another state
   * is forgotten.
   */
  learn(path: string, stat: FileStat, remembered?: RememberedFile): MeasuredFile {
    const file = this.file(path);
    if (file.hasResults && !(file.stat && isSameState(file.stat, stat))) {
      file.forget();
      this.version++;
    }
    file.stat = stat;
    if (remembered) file.remember(remembered);
    return file;
  }

  /** Reads the headers of files beside measuring them, where the host gains by that. */
  get visitor(): Measurer['visit'] {
    const { visit } = this.#measurer;
    return visit && ((orders, signal) => visit.call(this.#measurer, orders, signal));
  }

  /** How many orders are under way at one time. */
  get #workersWanted(): number {
    return this.#measurer.width * (this.#measurer.visit ? ordersEach : 1);
  }

  /** Lets go of all files of which nothing is wished; what is remembered of them is in the cache. */
  letGo(): void {
    if (this.isWorking) return;
    this.#known.clear();
  }

  /** Ends what is under way and keeps what was measured. */
  async close(): Promise<void> {
    this.#isClosed = true;
    for (const { stop } of this.#visits) stop.abort();
    await this.#measurer.close();
    await this.cache?.save();
  }

  #answer<T>(file: MeasuredFile, known: T | undefined, request: MeasureRequest): T | undefined {
    if (known === undefined) this.#asked?.add(file.wish(request));
    return known;
  }

  #startWork(): void {
    while (this.#workers < this.#workersWanted) {
      const first = this.#nextVisits();
      if (first.length === 0) return;
      this.#workers++;
      void this.#work(first);
    }
  }

  async #work(first: Visit[]): Promise<void> {
    for (let visits = first; visits.length > 0; visits = this.#nextVisits()) await this.#makeAll(visits);
    this.#workers--;
  }

  #nextVisits(): Visit[] {
    const visits: Visit[] = [];
    const most = this.#measurer.visit ? filesAtOnce : 1;
    while (visits.length < most && !this.#isClosed) {
      const wishes = this.#held.take(this.#oldestFirst);
      if (wishes.length === 0) break;
      visits.push({ wishes, stop: new AbortController() });
    }
    return visits;
  }

  async #makeAll(visits: readonly Visit[]): Promise<void> {
    const { visitor } = this;
    if (visitor) await this.#makeTogether(visits, visitor);
    else for (const visit of visits) await this.#make(visit);
  }

  /** Visits several files by one order. */
  async #makeTogether(visits: readonly Visit[], visitor: NonNullable<Measurer['visit']>): Promise<void> {
    const stop = new AbortController();
    const together = visits.map(({ wishes }) => ({ wishes, stop }));
    for (const one of together) this.#visits.add(one);
    const lacking = together.map(({ wishes }) =>
      wishes.filter(({ file, key }) => file.result(key) === undefined),
    );
    const orders = lacking.flatMap((wishes): FileOrder[] => {
      const file = wishes[0]?.file;
      return file
        ? [{ path: file.path, known: file.stat, requests: wishes.map(({ request }) => request) }]
        : [];
    });
    const found = orders.length > 0 ? await visitor(orders, stop.signal) : [];
    const asked = lacking.filter((wishes) => wishes.length > 0);
    for (const [at, wishes] of asked.entries()) await this.#take(wishes, found[at] ?? {}, stop.signal);
    for (const one of together) {
      this.#visits.delete(one);
      this.#finish(one.wishes[0].file, one.wishes);
    }
  }

  /** Takes in what came of a visit; the results are about the file as it was then. */
  async #take(wishes: readonly Wish[], { stat, outcome }: FileVisit, signal: AbortSignal): Promise<void> {
    const { file } = wishes[0];
    if (signal.aborted) return;
    if (stat) this.learn(file.path, stat, await this.cache?.find(file.path, stat));
    if (outcome?.kind === 'measured') {
      const measures: Record<string, MeasureResult> = {};
      for (const [at, { key }] of wishes.entries()) {
        measures[key] = outcome.results[at] ?? null;
        file.take(key, outcome.results[at] ?? null);
      }
      if (stat) await this.cache?.add(file.path, stat, { measures });
    } else if (outcome?.reason === 'broken' && wishes.length > 1) {
      for (const wish of wishes) await this.#measure(file, stat, [wish], signal);
    } else if (outcome?.reason !== 'stopped' && !this.#isClosed) {
      for (const { key } of wishes) file.take(key, null);
    }
  }

  async #make(visit: Visit): Promise<void> {
    this.#visits.add(visit);
    const { wishes, stop } = visit;
    const { file } = wishes[0];
    const stat = await this.#files.stat(file.path);
    if (stat) this.learn(file.path, stat, await this.cache?.find(file.path, stat));
    const lacking = wishes.filter(({ key }) => file.result(key) === undefined);
    if (lacking.length > 0) await this.#measure(file, stat, lacking, stop.signal);
    this.#visits.delete(visit);
    this.#finish(file, wishes);
  }

  async #measure(
    file: MeasuredFile,
    stat: FileStat | undefined,
    wishes: readonly Wish[],
    signal: AbortSignal,
  ): Promise<void> {
    if (signal.aborted) return;
    const requests = wishes.map(({ request }) => request);
    const outcome = await this.#measurer.measure(file.path, requests, signal);
    // What a file held that is another by now is measured again.
    const isCurrent = stat
      ? file.stat !== undefined && isSameState(file.stat, stat)
      : file.stat === undefined;
    if (outcome.kind === 'measured') {
      if (!isCurrent) return;
      const measures: Record<string, MeasureResult> = {};
      for (const [at, { key }] of wishes.entries()) {
        measures[key] = outcome.results[at] ?? null;
        file.take(key, outcome.results[at] ?? null);
      }
      if (stat) await this.cache?.add(file.path, stat, { measures });
    } else if (outcome.reason === 'broken' && wishes.length > 1) {
      // One of them breaks what measures; the others need not suffer for it.
      for (const wish of wishes) await this.#measure(file, stat, [wish], signal);
    } else if (outcome.reason !== 'stopped' && isCurrent && !this.#isClosed) {
      for (const { key } of wishes) file.take(key, null);
    }
  }

  #finish(file: MeasuredFile, wishes: readonly Wish[]): void {
    const owners = new Set<unknown>();
    for (const wish of wishes) {
      wish.isRunning = false;
      if (file.result(wish.key) !== undefined) {
        file.wishes.delete(wish.key);
        for (const owner of this.#held.fulfil(wish)) owners.add(owner);
      } else if (!this.#held.has(wish)) file.wishes.delete(wish.key);
    }
    for (const owner of owners) {
      if (owner !== undefined && !this.isWaiting(owner)) this.#held.drop(owner);
    }
    if (owners.size > 0) {
      this.#done++;
      this.onMeasured(owners);
    }
    this.onProgress();
    if (!this.isWorking) this.#done = 0;
    this.#settle();
  }

  #stopUnwanted(): void {
    // Files that are visited together are given up together.
    const wanted = new Set<AbortController>();
    for (const { wishes, stop } of this.#visits)
      if (wishes.some((wish) => this.#held.has(wish))) wanted.add(stop);
    for (const { stop } of this.#visits) if (!wanted.has(stop)) stop.abort();
  }

  #settle(): void {
    for (const one of [...this.#settling]) {
      if (this.isWaiting(one.owner)) continue;
      this.#settling.splice(this.#settling.indexOf(one), 1);
      one.resolve();
    }
  }
}
