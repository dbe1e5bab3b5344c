import type { XmlHandler } from '../scan/handler';
import type { EntityPlace, EntityText, NamedReferences } from '../scan/references';

/** The element that the text of an entity is put in to be read. */
const before = '<e>';
const after = '</e>';

/** Puts a text in an element. */
export function asElement(text: string): string {
  return before + text + after;
}

/**
 * What a scanner tells of a text in an element of its own, see {@link asElement}: whether it is the content of an
 * element by itself, XML 1.0 (fifth edition), production [43], and which entities it refers to.
 */
export class EntityContent implements XmlHandler, NamedReferences, EntityText {
  fault: string | undefined;
  readonly references: { name: string; place: EntityPlace }[] = [];
  readonly #length: number;
  #depth = 0;
  #closed = false;

  constructor(text: string) {
    this.#length = text.length;
  }

  found(name: string, _start: number, _end: number, place: EntityPlace): void {
    this.references.push({ name, place });
  }

  open(): void {}

  attribute(): void {}

  openEnd(_end: number, empty: boolean): void {
    if (!empty) this.#depth++;
  }

  close(_start: number, end: number): void {
    this.#depth--;
    if (this.#depth > 0) return;
    if (this.#closed || end !== this.#length + before.length + after.length) this.problem();
    this.#closed = true;
  }

  characters(): void {}

  comment(): void {}

  instruction(): void {}

  doctype(): void {}

  problem(): void {
    this.fault = 'which is not well formed by itself';
  }
}
