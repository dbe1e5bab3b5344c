import { HeaderKind, headerKindOf, headerNames } from '../model/headerKinds';
import { unknownHeaderFinding } from '../model/headerSuggestions';
import type { Instrument } from '../model/instrument';
import { InstrumentBuilder } from '../model/instrumentBuilder';
import type { ReadOptions } from '../model/notation';
import { folderOf, joinPath, relativePath } from '../model/paths';
import type { Steps } from '../model/steps';
import { finish } from '../model/steps';
import { lendTextBytes, takeBack } from '../model/text/textBytes';
import { oddVariableFinding, Variables } from '../model/variables/variables';
import type { SfzHandler } from './handler';
import { readSfzAgain } from './readAgain';
import { SfzScanner } from './scan';
import { lineFeed } from './scanCodes';

/** Included text that one instrument may bring in, in UTF-16 units; a chain of files that include one another twice grows without end. */
const mostIncluded = 64 * 1024 * 1024;
const mostIncludes = 10_000;
/** Files within files. */
const mostDepth = 64;
/** Names of opcodes whose text is shown and means nothing else. */
const labelName = /(?:^|_)label(?:_|$)/;
/** Characters that are read in a step. */
const inStep = 128 * 1024;

/**
 * Reads SFZ text into an instrument. Never throws: what makes no sense is among the instrument's findings, with its
 * span, and reading goes on. Included files are asked for through `options.include`, by their path joined to the
 * folder of the main file, however deep they are included.
 */
export function readSfz(text: string, options: ReadOptions): Instrument {
  return finish(readSfzInSteps(text, options));
}

/** As {@link readSfz}, in steps. */
export function* readSfzInSteps(text: string, options: ReadOptions): Steps<Instrument> {
  const { previous, path } = options;
  const again =
    previous && (yield* readSfzAgain(previous, text, path, (part) => finish(readWhole(part, options))));
  return again ?? (yield* readWhole(text, options));
}

function* readWhole(text: string, options: ReadOptions): Steps<Instrument> {
  const builder = new InstrumentBuilder('sfz', text.length);
  yield* new SfzReader(builder, options).read(text, options.path);
  return builder.finish();
}

/**
 * Reads SFZ text in steps into a builder that has been at work already, as an included part of an instrument in another
 * notation. Variables are shared with that instrument.
 */
export function* readSfzInto(
  builder: InstrumentBuilder,
  text: string,
  path: string,
  options: ReadOptions,
  variables: Variables,
): Steps<void> {
  yield* new SfzReader(builder, options, variables).read(text, path);
}

class SfzReader implements SfzHandler {
  readonly #builder: InstrumentBuilder;
  readonly #options: ReadOptions;
  readonly #variables: Variables;
  /** The files that are being read, the main file first. */
  readonly #open: string[] = [];
  #text = '';
  #codes: Uint8Array = new Uint8Array(0);
  #header = -1;
  #included = 0;
  #includes = 0;
  /** The file that is to be read before what follows its include. */
  #toEnter: { path: string; text: string } | undefined;

  constructor(builder: InstrumentBuilder, options: ReadOptions, variables = new Variables()) {
    this.#builder = builder;
    this.#options = options;
    this.#variables = variables;
  }

  *read(text: string, path: string): Steps<void> {
    this.#open.push(path);
    this.#builder.enterSource(path, text);
    this.#text = text;
    this.#checkIsText();
    const codes = lendTextBytes(text, lineFeed);
    const scanner = new SfzScanner(text, codes, this);
    for (let share = 0; !scanner.isAtEnd; share += inStep / text.length) {
      this.#text = text;
      this.#codes = codes;
      scanner.scanOn(inStep);
      const entered = this.#toEnter;
      this.#toEnter = undefined;
      if (entered) {
        yield* this.read(entered.text, entered.path);
        this.#builder.leaveSource();
      } else if (share < 1) yield share;
    }
    takeBack(codes);
    this.#open.pop();
  }

  #checkIsText(): void {
    const at = this.#text.indexOf('\0');
    if (at < 0) return;
    this.#problem(
      at,
      at + 1,
      'There is a NUL character here, so this may not be a text file. It is read as a space.',
    );
  }

  #problem(start: number, end: number, message: string): void {
    this.#builder.addFinding({ code: 'syntax-error', severity: 'error', start, end, message });
  }

  header(start: number, end: number, nameStart: number, nameEnd: number): void {
    const kind = this.#kindAt(nameStart, nameEnd);
    if (kind === HeaderKind.unknown) {
      this.#builder.addFinding(
        unknownHeaderFinding(
          this.#text.slice(nameStart, nameEnd),
          { start: nameStart, end: nameEnd },
          (name) => `<${name}>`,
        ),
      );
    }
    this.#header = this.#builder.openHeader(kind, start, end);
  }

  /** The kind of a header, without cutting a string out of the text for the usual spellings. */
  #kindAt(start: number, end: number): HeaderKind {
    for (let kind = 0; kind < headerNames.length; kind++) {
      const name = headerNames[kind] as string;
      if (name.length === end - start && this.#text.startsWith(name, start)) return kind as HeaderKind;
    }
    const name = this.#text.slice(start, end);
    // Blanks around the name are let pass; what else counts as white space is part of another name.
    return /[^ \tA-Za-z]/.test(name) ? HeaderKind.unknown : headerKindOf(name.trim());
  }

  opcode(
    nameStart: number,
    nameEnd: number,
    hash: number,
    valueStart: number,
    valueEnd: number,
    number: number,
    variables: boolean,
  ): void {
    if (this.#header < 0) this.#header = this.#builder.openHeader(HeaderKind.unknown, nameStart, nameStart);
    if (variables) {
      this.#opcodeWithVariables(nameStart, nameEnd, valueStart, valueEnd, number);
    } else {
      const name = this.#builder.names.idOfCodes(this.#text, this.#codes, nameStart, nameEnd, hash);
      this.#builder.addParameter(name, nameStart, valueStart, valueEnd, number);
    }
    this.#builder.closeHeader(this.#header, valueEnd);
  }

  #opcodeWithVariables(
    nameStart: number,
    nameEnd: number,
    valueStart: number,
    valueEnd: number,
    number: number,
  ): void {
    const builder = this.#builder;
    const name = this.#expand(nameStart, nameEnd);
    const value = this.#expand(valueStart, valueEnd, labelName.test(name));
    const parameter = builder.addParameter(builder.names.idOf(name), nameStart, valueStart, valueEnd, number);
    if (name.length !== nameEnd - nameStart) builder.setNameEnd(parameter, nameEnd);
    builder.setValue(parameter, value);
  }

  /** A text with its variables put in; in a label of a text that defines none, `$` is a sign like others. */
  #expand(start: number, end: number, isLabel = false): string {
    return this.#variables.expand(this.#text.slice(start, end), (variable) => {
      if (isLabel && variable.problem === 'unknown' && this.#variables.isEmpty) return;
      const placed = { ...variable, start: start + variable.start, end: start + variable.end };
      this.#builder.addFinding(oddVariableFinding(placed, `"#define ${variable.name} value"`));
    });
  }

  define(start: number, nameStart: number, nameEnd: number, valueStart: number, valueEnd: number): void {
    const name = this.#text.slice(nameStart + 1, nameEnd);
    const value = this.#text.slice(valueStart, valueEnd);
    this.#variables.define(name, value.includes('$') ? this.#expand(valueStart, valueEnd) : value);
    this.#builder.addDirective({
      kind: 'define',
      start,
      end: valueEnd,
      name: `$${name}`,
      nameStart,
      nameEnd,
      value,
    });
  }

  include(start: number, end: number, pathStart: number, pathEnd: number): void {
    const builder = this.#builder;
    const written = this.#expand(pathStart, pathEnd);
    const path = joinPath(folderOf(this.#options.path), written);
    builder.addDirective({
      kind: 'include',
      start,
      end,
      name: written,
      nameStart: pathStart,
      nameEnd: pathEnd,
      value: path,
    });
    const refuse = (code: string, message: string) =>
      builder.addFinding({ code, severity: 'error', start: pathStart, end: pathEnd, message });
    if (this.#open.includes(path)) {
      const folder = folderOf(this.#options.path);
      const circle = [...this.#open.slice(this.#open.indexOf(path)), path];
      const way = circle.map((one) => `"${relativePath(folder, one)}"`).join(' → ');
      refuse(
        'include-cycle',
        `This file includes itself: ${way}. Remove the #include that closes the circle.`,
      );
      return;
    }
    if (this.#open.length > mostDepth) {
      refuse(
        'include-cycle',
        `Files include one another more than ${mostDepth} deep. The file is left out here.`,
      );
      return;
    }
    const included = this.#options.include?.(path) ?? { kind: 'pending' };
    if (included.kind === 'missing') {
      refuse(
        'include-missing',
        `There is no file "${written}". Paths start at the folder of the main file. Correct the path or put the file there.`,
      );
      return;
    }
    if (included.kind === 'refused') {
      refuse('include-refused', `"${written}" ${included.reason}`);
      return;
    }
    if (included.kind === 'pending') return;
    this.#included += included.text.length;
    this.#includes++;
    if (this.#included > mostIncluded || this.#includes > mostIncludes) {
      refuse(
        'include-cycle',
        'Included files bring in more text than an instrument can hold. The file is left out here.',
      );
      return;
    }
    this.#toEnter = { path, text: included.text };
  }

  comment(start: number, end: number): void {
    const text = this.#text.slice(start + 2, this.#text[start + 1] === '*' ? end - 2 : end);
    this.#builder.addDirective({
      kind: 'comment',
      start,
      end,
      name: '',
      nameStart: start,
      nameEnd: start,
      value: text.trim(),
    });
  }

  stray(start: number, end: number): void {
    const text = this.#text.slice(start, end);
    if (text.startsWith('$') && this.#readExpanded(text, start, end)) return;
    this.#problem(
      start,
      end,
      `"${shorten(text)}" is neither a header, an opcode nor a comment. Opcodes read name=value; put // before a remark.`,
    );
  }

  problem(start: number, end: number, message: string): void {
    this.#problem(start, end, message);
  }

  /** A variable can stand for whole opcodes: `#define $SOFT hivel=63`, later `$SOFT`. */
  #readExpanded(text: string, start: number, end: number): boolean {
    const value = this.#variables.value(text.slice(1));
    if (value === undefined) {
      this.#expand(start, end);
      return true;
    }
    const equals = value.indexOf('=');
    if (equals <= 0) return false;
    const builder = this.#builder;
    if (this.#header < 0) this.#header = builder.openHeader(HeaderKind.unknown, start, start);
    const parameter = builder.addParameter(
      builder.names.idOf(value.slice(0, equals)),
      start,
      start,
      end,
      Number.NaN,
    );
    builder.setNameEnd(parameter, end);
    builder.setValue(parameter, value.slice(equals + 1));
    builder.closeHeader(this.#header, end);
    return true;
  }
}

function shorten(text: string): string {
  return text.length > 40 ? `${text.slice(0, 39)}…` : text;
}
