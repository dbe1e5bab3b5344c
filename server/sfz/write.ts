import { isXmlFileName } from '../model/fileNames';
import { HeaderKind } from '../model/headerKinds';
import type { Instrument } from '../model/instrument';
import { parameterStride } from '../model/instrumentParts';
import type { WriteOptions, Written } from '../model/notation';
import type { ConversionNote } from '../model/notes';
import { Parameter } from '../model/parameterNames';
import type { Steps } from '../model/steps';
import { finish, piecesInStep } from '../model/steps';
import { LineBuffer } from '../model/text/lineBuffer';
import { TextWindow } from '../model/text/textWindow';
import type { VariableText } from '../model/variables/variableText';
import { joinedText } from '../model/variables/variableText';
import type { IncludePart } from '../model/writing/includeParts';
import { writtenValue } from '../model/writing/rebase';
import { writeKeeping } from '../model/writing/writeKeeping';
import type { Chain } from '../model/writing/writingOrder';
import { chainOf, passingKinds } from '../model/writing/writingOrder';
import type { DirectiveForms, WritingPlan } from '../model/writing/writingPlan';
import { writtenInPieces } from '../model/writing/writtenPieces';
import { harmlessKinds, harmlessName, isReadBack, parting } from './holdable';
import { readSfzInSteps } from './read';
import { hash, space } from './scanCodes';

/**
 * Writes an instrument as one SFZ text: headers and opcodes in their order, comments with the header that they belong to,
 * variables and included files written out or kept, as `options` say. A value that SFZ text cannot hold is left out with a note.
 */
export function writeSfz(instrument: Instrument, options: WriteOptions = {}): Written {
  return finish(writeSfzInSteps(instrument, options));
}

/** As {@link writeSfz}, in steps. */
export function writeSfzInSteps(instrument: Instrument, options: WriteOptions = {}): Steps<Written> {
  return writeKeeping(instrument, options, {
    forms: directiveForms,
    write: (plan) => new SfzWriter(instrument, options, plan).write(),
    read: readSfzInSteps,
  });
}

/** What SFZ text can say of variables and includes. */
const directiveForms: DirectiveForms = {
  hasLiterals: false,
  hasVariableNames: true,
  canDefine: (name, value) =>
    /^\w+$/.test(name) && /^(?!\/[/*])(?:(?!\/[/*])[!-\ud7ff\ue000-\uffff])+$/.test(joinedText(value)),
  canInclude: (path, file) => {
    const written = joinedText(path);
    if (!/^[^"\r\n\0]+$/.test(written) || written.trim() !== written) return false;
    return !isXmlFileName(written) && !(file && /^\ufeff?\s*<[?!a-z][^>]*(?:[?]>|"|-->)/i.test(file.text));
  },
};

/** The name of an opcode. */
interface NameText {
  text: string;
  /** Whether it reads back as it is before any harmless value. */
  isPlain: boolean;
  /** Whether the value is a path that leads elsewhere from another folder. */
  isPath: boolean;
  /** The name behind a space and before `=`. */
  before: string;
  /** The bytes of {@link before}, four in a word, the first in the lowest place; zeros fill the last word. */
  words: Int32Array;
}

/** The likely length of an opcode with its space. */
const perParameter = 16;

/** How the value of a parameter differs from the text at its span. */
const Difference = { none: 0, text: 1, number: 2, noted: 3 } as const;

class SfzWriter {
  readonly #instrument: Instrument;
  readonly #options: WriteOptions;
  readonly #plan: WritingPlan;
  readonly #notes: ConversionNote[] = [];
  /** Parameters of which there is a note. */
  readonly #noted = new Set<number>();
  readonly #lines: LineBuffer;
  /** The global, master and group in force at the end of the lines written so far. */
  #inForce: Chain = [-1, -1, -1];
  /** The parent of the region written last, where nothing has changed what is in force since; else −2. */
  #lastParent = -2;
  #hasHeaders = false;
  /** The bytes of {@link #lines}, and how words are put into them. */
  #viewed: Uint8Array = new Uint8Array(0);
  #view: DataView = new DataView(new ArrayBuffer(0));
  /** The bytes of the text that all values stand in. */
  readonly #codes: TextWindow | undefined;
  /** By parameter, a {@link Difference}; `noted` for those that need a closer look. */
  readonly #differs: Uint8Array;
  /** What is known of each name, by its number. */
  readonly #names: NameText[] = [];

  constructor(instrument: Instrument, options: WriteOptions, plan: WritingPlan) {
    this.#instrument = instrument;
    this.#options = options;
    this.#plan = plan;
    const { count, values, translated } = instrument.parameters;
    this.#lines = new LineBuffer(options.lineEnd ?? '\n', count * perParameter);
    this.#differs = new Uint8Array(count);
    for (const parameter of values.keys()) this.#differs[parameter] = Difference.text;
    if (translated) {
      for (let parameter = 0; parameter < count; parameter++)
        if (translated.isNumber[parameter] === 1) this.#differs[parameter] = Difference.number;
    }
    for (const special of [plan.values.keys(), plan.unholdable, plan.parameterNotes.keys()])
      for (const parameter of special) this.#differs[parameter] = Difference.noted;
    const [source, ...others] = instrument.sources;
    if (source && others.length === 0) this.#codes = new TextWindow(source.text);
  }

  *write(): Steps<Written> {
    const { headers, parameters } = this.#instrument;
    const plan = this.#plan;
    for (let header = 0; header < headers.count; header++) {
      if (header % piecesInStep === 0) yield header / headers.count;
      this.#leading(header);
      if (plan.isIncluded(header)) continue;
      this.#bringIntoForce(header);
      const trailing = plan.trailing.get(header);
      if (trailing || !this.#plainRegion(header))
        this.#header(header, trailing?.map(({ text }) => text) ?? [], true);
    }
    this.#leading(headers.count);
    const kept = parameters.count - this.#noted.size;
    return writtenInPieces(this.#lines.pieces(), { notes: this.#notes, kept });
  }

  /** Writes what stands before a header. */
  #leading(header: number): void {
    for (const part of this.#plan.leading.get(header) ?? []) {
      if (part.kind === 'comment') this.#comment(part.text);
      else if (part.kind === 'define') this.#lines.line(`#define $${part.name} ${joinedText(part.value)}`);
      else this.#include(part.path, part.part);
    }
    for (const note of this.#plan.headerNotes.get(header) ?? [])
      this.#notes.push({ ...note, written: { start: this.#lines.position, end: this.#lines.position } });
  }

  #include(path: VariableText, { firstHeader, endHeader }: IncludePart): void {
    if (endHeader > firstHeader) this.#bringIntoForce(firstHeader);
    this.#lines.line(`#include "${joinedText(path)}"`);
    for (let header = firstHeader; header < endHeader; header++) {
      const level = passingKinds.indexOf(this.#instrument.kind(header) as (typeof passingKinds)[number]);
      if (level >= 0) this.#enter(level, header);
    }
    if (endHeader > firstHeader) this.#hasHeaders = true;
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
      const outer = wanted[level];
      if (this.#inForce[level] === outer) continue;
      if (outer >= 0) this.#header(outer, [], false);
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

  /** Writes a header with its opcodes; `isFirst` is false where it was written before and is repeated. */
  #header(header: number, comments: readonly string[], isFirst: boolean): void {
    const instrument = this.#instrument;
    const lines = this.#lines;
    const name = instrument.headerName(header);
    if (name === '' && this.#hasHeaders) {
      this.#leaveOut(header);
      return;
    }
    const oneLine = instrument.kind(header) === HeaderKind.region;
    let line = name === '' ? '' : `<${name}>`;
    if (!oneLine && name !== '') {
      if (!lines.isEmpty) lines.line('');
    }
    const tag = { start: lines.position, end: lines.position + line.length };
    if (!oneLine && name !== '') lines.line(line);
    if (name !== '') this.#hasHeaders = true;
    const end = instrument.endParameter(header);
    for (let parameter = instrument.firstParameter(header); parameter < end; parameter++) {
      const opcode = this.#opcode(header, parameter, isFirst ? tag : undefined);
      if (opcode === undefined) continue;
      const start = lines.position + (oneLine ? line.length + 1 : 0);
      if (isFirst) this.#place(parameter, { start, end: start + opcode.length });
      if (!oneLine) lines.line(opcode);
      else line += ` ${opcode}`;
    }
    if (oneLine && comments.length === 1 && !/[\r\n]/.test(comments[0]))
      line += ` // ${commentLine(comments[0])}`.trimEnd();
    else if (oneLine) {
      lines.line(line);
      line = '';
    }
    if (oneLine && line !== '') lines.line(line);
    else for (const comment of comments) this.#comment(comment);
  }

  /** Puts down where a value stands of which there are notes. */
  #place(parameter: number, written: { start: number; end: number }): void {
    for (const note of this.#plan.parameterNotes.get(parameter) ?? []) {
      this.#noted.add(parameter);
      if (this.#options.readingNotes?.get(parameter)?.includes(note)) note.written = written;
      else this.#notes.push({ ...note, written });
    }
  }

  /** Opcodes without a header, which behind others would become theirs. */
  #leaveOut(header: number): void {
    const instrument = this.#instrument;
    const written = { start: this.#lines.position, end: this.#lines.position };
    const end = instrument.endParameter(header);
    for (let parameter = instrument.firstParameter(header); parameter < end; parameter++) {
      this.#noted.add(parameter);
      const name = instrument.names.text(instrument.name(parameter));
      const message = `${name} is left out: it stands in no header and has no effect.`;
      this.#notes.push({ kind: 'dropped', ...instrument.parameterSpan(parameter), message, written });
    }
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
    const { cells, numbers } = instrument.parameters;
    const end = instrument.endParameter(header);
    const isMoved = this.#options.move !== undefined;
    let plain = lines.ascii('<region>');
    for (let parameter = instrument.firstParameter(header); plain && parameter < end; parameter++) {
      const name = this.#nameText(instrument.name(parameter));
      plain = name.isPlain;
      const difference = this.#differs[parameter];
      if (difference === Difference.noted) plain = false;
      else if (difference !== Difference.none || (isMoved && name.isPath)) {
        const value = name.isPath
          ? writtenValue(instrument, header, parameter, this.#options)
          : instrument.valueText(parameter);
        plain &&= !Number.isNaN(numbers[parameter]) || isReadBack(name.text, value);
        plain &&= lines.ascii(name.before) && lines.ascii(value);
      } else if (plain) {
        const at = parameter * parameterStride;
        const start = cells[at + 2];
        const valueEnd = cells[at + 3];
        const before = codes.reach(start, valueEnd);
        const isText = Number.isNaN(numbers[parameter]);
        if (isText) plain = this.#plainValue(name, codes.bytes, start - before, valueEnd - before);
        else this.#plainNumber(name, codes.bytes, start - before, valueEnd - before);
      }
    }
    if (plain) {
      lines.endLine();
      this.#hasHeaders = true;
    } else lines.dropLine();
    return plain;
  }

  /** Writes the name of an opcode and a value of digits, a sign and a decimal point, which stands for itself. */
  #plainNumber(name: NameText, codes: Uint8Array, start: number, end: number): void {
    const lines = this.#lines;
    const out = this.#name(name, end - start);
    let at = lines.length;
    for (let place = start; place < end; place++) out[at++] = codes[place];
    lines.length = at;
  }

  /** Writes the name and value of an opcode; `false` where the value is none that stands for itself in any SFZ text. */
  #plainValue(name: NameText, codes: Uint8Array, start: number, end: number): boolean {
    const lines = this.#lines;
    const out = this.#name(name, end - start);
    let at = lines.length;
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

  /** Writes the name of an opcode, a word at a time, and answers bytes with room for `more` behind it. */
  #name({ before, words }: NameText, more: number): Uint8Array {
    const lines = this.#lines;
    const out = lines.room(words.length * 4 + more);
    // Asking bytes for their buffer takes longer than writing a name.
    if (out !== this.#viewed) {
      this.#viewed = out;
      this.#view = new DataView(out.buffer, out.byteOffset, out.length);
    }
    const view = this.#view;
    const at = lines.length;
    for (let word = 0; word < words.length; word++) view.setInt32(at + word * 4, words[word], true);
    lines.length = at + before.length;
    return out;
  }

  /** An opcode as it is written; `undefined`, with a note, for one that SFZ text cannot hold. */
  #opcode(
    header: number,
    parameter: number,
    tag: { start: number; end: number } | undefined,
  ): string | undefined {
    const instrument = this.#instrument;
    const name = instrument.names.text(instrument.name(parameter));
    const kept = this.#plan.values.get(parameter);
    const value = kept ? joinedText(kept) : writtenValue(instrument, header, parameter, this.#options);
    if (isReadBack(name, value) && !this.#plan.unholdable.has(parameter)) return `${name}=${value}`;
    if (tag) {
      this.#noted.add(parameter);
      const message = `${name} is left out: SFZ text cannot hold the value "${value.replace(/\s+/g, ' ')}".`;
      this.#notes.push({ kind: 'dropped', ...instrument.valueSpan(parameter), message, written: tag });
    }
    return undefined;
  }

  #nameText(id: number): NameText {
    let name = this.#names[id];
    if (name === undefined) {
      const { names } = this.#instrument;
      const text = names.text(id);
      const before = ` ${text}=`;
      const canonical = names.canonical(id);
      name = {
        text,
        isPlain: harmlessName.test(text),
        isPath: canonical === Parameter.sample || canonical === Parameter.default_path,
        before,
        words: wordsOf(before),
      };
      this.#names[id] = name;
    }
    return name;
  }

  #comment(text: string): void {
    for (const line of text.split(/\r\n|\r|\n/)) this.#lines.line(`// ${commentLine(line)}`.trimEnd());
  }
}

/** The characters of an ASCII text as {@link NameText.words}. */
function wordsOf(text: string): Int32Array {
  const words = new Int32Array(Math.ceil(text.length / 4));
  for (let at = 0; at < text.length; at++) words[at >> 2] |= (text.charCodeAt(at) & 0xff) << ((at & 3) * 8);
  return words;
}

function commentLine(text: string): string {
  return text.replace(/[\r\n]+/g, ' ').trim();
}
