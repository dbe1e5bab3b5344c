import type { Instrument } from '../../model/instrument';
import type { ConversionNote, NoteKind } from '../../model/notes';
import type { Stretch } from '../../model/text/stretch';
import { firstRegions } from '../../model/writing/placeNotes';

type ReadingNotes = ReadonlyMap<number, readonly ConversionNote[]>;

const none: ReadingNotes = new Map();

/** A note on a parameter; `about` tells it from others of its kind. */
interface Noted {
  about: string;
  note: ConversionNote;
}

/** A note that waits for the element that it is about to be written. */
interface WaitingNote {
  note: ConversionNote;
  /** The slot of the value in its element, or −1. */
  slot: number;
}

/**
 * Keeps account of what became of each parameter of an instrument that is written: kept exactly, or a note. Notes get their
 * place in the written text where the writer tells of its elements.
 */
export class Accounts {
  readonly #instrument: Instrument;
  readonly #readingNotes: ReadingNotes;
  /** By parameter, 1 where it was written exactly, and 1 where there is a note on it. */
  readonly #kept: Uint8Array;
  readonly #isNoted: Uint8Array;
  readonly #noted = new Map<number, Noted[]>();
  readonly #spanNotes: ConversionNote[] = [];
  /** Parameters that share the fate of another one. */
  readonly #sharing = new Map<number, number>();
  /** Parameters of regions that are not written. */
  readonly #leftOut = new Set<number>();
  /** By header, where the tag of its element starts and its name ends in what is written; 0 where it has none. */
  readonly #tags: Int32Array;
  #waiting: WaitingNote[] = [];
  /** The tag of the first element that is written. */
  #outermost: Stretch | undefined;

  /** `readingNotes` are those on parameters that were taken on reading; they get their place too. */
  constructor(instrument: Instrument, readingNotes: ReadingNotes = none) {
    this.#instrument = instrument;
    this.#readingNotes = readingNotes;
    this.#kept = new Uint8Array(instrument.parameters.count);
    this.#isNoted = new Uint8Array(instrument.parameters.count);
    this.#tags = new Int32Array(2 * instrument.headers.count);
  }

  /** Says that a parameter was written exactly, in a slot of the element that is written next. */
  keep(parameter: number, slot = -1): void {
    if (parameter < 0) return;
    this.#kept[parameter] = 1;
    if (this.#readingNotes.size === 0) return;
    for (const note of this.#readingNotes.get(parameter) ?? []) this.#waiting.push({ note, slot });
  }

  /** Says what else became of a parameter; the same of one parameter is noted once. */
  note(
    parameter: number,
    kind: NoteKind,
    message: string | (() => string),
    about = '',
    slot = -1,
  ): ConversionNote | undefined {
    if (parameter < 0) return undefined;
    const known = this.#noted.get(parameter);
    if (known?.some((one) => one.note.kind === kind && one.about === about)) return undefined;
    this.#isNoted[parameter] = 1;
    const text = typeof message === 'string' ? message : message();
    const note: ConversionNote = { kind, ...this.#instrument.parameterSpan(parameter), message: text };
    if (known) known.push({ about, note });
    else this.#noted.set(parameter, [{ about, note }]);
    this.#waiting.push({ note, slot });
    return note;
  }

  /** Says that a parameter is written by means of another one of the same value, whatever becomes of that. */
  sameAs(parameter: number, other: number): void {
    if (parameter >= 0 && other >= 0 && parameter !== other) this.#sharing.set(parameter, other);
  }

  /** Says what became of a header or a directive. */
  noteSpan(note: ConversionNote): void {
    this.#spanNotes.push(note);
  }

  /** Says that a region is not written, which is told of it as a whole. */
  leaveOut(region: number): void {
    for (const { parameter } of this.#instrument.effectiveParameters(region)) this.#leftOut.add(parameter);
  }

  /** From here on notes are about the element that is written next; those before find their place in the end. */
  startWriting(): void {
    this.#waiting = [];
  }

  /** Says where the element of a header stands, −1 for one that belongs to none; what waited is placed in it. */
  placeElement(header: number, tag: Stretch, stretchOf: (slot: number) => Stretch): void {
    if (header >= 0 && this.#tags[2 * header + 1] === 0) {
      this.#tags[2 * header] = tag.start;
      this.#tags[2 * header + 1] = tag.end;
    }
    this.#outermost ??= tag;
    if (this.#waiting.length === 0) return;
    for (const { note, slot } of this.#waiting) note.written ??= slot < 0 ? tag : stretchOf(slot);
    this.#waiting = [];
  }

  /** All notes in the order of the text, and how many parameters were kept exactly. */
  finish(): { notes: ConversionNote[]; kept: number } {
    this.#share();
    for (const parameter of this.#leftOut) if (this.#kept[parameter] === 0) this.#isNoted[parameter] = 1;
    this.#noteOverridden();
    const all = this.#spanNotes;
    for (const noted of this.#noted.values()) for (const { note } of noted) all.push(note);
    this.#placeRest([...all, ...[...this.#readingNotes.values()].flat()]);
    for (const parameter of this.#readingNotes.keys()) this.#isNoted[parameter] = 1;
    const notes = all.sort((a, b) => a.source - b.source || a.start - b.start);
    let kept = 0;
    this.#kept.forEach((isKept, parameter) => {
      if (isKept === 1 && this.#isNoted[parameter] === 0) kept++;
    });
    return { notes, kept };
  }

  /** Notes on what no element was written for show at that of their header, else of the first region that it is for. */
  #placeRest(notes: readonly ConversionNote[]): void {
    if (!this.#outermost || notes.every(({ written }) => written)) return;
    const instrument = this.#instrument;
    const hasRegions = instrument.regions.length > 0;
    const firstRegion = hasRegions ? firstRegions(instrument) : [];
    for (const note of notes) {
      if (note.written) continue;
      const header = Math.max(0, instrument.headerAt(note.source, note.start));
      const region = instrument.regions[firstRegion[header] ?? 0] ?? -1;
      note.written = this.#tagOf(header) ?? this.#tagOf(region) ?? this.#outermost;
    }
  }

  #tagOf(header: number): Stretch | undefined {
    const end = this.#tags[2 * header + 1] ?? 0;
    return end === 0 ? undefined : { start: this.#tags[2 * header], end };
  }

  /** What regions could have inherited, but each gets another value. */
  #noteOverridden(): void {
    const instrument = this.#instrument;
    const seen = new Uint8Array(instrument.headers.count);
    for (const region of instrument.regions) {
      for (let header = instrument.parent(region); header >= 0; header = instrument.parent(header)) {
        if (seen[header] === 1) break;
        seen[header] = 1;
        const end = instrument.endParameter(header);
        for (let parameter = instrument.firstParameter(header); parameter < end; parameter++) {
          if (this.#kept[parameter] === 1 || this.#isNoted[parameter] === 1) continue;
          const name = instrument.names.text(instrument.name(parameter));
          const message = `${name} ${instrument.valueText(parameter)} is left out: other values take its place in all regions.`;
          this.note(parameter, 'ignored', message);
        }
      }
    }
  }

  #share(): void {
    for (const [parameter, other] of this.#sharing) {
      if (this.#kept[parameter] === 1 || this.#isNoted[parameter] === 1) continue;
      if (this.#kept[other] === 1) this.#kept[parameter] = 1;
      for (const { about, note } of this.#noted.get(other) ?? []) {
        const own = this.note(parameter, note.kind, note.message, about);
        if (own && note.written) own.written = note.written;
      }
    }
  }
}
