import { HeaderKind } from '../model/headerKinds';
import type { Instrument } from '../model/instrument';
import type { WriteOptions, Written } from '../model/notation';
import type { ConversionNote } from '../model/notes';
import { writtenValue } from '../model/rebase';
import type { Chain, CommentPlaces } from '../model/writingOrder';
import { chainOf, passingKinds, placeComments } from '../model/writingOrder';
import { isXmlName } from './characters';
import { ElementKind, elementKindOf } from './elements';
import { encodeXmlAttribute, encodeXmlComment } from './references';

const usualIndentation = '  ';
const elementOfLevel = ['global', 'master', 'group'] as const;

/**
 * Writes an instrument as one XML text in our notation: nested elements in the order of the headers, comments with the
 * header that they belong to, variables and included files written out. What XML cannot hold is left out with a note.
 *
 * The lines are made here and not by a general builder of XML: fast-xml-parser's keeps the order, but it lets line ends,
 * tabs and control characters stand in values as they are, so that these read back changed or the text is not well formed.
 */
export function writeXml(instrument: Instrument, options: WriteOptions = {}): Written {
  const { lines, notes } = writeElements(instrument, 1, options);
  const whole = ['<?xml version="1.0" encoding="UTF-8"?>', '<instrument>', ...lines, '</instrument>'];
  const lineEnd = options.lineEnd ?? '\n';
  return { text: whole.map((line) => line + lineEnd).join(''), notes };
}

export interface ElementOptions extends WriteOptions {
  /** One step of indentation; two blanks where nothing is said. */
  indentation?: string;
}

/** The elements of an instrument without the one around them, indented by `depth` steps. */
export function writeElements(
  instrument: Instrument,
  depth: number,
  options: ElementOptions = {},
): { lines: string[]; notes: ConversionNote[] } {
  const writer = new ElementWriter(instrument, depth, options);
  writer.write();
  return { lines: writer.lines, notes: writer.notes };
}

class ElementWriter {
  readonly lines: string[] = [];
  readonly notes: ConversionNote[] = [];
  readonly #instrument: Instrument;
  readonly #options: ElementOptions;
  readonly #depth: number;
  /** Headers whose elements are open, by level; −1 where there is none. */
  #open: Chain = [-1, -1, -1];
  /** Levels at which an empty element is in force where the lines end. */
  #emptyInForce: [boolean, boolean, boolean] = [false, false, false];

  constructor(instrument: Instrument, depth: number, options: ElementOptions) {
    this.#instrument = instrument;
    this.#depth = depth;
    this.#options = options;
  }

  write(): void {
    const { count } = this.#instrument.headers;
    const comments = placeComments(this.#instrument);
    const next = this.#nextChains();
    this.#noteDirectives();
    for (let header = 0; header < count; header++) {
      this.#moveTo(header, next);
      for (const comment of comments.leading.get(header) ?? []) this.#comment(comment);
      this.#header(header, next[header + 1], comments);
    }
    this.#closeTo([-1, -1, -1]);
    for (const comment of comments.leading.get(count) ?? []) this.#comment(comment);
  }

  /** For each header the chain of the first one from there on that inherits; `undefined` behind the last. */
  #nextChains(): (Chain | undefined)[] {
    const { count } = this.#instrument.headers;
    const chains = new Array<Chain | undefined>(count + 1);
    for (let header = count - 1; header >= 0; header--) {
      chains[header] = this.#levelOf(header) < 0 ? chains[header + 1] : chainOf(this.#instrument, header);
    }
    return chains;
  }

  /** 0 to 2 for global, master and group, 3 for a region, −1 for headers that inherit nothing. */
  #levelOf(header: number): number {
    const kind = this.#instrument.kind(header);
    if (kind === HeaderKind.region) return passingKinds.length;
    return passingKinds.indexOf(kind as (typeof passingKinds)[number]);
  }

  #noteDirectives(): void {
    for (const { kind, source, start, end, name, value } of this.#instrument.directives) {
      if (kind === 'comment') continue;
      const message =
        kind === 'define'
          ? `${name} is written out: its value ${value} stands where it was used.`
          : `The text of "${name}" is written in the place of its include.`;
      this.notes.push({ kind: 'approximated', source, start, end, message });
    }
  }

  /** Closes and opens elements so that a header that is written next inherits what it should. */
  #moveTo(header: number, next: readonly (Chain | undefined)[]): void {
    const wanted = next[header] ?? [-1, -1, -1];
    this.#closeTo(wanted);
    const level = this.#levelOf(header);
    for (let outer = 0; outer < level; outer++) {
      const owner = wanted[outer] as number;
      if (owner >= 0 && this.#open[outer] !== owner) this.#openElement(outer, owner, this.#attributes(owner));
      else if (owner < 0 && this.#emptyInForce[outer]) this.#emptyElement(outer, '');
    }
  }

  /** Closes elements from the innermost outwards as long as they are not in a chain. */
  #closeTo(wanted: Chain): void {
    let keep = 0;
    while (keep < wanted.length && this.#open[keep] === wanted[keep]) keep++;
    for (let level = wanted.length - 1; level >= keep; level--) {
      if ((this.#open[level] as number) < 0) continue;
      this.#open[level] = -1;
      this.#line(`</${elementOfLevel[level]}>`);
      this.#emptyInForce.fill(false, level);
    }
  }

  #openElement(level: number, header: number, attributes: string): void {
    this.#line(`<${elementOfLevel[level]}${attributes}>`);
    this.#open[level] = header;
    this.#emptyInForce.fill(false, level);
  }

  #emptyElement(level: number, attributes: string): void {
    this.#line(`<${elementOfLevel[level]}${attributes}/>`);
    this.#emptyInForce.fill(false, level);
    this.#emptyInForce[level] = attributes !== '';
  }

  #header(header: number, next: Chain | undefined, comments: CommentPlaces): void {
    const trailing = comments.trailing.get(header) ?? [];
    const level = this.#levelOf(header);
    const name = this.#instrument.headerName(header);
    if (level >= 0 && level < passingKinds.length) {
      const attributes = this.#attributes(header);
      if (next?.[level] === header) this.#openElement(level, header, attributes);
      else this.#emptyElement(level, attributes);
    } else if (this.#canWrite(header, name)) {
      this.#line(`<${name}${this.#attributes(header)}/>`);
    }
    const [comment = ''] = trailing;
    const beside = trailing.length === 1 && level === passingKinds.length && !/[\r\n]/.test(comment);
    if (beside) this.lines.push(`${this.lines.pop()} <!-- ${encodeXmlComment(comment)} -->`);
    else for (const comment of trailing) this.#comment(comment);
  }

  /** Whether a header can be an element; notes why where it cannot. */
  #canWrite(header: number, name: string): boolean {
    if (this.#instrument.kind(header) !== HeaderKind.unknown) return true;
    if (isXmlName(name) && elementKindOf(name) === ElementKind.unknown) return true;
    const message =
      name === ''
        ? 'Opcodes before the first header are left out: they have no effect.'
        : `<${name}> is left out: it has no effect, and an element of that name cannot stand here.`;
    this.notes.push({ kind: 'dropped', ...this.#instrument.bodySpan(header), message });
    return false;
  }

  #attributes(header: number): string {
    const instrument = this.#instrument;
    const first = instrument.firstParameter(header);
    const seen = new Set<number>();
    const written: string[] = [];
    for (let parameter = instrument.endParameter(header) - 1; parameter >= first; parameter--) {
      const name = instrument.name(parameter);
      if (seen.has(name)) this.#noteRepeated(parameter);
      else {
        seen.add(name);
        const attribute = this.#attribute(header, parameter);
        if (attribute !== undefined) written.push(attribute);
      }
    }
    return written.reverse().join('');
  }

  #noteRepeated(parameter: number): void {
    const name = this.#instrument.names.text(this.#instrument.name(parameter));
    const message = `This ${name} is left out: ${name} is set again later in the same place, and an element has each attribute once.`;
    this.notes.push({ kind: 'ignored', ...this.#instrument.parameterSpan(parameter), message });
  }

  #attribute(header: number, parameter: number): string | undefined {
    const instrument = this.#instrument;
    const name = instrument.names.text(instrument.name(parameter));
    if (!isAttributeName(name)) {
      const message = `"${name}" is left out: it cannot be the name of an attribute.`;
      this.notes.push({ kind: 'dropped', ...instrument.parameterSpan(parameter), message });
      return undefined;
    }
    const value = encodeXmlAttribute(writtenValue(instrument, header, parameter, this.#options));
    if (value.leftOut.length > 0) {
      const message = `XML cannot hold ${value.leftOut.join(', ')}, so the value of ${name} is written without.`;
      this.notes.push({ kind: 'dropped', ...instrument.valueSpan(parameter), message });
    }
    // A "$" in a value starts a variable, and all variables are written out here.
    return ` ${name}="${value.text.replaceAll('$', '&#36;')}"`;
  }

  #comment(text: string): void {
    const [first = '', ...more] = encodeXmlComment(text).split(/\r\n|\r|\n/);
    this.#line(`<!-- ${[first, ...more].join(this.#options.lineEnd ?? '\n')} -->`);
  }

  #line(text: string): void {
    const depth = this.#depth + this.#open.filter((header) => header >= 0).length;
    this.lines.push((this.#options.indentation ?? usualIndentation).repeat(depth) + text);
  }
}

/** Whether a parameter's name can be an attribute that is read back as it is. */
export function isAttributeName(name: string): boolean {
  return isXmlName(name) && !name.includes(':') && name !== 'xmlns';
}
