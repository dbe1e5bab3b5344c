import type { FileReader, FileStat, Files, FolderEntry } from '../model/files';
import { folderOf, nameOf } from '../model/paths';
import { FontError } from './read/fontError';
import { isSoundFont } from './read/isSoundFont';
import type { FontView } from './regions/fontView';

/** What came of looking at a file as a SoundFont. */
export type FontAt =
  | { kind: 'font'; view: FontView }
  | { kind: 'unreadable'; reason: string }
  | { kind: 'other' };

/** Fonts that are remembered; one takes a few megabytes. */
const mostFonts = 4;
const headBytes = 12;

/** SoundFonts among files, looked at once as long as size and time stay the same. */
export class FontFiles {
  readonly #files: Files;
  readonly #known = new Map<string, { state: string; found: Promise<FontAt> }>();

  constructor(files: Files) {
    this.#files = files;
  }

  /** What stands at a path, told by its first bytes. */
  async at(path: string): Promise<FontAt> {
    const stat = await this.#files.stat(path);
    return stat?.kind === 'file' ? this.#fontOf(path, stat) : { kind: 'other' };
  }

  /** The font at a path, with the time of its last change. */
  async viewAt(path: string): Promise<{ view: FontView; stat: FileStat } | undefined> {
    const stat = await this.#files.stat(path);
    if (stat?.kind !== 'file') return undefined;
    const found = await this.#fontOf(path, stat);
    return found.kind === 'font' ? { view: found.view, stat } : undefined;
  }

  #fontOf(path: string, { size, modified }: FileStat): Promise<FontAt> {
    const state = `${size} ${modified}`;
    const known = this.#known.get(path);
    this.#known.delete(path);
    const entry = known?.state === state ? known : { state, found: this.#read(path) };
    this.#known.set(path, entry);
    for (const oldest of this.#known.keys()) {
      if (this.#known.size <= mostFonts) break;
      this.#known.delete(oldest);
    }
    return entry.found;
  }

  async #read(path: string): Promise<FontAt> {
    const reader = await this.#files.open(path);
    if (!reader) return { kind: 'other' };
    try {
      if (!isSoundFont(await reader.read(0, headBytes))) return { kind: 'other' };
      // Loaded with the first font, so that whoever has none does not wait for it.
      const { readFont } = await import('./read/readFont');
      const { viewFont } = await import('./regions/fontView');
      const reading = await readFont(reader);
      return reading.kind === 'font' ? { kind: 'font', view: viewFont(reading.font) } : reading;
    } catch (error) {
      const reason = error instanceof FontError ? error.message : 'it could not be read from its disk';
      return { kind: 'unreadable', reason: `This SoundFont cannot be read: ${reason}.` };
    } finally {
      await reader.close();
    }
  }
}

/**
 * Files among which each SoundFont is a folder as well: of WAV files, one for each sample that its presets play. So
 * whatever works on the samples of an instrument works on those of a font.
 */
export function withFontSamples(files: Files): Files {
  const fonts = new FontFiles(files);
  const sampleAt = async (path: string) => {
    const fontPath = folderOf(path);
    const font = fontPath === path ? undefined : await fonts.viewAt(fontPath);
    const file = font?.view.samples.get(nameOf(path));
    return font && file ? { ...font, file, fontPath } : undefined;
  };
  const statOfSample = async (path: string): Promise<FileStat | undefined> => {
    const sample = await sampleAt(path);
    return (
      sample && {
        kind: 'file',
        size: sample.view.sampleBytes(sample.file),
        modified: sample.stat.modified,
      }
    );
  };
  const { stats, realPath, refusal, admits } = files;
  const both: Files = {
    ...(admits && { admits: (path: string) => admits.call(files, path) }),
    ...(realPath && {
      realPath: async (path: string) => {
        const end = await realPath.call(files, path);
        if (end !== undefined) return end;
        const sample = await sampleAt(path);
        const font = sample && (await realPath.call(files, sample.fontPath));
        return font === undefined ? undefined : `${font}/${nameOf(path)}`;
      },
    }),
    ...(refusal && { refusal: (path: string) => refusal.call(files, path) }),
    stat: async (path) => (await files.stat(path)) ?? statOfSample(path),
    ...(stats && {
      stats: async (paths: readonly string[]) => {
        const found = await stats.call(files, paths);
        return Promise.all(found.map((stat, at) => stat ?? statOfSample(paths[at] as string)));
      },
    }),
    async list(folder): Promise<FolderEntry[] | undefined> {
      const entries = await files.list(folder);
      if (entries) return entries;
      const font = await fonts.viewAt(folder);
      return font && [...font.view.samples.keys()].map((name) => ({ name, kind: 'file' as const }));
    },
    async open(path): Promise<FileReader | undefined> {
      const reader = await files.open(path);
      if (reader) return reader;
      const sample = await sampleAt(path);
      const font = sample && (await files.open(sample.fontPath));
      if (!font) return undefined;
      const { sampleReader } = await import('./regions/sampleReader');
      return sampleReader(font, sample.view.font, sample.file);
    },
  };
  fontsOf.set(both, fonts);
  return both;
}

const fontsOf = new WeakMap<Files, FontFiles>();

/** The SoundFonts among files; those that {@link withFontSamples} looked at are not looked at again. */
export function fontsAmong(files: Files): FontFiles {
  let fonts = fontsOf.get(files);
  if (!fonts) {
    fonts = new FontFiles(files);
    fontsOf.set(files, fonts);
  }
  return fonts;
}
