import type { Instrument } from '../../model/instrument';
import type { ConversionNote, NoteKind } from '../../model/notes';

/**
 * Keeps account of every value of an instrument on its way into a SoundFont: what was used, what of it came to be something
 * else, and what no one asked for. A value that many regions share is told of once.
 */
export class Account {
  readonly instrument: Instrument;
  readonly notes: ConversionNote[] = [];
  /** By parameter: 1 where some region looked at it, 2 where there is a note on it. */
  readonly #state: Uint8Array;
  readonly #told = new Set<string>();

  constructor(instrument: Instrument) {
    this.instrument = instrument;
    this.#state = new Uint8Array(instrument.parameters.count);
  }

  /** Says that a parameter went into what is written, or that leaving it out changes nothing. */
  use(parameter: number): void {
    if (this.#state[parameter] === 0) this.#state[parameter] = 1;
  }

  /** Notes what became of a parameter, once for each kind. */
  tell(parameter: number, kind: NoteKind, message: string): void {
    const key = `${parameter} ${kind}`;
    if (this.#told.has(key)) return;
    this.#told.add(key);
    this.#state[parameter] = 2;
    this.notes.push({ kind, message, ...this.instrument.parameterSpan(parameter) });
  }

  /** Notes what became of a whole region. */
  tellRegion(region: number, kind: NoteKind, message: string): void {
    const key = `region ${region} ${message}`;
    if (this.#told.has(key)) return;
    this.#told.add(key);
    this.notes.push({ kind, message, ...this.instrument.headerSpan(region) });
  }

  /** Notes the parameters that a region has in force and that nothing looked at. */
  tellUnused(parameters: Iterable<number>): void {
    const { names } = this.instrument;
    for (const parameter of parameters) {
      if (this.#state[parameter] !== 0) continue;
      const name = names.text(this.instrument.name(parameter));
      const opcode = names.opcode(this.instrument.name(parameter));
      if (opcode?.facts.defaultText === this.instrument.valueText(parameter).trim()) this.use(parameter);
      else this.tell(parameter, 'dropped', `Left out: a SoundFont has no place for "${name}".`);
    }
  }

  /** How many values were carried over exactly. */
  get kept(): number {
    return this.#state.reduce((count, state) => count + (state === 2 ? 0 : 1), 0);
  }
}
