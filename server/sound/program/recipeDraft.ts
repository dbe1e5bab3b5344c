import type { BandType, FilterType } from '../modulation/filterValues';
import type { Fade, Move, VoiceRecipe } from './recipe';
import { Slot, slotCount, slotDefaults, slotOf } from './slots';

/** What is being gathered of a numbered envelope or LFO. */
export interface NumberedDraft {
  /** Values that nothing moves, by the opcode without its prefix: `sustain`, `loop_count`, `wave`, `shape3`. */
  settings: Map<string, number>;
  /** Points, steps or further waves that are named, by number. */
  parts: Set<number>;
}

/** A band of the equaliser; `undefined` for a type that is not rendered. */
interface BandDraft {
  type: BandType | undefined;
}

/** What is being gathered of a move; see {@link Move}. */
type MoveDraft = Partial<Move> & { target: string };

/** Most values that a voice has; text can name more bands, points and steps than anything would play. */
const mostSlots = 2048;

/** A recipe while the opcodes of a region are read one by one. */
export class RecipeDraft {
  readonly base: number[];
  /** Slots behind those that every voice has, by the canonical name of their opcode. */
  readonly #slots = new Map<string, number>();
  readonly #moves = new Map<string, MoveDraft>();
  /** Crossfades by subject and side. */
  readonly fades = new Map<string, Partial<Fade>>();
  readonly envelopes = new Map<number, NumberedDraft>();
  readonly lfos = new Map<number, NumberedDraft>();
  readonly bands = new Map<number, BandDraft>();
  /** Routes of numbered envelopes and LFOs by opcode. */
  readonly routes = new Map<string, { isLfo: boolean; number: number; target: string; other: number }>();
  readonly velocityPoints = new Map<number, number>();
  /** Plain numbers that recipes hold outside of slots, by opcode. */
  readonly settings = new Map<string, number>();
  /** `undefined` for a type that is not rendered. */
  readonly filterTypes: [FilterType | undefined, FilterType | undefined] = ['lpf_2p', 'lpf_2p'];
  readonly isPower = { key: true, velocity: true, controller: true };
  readonly added = new Set<string>();
  readonly flags: Pick<VoiceRecipe, 'isInverted' | 'isReverse' | 'isBalanceLaw' | 'isPercentOffset'> = {
    isInverted: false,
    isReverse: false,
    isBalanceLaw: false,
    isPercentOffset: false,
  };
  /** −1 where the text does not say. */
  loopType = -1;

  constructor() {
    this.base = new Array<number>(slotCount).fill(0);
    for (const [name, value] of Object.entries(slotDefaults))
      this.base[Slot[name as keyof typeof Slot]] = value;
  }

  /** The slot of an opcode, made when first asked for. */
  slot(name: string, without = 0): number {
    const fixed = slotOf(name);
    if (fixed >= 0) return fixed;
    let slot = this.#slots.get(name);
    if (slot === undefined) {
      slot = Math.min(this.base.length, mostSlots);
      this.#slots.set(name, slot);
      if (slot === this.base.length) this.base.push(without);
    }
    return slot;
  }

  set(name: string, value: number): void {
    this.base[this.slot(name)] = value;
  }

  add(name: string, value: number): void {
    this.base[this.slot(name)] += value;
  }

  /** The move of a target by a source; `part` tells several by one source apart. */
  move(target: string, source: number, part = 0): MoveDraft {
    const key = `${target} ${source} ${part}`;
    let draft = this.#moves.get(key);
    if (!draft) {
      draft = { target, source };
      this.#moves.set(key, draft);
    }
    return draft;
  }

  /** Whether a value is one that is computed, so that it makes sense to move it. */
  has(name: string): boolean {
    return slotOf(name) >= 0 || this.#slots.has(name);
  }

  /** The moves of values that are there; those without a depth do nothing. */
  finishedMoves(): Move[] {
    const moves: Move[] = [];
    for (const { target, ...draft } of this.#moves.values()) {
      if (!draft.depth || !this.has(target)) continue;
      moves.push({
        source: 0,
        curve: -1,
        smoothMs: 0,
        step: 0,
        centre: 0,
        multiplies: target === 'amplitude' && !this.added.has('amplitude'),
        ...draft,
        depth: draft.depth,
        slot: this.slot(target),
      });
    }
    return moves;
  }

  envelope(number: number): NumberedDraft {
    return numbered(this.envelopes, number);
  }

  lfo(number: number): NumberedDraft {
    return numbered(this.lfos, number);
  }

  /** A band of the equaliser, with its slots. */
  band(number: number): BandDraft {
    let band = this.bands.get(number);
    if (!band) {
      band = { type: 'peak' };
      this.bands.set(number, band);
      this.slot(`eq${number}_freq`, [0, 50, 500, 5000][number] ?? 0);
      this.slot(`eq${number}_bw`, 1);
      this.slot(`eq${number}_gain`, 0);
    }
    return band;
  }

  setting(name: string, without: number): number {
    return this.settings.get(name) ?? without;
  }
}

function numbered(map: Map<number, NumberedDraft>, number: number): NumberedDraft {
  let draft = map.get(number);
  if (!draft) {
    draft = { settings: new Map(), parts: new Set() };
    map.set(number, draft);
  }
  return draft;
}
