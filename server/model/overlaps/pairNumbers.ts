/** Slots at first; a power of two, and always more than twice the pairs. */
const fewestSlots = 2048;

/**
 * Gives each different pair of whole numbers (32 bits each) a number, 0 for the first one and so on. A hash table in
 * flat buffers: a `Map` with both numbers in one key slows down once keys need more than 31 bits.
 */
export class PairNumbers {
  /** How many different pairs there are. */
  count = 0;
  /** The number of a pair plus one where a slot is taken, otherwise 0. */
  #slots: Int32Array;
  #pairs: Int32Array;

  /** `expected` pairs find room without anything being moved. */
  constructor(expected = 0) {
    let size = fewestSlots;
    while (size <= expected * 2) size *= 2;
    this.#slots = new Int32Array(size);
    this.#pairs = new Int32Array(size);
  }

  /** The number of a pair: {@link count} as it was before the call where the pair is new. */
  numberOf(first: number, second: number): number {
    const slots = this.#slots;
    const pairs = this.#pairs;
    const mask = slots.length - 1;
    let slot = slotOf(first, second) & mask;
    for (let taken = slots[slot]; taken !== 0; taken = slots[slot]) {
      const at = (taken - 1) * 2;
      if (pairs[at] === first && pairs[at + 1] === second) return taken - 1;
      slot = (slot + 1) & mask;
    }
    const number = this.count++;
    pairs[number * 2] = first;
    pairs[number * 2 + 1] = second;
    slots[slot] = this.count;
    if (this.count * 2 >= slots.length) this.#grow();
    return number;
  }

  #grow(): void {
    const size = this.#slots.length * 2;
    const pairs = new Int32Array(size);
    pairs.set(this.#pairs);
    const slots = new Int32Array(size);
    const mask = size - 1;
    for (let number = 0; number < this.count; number++) {
      let slot = slotOf(pairs[number * 2], pairs[number * 2 + 1]) & mask;
      while (slots[slot] !== 0) slot = (slot + 1) & mask;
      slots[slot] = number + 1;
    }
    this.#pairs = pairs;
    this.#slots = slots;
  }
}

/** Multiplies by odd numbers near 2³² over the golden ratio and spreads the upper bits over the lower ones. */
function slotOf(first: number, second: number): number {
  const mixed = Math.imul(first, 0x9e3779b1) ^ Math.imul(second, 0x85ebca6b);
  return mixed ^ (mixed >>> 15) ^ (mixed >>> 22);
}
