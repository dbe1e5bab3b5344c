import type { SeveritySettings } from '../checks/rule';
import { rules } from '../checks/rules';
import type { Files } from '../model/files';
import { severities } from '../model/finding';
import type { FormatStyle } from '../model/formatStyle';
import { headerLayouts, opcodeOrders } from '../model/formatStyle';
import type { MiddleC } from '../model/keys';
import { folderOf, nameOf } from '../model/paths';
import { Source } from '../model/text/source';
import { readJson } from '../vocabulary/jsonTree';
import { readWholeText } from './files/readWhole';

/** Which note name a table gives to key 60; `auto`: found by evidence. */
export type MiddleCSetting = 'auto' | MiddleC;

const middleCs: readonly MiddleCSetting[] = ['auto', 'C3', 'C4', 'C5'];

/** What a project file or an editor sets; what is left out is not set. */
export interface ProjectSettings {
  severity: SeveritySettings;
  middleC?: MiddleCSetting;
  /** How text is laid out, as far as that is set; indentation is the editor's. */
  format?: FormatSettings;
}

/** What can be set of a style. */
export type FormatSettings = Partial<Omit<FormatStyle, 'indentation'>>;

/** Settings with what could not be made sense of, as sentences. */
export interface SettingsReading {
  settings: ProjectSettings;
  problems: string[];
}

/** The name of the project file. */
export const projectFileName = 'zonewright.json';

const known: ReadonlySet<string> = new Set(rules.map(({ code }) => code));
const levels: ReadonlySet<unknown> = new Set<unknown>([...severities, 'off']);

/** Reads the text of a project file: JSON such as `{"severity": {"key-gap": "off"}, "middleC": "C3"}`. Never throws. */
export function parseProjectSettings(text: string): SettingsReading {
  let value: unknown;
  try {
    value = JSON.parse(text.replace(/^\ufeff/, ''));
  } catch {
    return {
      settings: { severity: {} },
      problems: [`It is not valid JSON and is left out. ${faultOf(text)}`],
    };
  }
  return pickedSettings(value);
}

/** Where JSON is broken and how, without a word of what stands there, which may be anything. */
function faultOf(text: string): string {
  const { problem } = readJson(text);
  if (!problem) return '';
  const { line, column } = new Source('', text).positionAt(problem.start);
  return `Line ${line}, column ${column}: ${problem.message}`;
}

/** Picks settings out of a parsed value; what does not fit is left out and told. */
export function pickedSettings(value: unknown): SettingsReading {
  const problems: string[] = [];
  if (!isRecord(value)) {
    return { settings: { severity: {} }, problems: ['It holds no JSON object and is left out.'] };
  }
  const settings: ProjectSettings = { severity: severityIn(value.severity, problems) };
  if (value.middleC !== undefined) {
    const middleC = middleCs.find((one) => one === value.middleC);
    if (middleC) settings.middleC = middleC;
    else problems.push(`"middleC" has to be one of ${middleCs.join(', ')}.`);
  }
  const format = formatIn(value.format, problems);
  if (format) settings.format = format;
  return { settings, problems };
}

function formatIn(value: unknown, problems: string[]): FormatSettings | undefined {
  if (value === undefined) return undefined;
  if (!isRecord(value)) {
    problems.push('"format" has to be an object with settings of the layout.');
    return undefined;
  }
  const settings: FormatSettings = {};
  const headers = headerLayouts.find((one) => one === value.headers);
  if (headers) settings.headers = headers;
  else if (value.headers !== undefined)
    problems.push(`"format.headers" has to be one of ${headerLayouts.join(', ')}.`);
  const opcodeOrder = opcodeOrders.find((one) => one === value.opcodeOrder);
  if (opcodeOrder) settings.opcodeOrder = opcodeOrder;
  else if (value.opcodeOrder !== undefined)
    problems.push(`"format.opcodeOrder" has to be one of ${opcodeOrders.join(', ')}.`);
  if (typeof value.alignColumns === 'boolean') settings.alignColumns = value.alignColumns;
  else if (value.alignColumns !== undefined) problems.push('"format.alignColumns" has to be true or false.');
  return settings;
}

function severityIn(value: unknown, problems: string[]): SeveritySettings {
  if (value === undefined) return {};
  if (!isRecord(value)) {
    problems.push('"severity" has to be an object with a level for each finding code.');
    return {};
  }
  const found: [string, SeveritySettings[string]][] = [];
  for (const [code, level] of Object.entries(value)) {
    if (!known.has(code)) problems.push(`"${code}" is no finding code.`);
    else if (!levels.has(level))
      problems.push(`The severity of "${code}" has to be one of ${[...severities, 'off'].join(', ')}.`);
    else found.push([code, level as SeveritySettings[string]]);
  }
  return Object.fromEntries(found);
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** The settings of project files, read once and remembered until told of a change. */
export class ProjectSettingsStore {
  readonly #files: Files;
  readonly #warn: (message: string) => void;
  /** By folder: the settings of the project file in it, if there is one. */
  readonly #settings = new Map<string, Promise<ProjectSettings | undefined>>();

  /** `warn` is given a line about each thing in a project file that makes no sense. */
  constructor(files: Files, warn: (message: string) => void) {
    this.#files = files;
    this.#warn = warn;
  }

  /** The settings for an instrument in a folder: those of the nearest project file in it or in a folder around it. */
  async settingsFor(folder: string): Promise<ProjectSettings> {
    for (let at = folder; at !== ''; at = at === '/' ? '' : folderOf(at)) {
      const found = await this.#in(at);
      if (found) return found;
    }
    return { severity: {} };
  }

  /** Says that a project file came, went or changed. */
  forget(path: string): void {
    if (nameOf(path) === projectFileName) this.#settings.delete(folderOf(path));
    for (const folder of this.#settings.keys()) {
      if (folder === path || folder.startsWith(`${path}/`)) this.#settings.delete(folder);
    }
  }

  /** Forgets all project files. */
  forgetAll(): void {
    this.#settings.clear();
  }

  #in(folder: string): Promise<ProjectSettings | undefined> {
    let settings = this.#settings.get(folder);
    if (!settings) {
      settings = this.#read(folder === '/' ? `/${projectFileName}` : `${folder}/${projectFileName}`);
      this.#settings.set(folder, settings);
    }
    return settings;
  }

  async #read(path: string): Promise<ProjectSettings | undefined> {
    const whole = await readWholeText(this.#files, path);
    if (whole.kind === 'missing') return undefined;
    const reading =
      whole.kind === 'text'
        ? parseProjectSettings(whole.text)
        : { settings: { severity: {} }, problems: ['It is not a text file and is left out.'] };
    for (const problem of reading.problems) this.#warn(`${path}: ${problem}`);
    return reading.settings;
  }
}
