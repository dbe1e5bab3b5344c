import type { SourceValue } from './writeOwnValues';

/** An element of a level that is to be written, with the values that it carries. */
export class PlannedElement {
  readonly kind = 'element';
  readonly content: PlannedContent[] = [];
  #values: Values | undefined;
  readonly #ownValues: (() => Values) | undefined;
  readonly #inherited: Values;

  /**
   * `level` is its position among the levels of the vocabulary, `header` the one that its values are for, −1 for an element
   * that only holds others. `values` may be those of its header alone, worked out when they are asked for, to which
   * `inherited` ones are added.
   */
  constructor(
    readonly level: number,
    readonly header: number,
    values: Values | (() => Values),
    inherited = noValues,
  ) {
    this.#inherited = inherited;
    if (typeof values === 'function') this.#ownValues = values;
    else this.#values = values;
  }

  /**
   * The values that it has beside all those of its header, each of which is set once there and takes the place of one
   * here; the same object for a row of elements. `undefined` where this is not all that it carries.
   */
  get inherited(): Values | undefined {
    return this.#ownValues && this.#inherited;
  }

  /** Its values by canonical name. */
  get values(): Values {
    if (!this.#values) {
      this.#values = new Map(this.#inherited);
      if (this.#ownValues) merge(this.#values, this.#ownValues());
    }
    return this.#values;
  }
}

export interface CommentElement {
  kind: 'comment';
  text: string;
}

export type PlannedContent = PlannedElement | CommentElement;

/** Values by canonical name. */
export type Values = Map<string, SourceValue>;

/** No values; the same object each time. */
export const noValues: Values = new Map();

/** Adds values to others, in the place of those of the same name. */
export function merge(values: Values, more: Values): void {
  for (const [name, value] of more) values.set(name, value);
}
