import { HeaderKind } from '../model/headerKinds';
import type { Instrument } from '../model/instrument';
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

class SfzWriter {
  readonly #instrument: Instrument;
  readonly #options: WriteOptions;
  readonly #notes: ConversionNote[] = [];
  readonly #lines: string[] = [];
  /** The global, master and group in force at the end of the lines written so far. */
  #inForce: Chain = [-1, -1, -1];

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
    return { text: this.#lines.map((line) => line + lineEnd).join(''), notes: this.#notes };
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
  }

  #enter(level: number, header: number): void {
    this.#inForce[level] = header;
    this.#inForce.fill(-1, level + 1);
  }

  #header(header: number, comments: readonly string[]): void {
    const opcodes: string[] = [];
    const end = this.#instrument.endParameter(header);
    for (let parameter = this.#instrument.firstParameter(header); parameter < end; parameter++) {
      const opcode = this.#opcode(header, parameter);
      if (opcode !== undefined) opcodes.push(opcode);
    }
    const name = this.#instrument.headerName(header);
    const tag = name === '' ? [] : [`<${name}>`];
    const oneLine = this.#instrument.kind(header) === HeaderKind.region;
    const first = this.#lines.length;
    if (oneLine) this.#lines.push([...tag, ...opcodes].join(' '));
    else {
      if (first > 0 && name !== '') this.#lines.push('');
      this.#lines.push(...tag, ...opcodes);
    }
    if (comments.length === 1 && oneLine)
      this.#lines.push(`${this.#lines.pop()} // ${commentLine(comments[0] as string)}`);
    else for (const comment of comments) this.#comment(comment);
  }

  #opcode(header: number, parameter: number): string | undefined {
    const instrument = this.#instrument;
    const name = instrument.names.text(instrument.name(parameter));
    const value = writtenValue(instrument, header, parameter, this.#options);
    if (!canHold(name, value)) {
      this.#notes.push({
        kind: 'dropped',
        ...instrument.valueSpan(parameter),
        message: `${name} is left out: SFZ text cannot hold the value "${value.replace(/\s+/g, ' ')}".`,
      });
      return undefined;
    }
    return `${name}=${value}`;
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
