/** How many places of the table are looked at for a name. */
const mostLooks = 32;

/**
 * Gives each distinct attribute name of one text a number, counted from 0 in the order of first use, and says which
 * ones a tag has already. A name costs one look into a table and one comparison with its first use, however many there are.
 */
export class AttributeNames {
  readonly #text: string;
  readonly #bytes: Uint8Array;
  /** Numbers by hash, −1 where there is none; open addressing. */
  #slots: Int32Array<ArrayBuffer>;
  /** Of each name: its hash, the place of its first use, and the tag that it was last seen in. */
  #hashes: Int32Array<ArrayBuffer>;
  #starts: Int32Array<ArrayBuffer>;
  #ends: Int32Array<ArrayBuffer>;
  #seenIn: Int32Array<ArrayBuffer>;
  /** By one more than the number of a name, what followed it last; −1 where nothing has. */
  #following: Int32Array<ArrayBuffer>;
  /** Names for which the table had no place near enough, as only names made up to have one hash need. */
  readonly #crowded = new Map<string, number>();
  #count = 0;
  #tag = 0;

  /** `bytes` are those of `withTextBytes`. */
  constructor(text: string, bytes: Uint8Array) {
    this.#text = text;
    this.#bytes = bytes;
    // What an entity stands for is read as a text of its own, and there may be very many of them.
    const names = text.length < 256 ? 8 : 256;
    this.#slots = new Int32Array(names * 2).fill(-1);
    this.#hashes = new Int32Array(names);
    this.#starts = new Int32Array(names);
    this.#ends = new Int32Array(names);
    this.#seenIn = new Int32Array(names);
    this.#following = new Int32Array(names + 1).fill(-1);
  }

  /** Begins a new tag. */
  begin(): void {
    this.#tag++;
  }

  /**
   * The name that stood behind the name `before` the last time (−1 for none, at the start of a tag), if it stands at
   * `at` too with a `=` behind it; else −1. Tags of one kind mostly repeat their attributes in the same order.
   */
  likelyAt(at: number, before: number): number {
    const name = this.#following[before + 1];
    if (name < 0) return -1;
    const bytes = this.#bytes;
    const end = this.#ends[name];
    let here = at;
    for (let first = this.#starts[name]; first < end; first++, here++) {
      if (bytes[first] !== bytes[here]) return -1;
    }
    return bytes[here] === 61 ? name : -1;
  }

  /** Notes that a name, in ASCII, stands behind another. */
  follow(before: number, name: number): void {
    this.#following[before + 1] = name;
  }

  lengthOf(name: number): number {
    return this.#ends[name] - this.#starts[name];
  }

  /** Whether the tag has the name with this number already; from now on it has. */
  isRepeated(name: number): boolean {
    const repeated = this.#seenIn[name] === this.#tag;
    this.#seenIn[name] = this.#tag;
    return repeated;
  }

  /** The number of the name that stands at `start`..`end` with a hash of `nameHash`. */
  numberOf(start: number, end: number, hash: number): number {
    const slots = this.#slots;
    const mask = slots.length - 1;
    let slot = (hash ^ (hash >>> 15)) & mask;
    for (let looks = 0; looks < mostLooks; looks++) {
      const name = slots[slot];
      if (name < 0) return this.#add(start, end, hash, slot);
      if (this.#hashes[name] === hash && this.#isSame(name, start, end)) return name;
      slot = (slot + 1) & mask;
    }
    const text = this.#text.slice(start, end);
    const known = this.#crowded.get(text);
    if (known !== undefined) return known;
    this.#crowded.set(text, this.#count);
    return this.#add(start, end, hash, -1);
  }

  #isSame(name: number, start: number, end: number): boolean {
    const bytes = this.#bytes;
    let first = this.#starts[name];
    if (this.#ends[name] - first !== end - start) return false;
    for (let at = start; at < end; at++, first++) {
      const byte = bytes[at];
      if (byte !== bytes[first]) return false;
      if (byte >= 0x80 && this.#text.charCodeAt(at) !== this.#text.charCodeAt(first)) return false;
    }
    return true;
  }

  #add(start: number, end: number, hash: number, slot: number): number {
    const name = this.#count++;
    if (name >= this.#hashes.length) {
      this.#hashes = grown(this.#hashes);
      this.#starts = grown(this.#starts);
      this.#ends = grown(this.#ends);
      this.#seenIn = grown(this.#seenIn);
      const following = new Int32Array(this.#hashes.length + 1).fill(-1);
      following.set(this.#following);
      this.#following = following;
    }
    this.#hashes[name] = hash;
    this.#starts[name] = start;
    this.#ends[name] = end;
    if (slot >= 0) this.#slots[slot] = name;
    if (this.#count * 2 > this.#slots.length) this.#growSlots();
    return name;
  }

  #growSlots(): void {
    const slots = new Int32Array(this.#slots.length * 2).fill(-1);
    const mask = slots.length - 1;
    for (let name = 0; name < this.#count; name++) {
      const hash = this.#hashes[name];
      let slot = (hash ^ (hash >>> 15)) & mask;
      let looks = 1;
      for (; slots[slot] !== -1 && looks < mostLooks; looks++) slot = (slot + 1) & mask;
      if (slots[slot] === -1) slots[slot] = name;
      else this.#crowded.set(this.#text.slice(this.#starts[name], this.#ends[name]), name);
    }
    this.#slots = slots;
  }
}

function grown(numbers: Int32Array<ArrayBuffer>): Int32Array<ArrayBuffer> {
  const larger = new Int32Array(numbers.length * 2);
  larger.set(numbers);
  return larger;
}
