import { isSampleFileName } from '../../model/fileNames';
import type { Refusal } from '../../model/files';
import { folderOf, joinPath, leadsToOtherHost, nameOf, relativePath } from '../../model/paths';
import type { SampleLookup, SampleMeasures, SampleReading, SampleState } from '../../model/samples';
import { nearestWords } from '../../model/text/nearest';
import { ownText } from '../../model/text/ownText';
import { refusalWords } from '../files/refusalWords';
import type { MeasuredFile } from '../measuring/measuredFile';
import type { Measurements } from '../measuring/measurements';
import type { FolderIndex } from './folderIndex';

/** What a lookup asks, as {@link FolderLookup} does. */
interface AskedStore {
  readonly folders: FolderIndex;
  readonly measurements: Measurements | undefined;
  /** Whether lookups give what is measured. */
  readonly givesMeasures: boolean;
  /** Whether a path may be looked at now. */
  admits(path: string): boolean;
  /** What was found in a file that is there; asks for it to be read where it was not. */
  reading(path: string): SampleReading | undefined;
}

/** A file that cannot be read, for a reason where one is known. */
export function unreadableFor(refusal: Refusal | undefined): SampleReading {
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
const pending: SampleState = { kind: 'pending' };

/** A folder that was asked about. */
interface AskedFolder {
  /** What stands before the name in its paths. */
  start: string;
  /** Absolute. */
  folder: string;
  contents: ReturnType<FolderIndex['contents']>;
}

/** What is known of samples, by paths relative to one folder. */
export class FolderLookup implements SampleLookup {
  readonly #store: AskedStore;
  readonly #folder: string;
  readonly #states = new Map<string, SampleState>();
  version = 0;
  /** What is measured, whether or not it is given now. */
  readonly ownMeasures: SampleMeasures | undefined;
  /** The files that paths lead to; `null` for a path that leads to none. */
  readonly #measured = new Map<string, MeasuredFile | null>();
  #lastPath: string | undefined;
  #lastFile: MeasuredFile | null | undefined;
  /** The folder that was asked about last. */
  #asked: AskedFolder | undefined;

  constructor(store: AskedStore, folder: string) {
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
    const known = this.#states.get(path) ?? this.#nothingThere(path);
    if (known) return known;
    const state = this.#find(path);
    // What is there is remembered: paths that lead nowhere are soon found again, and there can be a million.
    if ('reading' in state) this.#states.set(path, state);
    return state;
  }

  /** The state of a path of which nothing but its folder need be known, as that of most that lead nowhere. */
  #nothingThere(path: string): SampleState | undefined {
    const slash = path.lastIndexOf('/');
    // Other paths can lead out of the folder, or nowhere at all.
    if (slash <= 0 || path.endsWith('.') || path.endsWith('/') || path.startsWith('//')) return undefined;
    if (path.includes('\\') || path.includes('\0')) return undefined;
    const isSame = this.#asked?.start.length === slash && path.startsWith(this.#asked.start);
    const asked = isSame ? this.#asked : this.#ask(path, path.slice(0, slash));
    if (!asked) return undefined;
    // The folder may have been listed for another meanwhile.
    if (asked.contents === 'unknown') asked.contents = this.#store.folders.contents(asked.folder);
    const { contents } = asked;
    if (contents === 'unknown') return pending;
    if (contents === 'closed') return undefined;
    return contents === 'missing' || contents.spelt(path.slice(slash + 1)) === undefined
      ? missing
      : undefined;
  }

  /** Looks at the folder of a path, which goes on behind `start` with the name; `undefined` where it may not be looked at. */
  #ask(path: string, start: string): AskedFolder | undefined {
    const folder = folderOf(joinPath(this.#folder, path));
    this.#asked = this.#store.admits(folder)
      ? { start: ownText(start), folder, contents: this.#store.folders.contents(folder) }
      : undefined;
    return this.#asked;
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
    this.#asked = undefined;
  }

  #find(path: string): SampleState {
    if (path.includes('\0')) return missing;
    const whole = joinPath(this.#folder, path);
    if (!this.#store.admits(whole)) return pending;
    if (leadsToOtherHost(this.#folder, path)) return { kind: 'file', reading: elsewhere };
    const entry = this.#store.folders.entry(whole);
    switch (entry.kind) {
      case 'unknown':
        return pending;
      case 'missing':
        return missing;
      case 'folder':
        return { kind: 'folder' };
      case 'refused':
        return { kind: 'file', reading: unreadableFor(entry.refusal) };
      case 'otherCase': {
        const reading = this.#store.reading(entry.actual);
        return reading
          ? { kind: 'otherCase', actual: relativePath(this.#folder, entry.actual), reading }
          : pending;
      }
      case 'file': {
        const reading = this.#store.reading(whole);
        return reading ? { kind: 'file', reading } : pending;
      }
    }
  }
}
