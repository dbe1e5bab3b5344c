import { HeaderKind } from '../model/headerKinds';
import type { Instrument } from '../model/instrument';
import { parameterStride } from '../model/instrument';
import type { WriteOptions, Written } from '../model/notation';
import type { ConversionNote } from '../model/notes';
import { writtenValue } from '../model/rebase';
import type { Chain } from '../model/writingOrder';
import { chainOf, passingKinds, placeComments } from '../model/writingOrder';
import { scanSfz } from './scan';

/**
 * Writes an instrument as one SFZ text: headers and opcodes in their order, comments with the header that they
 * belong to, variables and included files written out. A value that SFZ text cannot hold is left out with a note.
 */
export function writeSfz(instrument: Instrument, options: WriteOptions = {}): Written {
  return new SfzWriter(instrument, options).write();
}

/** Opcodes with whole numbers up to here, above or below 0, are put together once. */
const mostShort = 999;

/** The name of an opcode. */
interface NameText {
  text: string;
  /** Whether it reads back as it is before any number. */
  isPlain: boolean;
  /** The opcode with the values from −{@link mostShort} on. */
  shorts: string[];
}

class SfzWriter {
  readonly #instrument: Instrument;
  readonly #options: WriteOptions;
  readonly #notes: ConversionNote[] = [];
  readonly #lines: string[] = [];
  /** The global, master and group in force at the end of the lines written so far. */
  #inForce: Chain = [-1, -1, -1];
  /** The parent of the region written last, where nothing has changed what is in force since; else −2. */
  #lastParent = -2;
  /** What is known of each name, by its number. */
  readonly #names: NameText[] = [];

  constructor(instrument: Instrument, options: WriteOptions) {
    this.#instrument = instrument;
    this.#options = options;
  }

  write(): Written {
    const { headers } = this.#instrument;
    const comments = placeComments(this.#instrument);
    this.#noteDirectives();
    for (let header = 0; header < headers.count; header++) {
      for (const comment of comments.leading.get(header) ?? []) this.#comment(comment);
      this.#bringIntoForce(header);
      this.#header(header, comments.trailing.get(header) ?? []);
    }
    for (const comment of comments.leading.get(headers.count) ?? []) this.#comment(comment);
    const lineEnd = this.#options.lineEnd ?? '\n';
    if (this.#lines.length > 0) this.#lines.push('');
    return { text: this.#lines.join(lineEnd), notes: this.#notes };
  }

  #noteDirectives(): void {
    for (const { kind, source, start, end, name, value } of this.#instrument.directives) {
      if (kind === 'comment') continue;
      const message =
        kind === 'define'
          ? `${name} is written out: its value ${value} stands where it was used.`
          : `The text of "${name}" is written in the place of its include.`;
      this.#notes.push({ kind: 'approximated', source, start, end, message });
    }
  }

  /** Nested text can go back to an outer header; in SFZ that needs the header once more. */
  #bringIntoForce(header: number): void {
    const kind = this.#instrument.kind(header);
    const own = passingKinds.indexOf(kind as (typeof passingKinds)[number]);
    if (own < 0 && kind !== HeaderKind.region) return;
    const parent = this.#instrument.parent(header);
    if (own < 0 && parent === this.#lastParent) return;
    const wanted = chainOf(this.#instrument, header);
    const levels = own < 0 ? passingKinds.length : own;
    for (let level = 0; level < levels; level++) {
      const outer = wanted[level] as number;
      if (this.#inForce[level] === outer) continue;
      if (outer >= 0) this.#header(outer, []);
      else this.#lines.push(`<${['global', 'master', 'group'][level]}>`);
      this.#enter(level, outer);
    }
    if (own >= 0) this.#enter(own, header);
    else this.#lastParent = parent;
  }

  #enter(level: number, header: number): void {
    this.#lastParent = -2;
    this.#inForce[level] = header;
    this.#inForce.fill(-1, level + 1);
  }

  #header(header: number, comments: readonly string[]): void {
    const instrument = this.#instrument;
    const name = instrument.headerName(header);
    const oneLine = instrument.kind(header) === HeaderKind.region;
    const first = instrument.firstParameter(header);
    const end = instrument.endParameter(header);
    let line = name === '' ? '' : `<${name}>`;
    if (!oneLine) {
      if (this.#lines.length > 0 && name !== '') this.#lines.push('');
      if (name !== '') this.#lines.push(line);
    }
    for (let parameter = first; parameter < end; parameter++) {
      const opcode = this.#opcode(header, parameter);
      if (opcode === undefined) continue;
      if (!oneLine) this.#lines.push(opcode);
      else line += line === '' ? opcode : ` ${opcode}`;
    }
    if (oneLine && comments.length === 1) line += ` // ${commentLine(comments[0] as string)}`;
    if (oneLine) this.#lines.push(line);
    if (!oneLine || comments.length > 1) for (const comment of comments) this.#comment(comment);
  }

  /** An opcode as it is written; `undefined`, with a note, for one that SFZ text cannot hold. */
  #opcode(header: number, parameter: number): string | undefined {
    const instrument = this.#instrument;
    const name = this.#nameText(instrument.name(parameter));
    const number = instrument.parameters.numbers[parameter];
    if (!this.#options.move && name.isPlain && !Number.isNaN(number)) {
      if (this.#isShort(parameter, number)) {
        name.shorts[number + mostShort] ??= `${name.text}=${number}`;
        return name.shorts[number + mostShort];
      }
      return `${name.text}=${instrument.valueText(parameter)}`;
    }
    const value = writtenValue(instrument, header, parameter, this.#options);
    if (!canHold(name.text, value)) {
      this.#notes.push({
        kind: 'dropped',
        ...instrument.valueSpan(parameter),
        message: `${name.text} is left out: SFZ text cannot hold the value "${value.replace(/\s+/g, ' ')}".`,
      });
      return undefined;
    }
    return `${name.text}=${value}`;
  }

  /** Whether a value is a small whole number that is written in no other way than as its digits. */
  #isShort(parameter: number, number: number): boolean {
    const { cells, values } = this.#instrument.parameters;
    if (!(number >= -mostShort && number <= mostShort) || number !== Math.trunc(number)) return false;
    const at = parameter * parameterStride;
    const size = Math.abs(number);
    const digits = size < 10 ? 1 : size < 100 ? 2 : 3;
    return cells[at + 3] - cells[at + 2] === (number < 0 ? digits + 1 : digits) && !values.has(parameter);
  }

  #nameText(id: number): NameText {
    let name = this.#names[id];
    if (!name) {
      const text = this.#instrument.names.text(id);
      name = { text, isPlain: harmlessName.test(text), shorts: [] };
      this.#names[id] = name;
    }
    return name;
  }

  #comment(text: string): void {
    for (const line of text.split(/\r\n|\r|\n/)) this.#lines.push(`// ${commentLine(line)}`.trimEnd());
  }
}

function commentLine(text: string): string {
  return text.replace(/[\r\n]+/g, ' ').trim();
}

const harmless = /^[\w.#()+\-\\]+(?:[ /][\w.#()+\-\\]+)*$/;
const harmlessName = /^\w+$/;

/** Whether a name and value read back from SFZ text as they are. */
function canHold(name: string, value: string): boolean {
  if (harmlessName.test(name) && harmless.test(value) && !value.includes(' #')) return true;
  let read = 0;
  const text = `before=1 ${name}=${value} next=1`;
  let exact = true;
  const fail = () => {
    exact = false;
  };
  scanSfz(text, {
    header: fail,
    define: fail,
    include: fail,
    comment: fail,
    stray: fail,
    problem: fail,
    opcode(nameStart, nameEnd, _hash, valueStart, valueEnd) {
      const expected =
        [
          ['before', '1'],
          [name, value],
          ['next', '1'],
        ][read++] ?? [];
      if (text.slice(nameStart, nameEnd) !== expected[0] || text.slice(valueStart, valueEnd) !== expected[1])
        exact = false;
    },
  });
  return exact && read === 3 && !/[\r\n]/.test(value);
}
