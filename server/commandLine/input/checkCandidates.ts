import type { Instrument } from '../../model/instrument';
import type { InstrumentText } from '../../workspace/analyse';
import { readInstrument } from '../../workspace/analyse';
import type { IncludeStore } from '../../workspace/files/includeStore';
import type { WholeText } from '../../workspace/files/readWhole';
import { readWholeText } from '../../workspace/files/readWhole';
import { refusalWords } from '../../workspace/files/refusalWords';
import type { NotationFinder } from '../../workspace/notations/notationFinder';
import { SampleStore } from '../../workspace/samples/sampleStore';
import { CommandError } from '../commandError';
import type { CheckedFile, PlacedFinding } from '../output/checkedFile';
import type { Terminal } from '../terminal';
import { shownPath } from '../terminalPaths';
import type { FoundFiles } from './findInstruments';
import { presetInput, readFontInput } from './fontInput';
import { includeStore, notationFinder } from './input';

/** UTF-16 units of texts that are held from looking for instruments to checking them; others are read again. One alone is held. */
const mostHeld = 32 * 1024 * 1024;

/** A file that may be an instrument, with its text where that is held. */
export type CheckCandidate = Omit<InstrumentText, 'text'> & { text: string | undefined };

/** The instruments among the files that were found. */
export interface FoundInstruments {
  /** Those that no other includes; of files that include one another in a circle, the first. */
  mains: CheckCandidate[];
  /** The paths of files that others include. */
  included: ReadonlySet<string>;
  /** Files that are named like instruments and cannot be read, with the reason. */
  refused: CheckedFile[];
  /** SoundFonts in which something is odd, with what. */
  odd: { path: string; problems: readonly string[] }[];
}

/** Finds the instruments to be checked, and gives their texts. */
export class CheckCandidates {
  readonly #terminal: Terminal;
  readonly #includes: IncludeStore;
  readonly #notations: NotationFinder;
  readonly #refused: CheckedFile[] = [];
  readonly #odd = new Map<string, readonly string[]>();
  #held = 0;

  /** `folders` are those that were named. */
  constructor(terminal: Terminal, folders: readonly string[]) {
    this.#terminal = terminal;
    this.#includes = includeStore(terminal, folders);
    this.#notations = notationFinder(terminal, new SampleStore(terminal.files));
  }

  /** Fails with a {@link CommandError} where one that was named itself cannot be read or is none. */
  async find({ texts, named }: FoundFiles): Promise<FoundInstruments> {
    const candidates: CheckCandidate[] = [];
    const includedBy = new Map<string, ReadonlySet<string>>();
    for (const path of texts) {
      for (const candidate of await this.#at(path, named.has(path))) {
        const included = await this.#includedPaths(candidate);
        if (included.size > 0) includedBy.set(candidate.path, included);
        this.#held += candidate.text.length;
        const isHeld = this.#held <= mostHeld || texts.length === 1 || candidate.path !== path;
        const text = isHeld ? candidate.text : undefined;
        candidates.push({ ...candidate, text });
      }
    }
    const odd = [...this.#odd].map(([path, problems]) => ({ path, problems }));
    return { ...mainsOf(candidates, includedBy, named), refused: this.#refused, odd };
  }

  /** Reads an instrument with all that it includes; `undefined` where its file is not there any more. */
  async read(candidate: CheckCandidate): Promise<Instrument | undefined> {
    const { path } = candidate;
    let { text } = candidate;
    if (text === undefined) {
      const whole = await readWholeText(this.#terminal.files, path);
      if (whole.kind === 'text') ({ text } = whole);
    }
    return text === undefined ? undefined : this.#read({ ...candidate, text });
  }

  /** Reads a text. Whatever goes wrong with it is its own finding, and the others are checked all the same. */
  async #read(candidate: InstrumentText): Promise<Instrument> {
    try {
      return await readInstrument(candidate, this.#includes);
    } catch (error) {
      const reason = error instanceof Error ? error.message : String(error);
      const nothing = candidate.notation.read('', { path: candidate.path });
      const message = `This file cannot be checked: ${reason}.`;
      return Object.assign(nothing, {
        findings: [{ code: 'syntax-error', severity: 'error', message, source: 0, start: 0, end: 0 }],
      });
    }
  }

  async #at(path: string, named: boolean): Promise<InstrumentText[]> {
    const presets = await this.#presets(path, named);
    if (presets) return presets;
    const candidate = await this.#candidate(path, named);
    return candidate ? [candidate] : [];
  }

  /** The presets of a SoundFont as texts, or the one that the path names; `undefined` for another kind of file. */
  async #presets(path: string, named: boolean): Promise<InstrumentText[] | undefined> {
    try {
      const font = await readFontInput(this.#terminal, shownPath(this.#terminal, path));
      if (font && font.view.problems.length > 0) this.#odd.set(font.path, font.view.problems);
      return font?.presets.map((preset) => presetInput(font, preset));
    } catch (error) {
      if (named || !(error instanceof CommandError)) throw error;
      this.#refuse(path, 'This SoundFont cannot be checked: it cannot be read.');
      return [];
    }
  }

  /** The text of a file that may be an instrument; `undefined` for other XML found in a folder. */
  async #candidate(path: string, named: boolean): Promise<InstrumentText | undefined> {
    const whole = await readWholeText(this.#terminal.files, path);
    const shown = shownPath(this.#terminal, path);
    if (whole.kind !== 'text') {
      const reason = reasonOf(whole);
      if (named) throw new CommandError(`${shown}: ${reason}`);
      if (path.endsWith('.sfz')) this.#refuse(path, `This file cannot be checked: ${reason}.`);
      return undefined;
    }
    const { text } = whole;
    const found = await this.#notations.find({ path, text });
    if (found) return { path, text, notation: found.notation, ...this.#notations.readingOf(found) };
    if (named) throw new CommandError(`${shown}: this is neither SFZ nor instrument XML`);
    return undefined;
  }

  async #includedPaths(candidate: InstrumentText): Promise<ReadonlySet<string>> {
    if (!candidate.text.includes('include')) return new Set();
    const instrument = await this.#read(candidate);
    return new Set(instrument.sources.slice(1).map(({ path }) => path));
  }

  #refuse(path: string, message: string): void {
    this.#refused.push({ path, findings: [placeless('syntax-error', message)] });
  }
}

function mainsOf(
  candidates: readonly CheckCandidate[],
  includedBy: ReadonlyMap<string, ReadonlySet<string>>,
  named: ReadonlySet<string>,
): Omit<FoundInstruments, 'refused' | 'odd'> {
  const included = new Set<string>();
  for (const [path, includes] of includedBy) for (const one of includes) if (one !== path) included.add(one);
  const mains = candidates.filter(({ path }) => named.has(path) || !included.has(path));
  const covered = new Set(mains.flatMap(({ path }) => [path, ...(includedBy.get(path) ?? [])]));
  for (const candidate of candidates) {
    if (covered.has(candidate.path)) continue;
    mains.push(candidate);
    for (const path of [candidate.path, ...(includedBy.get(candidate.path) ?? [])]) covered.add(path);
  }
  return { mains, included };
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

/** A finding about a whole file. */
export function placeless(code: string, message: string): PlacedFinding {
  const start = { line: 1, column: 1 };
  return { code, severity: 'error', message, start, end: start };
}
