/**
 * What `scanSfz` tells its caller; all positions are offsets in the text. The scanner knows the shape of SFZ
 * text alone, not which headers or opcodes exist.
 */
export interface SfzHandler {
  /** `<name>`: the whole tag and the name inside. */
  header(start: number, end: number, nameStart: number, nameEnd: number): void;
  /**
   * `name=value`. `hash` is that of the name for `ParameterNames.idOfHash`, `number` the value where it is a plain
   * decimal number (else NaN). `variables` says that a `$` stands in the name or the value.
   */
  opcode(
    nameStart: number,
    nameEnd: number,
    hash: number,
    valueStart: number,
    valueEnd: number,
    number: number,
    variables: boolean,
  ): void;
  /** `#define $NAME value`. */
  define(start: number, nameStart: number, nameEnd: number, valueStart: number, valueEnd: number): void;
  /** `#include "path"`: the directive with its quotes, and the path inside. */
  include(start: number, end: number, pathStart: number, pathEnd: number): void;
  /** `// …` or a block comment, with its marks. */
  comment(start: number, end: number): void;
  /** Text that is nothing of the above, on one line. */
  stray(start: number, end: number): void;
  /** Something that is broken but could be read in part. */
  problem(start: number, end: number, message: string): void;
}
