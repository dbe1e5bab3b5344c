import type { TableCells } from './cells';

const fewestSlots = 32;

/**
 * Gives each different text of some cells a number, 0 for the first one and so on: where few texts recur on many
 * rows, what was made of a text once is found again by its number, without a string being cut out.
 */
export class DistinctTexts {
  /** How many different texts there are. */
  count = 0;
  /** The number of a text plus one where a slot is taken, otherwise 0. */
  #slots = new Int32Array(fewestSlots);
  #hashes = new Int32Array(fewestSlots);
  /** The first cell of each text. */
  #firsts = new Int32Array(fewestSlots);

  constructor(readonly cells: TableCells) {}

  /** The number of a cell's text: {@link count} as it was before the call where the text is new. */
  numberOf(cell: number): number {
    const hash = this.cells.isRewritten(cell) ? hashOf(this.cells.value(cell)) : this.#hashOf(cell);
    const slots = this.#slots;
    const mask = slots.length - 1;
    let slot = slotOf(hash) & mask;
    for (let taken = slots[slot]; taken !== 0; taken = slots[slot]) {
      if (this.#hashes[taken - 1] === hash && this.#areAlike(cell, this.#firsts[taken - 1])) return taken - 1;
      slot = (slot + 1) & mask;
    }
    const number = this.count++;
    this.#hashes[number] = hash;
    this.#firsts[number] = cell;
    slots[slot] = this.count;
    if (this.count * 2 >= slots.length) this.#grow();
    return number;
  }

  #hashOf(cell: number): number {
    const { starts, ends, codes, text } = this.cells;
    const end = ends[cell];
    let hash = 0;
    for (let at = starts[cell]; at < end; at++) {
      const code = codes[at];
      hash = next(hash, code < 128 ? code : text.charCodeAt(at));
    }
    return hash;
  }

  #areAlike(cell: number, other: number): boolean {
    const { cells } = this;
    const { starts, ends, codes, text } = cells;
    if (cells.isRewritten(cell) || cells.isRewritten(other)) return cells.value(cell) === cells.value(other);
    const length = ends[cell] - starts[cell];
    if (ends[other] - starts[other] !== length) return false;
    const [from, otherFrom] = [starts[cell], starts[other]];
    for (let at = 0; at < length; at++) {
      const code = codes[from + at];
      if (code !== codes[otherFrom + at]) return false;
      if (code > 127 && text.charCodeAt(from + at) !== text.charCodeAt(otherFrom + at)) return false;
    }
    return true;
  }

  #grow(): void {
    const size = this.#slots.length * 2;
    const slots = new Int32Array(size);
    const mask = size - 1;
    for (let number = 0; number < this.count; number++) {
      let slot = slotOf(this.#hashes[number]) & mask;
      while (slots[slot] !== 0) slot = (slot + 1) & mask;
      slots[slot] = number + 1;
    }
    this.#slots = slots;
    const hashes = new Int32Array(size);
    hashes.set(this.#hashes);
    this.#hashes = hashes;
    const firsts = new Int32Array(size);
    firsts.set(this.#firsts);
    this.#firsts = firsts;
  }
}

function hashOf(text: string): number {
  let hash = 0;
  for (let at = 0; at < text.length; at++) hash = next(hash, text.charCodeAt(at));
  return hash;
}

function next(hash: number, code: number): number {
  return (Math.imul(hash, 31) + code) | 0;
}

/** Spreads the upper bits over the lower ones. */
function slotOf(hash: number): number {
  const mixed = Math.imul(hash, 0x9e3779b1);
  return mixed ^ (mixed >>> 15);
}
