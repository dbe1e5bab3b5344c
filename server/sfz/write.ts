import { HeaderKind } from '../model/headerKinds';
import type { Instrument } from '../model/instrument';
import { parameterStride } from '../model/instrument';
import type { WriteOptions, Written } from '../model/notation';
import type { ConversionNote } from '../model/notes';
import { writtenValue } from '../model/rebase';
import { bytesOf } from '../model/textBytes';
import type { Chain } from '../model/writingOrder';
import { chainOf, passingKinds, placeComments } from '../model/writingOrder';
import { LineBuffer } from './lineBuffer';
import { scanSfz } from './scan';

/**
 * Writes an instrument as one SFZ text: headers and opcodes in their order, comments with the header that they
 * belong to, variables and included files written out. A value that SFZ text cannot hold is left out with a note.
 */
export function writeSfz(instrument: Instrument, options: WriteOptions = {}): Written {
  return new SfzWriter(instrument, options).write();
}

/** The name of an opcode. */
interface NameText {
  text: string;
  /** Whether it reads back as it is before any harmless value. */
  isPlain: boolean;
  /** The name behind a space and before `=`. */
  before: string;
  /** The bytes of {@link before}. */
  codes: Uint8Array;
}

/** The likely length of an opcode with its space. */
const perParameter = 16;

class SfzWriter {
  readonly #instrument: Instrument;
  readonly #options: WriteOptions;
  readonly #notes: ConversionNote[] = [];
  readonly #lines: LineBuffer;
  /** The global, master and group in force at the end of the lines written so far. */
  #inForce: Chain = [-1, -1, -1];
  /** The parent of the region written last, where nothing has changed what is in force since; else −2. */
  #lastParent = -2;
  /** The bytes of the text that all values stand in, where they are written as they are. */
  readonly #codes: Uint8Array | undefined;
  /** 1 for values that differ from the text at their span. */
  readonly #differs: Uint8Array;
  /** What is known of each name, by its number. */
  readonly #names: NameText[] = [];

  constructor(instrument: Instrument, options: WriteOptions) {
    this.#instrument = instrument;
    this.#options = options;
    this.#lines = new LineBuffer(options.lineEnd ?? '\n', instrument.parameters.count * perParameter);
    this.#differs = new Uint8Array(instrument.parameters.count);
    for (const parameter of instrument.parameters.values.keys()) this.#differs[parameter] = 1;
    const [source, ...others] = instrument.sources;
    if (source && others.length === 0 && !options.move) this.#codes = bytesOf(source.text, 0);
  }

  write(): Written {
    const { headers } = this.#instrument;
    const comments = placeComments(this.#instrument);
    this.#noteDirectives();
    for (let header = 0; header < headers.count; header++) {
      for (const comment of comments.leading.get(header) ?? []) this.#comment(comment);
      this.#bringIntoForce(header);
      const trailing = comments.trailing.get(header) ?? [];
      if (trailing.length > 0 || !this.#plainRegion(header)) this.#header(header, trailing);
    }
    for (const comment of comments.leading.get(headers.count) ?? []) this.#comment(comment);
    return { text: this.#lines.finish(), notes: this.#notes };
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
      else this.#lines.line(`<${['global', 'master', 'group'][level]}>`);
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
      if (!this.#lines.isEmpty && name !== '') this.#lines.line('');
      if (name !== '') this.#lines.line(line);
    }
    for (let parameter = first; parameter < end; parameter++) {
      const opcode = this.#opcode(header, parameter);
      if (opcode === undefined) continue;
      if (!oneLine) this.#lines.line(opcode);
      else line += line === '' ? opcode : ` ${opcode}`;
    }
    if (oneLine && comments.length === 1) line += ` // ${commentLine(comments[0] as string)}`;
    if (oneLine) this.#lines.line(line);
    if (!oneLine || comments.length > 1) for (const comment of comments) this.#comment(comment);
  }

  /**
   * Writes a region straight from the bytes of its text, without a string for each value. Answers `false`, with nothing
   * written, where a name or value needs a closer look.
   */
  #plainRegion(header: number): boolean {
    const instrument = this.#instrument;
    const codes = this.#codes;
    if (!codes || instrument.kind(header) !== HeaderKind.region) return false;
    const lines = this.#lines;
    const { cells, numbers, values } = instrument.parameters;
    const end = instrument.endParameter(header);
    let plain = lines.ascii('<region>');
    for (let parameter = instrument.firstParameter(header); plain && parameter < end; parameter++) {
      const name = this.#nameText(instrument.name(parameter));
      plain = name.isPlain;
      if (this.#differs[parameter] === 1) {
        const value = values.get(parameter) as string;
        plain &&= !Number.isNaN(numbers[parameter]) || canHold(name.text, value);
        plain &&= lines.ascii(name.before) && lines.ascii(value);
      } else {
        const at = parameter * parameterStride;
        plain &&= this.#plainValue(name.codes, codes, cells[at + 2], cells[at + 3]);
      }
    }
    if (plain) lines.endLine();
    else lines.dropLine();
    return plain;
  }

  /** Writes the name and value of an opcode; `false` where the value is none that stands for itself in any SFZ text. */
  #plainValue(name: Uint8Array, codes: Uint8Array, start: number, end: number): boolean {
    const lines = this.#lines;
    const out = lines.room(name.length + end - start);
    let at = lines.length;
    for (let place = 0; place < name.length; place++) out[at++] = name[place];
    let before = parting;
    for (let place = start; place < end; place++) {
      const code = codes[place];
      const kind = harmlessKinds[code];
      if (kind === 0 || (kind === parting && before === parting)) return false;
      if (code === hash && place > start && codes[place - 1] === space) return false;
      before = kind;
      out[at++] = code;
    }
    lines.length = at;
    return before !== parting;
  }

  /** An opcode as it is written; `undefined`, with a note, for one that SFZ text cannot hold. */
  #opcode(header: number, parameter: number): string | undefined {
    const name = this.#instrument.names.text(this.#instrument.name(parameter));
    const value = writtenValue(this.#instrument, header, parameter, this.#options);
    if (!canHold(name, value)) {
      this.#notes.push({
        kind: 'dropped',
        ...this.#instrument.valueSpan(parameter),
        message: `${name} is left out: SFZ text cannot hold the value "${value.replace(/\s+/g, ' ')}".`,
      });
      return undefined;
    }
    return `${name}=${value}`;
  }

  #nameText(id: number): NameText {
    let name = this.#names[id];
    if (!name) {
      const text = this.#instrument.names.text(id);
      const before = ` ${text}=`;
      name = { text, isPlain: harmlessName.test(text), before, codes: bytesOf(before, 0).subarray(0, -1) };
      this.#names[id] = name;
    }
    return name;
  }

  #comment(text: string): void {
    for (const line of text.split(/\r\n|\r|\n/)) this.#lines.line(`// ${commentLine(line)}`.trimEnd());
  }
}

function commentLine(text: string): string {
  return text.replace(/[\r\n]+/g, ' ').trim();
}

const harmless = /^[\w.#()+\-\\]+(?:[ /][\w.#()+\-\\]+)*$/;
const harmlessName = /^\w+$/;

const space = 32;
const hash = 35;
const parting = 2;

/** By character: 1 for those of harmless values, {@link parting} for those that stand between them, else 0. */
const harmlessKinds = Uint8Array.from({ length: 256 }, (_, code) => {
  const sign = String.fromCharCode(code);
  if (sign === ' ' || sign === '/') return parting;
  return code < 128 && harmless.test(sign) ? 1 : 0;
});

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
