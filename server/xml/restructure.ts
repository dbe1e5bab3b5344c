import { puttingBefore, replacing } from '../model/editing/edits';
import type { TextEdit } from '../model/finding';
import { HeaderKind } from '../model/headerKinds';
import type { Instrument } from '../model/instrument';
import type { Directive } from '../model/instrumentParts';
import type { Edited, NewParameter } from '../model/notation';
import { mainSpan, spanOver } from '../model/text/span';
import { lineEndAt, lineStartAt } from '../model/text/textLayout';
import { lineEndOf } from '../model/text/textLines';
import { canContain, ElementKind, elementKindAt } from './elements';
import type { XmlHandler } from './scan/handler';
import { encodeXmlAttribute } from './scan/references';
import { scanXml } from './scan/scan';

/** Defines a variable before the first header. */
export function defineInXml(instrument: Instrument, name: string, value: string): Edited {
  const text = instrument.sources[0]?.text ?? '';
  for (let header = 0; header < instrument.headers.count; header++) {
    const tag = instrument.headerSpan(header);
    if (tag.source !== 0 || tag.start === tag.end) continue;
    const define = `<define name="${name.replace(/^\$/, '')}" value="${encodeXmlAttribute(value).text}"/>`;
    return made([puttingBefore(tag, define + breakBefore(text, tag.start))]);
  }
  return made([]);
}

/** A line break with the indentation of the line that an offset stands in. */
function breakBefore(text: string, offset: number): string {
  const indentation = /^[ \t]*/.exec(text.slice(lineStartAt(text, offset), offset))?.[0] ?? '';
  return lineEndOf(text) + indentation;
}

/** Puts regions that follow one another into a group of their own; those around stay in such as theirs. */
export function groupInXml(
  instrument: Instrument,
  first: number,
  last: number,
  sets: readonly NewParameter[],
): Edited {
  const text = instrument.sources[0]?.text ?? '';
  const parent = instrument.parent(first);
  const group = parent >= 0 && instrument.kind(parent) === HeaderKind.group ? parent : -1;
  const start = instrument.headerSpan(first).start;
  const { end } = instrument.bodySpan(last);
  const around = elementAround(instrument, first);
  if (around >= 0 && around !== group && !canContain(instrument.kind(around), HeaderKind.group))
    return made([]);
  const insert = (at: number, newText: string): TextEdit => replacing(mainSpan(at, at), newText);
  if (group < 0) {
    return made([
      insert(start, `<group>${breakBefore(text, start)}`),
      insert(end, `${breakBefore(text, start)}</group>`),
    ]);
  }
  const attributes = sets.map(({ name, value }) => ` ${name}="${encodeXmlAttribute(value).text}"`);
  const tag = `<group${attributes.join('')}`;
  const isAround = instrument.bodySpan(group).end > start;
  if (isAround) {
    const outer = breakBefore(text, instrument.headerSpan(group).start);
    const between = `</group>${outer}${tag}>`;
    // A group without elements would reach what follows it.
    const edits: TextEdit[] = [];
    if (hasElements(instrument, instrument.headerSpan(group).start, start))
      edits.push(insert(start, between + breakBefore(text, start)));
    if (hasElements(instrument, end - 1, instrument.bodySpan(group).end))
      edits.push(insert(end, outer + between));
    return made(edits);
  }
  const edits = [insert(start, `${tag}/>${breakBefore(text, start)}`)];
  if (instrument.regions.some((region) => region > last && instrument.parent(region) === parent))
    edits.push(insert(end, `${breakBefore(text, start)}${tag}/>`));
  return made(edits);
}

/** The innermost header whose element a header of the main file stands in, or −1; it need not be one to inherit from. */
function elementAround(instrument: Instrument, header: number): number {
  const { start } = instrument.headerSpan(header);
  let at = header - 1;
  while (at >= 0 && (instrument.headerSource(at) !== 0 || instrument.bodySpan(at).end <= start)) at--;
  return at;
}

/** Whether an element of the main file starts between two offsets. */
function hasElements(instrument: Instrument, after: number, before: number): boolean {
  const { start: last } = instrument.headerSpan(instrument.headerAt(0, before - 1));
  return (
    last > after ||
    instrument.directives.some(
      ({ kind, source, start }) => kind !== 'comment' && source === 0 && start > after && start < before,
    )
  );
}

/** Puts an include in the place of regions that follow one another; answers their text for the new file. */
export function moveOutOfXml(instrument: Instrument, first: number, last: number, path: string): Edited {
  const text = instrument.sources[0]?.text ?? '';
  const lineEnd = lineEndOf(text);
  const whole = spanOver(instrument.headerSpan(first), instrument.bodySpan(last));
  if (whole?.source !== 0) return made([]);
  const { start } = whole;
  let { end } = whole;
  const remark = instrument.directives.find(
    (one) =>
      one.kind === 'comment' && one.source === 0 && one.start >= end && one.start < lineEndAt(text, end),
  );
  if (remark && text.slice(end, remark.start).trim() === '') end = remark.end;
  const lines = [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<instrument>',
    `  ${text.slice(start, end)}`,
    '</instrument>',
  ];
  return {
    ...made([replacing(mainSpan(start, end), `<include path="${encodeXmlAttribute(path).text}"/>`)]),
    newFile: lines.map((line) => line + lineEnd).join(''),
  };
}

/** Puts the elements of an included file in the place of its include; nothing where that is no sound instrument XML. */
export function inlineInXml(instrument: Instrument, directive: Directive): Edited {
  const at = instrument.sources.findIndex(({ path }) => path === directive.value);
  const faulty = instrument.findings.some(({ code, source }) => code === 'syntax-error' && source === at);
  if (at <= 0 || faulty || directive.kind !== 'include' || directive.source !== 0) return made([]);
  const text = instrument.sources[at]?.text ?? '';
  const contents = new Contents(text);
  scanXml(text, contents);
  if (!contents.isInstrument) return made([]);
  const inside = text.slice(contents.start, contents.end).trim();
  const newText = [...contents.comments, inside].filter((part) => part !== '').join(lineEndOf(text));
  return made([replacing(directive, newText)]);
}

/** Finds what stands inside the outermost element. */
class Contents implements XmlHandler {
  readonly #text: string;
  #depth = 0;
  #elements = 0;
  start = 0;
  end = 0;
  isInstrument = false;
  /** Comments outside. */
  readonly comments: string[] = [];

  constructor(text: string) {
    this.#text = text;
  }

  open(_tagStart: number, nameStart: number, nameEnd: number, hash: number): void {
    if (this.#elements++ === 0)
      this.isInstrument = elementKindAt(this.#text, nameStart, nameEnd, hash) === ElementKind.instrument;
  }

  attribute(_name: number, nameStart: number): void {
    // What the outermost element sets would be lost.
    if (this.#elements === 1 && !this.#text.startsWith('xml', nameStart)) this.isInstrument = false;
  }

  openEnd(end: number, empty: boolean): void {
    if (this.#depth === 0) {
      this.start = end;
      this.end = end;
    }
    if (!empty) this.#depth++;
  }

  close(start: number): void {
    this.#depth--;
    if (this.#depth === 0) this.end = start;
  }

  comment(start: number, end: number): void {
    if (this.#depth === 0) this.comments.push(this.#text.slice(start, end));
  }

  characters(): void {}
  instruction(): void {}
  doctype(): void {}

  problem(): void {
    this.isInstrument = false;
  }
}

function made(edits: TextEdit[]): Edited {
  return { edits, notes: [] };
}
