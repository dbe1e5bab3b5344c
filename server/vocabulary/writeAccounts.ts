import type { Instrument } from '../model/instrument';
import type { ConversionNote, NoteKind } from '../model/notes';

/** Keeps account of what became of each parameter of an instrument that is written: kept exactly, or a note. */
export class Accounts {
  readonly #instrument: Instrument;
  readonly #kept = new Set<number>();
  readonly #noted = new Map<string, ConversionNote>();
  readonly #notedParameters = new Set<number>();
  /** Parameters that share the fate of another one. */
  readonly #sharing = new Map<number, number>();

  constructor(instrument: Instrument) {
    this.#instrument = instrument;
  }

  /** Says that a parameter was written exactly. */
  keep(parameter: number): void {
    if (parameter >= 0) this.#kept.add(parameter);
  }

  /** Says what else became of a parameter; the same of one parameter is noted once. */
  note(parameter: number, kind: NoteKind, message: string, about = ''): void {
    const key = `${parameter}/${kind}/${about}`;
    if (parameter < 0 || this.#noted.has(key)) return;
    this.#notedParameters.add(parameter);
    this.#noted.set(key, { kind, ...this.#instrument.parameterSpan(parameter), message });
  }

  /** Says that a parameter is written by means of another one of the same value, whatever becomes of that. */
  sameAs(parameter: number, other: number): void {
    if (parameter >= 0 && other >= 0 && parameter !== other) this.#sharing.set(parameter, other);
  }

  /** Says what became of a header or a directive. */
  noteSpan(note: ConversionNote): void {
    this.#noted.set(`span ${this.#noted.size}`, note);
  }

  /** All notes in the order of the text, and how many parameters were kept exactly. */
  finish(): { notes: ConversionNote[]; kept: number } {
    this.#share();
    this.#noteOverridden();
    const notes = [...this.#noted.values()].sort((a, b) => a.source - b.source || a.start - b.start);
    let kept = 0;
    for (const parameter of this.#kept) if (!this.#notedParameters.has(parameter)) kept++;
    return { notes, kept };
  }

  /** What regions could have inherited, but each gets another value. */
  #noteOverridden(): void {
    const instrument = this.#instrument;
    const seen = new Set<number>();
    for (const region of instrument.regions) {
      for (let header = instrument.parent(region); header >= 0; header = instrument.parent(header)) {
        if (seen.has(header)) break;
        seen.add(header);
        const end = instrument.endParameter(header);
        for (let parameter = instrument.firstParameter(header); parameter < end; parameter++) {
          if (this.#kept.has(parameter) || this.#notedParameters.has(parameter)) continue;
          const name = instrument.names.text(instrument.name(parameter));
          const message = `${name} ${instrument.valueText(parameter)} is left out: other values take its place in all regions.`;
          this.note(parameter, 'ignored', message);
        }
      }
    }
  }

  #share(): void {
    if (this.#sharing.size === 0) return;
    const notesOf = new Map<number, [about: string, note: ConversionNote][]>();
    for (const [key, note] of this.#noted) {
      const [, parameter, about] = /^(\d+)\/\w+\/(.*)$/s.exec(key) ?? [];
      if (parameter === undefined) continue;
      const list = notesOf.get(Number(parameter));
      if (list) list.push([about as string, note]);
      else notesOf.set(Number(parameter), [[about as string, note]]);
    }
    for (const [parameter, other] of this.#sharing) {
      if (this.#kept.has(parameter) || this.#notedParameters.has(parameter)) continue;
      if (this.#kept.has(other)) this.keep(parameter);
      for (const [about, { kind, message }] of notesOf.get(other) ?? [])
        this.note(parameter, kind, message, about);
    }
  }
}
