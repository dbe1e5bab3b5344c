import type { Files } from '../model/files';
import type { Instrument } from '../model/instrument';
import type { PlayedNote } from '../playing/sweep/playedNote';
import type { RenderSource } from '../sound/render/renderParts';
import type { Cause } from './cause';
import { causeOf, missingCause } from './causes';
import type { Doubt } from './doubts';
import { lookForDoubts, notesToHear, pairsOf } from './doubts';
import { endingDifferences } from './endingDifferences';
import type { MeasureMemory } from './heardContent';
import { heardContent } from './heardContent';
import type { MeasuredNote, MeasureOptions } from './measureNotes';
import { measureNotes } from './measureNotes';
import type { NotCompared } from './notCompared';
import { notComparedOf } from './notCompared';
import type { ComparedSide } from './regionLikeness';
import { RegionLikeness } from './regionLikeness';
import { SameSamples } from './sameSamples';
import type { SoundDifference } from './soundDifference';
import { louder } from './soundDifference';
import { SpokenValues } from './spokenValues';

/** One of two instruments that are compared, with what is needed to play it. */
export interface ComparedInstrument extends RenderSource {
  instrument: Instrument;
}

/** A note that two instruments do not play alike. */
export interface NoteDifference extends SoundDifference {
  note: PlayedNote;
  /** The regions in which they first differ, by position; `undefined` where one side plays none. */
  a: number | undefined;
  b: number | undefined;
  cause: Cause;
}

/** What two texts say otherwise and nothing that was played let be heard. */
export interface UnheardDifference {
  /** The first regions of which they say so, and of how many of the first side. */
  a: number;
  b: number;
  regions: number;
  cause: Cause;
}

export interface Comparison {
  /** Notes that were played on both sides. */
  notes: number;
  /** How many pairs or sets of regions had to be rendered because what the texts say was not the same. */
  rendered: number;
  /** The greatest difference of a sample in dB to full scale; `null` for none at all. */
  worstDb: number | null;
  /** Those above the tolerance, the worst first. */
  differences: NoteDifference[];
  /** What the texts say otherwise of voices that end because of others, and that no note let be heard. */
  unheard: UnheardDifference[];
  /** Opcodes that either side has and that were not rendered, so that nothing is said of them. */
  notCompared: NotCompared[];
}

export interface CompareOptions extends MeasureOptions {
  progress?: (done: number, all: number) => void;
  signal?: AbortSignal;
  /** Measures notes elsewhere than in this thread. */
  measure?: NoteMeasure;
  memory?: MeasureMemory;
}

/** Measures in how far notes differ, as {@link measureNotes} does. */
export interface NoteMeasure {
  /** How many can be under way at one time. */
  atOnce: number;
  measure(notes: readonly PlayedNote[]): Promise<MeasuredNote>;
}

/** Plays notes on two instruments, such that every region of both that can sound does so, and measures how they differ. */
export async function compareInstruments(
  first: ComparedInstrument,
  second: ComparedInstrument,
  options: CompareOptions,
  files: Files,
): Promise<Comparison> {
  const sides = [sideOf(first), sideOf(second)] as const;
  const likeness = new RegionLikeness(...sides, new SameSamples(files, [first.samples, second.samples]));
  const { notes, doubts } = await lookForDoubts(sides, likeness, options.signal);
  const comparison: Comparison = {
    notes,
    rendered: doubts.length,
    worstDb: null,
    differences: [],
    unheard: [],
    notCompared: notComparedOf(first.program, second.program),
  };
  const hearing = new Hearing(sides, likeness, options);
  const unheard = new Unheard(sides);
  let done = 0;
  const work = doubts.values();
  const hear = async () => {
    for (const doubt of work) {
      options.signal?.throwIfAborted();
      options.progress?.(done, doubts.length);
      const { note, difference } = await hearing.hear(doubt);
      done++;
      comparison.worstDb = louder(comparison.worstDb, difference.peakDb);
      const isHeard = difference.peakDb !== null && difference.peakDb > options.toleranceDb;
      const told = isHeard ? await hearing.told(doubt, note, difference) : undefined;
      if (told) comparison.differences.push(told);
      unheard.add(doubt, told?.cause);
    }
  };
  await Promise.all(Array.from({ length: options.measure?.atOnce ?? 1 }, hear));
  comparison.unheard = unheard.found;
  comparison.differences.sort(
    (one, other) => (other.peakDb ?? 0) - (one.peakDb ?? 0) || (one.a ?? 0) - (other.a ?? 0),
  );
  return comparison;
}

function sideOf(compared: ComparedInstrument): ComparedSide {
  return { ...compared, spoken: new SpokenValues(compared.instrument) };
}

/** Gathers what texts say otherwise of the endings of voices, each thing once, but for what is told as a cause. */
class Unheard {
  readonly #sides: readonly [ComparedSide, ComparedSide];
  readonly #known = new Map<string, UnheardDifference>();

  constructor(sides: readonly [ComparedSide, ComparedSide]) {
    this.#sides = sides;
  }

  add(doubt: Doubt, told: Cause | undefined): void {
    for (const pair of pairsOf(doubt, this.#sides)) {
      for (const cause of endingDifferences(this.#sides, pair)) {
        if (cause.opcode === told?.opcode) continue;
        const name = `${cause.a} ${cause.b} ${cause.message}`;
        const known = this.#known.get(name);
        if (known) known.regions++;
        else this.#known.set(name, { ...pair, regions: 1, cause });
      }
    }
  }

  get found(): UnheardDifference[] {
    return [...this.#known.values()];
  }
}

/** The first thing that texts say otherwise of how voices end, with the regions. */
function firstEnding(
  doubt: Doubt,
  sides: readonly [ComparedSide, ComparedSide],
): { a: number; b: number; cause: Cause } | undefined {
  for (const pair of pairsOf(doubt, sides)) {
    const [cause] = endingDifferences(sides, pair);
    if (cause) return { ...pair, cause };
  }
  return undefined;
}

class Hearing {
  readonly #sides: readonly [ComparedSide, ComparedSide];
  readonly #likeness: RegionLikeness;
  readonly #options: CompareOptions;
  /** Pairs of recipes that were heard to be alike however they were played. */
  readonly #alike = new Set<string>();

  constructor(
    sides: readonly [ComparedSide, ComparedSide],
    likeness: RegionLikeness,
    options: CompareOptions,
  ) {
    this.#sides = sides;
    this.#likeness = likeness;
    this.#options = options;
  }

  async hear(doubt: Doubt): Promise<MeasuredNote> {
    const { pair } = doubt;
    const recipes = this.#recipesOf(pair);
    const isKnown = recipes !== undefined && this.#alike.has(recipes);
    const notes = await notesToHear(doubt, this.#sides, this.#likeness, isKnown);
    const measured = await this.#measured(notes);
    const { peakDb } = measured.difference;
    if (recipes !== undefined && (peakDb === null || peakDb <= this.#options.toleranceDb))
      this.#alike.add(recipes);
    return measured;
  }

  async #measured(notes: readonly PlayedNote[]): Promise<MeasuredNote> {
    const { measure, memory, ...options } = this.#options;
    const content = memory && (await heardContent(this.#sides, notes, options, memory));
    const known = content === undefined ? undefined : memory?.read(content);
    if (known) return known;
    const measured = measure
      ? await measure.measure(notes)
      : await measureNotes(...this.#sides, notes, options);
    if (content !== undefined) memory?.write(content, measured);
    return measured;
  }

  #recipesOf({ a, b }: Doubt['pair']): string | undefined {
    if (a === undefined || b === undefined) return undefined;
    const [one, other] = this.#sides;
    return `${one.program.recipe[a]} ${other.program.recipe[b]}`;
  }

  async told(doubt: Doubt, note: PlayedNote, difference: SoundDifference): Promise<NoteDifference> {
    const { pair } = doubt;
    const told = { note, ...difference, a: pair.a, b: pair.b };
    if (pair.a !== undefined && pair.b !== undefined) {
      const whole = { a: pair.a, b: pair.b };
      const ending = note.followedBy && firstEnding(doubt, this.#sides);
      if (ending) return { ...told, ...ending };
      const elsewhere =
        (await this.#likeness.hasSameSample(pair.a, pair.b)) === false &&
        (await missingCause(this.#sides, { side: 0, number: pair.a }, this.#likeness));
      if (elsewhere && elsewhere.silent !== undefined) {
        const { silent, ...cause } = elsewhere;
        return { ...told, b: silent, cause };
      }
      return { ...told, cause: await causeOf(this.#sides, whole, this.#likeness, difference) };
    }
    const side = pair.a === undefined ? 1 : 0;
    const number = (pair.a ?? pair.b) as number;
    const { silent, ...cause } = await missingCause(this.#sides, { side, number }, this.#likeness);
    return { ...told, ...(silent !== undefined && (side === 0 ? { b: silent } : { a: silent })), cause };
  }
}
