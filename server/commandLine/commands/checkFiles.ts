import { findUnusedSamples } from '../../checks/rules/sampleUnused';
import type { Finding } from '../../model/finding';
import { folderOf, joinPath } from '../../model/paths';
import { visibleText } from '../../model/text/visibleText';
import type { Analysis, InstrumentText } from '../../workspace/analyse';
import { analyse, readInstrument } from '../../workspace/analyse';
import type { IncludeStore } from '../../workspace/files/includeStore';
import type { WholeText } from '../../workspace/files/readWhole';
import { readWholeText } from '../../workspace/files/readWhole';
import { refusalWords } from '../../workspace/files/refusalWords';
import type { NotationFinder } from '../../workspace/notations/notationFinder';
import { ProjectSettingsStore } from '../../workspace/projectSettings';
import { SampleStore } from '../../workspace/samples/sampleStore';
import { CommandError } from '../commandError';
import type { FoundFiles } from '../input/findInstruments';
import { presetInput, readFontInput } from '../input/fontInput';
import { includeStore, notationFinder } from '../input/input';
import { openSamples } from '../input/openSamples';
import type { CheckedFile, PlacedFinding } from '../output/checkOutput';
import type { Terminal } from '../terminal';
import { shownPath } from '../terminalPaths';

/** Milliseconds between two lines that say how far the work is. */
const progressEvery = 5000;

type Candidate = InstrumentText;

/**
 * Checks all instruments that were found; those that only others include are checked as parts of these. Samples are
 * measured; with `keeps`, what was found out of them is kept for the next time where the terminal can.
 */
export async function checkFiles(
  terminal: Terminal,
  found: FoundFiles,
  keeps: boolean,
): Promise<CheckedFile[]> {
  const opened = openSamples(terminal, keeps);
  try {
    return await checkWith(new Checker(terminal, opened.samples, found.folders), terminal, found);
  } finally {
    await opened.close();
  }
}

async function checkWith(checker: Checker, terminal: Terminal, found: FoundFiles): Promise<CheckedFile[]> {
  const candidates: Candidate[] = [];
  for (const path of found.texts) {
    const presets = await checker.presets(path, found.named.has(path));
    if (presets) {
      candidates.push(...presets);
      continue;
    }
    const candidate = await checker.candidate(path, found.named.has(path));
    if (candidate) candidates.push(candidate);
  }
  const mains = await checker.mainFiles(candidates, found.named);
  let told = Date.now();
  for (const [done, candidate] of mains.entries()) {
    await checker.check(candidate);
    if (Date.now() - told < progressEvery) continue;
    told = Date.now();
    terminal.error(`zonewright: ${done + 1} of ${mains.length} instruments checked\n`);
  }
  await checker.checkUnused(found);
  return checker.files();
}

class Checker {
  readonly #terminal: Terminal;
  readonly #includes: IncludeStore;
  readonly #samples: SampleStore;
  readonly #settings: ProjectSettingsStore;
  readonly #notations: NotationFinder;
  readonly #found = new Map<string, PlacedFinding[]>();
  readonly #seen = new Set<string>();
  /** Absolute paths of instruments, and of the samples that they use. */
  readonly #instruments = new Set<string>();
  readonly #used = new Set<string>();

  constructor(terminal: Terminal, samples: SampleStore, folders: readonly string[]) {
    this.#terminal = terminal;
    this.#includes = includeStore(terminal, folders);
    this.#samples = samples;
    this.#notations = notationFinder(terminal, new SampleStore(terminal.files));
    this.#settings = new ProjectSettingsStore(terminal.files, (message) =>
      terminal.error(`zonewright: ${message}\n`),
    );
  }

  /** The presets of a SoundFont as texts, or the one that the path names; `undefined` for another kind of file. */
  async presets(path: string, named: boolean): Promise<Candidate[] | undefined> {
    try {
      const font = await readFontInput(this.#terminal, shownPath(this.#terminal, path));
      return font?.presets.map((preset) => presetInput(font, preset));
    } catch (error) {
      if (named || !(error instanceof CommandError)) throw error;
      this.#add(path, placeless('syntax-error', 'This SoundFont cannot be checked: it cannot be read.'));
      return [];
    }
  }

  /** The text of a file that may be an instrument; `undefined` for other XML found in a folder. */
  async candidate(path: string, named: boolean): Promise<Candidate | undefined> {
    const whole = await readWholeText(this.#terminal.files, path);
    const shown = shownPath(this.#terminal, path);
    if (whole.kind !== 'text') {
      const reason = reasonOf(whole);
      if (named) throw new CommandError(`${shown}: ${reason}`);
      if (path.endsWith('.sfz'))
        this.#add(path, placeless('syntax-error', `This file cannot be checked: ${reason}.`));
      return undefined;
    }
    const { text } = whole;
    const found = await this.#notations.find({ path, text });
    if (found) return { path, text, notation: found.notation, ...this.#notations.readingOf(found) };
    if (named) throw new CommandError(`${shown}: this is neither SFZ nor instrument XML`);
    return undefined;
  }

  /** Those that no other includes; of files that include one another in a circle, the first. */
  async mainFiles(candidates: readonly Candidate[], named: ReadonlySet<string>): Promise<Candidate[]> {
    const includedBy = new Map<string, Set<string>>();
    for (const candidate of candidates) includedBy.set(candidate.path, await this.#includedPaths(candidate));
    const reached = new Set<string>();
    for (const [path, includes] of includedBy) for (const one of includes) if (one !== path) reached.add(one);
    const mains = candidates.filter(({ path }) => named.has(path) || !reached.has(path));
    const covered = new Set(mains.flatMap(({ path }) => [path, ...(includedBy.get(path) ?? [])]));
    for (const candidate of candidates) {
      if (covered.has(candidate.path)) continue;
      mains.push(candidate);
      for (const path of [candidate.path, ...(includedBy.get(candidate.path) ?? [])]) covered.add(path);
    }
    return mains;
  }

  async #includedPaths(candidate: Candidate): Promise<Set<string>> {
    if (!candidate.text.includes('include')) return new Set();
    const instrument = await readInstrument(candidate, this.#includes);
    return new Set(instrument.sources.slice(1).map(({ path }) => path));
  }

  async check(candidate: Candidate): Promise<void> {
    const { severity } = await this.#settings.settingsFor(folderOf(candidate.path));
    const analysis = await analyse(candidate, this.#includes, this.#samples, severity);
    if (!this.#found.has(candidate.path)) this.#found.set(candidate.path, []);
    this.#instruments.add(candidate.path);
    this.#noteUsed(candidate, analysis);
    for (const finding of analysis.findings) this.#addFrom(analysis, finding);
  }

  #noteUsed({ path }: Candidate, { instrument }: Analysis): void {
    const folder = folderOf(path);
    const lookup = this.#samples.lookup(folder);
    for (const region of instrument.regions) {
      const sample = instrument.samplePath(region);
      if (sample === undefined) continue;
      const state = lookup.state(sample);
      this.#used.add(joinPath(folder, state.kind === 'otherCase' ? state.actual : sample));
    }
  }

  #addFrom({ instrument }: Analysis, { source, start, end, code, severity, message }: Finding): void {
    const file = instrument.sources[source];
    if (!file) return;
    this.#add(file.path, {
      code,
      severity,
      message,
      start: file.positionAt(start),
      end: file.positionAt(end),
    });
  }

  #add(path: string, finding: PlacedFinding): void {
    const key = `${path}\n${finding.code}\n${finding.start.line}:${finding.start.column}\n${finding.message}`;
    if (this.#seen.has(key)) return;
    this.#seen.add(key);
    finding.message = visibleText(finding.message);
    const findings = this.#found.get(path);
    if (findings) findings.push(finding);
    else this.#found.set(path, [finding]);
  }

  async checkUnused({ audio }: FoundFiles): Promise<void> {
    for (const path of findUnusedSamples({
      audioFiles: audio,
      used: this.#used,
      instruments: this.#instruments,
    })) {
      const { severity } = await this.#settings.settingsFor(folderOf(path));
      const level = severity['sample-unused'] ?? 'information';
      if (level === 'off') continue;
      const message =
        'No instrument in the checked folder refers to this audio file. Use it or leave it out when you pack the instrument.';
      this.#add(path, { ...placeless('sample-unused', message), severity: level });
    }
  }

  files(): CheckedFile[] {
    return [...this.#found]
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([path, findings]) => ({
        path,
        findings: findings.sort((a, b) => a.start.line - b.start.line || a.start.column - b.start.column),
      }));
  }
}

/** Why a file gives no text, as a sentence without its ends. */
function reasonOf(whole: Exclude<WholeText, { kind: 'text' }>): string {
  switch (whole.kind) {
    case 'binary':
      return 'this is not a text file';
    case 'missing':
      return 'it cannot be read';
    case 'refused':
      return `it ${refusalWords(whole.refusal)}`;
    case 'too-large':
      return 'it is too large';
  }
}

function placeless(code: string, message: string): PlacedFinding {
  const start = { line: 1, column: 1 };
  return { code, severity: 'error', message, start, end: start };
}
