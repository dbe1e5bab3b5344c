import type { RelatedSpan } from '../scan/handler';
import { skipInstruction } from '../scan/prolog';
import { DoctypeCursor } from './doctypeCursor';
import {
  readAttributeDeclaration,
  readElementDeclaration,
  readEntityDeclaration,
  readNotationDeclaration,
} from './doctypeDeclarations';
import type { DoctypeEntities } from './doctypeEntities';
import type { NamedSpan } from './doctypeEntityValue';
import { parameterReference } from './doctypeEntityValue';

/** What is told of a document type declaration, at offsets in the document. */
export interface DoctypeReport {
  problem(start: number, end: number, message: string, related?: RelatedSpan): void;
  remark(start: number, end: number, message: string): void;
}

/** How deep declarations that stand for further declarations are followed. */
const deepest = 40;

/**
 * Reads declarations: those between the brackets of a document type declaration, XML 1.0 (fifth edition), productions
 * [28a] to [31], and those that parameter entities declared there stand for. Each entity is read once, and all of them
 * together no longer than the document, however often they are referred to.
 */
export class DoctypeSubset {
  readonly #entities: DoctypeEntities;
  readonly #report: DoctypeReport;
  /** What default values refer to; looked into once all entities are known. */
  readonly defaults: NamedSpan[] = [];
  /** Parameter entities that are being read, or have been. */
  readonly #read = new Map<string, 'open' | 'done'>();
  /** How many characters of entities may still be read. */
  #allowance: number;
  /** The place in the document that entities being read are referred to from. */
  #within: NamedSpan | undefined;
  #depth = 0;
  #base = 0;
  readonly #standalone: boolean;

  constructor(entities: DoctypeEntities, report: DoctypeReport, length: number, standalone: boolean) {
    this.#entities = entities;
    this.#report = report;
    this.#allowance = length;
    this.#standalone = standalone;
  }

  /** Reads on from `at` in a text that stands at `base` in the document; answers where the `]` or the end of the text is. */
  read(text: string, at: number, base: number): number {
    const cursor = new DoctypeCursor(text, at);
    const outer = this.#base;
    this.#base = base;
    for (;;) {
      cursor.space();
      if (cursor.done || (text[cursor.at] === ']' && !this.#within)) break;
      const from = cursor.at;
      if (!this.#one(cursor)) this.#recover(cursor, from);
    }
    this.#base = outer;
    return cursor.at;
  }

  #one(cursor: DoctypeCursor): boolean {
    const { text, at } = cursor;
    if (text[at] === '%') return this.#parameter(cursor);
    if (text.startsWith('<?', at)) {
      const { end, problem } = skipInstruction(text, at);
      cursor.at = end;
      // The XML declaration of an entity that stands in a file of its own is not met here.
      if (problem !== undefined) return cursor.fail(problem, at, Math.min(end, at + 80));
      if (/^<\?xml[ \t\r\n]/i.test(text.slice(at, at + 6)))
        return cursor.fail('An XML declaration stands at the very start of the file or nowhere.', at, end);
      return true;
    }
    if (cursor.take('<!--')) return this.#comment(cursor, at);
    if (cursor.take('<!ELEMENT')) return readElementDeclaration(cursor);
    if (cursor.take('<!ATTLIST')) return readAttributeDeclaration(cursor, (one) => this.#default(one));
    if (cursor.take('<!ENTITY')) return this.#entity(cursor);
    if (cursor.take('<!NOTATION')) return readNotationDeclaration(cursor);
    return cursor.fail(
      'Between the brackets of a document type stand <!ELEMENT …>, <!ATTLIST …>, <!ENTITY …>, <!NOTATION …>, comments and processing instructions alone.',
    );
  }

  #comment(cursor: DoctypeCursor, start: number): boolean {
    const { text } = cursor;
    const dashes = text.indexOf('--', start + 4);
    const close = dashes < 0 ? -1 : text.indexOf('-->', dashes);
    if (close < 0) {
      cursor.at = text.length;
      return cursor.fail('This comment is not closed. Put "-->" at its end.', start, start + 4);
    }
    cursor.at = close + 3;
    return (
      close === dashes || cursor.fail('A comment cannot hold "--", nor end with "--->".', dashes, dashes + 2)
    );
  }

  #entity(cursor: DoctypeCursor): boolean {
    const declared = readEntityDeclaration(cursor);
    if (!declared) return false;
    const { name, kind, replacement, isParameter } = declared;
    const { start, end } = this.#placed(declared.start, declared.end);
    const all = isParameter ? this.#entities.parameter : this.#entities.general;
    if (all.has(name)) {
      this.#report.remark(
        start,
        end,
        `"${shorten(name)}" is declared already, and the first declaration counts. Remove this one.`,
      );
    } else all.set(name, { name, kind, replacement, start, end });
    return true;
  }

  #default({ name, start, end }: NamedSpan): void {
    const place = this.#placed(start, end);
    if (this.#entities.general.has(name)) {
      this.defaults.push({ name, ...place });
      return;
    }
    // Section 4.1, "Entity Declared": the declaration comes before a default value that refers to it.
    if (!this.#entities.isComplete) return;
    this.#report.problem(
      place.start,
      place.end,
      `&${shorten(name)}; is not declared before this place. Declare it above, or write out what it stands for.`,
    );
  }

  #parameter(cursor: DoctypeCursor): boolean {
    const reference = parameterReference(cursor);
    if (!reference) return false;
    const { name, start, end } = reference;
    // From here on declarations count that need not stand in the document itself: section 4.1, "Entity Declared".
    if (!this.#standalone) this.#entities.isComplete = false;
    const entity = this.#entities.parameter.get(name);
    const state = this.#read.get(name);
    if (state === 'open') return cursor.fail(`%${shorten(name)}; refers to itself.`, start, end);
    if (state === 'done') return true;
    // Nothing is fetched, and what is nested deeper than anybody writes it is left unread.
    if (entity?.kind !== 'internal' || this.#depth >= deepest) return true;
    const { length } = entity.replacement;
    if (length > this.#allowance) return true;
    this.#allowance -= length;
    this.#read.set(name, 'open');
    const outer = this.#within;
    this.#within ??= { name, ...this.#placed(start, end) };
    this.#depth++;
    this.read(entity.replacement, 0, 0);
    this.#depth--;
    this.#within = outer;
    this.#read.set(name, 'done');
    return true;
  }

  /** Reports what is wrong, and goes on behind the declaration that it is in. */
  #recover(cursor: DoctypeCursor, from: number): void {
    const fault = cursor.takeFault();
    if (fault) {
      const { start, end } = this.#placed(fault.start, fault.end);
      const within = this.#within;
      this.#report.problem(
        start,
        end,
        within
          ? `%${shorten(within.name)}; stands for declarations with a fault: ${fault.message}`
          : fault.message,
      );
    }
    const { text } = cursor;
    if (text[from] === '<' && text[cursor.at - 1] === '>' && cursor.at > from) return;
    let at = Math.max(cursor.at, from + 1);
    while (at < text.length && text[at] !== '>' && text[at] !== '<' && text[at] !== ']') {
      if (text[at] === '"' || text[at] === "'") {
        const close = text.indexOf(text[at], at + 1);
        if (close < 0) at = text.length - 1;
        else at = close;
      }
      at++;
    }
    if (text[at] === '>') at++;
    cursor.at = at;
  }

  #placed(start: number, end: number): { start: number; end: number } {
    const within = this.#within;
    if (within) return { start: within.start, end: within.end };
    return { start: this.#base + start, end: this.#base + end };
  }
}

function shorten(name: string): string {
  return name.length > 40 ? `${name.slice(0, 39)}…` : name;
}
