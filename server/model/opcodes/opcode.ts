/** Where an opcode comes from: the first or second version of the open SFZ format, or an extension in common use. */
export type OpcodeLevel = 'v1' | 'v2' | 'extension';

/**
 * What a value has to be in practice.
 *
 * - `key`: a MIDI key number or a note name
 * - `whole`: a whole number
 * - `number`: a number; a fraction is fine in practice even where the documentation says integer (common practice)
 * - `option`: one of the documented words
 * - `path`: a file path or path prefix
 * - `text`: free text
 * - `any`: documented without a type
 */
export type ValueKind = 'key' | 'whole' | 'number' | 'option' | 'path' | 'text' | 'any';

/** The value type that the documentation of the format states. */
export type DocumentedType = 'integer' | 'float' | 'string';

/** What the open SFZ format says of one opcode or one family of numbered opcodes. */
export interface OpcodeFacts {
  /** The name; `N`, `X` and `Y` stand for a number, `NN` and `NNN` for one written with two or three digits, `*` for any name. */
  readonly pattern: string;
  readonly level: OpcodeLevel;
  /** The category of the documentation, such as `Region Logic/Key Mapping`. */
  readonly category: string;
  readonly type?: DocumentedType;
  /** The unit, such as `cents`, `dB`, `seconds`; `sample units` are frames counted from 0. */
  readonly unit?: string;
  /** The least documented value. See `boundsOf` for what is fine in practice. */
  readonly min?: number;
  /** The greatest documented value. */
  readonly max?: number;
  /** The documented default: mostly a number or an option, sometimes a note in words. */
  readonly defaultText?: string;
  /** The documented words that the value can be; empty when the value is not a choice. */
  readonly options: readonly string[];
  /** The pattern of the opcode that this one moves. */
  readonly modulates?: string;
  /** Other spellings of the same opcode. */
  readonly aliases: readonly string[];
  /** One sentence or two for a person who writes instruments. */
  readonly description: string;
  readonly kind: ValueKind;
  /** The headers that take the opcode: bit `1 << kind` for each `HeaderKind`. */
  readonly headers: number;
}

/** A concrete opcode name, found in the catalogue. */
export interface ResolvedOpcode {
  readonly facts: OpcodeFacts;
  /** The canonical name with the numbers put in; the same for all spellings of one parameter. */
  readonly canonical: string;
  /** The numbers in the name that stand for `N`, `X` and `Y` of the pattern, in order. */
  readonly indexes: readonly number[];
  /**
   * `alias` when the name is another word than the canonical one. The choice among `_onccN`, `_ccN` and `ccN` is
   * not one: all three are in common use.
   */
  readonly spelling: 'canonical' | 'alias';
}
