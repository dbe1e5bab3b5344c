import type { TextEdit } from '../finding';
import type { Instrument } from '../instrument';
import type { Change, NewParameter, Notation } from '../notation';
import { Parameter } from '../parameterNames';
import { isOpcode } from './keyParameters';
import { KeySpeller } from './keySpeller';

/** The opcodes that say where a region sounds and what its sample's own key is. */
export type RangeName = 'lokey' | 'hikey' | 'lovel' | 'hivel' | 'pitch_keycenter';

type KeyName = Exclude<RangeName, 'lovel' | 'hivel'>;
const keyNames: readonly KeyName[] = ['lokey', 'hikey', 'pitch_keycenter'];

/** Gives headers values of their own in the style of a document: `key` where it can stay, notes or numbers as they are written. */
export class HeaderEdits {
  readonly #notation: Notation;
  readonly #instrument: Instrument;
  readonly #speller: KeySpeller;
  /** Why a change could not be written, as a sentence. */
  refusal: string | undefined;

  constructor(notation: Notation, instrument: Instrument) {
    this.#notation = notation;
    this.#instrument = instrument;
    this.#speller = new KeySpeller(instrument);
  }

  /** The edits that make a change; a value that cannot be written is told by {@link refusal}. */
  edit(change: Change): TextEdit[] {
    const { edits, notes } = this.#notation.edit(this.#instrument, change);
    this.refusal ??= notes.find(({ kind }) => kind === 'dropped')?.message;
    return edits;
  }

  /** The edits that give a header values, as written. */
  values(header: number, wanted: ReadonlyMap<RangeName, number>): TextEdit[] {
    // A notation with names and forms of its own knows itself where its values stand.
    if (this.#notation.parameters) {
      const add = [...wanted].map(([name, value]) => ({ name, value: String(value) }));
      return this.edit({ kind: 'revise', header, remove: [], add });
    }
    const joined = this.#joined(header, wanted);
    if (joined) return joined;
    const rest = new Map(wanted);
    const remove: number[] = [];
    const add: NewParameter[] = [];
    const edits = this.#byKey(header, rest, remove, add);
    for (const [name, value] of rest) {
      const own = this.#instrument.own(header, Parameter[name]);
      const text = this.#text(header, name, value, own);
      if (own < 0 || isOpcode(this.#instrument, own) || this.#isOverruled(header, own))
        add.push({ name, value: text });
      else edits.push(...this.edit({ kind: 'set', header, name, value: text }));
    }
    if (remove.length + add.length > 0) edits.push(...this.edit({ kind: 'revise', header, remove, add }));
    return edits;
  }

  /**
   * Writes what `key` stands for in a header: it stays where low and high key are still one, else it gives way to what it
   * stood for. What it takes care of is taken out of `rest`.
   */
  #byKey(header: number, rest: Map<RangeName, number>, remove: number[], add: NewParameter[]): TextEdit[] {
    const instrument = this.#instrument;
    const parameter = instrument.own(header, Parameter.key);
    if (parameter < 0 || isOpcode(instrument, parameter)) return [];
    const governed = keyNames.filter((name) => instrument.own(header, Parameter[name]) < parameter);
    if (!governed.some((name) => rest.has(name))) return [];
    const before = instrument.keyNumber(parameter);
    const values = governed.map((name) => ({ name, value: rest.get(name) ?? before }));
    const [first, ...others] = values;
    for (const name of governed) rest.delete(name);
    const set = (value: number) =>
      this.edit({ kind: 'set', header, name: 'key', value: this.#speller.like(parameter, value) });
    if (others.every(({ value }) => value === first.value)) return set(first.value);
    const adds = (list: typeof values) =>
      list.map(({ name, value }) => ({ name, value: this.#text(header, name, value, parameter) }));
    const root = values.find(({ name }) => name === 'pitch_keycenter');
    const range = values.filter((one) => one !== root);
    if (root && range.length === 2 && range.every(({ value }) => value === range[0].value)) {
      add.push(...adds([root]));
      return range[0].value === before ? [] : set(range[0].value);
    }
    remove.push(parameter);
    add.push(...adds(values));
    return [];
  }

  /**
   * A range that shrinks to its root key, written as `key` where the document writes most such ranges so; `undefined` where
   * it stays as it is written.
   */
  #joined(header: number, wanted: ReadonlyMap<RangeName, number>): TextEdit[] | undefined {
    const instrument = this.#instrument;
    if (!keyNames.some((name) => wanted.has(name)) || instrument.own(header, Parameter.key) >= 0)
      return undefined;
    const own = keyNames.map((name) => instrument.own(header, Parameter[name]));
    if (own.some((one) => one < 0 || isOpcode(instrument, one))) return undefined;
    const [key, ...others] = keyNames.map((name, at) => wanted.get(name) ?? instrument.keyNumber(own[at]));
    if (others.some((other) => other !== key) || !this.#writesKey()) return undefined;
    const add = [...wanted].flatMap(([name, value]) =>
      name === 'lovel' || name === 'hivel' ? [{ name, value: String(value) }] : [],
    );
    const velocities = add.flatMap(({ name }) => {
      const parameter = instrument.own(header, Parameter[name as RangeName]);
      return parameter < 0 ? [] : [parameter];
    });
    const value = this.#speller.like(own[0], key);
    return this.edit({
      kind: 'revise',
      header,
      remove: [...own, ...velocities],
      add: [{ name: 'key', value }, ...add],
    });
  }

  /** Whether the document writes `key` for most ranges of one key that is the root key too. */
  #writesKey(): boolean {
    const instrument = this.#instrument;
    let withKey = 0;
    let apart = 0;
    for (const region of instrument.regions) {
      if (instrument.lowKey[region] !== instrument.highKey[region]) continue;
      if (instrument.own(region, Parameter.key) >= 0) withKey++;
      else if (keyNames.every((name) => instrument.own(region, Parameter[name]) >= 0)) apart++;
    }
    return withKey > apart;
  }

  /** Whether a `key` behind a parameter says otherwise, so that another has to stand behind that. */
  #isOverruled(header: number, parameter: number): boolean {
    const isKey = keyNames.some((name) => this.#instrument.canonicalName(parameter) === Parameter[name]);
    return isKey && this.#instrument.own(header, Parameter.key) > parameter;
  }

  /** A value as a header's own is spelled. */
  spell(header: number, name: RangeName, value: number): string {
    const own = this.#instrument.own(header, Parameter[name]);
    return this.#text(header, name, value, own);
  }

  #text(header: number, name: RangeName, value: number, like: number): string {
    if (name === 'lovel' || name === 'hivel') return String(value);
    return like >= 0 ? this.#speller.like(like, value) : this.#speller.in(header, value);
  }
}
