import { isSfzFileName } from '../model/fileNames';
import type { Files } from '../model/files';
import { joinPath, nameOf, relativePath, titleOf } from '../model/paths';
import { vocabularyEnding } from '../vocabulary/vocabulary';
import { filesOfSource } from './filesOfSource';
import type {
  InstrumentEntry,
  InstrumentSettings,
  LibraryFile,
  SourceSettings,
  TargetSettings,
} from './libraryFile';
import { defaultOutput, defaultPacks } from './libraryFile';
import type { LibraryInstrument, LibraryTarget, ResolvedLibrary } from './libraryInstrument';
import { PortableNames, portableName } from './portableNames';
import { settingsBeside } from './settingsBeside';

/** What is set in several places, the nearest last. */
type Layers = readonly (InstrumentSettings | undefined)[];

const kinds = ['sfz', 'xml', 'sf2'] as const;
const withPreset = /^(.+\.sf2)#(\d+:\d+)$/i;

/**
 * Works out what a library file says for each of its instruments: files found by patterns, settings of the whole library,
 * of patterns, of files beside sources and of the entries, the nearest before the others; facts and pack settings member by
 * member. `folder` is the absolute folder of the file.
 */
export async function resolveLibrary(
  library: LibraryFile,
  folder: string,
  files: Files,
): Promise<ResolvedLibrary> {
  const problems: string[] = [];
  const names = new PortableNames();
  const instruments: LibraryInstrument[] = [];
  const { instruments: entries = [], sources = [], build = {} } = library;
  const output = joinPath(folder, library.output ?? defaultOutput);
  const named = new Set(entries.map(({ source }) => joinPath(folder, source)));
  const add = async (entry: InstrumentEntry, source?: SourceSettings): Promise<void> => {
    const path = joinPath(folder, entry.source);
    const [, font = path, preset] = withPreset.exec(path) ?? [];
    const beside = await settingsBeside(files, font, problems);
    const layers: Layers = [library, source, entry, beside];
    const name = beside?.name ?? entry.name;
    const pairing = entry.pairing;
    instruments.push({
      name,
      fileName: names.take(name),
      source: font,
      ...(preset !== undefined && { preset }),
      ...settingsOf(layers, folder),
      targets: targetsOf(layers, folder, name, problems),
      ...(pairing && { pairing }),
    });
  };
  for (const entry of entries) if (!entry.leaveOut) await add(entry);
  for (const source of sources)
    for (const path of await filesOfSource(files, { folder, written: output }, source, problems)) {
      if (named.has(path)) continue;
      named.add(path);
      const shown = relativePath(folder, path);
      await add({ name: presetName(shown) ?? titleOf(shown), source: shown }, source);
    }
  return {
    title: library.title ?? nameOf(folder),
    folder,
    output,
    packs: [...new Set(instruments.map(({ pack }) => joinPath(folder, pack.output ?? defaultPacks)))],
    steps: { measures: !!build.measure, proves: !!build.prove, packs: !!build.pack },
    instruments,
    problems,
  };
}

function presetName(path: string): string | undefined {
  const [, font, preset] = withPreset.exec(path) ?? [];
  return font === undefined ? undefined : `${titleOf(font)} ${preset.replace(':', '-')}`;
}

/** The settings that count, the targets aside. */
function settingsOf(
  layers: Layers,
  folder: string,
): Pick<LibraryInstrument, 'samples' | 'middleC' | 'facts' | 'pack'> {
  const samples = nearest(layers, ({ samples }) => samples);
  const middleC = nearest(layers, ({ middleC }) => middleC);
  return {
    ...(samples !== undefined && { samples: joinPath(folder, samples) }),
    ...(middleC && { middleC }),
    facts: Object.assign({}, ...layers.map((one) => one?.facts)),
    pack: Object.assign({}, ...layers.map((one) => one?.pack)),
  };
}

function nearest<T>(layers: Layers, of: (settings: InstrumentSettings) => T | undefined): T | undefined {
  return layers.reduce<T | undefined>((found, one) => (one && of(one)) ?? found, undefined);
}

function targetsOf(layers: Layers, folder: string, name: string, problems: string[]): LibraryTarget[] {
  const written = nearest(layers, ({ targets }) => targets) ?? [];
  const settings = written.map((one): TargetSettings => (typeof one === 'string' ? { notation: one } : one));
  if (settings.length === 0) settings.push({ notation: 'sfz' });
  const template = nearest(layers, (one) => one.template);
  const folders = new Set<string>();
  const targets: LibraryTarget[] = [];
  for (const one of settings) {
    const target = targetOf(one, folder);
    if (!target) {
      problems.push(
        `${name}: "${one.notation}" is no target: write sfz, xml, sf2 or the path of a file named *${vocabularyEnding}.`,
      );
      continue;
    }
    if (folders.has(target.folder.toLowerCase())) {
      problems.push(`${name}: two targets go to the folder "${target.folder}": give one of them a "folder".`);
      continue;
    }
    folders.add(target.folder.toLowerCase());
    const isMeant = settings.length === 1 || fits(target, template);
    if (template !== undefined && target.template === undefined && isMeant)
      target.template = joinPath(folder, template);
    targets.push(target);
  }
  return targets;
}

function targetOf(
  { notation, template, folder: own }: TargetSettings,
  folder: string,
): LibraryTarget | undefined {
  const isVocabulary = notation.endsWith(vocabularyEnding);
  const kind = isVocabulary ? 'vocabulary' : kinds.find((one) => one === notation);
  if (!kind) return undefined;
  const place = isVocabulary ? nameOf(notation).slice(0, -vocabularyEnding.length) : notation;
  return {
    notation: kind,
    ...(isVocabulary && { vocabulary: joinPath(folder, notation) }),
    ...(template !== undefined && { template: joinPath(folder, template) }),
    folder: (own ?? place).split('/').map(portableName).join('/'),
  };
}

/** Whether the template of all is one for a target, as far as its name tells. */
function fits({ notation }: LibraryTarget, template: string | undefined): boolean {
  if (template === undefined || notation === 'sf2') return false;
  return isSfzFileName(template) === (notation === 'sfz');
}
