import { readEdited } from '../../model/editing/changedInstrument';
import { replacing } from '../../model/editing/edits';
import type { FileMoves } from '../../model/fileMoves';
import type { TextEdit } from '../../model/finding';
import { HeaderKind } from '../../model/headerKinds';
import type { Instrument } from '../../model/instrument';
import type { Control } from '../../model/instrumentParts';
import { directiveName } from '../../model/instrumentParts';
import type { Notation } from '../../model/notation';
import { Parameter } from '../../model/parameterNames';
import { folderOf, isAbsolutePath, joinPath, nameOf, relativePath } from '../../model/paths';
import type { Source } from '../../model/text/source';
import type { Span } from '../../model/text/span';
import { spanIn } from '../../model/text/span';
import type { EditedFile } from '../fileEdits';
import { FileEdits } from '../fileEdits';
import { nameNumber } from '../readDocument';
import type { NotationOf } from './rename';
import { prefixTo, rewrittenPath, withSeparatorsOf } from './writtenPath';

/** An instrument with what is needed to keep its paths right. */
export interface MovingInstrument {
  notation: Notation;
  notationOf: NotationOf;
  instrument: Instrument;
  moves: FileMoves;
  /** The path of a file as it is spelt on the disk, for one that is written in another letter case. */
  actual: (path: string) => string;
}

/** A path in the text of an instrument; `newText` is there where it has to be written anew. */
export interface PathText extends Span {
  newText: string | undefined;
}

/** What becomes of the paths of one instrument when files move. */
export interface MovedPaths {
  paths: PathText[];
  /** What could not be kept right, as sentences. */
  problems: string[];
}

/**
 * The paths of an instrument, those to be written anew with their new text, so that after the moves they lead to the
 * same files: includes, samples behind their default path, default paths whose folder moves, pictures. All of them lead
 * from the folder of the main file, also from there to where that file itself goes.
 */
export function movedPaths(moving: MovingInstrument): MovedPaths {
  const { leftAlone, ...moved } = new PathMover(moving).run();
  const edits = editsOf(moved.paths);
  if (edits.length === 0 || isKept(moving, edits, leftAlone)) return moved;
  const name = nameOf(moving.instrument.sources[0]?.path ?? '');
  return {
    paths: moved.paths.map((path) => ({ ...path, newText: undefined })),
    problems: [
      `The paths in "${name}" could not be adapted, so it was left as it is. Correct them by hand.`,
      ...moved.problems,
    ],
  };
}

/** The edits among paths, each place once. */
function editsOf(paths: readonly PathText[]): TextEdit[] {
  const edits = new Map<string, TextEdit>();
  for (const path of paths)
    if (path.newText !== undefined) edits.set(`${path.source} ${path.start}`, replacing(path, path.newText));
  return [...edits.values()];
}

class PathMover {
  readonly #moving: MovingInstrument;
  readonly #instrument: Instrument;
  readonly #folder: string;
  readonly #newFolder: string;
  readonly #prefixes = new Map<Control, string>();
  readonly #embedded: ReadonlySet<string>;
  readonly #byPlace = new Map<string, PathText>();
  readonly #conflicts = new Set<string>();
  readonly #problems = new Set<string>();
  /** Parameters that had to be left as they are. */
  readonly #leftAlone = new Set<number>();

  constructor(moving: MovingInstrument) {
    this.#moving = moving;
    this.#instrument = moving.instrument;
    const path = moving.instrument.sources[0]?.path ?? '';
    this.#folder = folderOf(path);
    this.#newFolder = folderOf(moving.moves.after(path));
    this.#embedded = embeddedNames(moving.instrument);
  }

  run(): MovedPaths & { leftAlone: ReadonlySet<number> } {
    this.#includes();
    for (const control of this.#instrument.controls) this.#defaultPath(control);
    this.#samples();
    this.#otherPaths();
    return { paths: [...this.#byPlace.values()], problems: [...this.#problems], leftAlone: this.#leftAlone };
  }

  #includes(): void {
    for (const directive of this.#instrument.directives) {
      const { kind, name, value } = directive;
      if (kind !== 'include') continue;
      this.#put(directiveName(directive), name, this.#plainPath(name, value));
    }
  }

  /** A path that nothing is put before, as it is to be written. */
  #plainPath(written: string, reached: string): string {
    const target = this.#after(reached);
    if (joinPath(this.#newFolder, written) === target) return written;
    return withSeparatorsOf(
      isAbsolutePath(written) ? target : relativePath(this.#newFolder, target),
      written,
    );
  }

  #defaultPath(control: Control): void {
    const { defaultPath } = control;
    const prefix = this.#newPrefix(defaultPath);
    this.#prefixes.set(control, prefix);
    const parameter = control.header < 0 ? -1 : this.#instrument.own(control.header, Parameter.default_path);
    if (parameter >= 0 && defaultPath !== '') this.#putParameter(parameter, defaultPath, prefix);
  }

  /** A prefix of sample paths after the moves: its folder goes where the folder goes, the start of a name stays. */
  #newPrefix(prefix: string): string {
    if (prefix === '') return '';
    const written = prefix.replaceAll('\\', '/');
    const cut = written.lastIndexOf('/') + 1;
    const folder = joinPath(this.#folder, written.slice(0, cut));
    const target = this.#moving.moves.after(folder);
    if (joinPath(this.#newFolder, written.slice(0, cut)) === target) return prefix;
    const way = isAbsolutePath(written) ? `${target}/` : prefixTo(this.#newFolder, target);
    return withSeparatorsOf(way + written.slice(cut), prefix);
  }

  #samples(): void {
    const instrument = this.#instrument;
    const used = new Set<number>();
    for (const region of instrument.regions) {
      const parameter = instrument.sampleParameter[region];
      if (parameter < 0) continue;
      used.add(parameter);
      this.#sample(parameter, instrument.control(region));
    }
    // A sample that no region plays at present, because it is overridden or its group is empty.
    for (let parameter = 0; parameter < instrument.parameters.count; parameter++) {
      if (instrument.canonicalName(parameter) === Parameter.sample && !used.has(parameter))
        this.#sample(parameter, instrument.control(instrument.headerOfParameter(parameter)));
    }
  }

  #sample(parameter: number, control: Control): void {
    const value = this.#instrument.valueText(parameter);
    if (value === '' || value.startsWith('*') || this.#embedded.has(value)) return;
    const { defaultPath } = control;
    const prefix = this.#prefixes.get(control) as string;
    const target = this.#after(joinPath(this.#folder, defaultPath + value));
    if (joinPath(this.#newFolder, prefix + value) === target) {
      this.#putParameter(parameter, value, value);
      return;
    }
    const way = this.#wayBehind(prefix, target, isAbsolutePath(defaultPath + value));
    if (way === undefined) {
      this.#leftAlone.add(parameter);
      this.#problem(
        this.#instrument.valueSpan(parameter),
        `"${relativePath(this.#newFolder, target)}" cannot be written after the default path "${prefix}".`,
      );
      return;
    }
    this.#putParameter(parameter, value, withSeparatorsOf(way, defaultPath + value));
  }

  /** The value that together with a prefix leads to a file; `undefined` where there is none. */
  #wayBehind(prefix: string, target: string, isAbsolute: boolean): string | undefined {
    const written = prefix.replaceAll('\\', '/');
    if (written === '') return isAbsolute ? target : relativePath(this.#newFolder, target);
    const cut = written.lastIndexOf('/') + 1;
    const folder = joinPath(this.#newFolder, written.slice(0, cut));
    if (cut === written.length) return relativePath(folder, target);
    const beginning = joinPath(folder, written.slice(cut));
    return target.startsWith(beginning) ? target.slice(beginning.length) : undefined;
  }

  /** Pictures and other files that the format names. */
  #otherPaths(): void {
    const { names, parameters } = this.#instrument;
    for (let parameter = 0; parameter < parameters.count; parameter++) {
      const canonical = this.#instrument.canonicalName(parameter);
      if (canonical === Parameter.sample || canonical === Parameter.default_path) continue;
      if (names.opcode(canonical)?.facts.kind !== 'path') continue;
      const value = this.#instrument.valueText(parameter);
      if (value === '') continue;
      this.#putParameter(parameter, value, this.#plainPath(value, joinPath(this.#folder, value)));
    }
  }

  #after(path: string): string {
    return this.#moving.moves.after(this.#moving.actual(path));
  }

  #putParameter(parameter: number, value: string, newValue: string): void {
    const span = this.#instrument.valueSpan(parameter);
    if (span.start < this.#instrument.nameSpan(parameter).end) {
      if (value === newValue) return;
      this.#leftAlone.add(parameter);
      this.#problem(span, `The path "${value}" comes from a variable. Correct it by hand.`);
      return;
    }
    if (!this.#put(span, value, newValue)) this.#leftAlone.add(parameter);
  }

  /** Notes the new text of a path; answers whether it can be written in this place. */
  #put(place: Span, value: string, newValue: string): boolean {
    const { source, start, end } = place;
    const file = this.#instrument.sources[source];
    const raw = file.text.slice(start, end);
    const { spelling } = this.#moving.notationOf(file);
    const spell = (text: string) => spelling.value(text, { text: file.text, start });
    const inForm = spelling.inForm?.('sample', newValue, raw);
    const newText =
      value === newValue
        ? undefined
        : inForm === undefined
          ? rewrittenPath({ raw, value }, newValue, spell)
          : spell(inForm);
    const key = `${source} ${start}`;
    const before = this.#byPlace.get(key);
    if (this.#conflicts.has(key)) return false;
    if (before && before.newText !== newText) {
      this.#problem(place, `"${raw}" leads to several files, so it was left as it is.`);
      before.newText = undefined;
      this.#conflicts.add(key);
    } else if (!before) this.#byPlace.set(key, { ...spanIn(source, start, end), newText });
    return !this.#conflicts.has(key);
  }

  #problem({ source, start }: Span, message: string): void {
    const file = this.#instrument.sources[source];
    this.#problems.add(`${nameOf(file.path)}, line ${file.positionAt(start).line}: ${message}`);
  }
}

/** The names of samples that are embedded in the text and are no files. */
function embeddedNames(instrument: Instrument): Set<string> {
  const names = new Set<string>();
  const name = nameNumber(instrument, 'name');
  for (let header = 0; header < instrument.headers.count; header++) {
    if (instrument.kind(header) !== HeaderKind.sample) continue;
    const parameter = instrument.own(header, name);
    if (parameter >= 0) names.add(instrument.valueText(parameter));
  }
  return names;
}

/** Whether an instrument with edits, read where it goes, has the same files and each region the same sample as before. */
function isKept(
  { notation, instrument, moves, actual }: MovingInstrument,
  edits: readonly TextEdit[],
  leftAlone: ReadonlySet<number>,
): boolean {
  const after = readEdited(notation, instrument, edits, (path) => moves.after(path));
  if (
    after.headers.count !== instrument.headers.count ||
    after.parameters.count !== instrument.parameters.count ||
    after.sources.length !== instrument.sources.length
  )
    return false;
  const from = folderOf(instrument.sources[0]?.path ?? '');
  const to = folderOf(after.sources[0]?.path ?? '');
  const embedded = embeddedNames(instrument);
  return instrument.regions.every((region, at) => {
    if (leftAlone.has(instrument.sampleParameter[region])) return true;
    const before = instrument.samplePath(region);
    const now = after.samplePath(after.regions[at]);
    if (before === undefined || now === undefined || before.startsWith('*') || embedded.has(before))
      return before === now;
    return moves.after(actual(joinPath(from, before))) === joinPath(to, now);
  });
}

/** A path in a file that may belong to several instruments. */
interface SharedPath {
  source: Source;
  start: number;
  end: number;
  newText: string | undefined;
  isContested: boolean;
}

/**
 * Puts the paths of several instruments together. A path in a file that instruments share, which would have to be
 * written in one way for one and in another for the other, is left as it is.
 */
export class MergedPaths {
  readonly problems: string[] = [];
  readonly #paths = new Map<string, SharedPath>();

  add({ sources }: Instrument, { paths, problems }: MovedPaths): void {
    this.problems.push(...problems);
    for (const { source: file, start, end, newText } of paths) {
      // What stays in the main file itself can be in nobody's way.
      if (file === 0 && newText === undefined) continue;
      const source = sources[file];
      const key = `${source.path}\0${start}`;
      const before = this.#paths.get(key);
      if (!before) this.#paths.set(key, { source, start, end, newText, isContested: false });
      else if (before.newText !== newText && !before.isContested) {
        before.isContested = true;
        this.problems.push(
          `${nameOf(source.path)}, line ${source.positionAt(start).line}: instruments that share this file need different paths here, so it was left as it is.`,
        );
      }
    }
  }

  /** The files that change. */
  get files(): EditedFile[] {
    const edits = new FileEdits();
    for (const { source, start, end, newText, isContested } of this.#paths.values())
      if (newText !== undefined && !isContested) edits.add(source, { start, end, newText });
    return edits.files;
  }
}
