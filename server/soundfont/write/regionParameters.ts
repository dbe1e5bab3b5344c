import type { Instrument } from '../../model/instrument';
import type { NoteKind } from '../../model/notes';
import type { Account } from './account';

/** The values in force in one region by canonical name; asking for one says that it is used. */
export class RegionParameters {
  readonly region: number;
  readonly account: Account;
  readonly #parameters = new Map<string, number>();

  constructor(account: Account, region: number) {
    this.account = account;
    this.region = region;
    const { instrument } = account;
    for (const { name, parameter } of instrument.effectiveParameters(region))
      this.#parameters.set(instrument.names.text(name), parameter);
  }

  get instrument(): Instrument {
    return this.account.instrument;
  }

  /** All parameters in force. */
  parameters(): Iterable<number> {
    return this.#parameters.values();
  }

  /** The parameter of a name, or −1. */
  parameter(name: string): number {
    return this.#parameters.get(name) ?? -1;
  }

  /** The number of a name, or what holds where it is not set or no number. */
  number(name: string, without: number): number {
    const parameter = this.#use(name);
    const value = parameter < 0 ? Number.NaN : this.instrument.number(parameter);
    return Number.isNaN(value) ? without : value;
  }

  /** The key of a name, note names understood; NaN where it is not set. */
  key(name: string): number {
    const parameter = this.#use(name);
    return parameter < 0 ? Number.NaN : this.instrument.keyNumber(parameter);
  }

  /** The text of a name in small letters; `undefined` where it is not set. */
  word(name: string): string | undefined {
    const parameter = this.#use(name);
    return parameter < 0 ? undefined : this.instrument.valueText(parameter).trim().toLowerCase();
  }

  has(name: string): boolean {
    return this.#parameters.has(name);
  }

  /** The names that match, with what their groups caught. */
  matching(pattern: RegExp): { name: string; found: RegExpExecArray }[] {
    const all: { name: string; found: RegExpExecArray }[] = [];
    for (const name of this.#parameters.keys()) {
      const found = pattern.exec(name);
      if (found) all.push({ name, found });
    }
    return all;
  }

  /** Says that names are used, or change nothing here. */
  use(...names: string[]): void {
    for (const name of names) this.#use(name);
  }

  /** Notes what became of a name, where it is set. */
  tell(name: string, kind: NoteKind, message: string): void {
    const parameter = this.#parameters.get(name);
    if (parameter !== undefined) this.account.tell(parameter, kind, message);
  }

  #use(name: string): number {
    const parameter = this.#parameters.get(name);
    if (parameter === undefined) return -1;
    this.account.use(parameter);
    return parameter;
  }
}
