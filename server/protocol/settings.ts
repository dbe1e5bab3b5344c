import type { Connection } from 'vscode-languageserver';
import type { SeveritySettings } from '../checks/rule';
import { usualFormatStyle } from '../model/formatStyle';
import { folderOf } from '../model/paths';
import type {
  FormatSettings,
  MiddleCSetting,
  ProjectSettings,
  ProjectSettingsStore,
} from '../workspace/projectSettings';
import { pickedSettings } from '../workspace/projectSettings';
import type { ReadingAids } from './readingAids';
import { readingAidsIn } from './readingAids';

const section = 'zonewright';

/** The settings in force for documents: those of the editor, where it sets nothing those of the project file. */
export class Settings {
  readonly #connection: Connection;
  readonly #project: ProjectSettingsStore;
  readonly #readsProject: () => boolean;
  readonly #byUri = new Map<string, Promise<ProjectSettings>>();
  readonly #aids = new Map<string, Promise<ReadingAids>>();
  /** Whether the client answers questions about its settings; else it sends them when they change. */
  #canAsk = false;
  #sent: ProjectSettings = { severity: {} };
  #sentAids = readingAidsIn(undefined);
  #sentMeasures = true;
  #measures: Promise<boolean> | undefined;
  #sentIncludeFolders: string[] = [];

  /** `readsProject` says whether project files count now. */
  constructor(connection: Connection, project: ProjectSettingsStore, readsProject: () => boolean) {
    this.#connection = connection;
    this.#readsProject = readsProject;
    this.#project = project;
  }

  /** Begins: whether the client can be asked, and the options that it started the server with. */
  start(canAsk: boolean, options: unknown): void {
    this.#canAsk = canAsk;
    this.#sent = editorSettings(options);
    this.#sentAids = readingAidsIn(sectionOf(options));
    this.#sentMeasures = measuresIn(sectionOf(options));
    this.#sentIncludeFolders = includeFoldersIn(sectionOf(options));
  }

  /** Takes in settings that the client sent, and asks anew for those that it does not send. */
  changed(sent: unknown): void {
    this.#sent = editorSettings(sectionOf(sent));
    this.#sentAids = readingAidsIn(sectionOf(sent));
    this.#sentMeasures = measuresIn(sectionOf(sent));
    this.#sentIncludeFolders = includeFoldersIn(sectionOf(sent));
    this.#measures = undefined;
    this.#byUri.clear();
    this.#aids.clear();
  }

  /** Says that a project file changed. */
  forgetProject(path: string): void {
    this.#project.forget(path);
    this.#byUri.clear();
  }

  /** Says that all project files count anew. */
  forgetProjects(): void {
    this.#project.forgetAll();
    this.#byUri.clear();
  }

  /** Forgets the settings of a document that is not open any more. */
  forget(uri: string): void {
    this.#byUri.delete(uri);
    this.#aids.delete(uri);
  }

  async severities(uri: string | undefined, path: string | undefined): Promise<SeveritySettings> {
    return (await this.#for(uri, path)).severity;
  }

  async middleC(uri: string, path: string | undefined): Promise<MiddleCSetting> {
    return (await this.#for(uri, path)).middleC ?? 'auto';
  }

  /** How a document is laid out, as far as that is set. */
  async format(uri: string, path: string | undefined): Promise<FormatSettings> {
    return (await this.#for(uri, path)).format ?? {};
  }

  /** Whether the audio of samples is measured, in all documents of the editor. */
  measuresSamples(): Promise<boolean> {
    this.#measures ??= this.#askMeasures();
    return this.#measures;
  }

  /** Folders that instruments may include from although they lie elsewhere, as they are written. Project files have no say in them. */
  async includeFolders(): Promise<string[]> {
    if (!this.#canAsk) return this.#sentIncludeFolders;
    try {
      return includeFoldersIn(await this.#connection.workspace.getConfiguration({ section }));
    } catch {
      return this.#sentIncludeFolders;
    }
  }

  /** What the editor sets about the reading aids; project files have no say in them. */
  readingAids(uri: string): Promise<ReadingAids> {
    let aids = this.#aids.get(uri);
    if (!aids) {
      aids = this.#askAids(uri);
      this.#aids.set(uri, aids);
    }
    return aids;
  }

  async #askMeasures(): Promise<boolean> {
    if (!this.#canAsk) return this.#sentMeasures;
    try {
      return measuresIn(await this.#connection.workspace.getConfiguration({ section }));
    } catch {
      return this.#sentMeasures;
    }
  }

  async #askAids(uri: string): Promise<ReadingAids> {
    if (!this.#canAsk) return this.#sentAids;
    try {
      return readingAidsIn(await this.#connection.workspace.getConfiguration({ section, scopeUri: uri }));
    } catch {
      return this.#sentAids;
    }
  }

  #for(uri: string | undefined, path: string | undefined): Promise<ProjectSettings> {
    const key = uri ?? `path ${path}`;
    let settings = this.#byUri.get(key);
    if (!settings) {
      settings = this.#merge(uri, path);
      this.#byUri.set(key, settings);
    }
    return settings;
  }

  async #merge(uri: string | undefined, path: string | undefined): Promise<ProjectSettings> {
    const editor = this.#canAsk ? await this.#ask(uri) : this.#sent;
    const none: ProjectSettings = { severity: {} };
    const project =
      path === undefined || !this.#readsProject() ? none : await this.#project.settingsFor(folderOf(path));
    const middleC = editor.middleC ?? project.middleC;
    const format = { ...project.format, ...editor.format };
    return { severity: { ...project.severity, ...editor.severity }, format, ...(middleC && { middleC }) };
  }

  async #ask(uri: string | undefined): Promise<ProjectSettings> {
    try {
      const value: unknown = await this.#connection.workspace.getConfiguration({
        section,
        ...(uri !== undefined && { scopeUri: uri }),
      });
      return editorSettings(value);
    } catch {
      return this.#sent;
    }
  }
}

/** `measureSamples` of an editor's settings; on where nothing else is said. */
function measuresIn(value: unknown): boolean {
  const settings = typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
  return settings.measureSamples !== false;
}

/** `includeFolders` of an editor's settings; what is no text is left out. */
function includeFoldersIn(value: unknown): string[] {
  const settings = typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
  const folders: unknown[] = Array.isArray(settings.includeFolders) ? settings.includeFolders : [];
  return folders.filter((folder): folder is string => typeof folder === 'string' && folder !== '');
}

function sectionOf(value: unknown): unknown {
  return typeof value === 'object' && value !== null && section in value
    ? (value as Record<string, unknown>)[section]
    : value;
}

/** Settings out of what an editor sends; what is as usual, or `auto`, says the same as nothing. */
function editorSettings(value: unknown): ProjectSettings {
  const { severity, middleC, format = {} } = pickedSettings(sectionOf(value)).settings;
  const set = Object.entries(format).filter(
    ([name, one]) => one !== usualFormatStyle[name as keyof FormatSettings],
  );
  return { severity, format: Object.fromEntries(set), ...(middleC && middleC !== 'auto' && { middleC }) };
}
