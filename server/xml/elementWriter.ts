import { HeaderKind } from '../model/headerKinds';
import type { Instrument } from '../model/instrument';
import { parameterStride } from '../model/instrumentParts';
import type { WriteOptions } from '../model/notation';
import type { ConversionNote } from '../model/notes';
import { Parameter } from '../model/parameterNames';
import type { Steps } from '../model/steps';
import { piecesInStep } from '../model/steps';
import { LineBuffer } from '../model/text/lineBuffer';
import type { Stretch } from '../model/text/stretch';
import { TextWindow } from '../model/text/textWindow';
import { literalText } from '../model/variables/variableText';
import type { IncludePart } from '../model/writing/includeParts';
import { writtenValue } from '../model/writing/rebase';
import type { Chain } from '../model/writing/writingOrder';
import { passingKinds } from '../model/writing/writingOrder';
import type { PlannedComment, WritingPlan } from '../model/writing/writingPlan';
import { addPlainValue, encodedAttributeText, isAttributeName } from './attributeText';
import { CommentTexts } from './commentTexts';
import { ElementKind, elementKindOf } from './elements';
import { chainLevel, nextChains } from './headerChains';
import { isXmlName } from './scan/characters';
import type { EncodedAttribute } from './scan/references';
import { encodeXmlAttribute } from './scan/references';

const usualIndentation = '  ';

const elementOfLevel = ['global', 'master', 'group'] as const;

/** How elements are written. */
export interface ElementOptions extends WriteOptions {
  /** One step of indentation; two blanks where nothing is said. */
  indentation?: string;
}

/** The likely length of an attribute with its blank. */
const perParameter = 18;

/** Writes the elements of an instrument line by line, with what XML cannot hold as notes. */
export class ElementWriter {
  readonly notes: ConversionNote[] = [];
  /** Parameters of which there is a note. */
  readonly noted = new Set<number>();
  readonly #instrument: Instrument;
  readonly #options: ElementOptions;
  readonly #plan: WritingPlan;
  readonly #depth: number;
  readonly #lines: LineBuffer;
  /** The bytes of the text that all values stand in; `undefined` where there are several. */
  readonly #codes: TextWindow | undefined;
  /** Headers whose elements are open, by level; −1 where there is none. */
  #open: Chain = [-1, -1, -1];
  #openCount = 0;
  /** Headers that are in force where the lines end although no element of theirs is open, by level. */
  #inForce: Chain = [-1, -1, -1];
  /** The first header, where its values stand in the outermost element. */
  #rootHeader = -1;
  /** By the number of a name, the parameter that has it in the header looked at last. */
  readonly #lastOfName: number[] = [];
  /** By the number of a name, whether its values are paths that lead elsewhere from another folder. */
  readonly #isPath: boolean[] = [];
  /** By the number of a name, the text before a value; empty for one that can be no attribute. */
  readonly #names: string[] = [];
  /** 1 for headers that were written before; a text that goes back to one writes it once more. */
  readonly #writtenOnce: Uint8Array;
  readonly #indentations: string[] = [];
  readonly #comments: CommentTexts;

  constructor(instrument: Instrument, depth: number, options: ElementOptions, plan: WritingPlan) {
    this.#instrument = instrument;
    this.#depth = depth;
    this.#options = options;
    this.#plan = plan;
    const lineEnd = options.lineEnd ?? '\n';
    this.#comments = new CommentTexts(lineEnd);
    this.#writtenOnce = new Uint8Array(instrument.headers.count);
    this.#lines = new LineBuffer(lineEnd, instrument.parameters.count * perParameter);
    const [source, ...others] = instrument.sources;
    if (source && others.length === 0) this.#codes = new TextWindow(source.text);
  }

  /** The whole text in pieces. */
  pieces(): readonly string[] {
    return this.#lines.pieces();
  }

  /** Writes the start of the document; values that stand before any header become attributes of the outermost element. */
  writeRoot(): void {
    this.line('<?xml version="1.0" encoding="UTF-8"?>', 0);
    const instrument = this.#instrument;
    const isFirst = instrument.headers.count > 0 && !this.#plan.isIncluded(0);
    if (isFirst && instrument.headerName(0) === '') this.#rootHeader = 0;
    this.#tag('instrument', this.#rootHeader, '>', 0);
  }

  *write(): Steps<void> {
    const { count } = this.#instrument.headers;
    const next = nextChains(this.#instrument);
    for (let header = 0; header < count; header++) {
      if (header % piecesInStep === 0) yield header / count;
      const isIncluded = this.#plan.isIncluded(header);
      if (this.#plan.leading.has(header)) {
        this.#moveTo(header, next);
        this.#leading(header, next);
      } else if (this.#plan.headerNotes.has(header)) this.#leading(header, next);
      if (isIncluded) continue;
      this.#moveTo(header, next);
      this.#header(header, next[header + 1]);
    }
    this.#closeTo([-1, -1, -1]);
    this.#leading(count, next);
  }

  /** Writes what stands before a header. */
  #leading(header: number, next: readonly (Chain | undefined)[]): void {
    for (const part of this.#plan.leading.get(header) ?? []) {
      if (part.kind === 'comment') this.#comment(part);
      else if (part.kind === 'define')
        this.line(`<define name="${part.name}" value="${encodedAttributeText(part.value).text}"/>`);
      else {
        this.line(`<include path="${encodedAttributeText(part.path).text}"/>`);
        this.#bringIntoForce(part.part, next[part.part.endHeader]);
      }
    }
    for (const note of this.#plan.headerNotes.get(header) ?? [])
      this.notes.push({ ...note, written: { start: this.#lines.position, end: this.#lines.position } });
  }

  /** What an included file leaves in force, as the header behind it tells. */
  #bringIntoForce({ firstHeader, endHeader }: IncludePart, next: Chain | undefined): void {
    if (!next) return;
    next.forEach((owner, level) => {
      if (owner < firstHeader || owner >= endHeader) return;
      this.#inForce.fill(-1, level);
      this.#inForce[level] = owner;
    });
  }

  /** Closes and opens elements so that a header that is written next inherits what it should. */
  #moveTo(header: number, next: readonly (Chain | undefined)[]): void {
    const wanted = next[header] ?? [-1, -1, -1];
    this.#closeTo(wanted);
    const level = chainLevel(this.#instrument, header);
    for (let outer = 0; outer < level; outer++) {
      const owner = wanted[outer];
      if (owner >= 0 && this.#open[outer] !== owner && this.#inForce[outer] !== owner)
        this.#openElement(outer, owner);
      else if (owner < 0 && this.#inForce[outer] >= 0) this.#emptyElement(outer, -1);
    }
  }

  /** Closes elements from the innermost outwards as long as they are not in a chain. */
  #closeTo(wanted: Chain): void {
    let keep = 0;
    while (keep < wanted.length && this.#open[keep] === wanted[keep]) keep++;
    for (let level = wanted.length - 1; level >= keep; level--) {
      if (this.#open[level] < 0) continue;
      this.#open[level] = -1;
      this.#openCount--;
      this.line(`</${elementOfLevel[level]}>`);
      this.#inForce.fill(-1, level);
    }
  }

  #openElement(level: number, header: number): void {
    this.#tag(elementOfLevel[level] as string, header, '>');
    this.#open[level] = header;
    this.#openCount++;
    this.#inForce.fill(-1, level);
  }

  #emptyElement(level: number, header: number): void {
    this.#tag(elementOfLevel[level] as string, header, '/>');
    this.#inForce.fill(-1, level);
    if (header >= 0 && this.#instrument.endParameter(header) > this.#instrument.firstParameter(header))
      this.#inForce[level] = header;
  }

  #header(header: number, next: Chain | undefined): void {
    const trailing = this.#plan.trailing.get(header) ?? noComments;
    const level = chainLevel(this.#instrument, header);
    if (level === passingKinds.length) {
      if (trailing.length > 0 || !this.#plainRegion(header)) this.#region(header, trailing);
      return;
    }
    const name = this.#instrument.headerName(header);
    if (level >= 0) {
      if (next?.[level] === header) this.#openElement(level, header);
      else this.#emptyElement(level, header);
    } else if (header !== this.#rootHeader && this.#canWrite(header, name)) this.#tag(name, header, '/>');
    for (const comment of trailing) this.#comment(comment);
  }

  #region(header: number, trailing: readonly PlannedComment[]): void {
    const [comment] = trailing;
    const isBeside = comment !== undefined && trailing.length === 1 && !/[\r\n]/.test(comment.text);
    this.#tag(
      'region',
      header,
      isBeside ? `/> ${this.#comments.textOf(comment, this.#lines.position)}` : '/>',
    );
    if (isBeside) return;
    for (const one of trailing) this.#comment(one);
  }

  /**
   * Writes a region straight from the bytes of its text, without a string for each value. Answers `false`, with nothing
   * written, where a name or value needs a closer look.
   */
  #plainRegion(header: number): boolean {
    const instrument = this.#instrument;
    const codes = this.#codes;
    if (!codes || this.#writtenOnce[header] === 1) return false;
    const lines = this.#lines;
    const { cells, values, translated } = instrument.parameters;
    const { parameterNotes } = this.#plan;
    const first = instrument.firstParameter(header);
    const end = instrument.endParameter(header);
    let plain = lines.ascii(this.#indentation()) && lines.ascii('<region');
    for (let parameter = first; plain && parameter < end; parameter++) {
      const at = parameter * parameterStride;
      const id = cells[at];
      const before = this.#lastOfName[id] ?? -1;
      if (before >= first && before < parameter) plain = false;
      this.#lastOfName[id] = parameter;
      if (!plain || parameterNotes.has(parameter)) {
        plain = false;
        break;
      }
      const name = this.#attributeName(id);
      plain = name !== undefined && lines.ascii(name);
      if (!plain) break;
      const isWhole = translated?.isNumber[parameter] !== 1 && !values.has(parameter);
      if (isWhole && !(this.#options.move && this.#isPath[id])) {
        const start = codes.reach(cells[at + 2], cells[at + 3]);
        plain = addPlainValue(lines, codes.bytes, cells[at + 2] - start, cells[at + 3] - start);
      } else {
        const { text, leftOut } = this.#attributeValue(header, parameter);
        plain = leftOut.length === 0 && lines.ascii(text);
      }
      plain &&= lines.ascii('"');
    }
    plain &&= lines.ascii('/>');
    if (plain) {
      lines.endLine();
      this.#writtenOnce[header] = 1;
    } else lines.dropLine();
    return plain;
  }

  /** Whether a header can be an element; notes why where it cannot. */
  #canWrite(header: number, name: string): boolean {
    const instrument = this.#instrument;
    if (instrument.kind(header) !== HeaderKind.unknown) return true;
    if (isXmlName(name) && elementKindOf(name) === ElementKind.unknown) return true;
    const message =
      name === ''
        ? 'Opcodes that stand in no header are left out: they have no effect.'
        : `<${name}> is left out: it has no effect, and an element of that name cannot stand here.`;
    const written = { start: this.#lines.position, end: this.#lines.position };
    this.notes.push({ kind: 'dropped', ...instrument.bodySpan(header), message, written });
    const end = instrument.endParameter(header);
    for (let parameter = instrument.firstParameter(header); parameter < end; parameter++)
      this.noted.add(parameter);
    return false;
  }

  /** Writes the start tag of a header's element, its attributes in it; −1 is no header. */
  #tag(name: string, header: number, end: string, depth?: number): void {
    if (header < 0) {
      this.line(`<${name}${end}`, depth);
      return;
    }
    const indentation = this.#indentation(depth);
    const start = this.#lines.position + indentation.length;
    const tag = { start, end: start + 1 + name.length };
    const notesBefore = this.notes.length;
    this.line(`<${name}${this.#attributes(header, tag)}${end}`, depth);
    if (this.#writtenOnce[header] === 1) this.notes.length = notesBefore;
    this.#writtenOnce[header] = 1;
  }

  #attributes(header: number, tag: Stretch): string {
    const instrument = this.#instrument;
    const first = instrument.firstParameter(header);
    const end = instrument.endParameter(header);
    const repeated = this.#repeated(first, end);
    let text = '';
    for (let parameter = first; parameter < end; parameter++) {
      if (repeated?.has(parameter)) this.#noteRepeated(parameter, tag);
      else text += this.#attribute(header, parameter, tag, tag.end + text.length);
    }
    return text;
  }

  /** The parameters of a header that are set again later in it, under the same name; `undefined` where none is. */
  #repeated(first: number, end: number): Set<number> | undefined {
    let found: Set<number> | undefined;
    const last = this.#lastOfName;
    for (let parameter = first; parameter < end; parameter++) {
      const name = this.#instrument.name(parameter);
      const before = last[name] ?? -1;
      if (before >= first && before < parameter) {
        found ??= new Set();
        found.add(before);
      }
      last[name] = parameter;
    }
    return found;
  }

  #noteRepeated(parameter: number, tag: Stretch): void {
    const name = this.#instrument.names.text(this.#instrument.name(parameter));
    const message = `This ${name} is left out: ${name} is set again later in the same place, and an element has each attribute once.`;
    this.#note(parameter, 'ignored', message, tag);
  }

  #note(parameter: number, kind: ConversionNote['kind'], message: string, written: Stretch): void {
    this.noted.add(parameter);
    this.notes.push({ kind, ...this.#instrument.parameterSpan(parameter), message, written });
  }

  /** An attribute with the blank before it; empty, with a note, where the name can be none. `start` is where it comes to stand. */
  #attribute(header: number, parameter: number, tag: Stretch, start: number): string {
    const name = this.#attributeName(this.#instrument.name(parameter));
    if (name === undefined) {
      const text = this.#instrument.names.text(this.#instrument.name(parameter));
      this.#note(parameter, 'dropped', `"${text}" is left out: it cannot be the name of an attribute.`, tag);
      return '';
    }
    const { text, leftOut } = this.#attributeValue(header, parameter);
    const attribute = `${name}${text}"`;
    const written = { start: start + 1, end: start + attribute.length };
    if (leftOut.length > 0) {
      const message = `XML cannot hold ${leftOut.join(', ')}, so the value of ${name.slice(1, -2)} is written without.`;
      this.#note(parameter, 'dropped', message, written);
    }
    for (const note of this.#plan.parameterNotes.get(parameter) ?? []) {
      this.noted.add(parameter);
      if (this.#options.readingNotes?.get(parameter)?.includes(note)) note.written = written;
      else this.notes.push({ ...note, written });
    }
    return attribute;
  }

  #attributeValue(header: number, parameter: number): EncodedAttribute {
    const kept = header === this.#rootHeader ? undefined : this.#plan.values.get(parameter);
    if (kept) return encodedAttributeText(kept);
    const value = writtenValue(this.#instrument, header, parameter, this.#options);
    return value.includes('$') ? encodedAttributeText(literalText(value)) : encodeXmlAttribute(value);
  }

  #attributeName(id: number): string | undefined {
    let name = this.#names[id];
    if (name === undefined) {
      const text = this.#instrument.names.text(id);
      name = isAttributeName(text) ? ` ${text}="` : '';
      this.#names[id] = name;
      const canonical = this.#instrument.names.canonical(id);
      this.#isPath[id] = canonical === Parameter.sample || canonical === Parameter.default_path;
    }
    return name === '' ? undefined : name;
  }

  #comment(comment: PlannedComment): void {
    this.line(this.#comments.textOf(comment, this.#lines.position));
  }

  #indentation(depth = this.#depth + this.#openCount): string {
    let indentation = this.#indentations[depth];
    if (indentation === undefined) {
      indentation = (this.#options.indentation ?? usualIndentation).repeat(depth);
      this.#indentations[depth] = indentation;
    }
    return indentation;
  }

  /** Says once for all comments that XML cannot hold them as they are. */
  noteComments(): void {
    const note = this.#comments.note();
    if (note) this.notes.push(note);
  }

  /** Adds a line, as deep as elements are open where nothing is said. */
  line(text: string, depth?: number): void {
    this.#lines.line(this.#indentation(depth) + text);
  }
}

const noComments: readonly PlannedComment[] = [];
