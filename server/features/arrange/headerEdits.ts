import type { ArrangedName } from '../../gestures/arrangement';
import type { TextEdit } from '../../model/finding';
import type { Instrument } from '../../model/instrument';
import type { Change, NewParameter, Notation } from '../../model/notation';
import { Parameter } from '../../model/parameterNames';
import { isOpcode } from '../refactor/movedValues';
import { KeySpeller } from './keySpeller';

type KeyName = Exclude<ArrangedName, 'lovel' | 'hivel'>;
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
  values(header: number, wanted: ReadonlyMap<ArrangedName, number>): TextEdit[] {
    // A notation with names and forms of its own knows itself where its values stand.
    if (this.#notation.parameters) {
      const add = [...wanted].map(([name, value]) => ({ name, value: String(value) }));
      return this.edit({ kind: 'revise', header, remove: [], add });
    }
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
  #byKey(header: number, rest: Map<ArrangedName, number>, remove: number[], add: NewParameter[]): TextEdit[] {
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
    if (root && range.length > 0 && range.every(({ value }) => value === range[0].value)) {
      add.push(...adds([root]));
      return range[0].value === before ? [] : set(range[0].value);
    }
    remove.push(parameter);
    add.push(...adds(values));
    return [];
  }

  /** Whether a `key` behind a parameter says otherwise, so that another has to stand behind that. */
  #isOverruled(header: number, parameter: number): boolean {
    const isKey = keyNames.some((name) => this.#instrument.canonicalName(parameter) === Parameter[name]);
    return isKey && this.#instrument.own(header, Parameter.key) > parameter;
  }

  #text(header: number, name: ArrangedName, value: number, like: number): string {
    if (name === 'lovel' || name === 'hivel') return String(value);
    return like >= 0 ? this.#speller.like(like, value) : this.#speller.in(header, value);
  }
}
