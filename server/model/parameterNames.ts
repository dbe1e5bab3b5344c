import type { ResolvedOpcode } from './opcodes/opcode';
import { resolveOpcode } from './opcodes/resolve';

/**
 * Parameters that the model itself works with. Their position is their number in every {@link ParameterNames},
 * so that code can compare numbers instead of strings.
 */
const known = [
  'sample',
  'key',
  'lokey',
  'hikey',
  'pitch_keycenter',
  'lovel',
  'hivel',
  'default_path',
  'note_offset',
  'octave_offset',
  'region_label',
  'group_label',
  'master_label',
  'global_label',
  'trigger',
  'seq_length',
  'seq_position',
  'loop_mode',
  'loop_start',
  'loop_end',
  'offset',
  'end',
  'sw_last',
  'sw_label',
] as const;

type Known = (typeof known)[number];

/** The numbers of the parameters that the model works with, by name. */
export const Parameter = Object.fromEntries(known.map((name, id) => [name, id])) as Record<Known, number>;

/** The hash of a name with one more character, given the hash of what stands before it, 0 at first: h · 31 + code in 32 bits. */
export function nextHash(hash: number, code: number): number {
  return (Math.imul(hash, 31) + code) | 0;
}

const tooMany = 1 << 16;

/** How many places of the table are looked at for a name. */
const mostLooks = 32;

/**
 * Gives each distinct parameter name a small number, found from a stretch of text without cutting a string out of it.
 * One table serves many instruments, so a name is resolved against the opcode catalogue once in a process.
 */
export class ParameterNames {
  #slots = new Int32Array(1024).fill(-1);
  /** Names for which the table had no place near enough, as only names made up to have one hash need. */
  readonly #crowded = new Map<string, number>();
  readonly #texts: string[] = [];
  /** The character codes of each name; `undefined` where they do not tell it from every other name. */
  readonly #codes: (Uint8Array | undefined)[] = [];
  readonly #hashes: number[] = [];
  readonly #canonical: number[] = [];
  readonly #resolved: (ResolvedOpcode | undefined)[] = [];

  constructor() {
    for (const name of known) this.idOf(name);
  }

  /** How many names the table holds. */
  get size(): number {
    return this.#texts.length;
  }

  /** The number of a name. */
  idOf(name: string): number {
    return this.idAt(name, 0, name.length);
  }

  /** The number of the name that stands at `start`..`end` of a text. */
  idAt(text: string, start: number, end: number): number {
    let hash = 0;
    for (let at = start; at < end; at++) hash = nextHash(hash, text.charCodeAt(at));
    return this.idOfHash(text, start, end, hash);
  }

  /**
   * As {@link idAt}, for a caller that has worked out the hash while reading; see {@link nextHash}. Characters outside
   * ASCII may stand for anything in the hash.
   */
  idOfHash(text: string, start: number, end: number, hash: number): number {
    return this.idOfCodes(text, undefined, start, end, hash);
  }

  /** As {@link idOfHash}, quicker for a caller that has the bytes of the text (see `withTextBytes`). */
  idOfCodes(text: string, codes: Uint8Array | undefined, start: number, end: number, hash: number): number {
    const slots = this.#slots;
    const mask = slots.length - 1;
    let slot = (hash ^ (hash >>> 15)) & mask;
    for (let looks = 0; looks < mostLooks; looks++) {
      const id = slots[slot];
      if (id < 0) return this.#addOrFind(copyOf(text.slice(start, end)), hash, slot);
      if (this.#hashes[id] === hash && this.#isName(id, text, codes, start, end)) return id;
      slot = (slot + 1) & mask;
    }
    const name = text.slice(start, end);
    return this.#crowded.get(name) ?? this.#addOrFind(copyOf(name), hash, -1);
  }

  #isName(id: number, text: string, codes: Uint8Array | undefined, start: number, end: number): boolean {
    const name = this.#codes[id];
    if (codes === undefined || name === undefined) {
      return this.#texts[id].length === end - start && text.startsWith(this.#texts[id], start);
    }
    if (name.length !== end - start) return false;
    for (let at = 0; at < name.length; at++) if (name[at] !== codes[start + at]) return false;
    return true;
  }

  /** The name as it was written. */
  text(id: number): string {
    return this.#texts[id];
  }

  /** The number of the canonical name: the same for all spellings of one parameter; its own for an unknown name. */
  canonical(id: number): number {
    return this.#canonical[id];
  }

  /** What the catalogue says of the name; `undefined` for a name that the format does not know. */
  opcode(id: number): ResolvedOpcode | undefined {
    return this.#resolved[id];
  }

  /** A name outside ASCII may have come with another hash before, so it is kept by that of its own characters. */
  #addOrFind(name: string, hash: number, slot: number): number {
    let own = 0;
    for (let at = 0; at < name.length; at++) own = nextHash(own, name.charCodeAt(at));
    return own === hash ? this.#add(name, hash, slot) : this.idOfHash(name, 0, name.length, own);
  }

  #add(name: string, hash: number, slot: number): number {
    const id = this.#texts.length;
    this.#texts.push(name);
    this.#codes.push(asciiCodes(name));
    this.#hashes.push(hash);
    if (slot >= 0) this.#slots[slot] = id;
    else this.#crowded.set(name, id);
    const resolved = resolveOpcode(name);
    this.#resolved.push(resolved);
    this.#canonical.push(id);
    if (this.#texts.length * 2 > this.#slots.length) this.#grow();
    if (resolved && resolved.canonical !== name) this.#canonical[id] = this.idOf(resolved.canonical);
    return id;
  }

  #grow(): void {
    const slots = new Int32Array(this.#slots.length * 2).fill(-1);
    const mask = slots.length - 1;
    for (let id = 0; id < this.#hashes.length; id++) {
      const hash = this.#hashes[id];
      let slot = (hash ^ (hash >>> 15)) & mask;
      let looks = 1;
      for (; slots[slot] !== -1 && looks < mostLooks; looks++) slot = (slot + 1) & mask;
      if (slots[slot] === -1) slots[slot] = id;
      else this.#crowded.set(this.#texts[id], id);
    }
    this.#slots = slots;
  }
}

function asciiCodes(name: string): Uint8Array | undefined {
  const codes = Array.from({ length: name.length }, (_, at) => name.charCodeAt(at));
  return codes.every((code) => code < 128) ? Uint8Array.from(codes) : undefined;
}

/** A string of its own: a slice would keep the whole text that it was cut from in memory. */
function copyOf(slice: string): string {
  return Array.from(slice).join('');
}

let shared = new ParameterNames();

/**
 * The table that new instruments share. It is replaced when text with very many invented names has filled it;
 * an instrument keeps the table that it was read with.
 */
export function sharedParameterNames(): ParameterNames {
  if (shared.size > tooMany) shared = new ParameterNames();
  return shared;
}
