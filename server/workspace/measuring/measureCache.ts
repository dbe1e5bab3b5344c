import type { FileStat } from '../../model/files';
import { folderOf, nameOf } from '../../model/paths';
import type { SampleFacts } from '../../model/samples';
import type { MeasureResult } from './measureRequest';
import { SampleTable } from './sampleTable';

/** Where a host keeps remembered bytes, each under a name of its own. */
export interface CacheStorage {
  /** The bytes that were written last under a name; `undefined` where there are none, or where they came to harm. Never rejects. */
  read(name: string): Promise<Uint8Array | undefined>;
  /** Puts bytes under a name, whole or not at all. Never rejects: what cannot be kept is found out again. */
  write(name: string, bytes: Uint8Array): Promise<void>;
}

/** What is remembered of a sample file in one state of it. */
export interface RememberedFile {
  readonly facts: SampleFacts | undefined;
  /** What was measured, by a name that `measureKey` gives; `undefined` where it was not. */
  measure(key: string): MeasureResult | undefined;
}

/** A file as its row tells of it, which is looked at when it is asked for. */
class KeptFile implements RememberedFile {
  readonly #table: SampleTable;
  readonly #row: number;

  constructor(table: SampleTable, row: number) {
    this.#table = table;
    this.#row = row;
  }

  get facts(): SampleFacts | undefined {
    return this.#table.facts(this.#row);
  }

  measure(key: string): MeasureResult | undefined {
    return this.#table.measure(this.#row, key);
  }
}

/** Folders that are opened at one time. */
const openedAtOnce = 16;
/** Days after which a file that nobody asked for is forgotten. */
const mostDays = 90;
/** Milliseconds in which changes are gathered before they are written. */
const gathered = 15_000;

/** Remembers for as long as the program runs. */
const nowhere: CacheStorage = { read: async () => undefined, write: async () => {} };

/**
 * What headers and measures told of sample files, kept over restarts by path, size, time of change and version of the
 * measure. One table for each folder of samples.
 */
export class MeasureCache {
  readonly #storage: CacheStorage;
  readonly #tables = new Map<string, SampleTable>();
  readonly #opening = new Map<string, Promise<SampleTable>>();
  readonly #today = Math.floor(Date.now() / 86_400_000);
  #timer: ReturnType<typeof setTimeout> | undefined;
  #saving = Promise.resolve();

  constructor(storage: CacheStorage = nowhere) {
    this.#storage = storage;
  }

  /** Makes {@link known} answer for files in some folders. */
  async open(folders: Iterable<string>): Promise<void> {
    const unopened = [...folders].filter((folder) => !this.#tables.has(folder));
    let next = 0;
    const work = async () => {
      while (next < unopened.length) await this.#open(unopened[next++]);
    };
    await Promise.all(Array.from({ length: Math.min(openedAtOnce, unopened.length) }, work));
  }

  /** What is remembered of a file in its present state, in a folder that was opened. */
  known(path: string, stat: FileStat): RememberedFile | undefined {
    const table = this.#tables.get(folderOf(path));
    return table && this.#findIn(table, path, stat);
  }

  /** Whether the facts of a file in a folder that was opened are remembered, be it in another state. */
  hasFacts(path: string): boolean {
    const table = this.#tables.get(folderOf(path));
    const row = table?.rowOf(nameOf(path)) ?? -1;
    return table !== undefined && row >= 0 && table.hasFacts(row);
  }

  /** What is remembered of a file in its present state. */
  async find(path: string, stat: FileStat): Promise<RememberedFile | undefined> {
    const folder = folderOf(path);
    return this.#findIn(this.#tables.get(folder) ?? (await this.#open(folder)), path, stat);
  }

  /** Remembers what was found out of a file in a state; {@link save} writes it, which happens by itself after a while. */
  async add(
    path: string,
    stat: FileStat,
    found: { facts?: SampleFacts; measures?: Record<string, MeasureResult> },
  ): Promise<void> {
    const folder = folderOf(path);
    const table = this.#tables.get(folder) ?? (await this.#open(folder));
    const row = table.rowFor(nameOf(path), stat);
    if (found.facts) table.setFacts(row, found.facts);
    if (found.measures) table.setMeasures(row, found.measures);
    table.use(row, this.#today);
    if (this.#timer !== undefined) return;
    this.#timer = setTimeout(() => void this.save(), gathered);
    this.#timer.unref?.();
  }

  /** Writes what is new. */
  save(): Promise<void> {
    clearTimeout(this.#timer);
    this.#timer = undefined;
    this.#saving = this.#saving.then(() => this.#write());
    return this.#saving;
  }

  async #write(): Promise<void> {
    for (const [path, table] of this.#tables) {
      if (!table.isChanged) continue;
      table.isChanged = false;
      await this.#storage.write(path, table.bytes(this.#today - mostDays));
    }
  }

  #findIn(table: SampleTable, path: string, stat: FileStat): RememberedFile | undefined {
    const row = table.find(nameOf(path), stat);
    if (row < 0) return undefined;
    table.use(row, this.#today);
    return new KeptFile(table, row);
  }

  #open(path: string): Promise<SampleTable> {
    let opening = this.#opening.get(path);
    if (!opening) {
      opening = this.#storage.read(path).then((bytes) => {
        const table = bytes ? SampleTable.from(bytes) : new SampleTable();
        this.#tables.set(path, table);
        return table;
      });
      this.#opening.set(path, opening);
    }
    return opening;
  }
}
