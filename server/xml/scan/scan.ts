import type { Steps } from '../../model/steps';
import { finish } from '../../model/steps';
import { editDistance } from '../../model/text/nearest';
import { Source } from '../../model/text/source';
import { beyondAscii, doubtful, lendTextBytes, takeBack, withTextBytes } from '../../model/text/textBytes';
import { readDoctype } from '../doctype/doctype';
import { asElement, EntityContent } from '../doctype/doctypeContent';
import { DoctypeReferences } from '../doctype/doctypeReferences';
import type { DoctypeReport } from '../doctype/doctypeSubset';
import {
  characterNumber,
  findIllegalCharacters,
  isNameStart,
  isXmlSpace,
  nameEndAt,
  spaceEndAt,
} from './characters';
import type { XmlHandler } from './handler';
import type { OpenElement } from './openElements';
import { OpenElements } from './openElements';
import { skipInstruction } from './prolog';
import type { EntityText, NamedReferences } from './references';
import { readReference } from './references';
import { StartTags } from './startTags';

const less = 60;
const slash = 47;
const exclamation = 33;
const greater = 62;
const question = 63;
const ampersand = 38;
const closeBracket = 93;

/** Characters that are read in a step. */
const inStep = 64 * 1024;
const never = () => false;

/**
 * Reads XML text from start to end and tells the handler what stands there. Never throws, in time linear in the text.
 * What XML 1.0 (W3C Recommendation, fifth edition) calls well formed gives no problem; anything else gives at least one,
 * and reading goes on behind it. Of that, what stands in other files is not known: nothing is fetched. A document type
 * declaration is read for faults alone, and no entity is put in.
 */
export function scanXml(text: string, handler: XmlHandler): void {
  finish(scanXmlInSteps(text, handler));
}

/** As {@link scanXml}, in steps; one ends sooner where the handler, asked behind each piece of markup, wants to have it end. */
export function* scanXmlInSteps(
  text: string,
  handler: XmlHandler,
  wantsEnd: () => boolean = never,
): Steps<void> {
  const report: DoctypeReport = {
    problem: (start, end, message, related) => handler.problem(start, end, message, related),
    remark: (start, end, message) => handler.remark?.(start, end, message),
  };
  const entities = new DoctypeReferences(report, readEntity);
  const bytes = lendTextBytes(text, 0);
  const scanner = new XmlScanner(text, bytes, handler, entities, (start, standalone) => {
    const doctype = readDoctype(text, start, standalone, report);
    entities.declare(doctype);
    return doctype.end;
  });
  while (!scanner.scanOn(inStep, wantsEnd)) yield scanner.share;
  takeBack(bytes);
}

function readEntity(text: string): EntityText {
  if (!/[<&]|]]>/.test(text)) return { references: [] };
  const content = new EntityContent(text);
  const element = asElement(text);
  withTextBytes(element, 0, (bytes) =>
    new XmlScanner(element, bytes, content, content).scanOn(element.length, never),
  );
  return content;
}

/** One class of more than 400 lines for speed: its steps share the open elements and where they are without making anything for it. */
class XmlScanner {
  readonly #text: string;
  readonly #bytes: Uint8Array;
  readonly #handler: XmlHandler;
  readonly #open: OpenElements;
  readonly #startTags: StartTags;
  readonly #references: NamedReferences;
  /** Reads a document type declaration; answers its end. */
  readonly #readDoctype: ((start: number, standalone: boolean) => number) | undefined;
  #hadRoot = false;
  #hadDoctype = false;
  #standalone = false;
  #lines: Source | undefined;
  /** Where reading goes on. */
  #at: number;

  constructor(
    text: string,
    bytes: Uint8Array,
    handler: XmlHandler,
    references: NamedReferences,
    readDoctype?: (start: number, standalone: boolean) => number,
  ) {
    this.#text = text;
    this.#bytes = bytes;
    this.#handler = handler;
    this.#open = new OpenElements(text);
    this.#references = references;
    this.#readDoctype = readDoctype;
    this.#startTags = new StartTags(text, bytes, handler, references);
    this.#at = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  }

  /** How much of the text has been read, 0..1. */
  get share(): number {
    return this.#at / Math.max(1, this.#text.length);
  }

  /** Reads about so many characters further, less where `wantsEnd` says so behind markup; answers whether all has been read. */
  scanOn(characters: number, wantsEnd: () => boolean): boolean {
    const bytes = this.#bytes;
    const { length } = this.#text;
    let at = this.#at;
    const end = Math.min(length, at + characters);
    let isEnded = false;
    while (at < end && !isEnded) {
      const code = bytes[at];
      if (code === less) {
        at = this.#markup(at);
        isEnded = wantsEnd();
      } else if (isXmlSpace(code)) at++;
      else at = this.#characters(at);
    }
    this.#at = at;
    if (isEnded || at < length) return false;
    this.#finish();
    return true;
  }

  #markup(start: number): number {
    const text = this.#text;
    const code = this.#bytes[start + 1];
    if ((code >= 97 && code <= 122) || (code >= 65 && code <= 90)) return this.#startTag(start);
    if (code === slash) return this.#endTag(start);
    if (code === exclamation) return this.#declaration(start);
    if (code === question) return this.#instruction(start);
    if (isNameStart(text.codePointAt(start + 1) ?? 0)) return this.#startTag(start);
    return this.#characters(start);
  }

  /** Whether the `<` at a place begins a tag or other markup, so that it is no part of a text. */
  #isMarkup(at: number): boolean {
    const next = this.#bytes[at + 1];
    if (next === slash || next === exclamation || next === question) return true;
    return isNameStart(this.#text.codePointAt(at + 1) ?? 0);
  }

  #startTag(start: number): number {
    const { depth } = this.#open;
    if (depth === 0) {
      if (this.#hadRoot) this.#secondRoot(start);
      this.#hadRoot = true;
    } else if (this.#open.innermost?.broken) {
      // The tag before was never finished: another of its name stands beside it rather than inside.
      const end = nameEndAt(this.#text, start + 1);
      if (this.#open.innermostIsNamed(start + 1, end)) this.#endWithoutTag(start);
    }
    const tags = this.#startTags;
    const end = tags.scan(start);
    if (!tags.empty) {
      const { nameEnd, broken } = tags;
      this.#open.push({ tagStart: start, nameStart: start + 1, nameEnd, broken });
    }
    return end;
  }

  #secondRoot(start: number): void {
    this.#handler.problem(
      start,
      nameEndAt(this.#text, start + 1),
      'A file has one outermost element. Move this element into it.',
    );
  }

  #endTag(start: number): number {
    const text = this.#text;
    const nameStart = start + 2;
    const usualEnd = this.#usualNameEnd(nameStart);
    if (usualEnd > 0) {
      this.#open.pop();
      this.#handler.close(start, usualEnd + 1, nameStart, usualEnd);
      return usualEnd + 1;
    }
    const nameEnd = nameEndAt(text, nameStart);
    let end = spaceEndAt(text, nameEnd);
    if (text[end] === '>') end++;
    else {
      while (end < text.length && text[end] !== '>' && text[end] !== '<') end++;
      if (text[end] === '>') {
        end++;
        if (nameEnd > nameStart)
          this.#handler.problem(start, end, 'An end tag holds a name and nothing else.');
      } else {
        end = nameEnd;
        this.#handler.problem(start, end, 'This end tag is not closed. Put ">" after its name.');
      }
    }
    this.#closeElement(start, end, nameStart, nameEnd);
    return end;
  }

  /** The end of the name in an end tag where it is that of the innermost element, in ASCII, with `>` behind it; else 0. */
  #usualNameEnd(nameStart: number): number {
    const bytes = this.#bytes;
    const element = this.#open.innermost;
    if (!element) return 0;
    let at = nameStart;
    for (let own = element.nameStart; own < element.nameEnd; own++, at++) {
      const code = bytes[at];
      if (code !== bytes[own] || code >= beyondAscii) return 0;
    }
    return bytes[at] === greater ? at : 0;
  }

  #closeElement(start: number, end: number, nameStart: number, nameEnd: number): void {
    const handler = this.#handler;
    const open = this.#open;
    if (!open.innermostIsNamed(nameStart, nameEnd)) {
      const name = this.#text.slice(nameStart, nameEnd);
      if (open.has(name)) {
        while (!open.innermostIsNamed(nameStart, nameEnd)) this.#leaveUnclosed(start, name);
      } else {
        const innermost = open.innermost;
        this.#reportStrayEnd(start, end, name, innermost);
        const misspelt =
          innermost !== undefined &&
          name.length < 40 &&
          editDistance(name, open.nameOf(innermost).slice(0, 50), 2) <= 2;
        if (!misspelt && name !== '') return;
        if (innermost === undefined) return;
      }
    }
    open.pop();
    handler.close(start, end, nameStart, nameEnd);
  }

  #reportStrayEnd(start: number, end: number, name: string, innermost: OpenElement | undefined): void {
    const tag = `</${shorten(name)}>`;
    if (!innermost) {
      this.#handler.problem(start, end, `${tag} closes nothing: no element is open here. Remove it.`);
      return;
    }
    const opened = shorten(this.#open.nameOf(innermost));
    this.#handler.problem(
      start,
      end,
      `${tag} closes nothing. <${opened}>, opened in line ${this.#line(innermost.tagStart)}, must be closed first, with </${opened}>.`,
      { start: innermost.tagStart, end: innermost.nameEnd, message: `<${opened}> is opened here.` },
    );
  }

  /** Leaves the innermost element, which an end tag further out or the end of the file ends. */
  #leaveUnclosed(at: number, outer: string | undefined): void {
    const element = this.#open.innermost;
    if (!element) return;
    if (!element.broken) {
      const name = shorten(this.#open.nameOf(element));
      const before =
        outer === undefined
          ? 'at the end of the file'
          : `before </${shorten(outer)}> in line ${this.#line(at)}`;
      this.#handler.problem(
        element.tagStart,
        element.nameEnd,
        `<${name}> is not closed ${before}. Add </${name}>, or end its tag with "/>" if nothing stands inside.`,
        outer === undefined ? undefined : { start: at, end: at, message: 'It must be closed before this.' },
      );
    }
    this.#endWithoutTag(at);
  }

  #endWithoutTag(at: number): void {
    this.#open.pop();
    this.#handler.close(at, at, at, at);
  }

  #declaration(start: number): number {
    const text = this.#text;
    if (text.startsWith('<!--', start)) return this.#comment(start);
    if (text.startsWith('<![CDATA[', start)) return this.#cdata(start);
    if (text.startsWith('<!DOCTYPE', start)) return this.#doctype(start);
    const end = this.#declarationEnd(start);
    this.#handler.problem(start, end, '"<!" starts a comment only as <!-- … -->.');
    return end;
  }

  #doctype(start: number): number {
    // A file has one at most, so only the first is read over with all that it holds.
    const readDoctype = this.#hadDoctype ? undefined : this.#readDoctype;
    this.#hadDoctype = true;
    if (!readDoctype || this.#hadRoot) {
      this.#handler.problem(
        start,
        start + 9,
        'A document type declaration stands once at most, before the outermost element. Remove this one.',
      );
    }
    const end = readDoctype ? readDoctype(start, this.#standalone) : this.#declarationEnd(start);
    this.#handler.doctype(start, end);
    return end;
  }

  /** Behind the first `>`, or behind the `<!` where another `<` comes before that. */
  #declarationEnd(start: number): number {
    const text = this.#text;
    let at = start + 2;
    while (at < text.length && text[at] !== '>' && text[at] !== '<') at++;
    return text[at] === '>' ? at + 1 : start + 2;
  }

  #comment(start: number): number {
    const text = this.#text;
    const handler = this.#handler;
    const dashes = text.indexOf('--', start + 4);
    if (dashes < 0) {
      handler.problem(start, start + 4, 'This comment is not closed. Put "-->" at its end.');
      this.#reportIllegal(start, text.length);
      handler.comment(start, text.length);
      return text.length;
    }
    let end = dashes + 3;
    if (text[dashes + 2] !== '>') {
      const close = text.indexOf('-->', dashes);
      end = close < 0 ? text.length : close + 3;
      if (close < 0) handler.problem(start, start + 4, 'This comment is not closed. Put "-->" at its end.');
      else handler.problem(dashes, dashes + 2, 'A comment cannot hold "--", nor end with "--->".');
    }
    this.#reportIllegal(start, end);
    handler.comment(start, end);
    return end;
  }

  #cdata(start: number): number {
    const text = this.#text;
    const close = text.indexOf(']]>', start + 9);
    const end = close < 0 ? text.length : close + 3;
    if (close < 0)
      this.#handler.problem(start, start + 9, 'This CDATA section is not closed. Put "]]>" at its end.');
    this.#reportIllegal(start, end);
    if (this.#open.depth === 0) this.#outside(start, end);
    else this.#handler.characters(start, end);
    return end;
  }

  #instruction(start: number): number {
    const { end, problem, standalone } = skipInstruction(this.#text, start);
    if (standalone) this.#standalone = true;
    if (problem !== undefined) this.#handler.problem(start, Math.min(end, start + 80), problem);
    this.#reportIllegal(start, end);
    this.#handler.instruction(start, end);
    return end;
  }

  /** Reads text up to the next markup. */
  #characters(start: number): number {
    const text = this.#text;
    const handler = this.#handler;
    const bytes = this.#bytes;
    let at = start;
    let isDoubtful = false;
    while (at < text.length) {
      const code = bytes[at];
      if (code === less) {
        const first = at;
        while (bytes[at] === less && !this.#isMarkup(at)) at++;
        if (at === first) break;
        handler.problem(first, at, 'A bare "<" cannot stand here. Write &lt;.');
        continue;
      }
      if (code === ampersand) {
        const reference = readReference(text, at);
        if (reference.name !== undefined) {
          this.#references.found(reference.name, at, reference.end, 'text');
        } else if (reference.problem !== undefined) handler.problem(at, reference.end, reference.problem);
        at = reference.end;
      } else if (code === closeBracket && text.startsWith(']]>', at)) {
        handler.problem(at, at + 3, '"]]>" cannot stand in text. Write ]]&gt;.');
        at += 3;
      } else {
        if (code < 32 || code === doubtful) isDoubtful = true;
        at++;
      }
    }
    let end = at;
    while (end > start + 1 && isXmlSpace(text.charCodeAt(end - 1))) end--;
    if (isDoubtful) this.#reportIllegal(start, end);
    if (this.#open.depth === 0) this.#outside(start, end);
    else handler.characters(start, end);
    return at;
  }

  #outside(start: number, end: number): void {
    this.#handler.problem(start, end, 'Text cannot stand outside the outermost element. Remove it.');
  }

  #reportIllegal(start: number, end: number): void {
    findIllegalCharacters(this.#text, start, end, (from, to, code) =>
      this.#handler.problem(from, to, `XML cannot hold the character ${characterNumber(code)}. Remove it.`),
    );
  }

  #finish(): void {
    while (this.#open.depth > 0) this.#leaveUnclosed(this.#text.length, undefined);
    if (!this.#hadRoot) {
      this.#handler.problem(this.#text.length, this.#text.length, 'There is no element in this file.');
    }
  }

  #line(offset: number): number {
    this.#lines ??= new Source('', this.#text);
    return this.#lines.positionAt(offset).line;
  }
}

function shorten(name: string): string {
  return name.length > 40 ? `${name.slice(0, 39)}…` : name;
}
