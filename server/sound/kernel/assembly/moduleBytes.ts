import type { Code, Step, ValueType } from './code';
import { typeNumbers, unsigned } from './code';

/** A place that a function keeps a value in. */
export class Local<T extends ValueType> {
  readonly type: T;
  readonly #number: number;

  constructor(type: T, number: number) {
    this.type = type;
    this.#number = number;
  }

  /** What it holds. */
  get value(): Code<T> {
    return { type: this.type, bytes: [0x20, ...unsigned(this.#number)] };
  }

  set(value: Code<T>): Step {
    return [...value.bytes, 0x21, ...unsigned(this.#number)];
  }
}

/** A function of a module that is being written. Parameters come first, then other locals. */
export class FunctionWriter {
  readonly name: string;
  readonly #parameters: ValueType[] = [];
  readonly #locals: ValueType[] = [];
  readonly #steps: Step[] = [];
  #result: Code<ValueType> | undefined;

  constructor(name: string) {
    this.name = name;
  }

  parameter<T extends ValueType>(type: T): Local<T> {
    if (this.#locals.length > 0) throw new Error('Parameters come before other locals.');
    this.#parameters.push(type);
    return new Local(type, this.#parameters.length - 1);
  }

  local<T extends ValueType>(type: T): Local<T> {
    this.#locals.push(type);
    return new Local(type, this.#parameters.length + this.#locals.length - 1);
  }

  do(...steps: readonly Step[]): void {
    this.#steps.push(...steps);
  }

  /** What it gives back, worked out at its end. */
  give(result: Code<ValueType>): void {
    this.#result = result;
  }

  /** Its type (WebAssembly Core Specification 2.0, section 5.3.6). */
  get typeBytes(): number[] {
    const results = this.#result ? [typeNumbers[this.#result.type]] : [];
    return [
      0x60,
      ...list(this.#parameters.map((type) => [typeNumbers[type]])),
      ...list(results.map((type) => [type])),
    ];
  }

  /** Its code (section 5.5.13). */
  get codeBytes(): number[] {
    const locals = list(this.#locals.map((type) => [1, typeNumbers[type]]));
    return sized([...locals, ...this.#steps.flat(), ...(this.#result?.bytes ?? []), 0x0b]);
  }
}

function list(items: readonly (readonly number[])[]): number[] {
  return [...unsigned(items.length), ...items.flat()];
}

function sized(bytes: readonly number[]): number[] {
  return [...unsigned(bytes.length), ...bytes];
}

function textBytes(text: string): number[] {
  return sized([...text].map((letter) => letter.charCodeAt(0)));
}

function section(number: number, items: readonly (readonly number[])[]): number[] {
  return [number, ...sized(list(items))];
}

/**
 * A module of functions, all exported by their names in ASCII, on a memory that it is given as `memory` of `host` (WebAssembly
 * Core Specification 2.0, section 5.5).
 */
export function moduleBytes(functions: readonly FunctionWriter[]): Uint8Array {
  const memory = [...textBytes('host'), ...textBytes('memory'), 0x02, 0x00, ...unsigned(1)];
  return Uint8Array.of(
    ...[0x00, 0x61, 0x73, 0x6d, 0x01, 0x00, 0x00, 0x00],
    ...section(
      1,
      functions.map(({ typeBytes }) => typeBytes),
    ),
    ...section(2, [memory]),
    ...section(
      3,
      functions.map((_, number) => unsigned(number)),
    ),
    ...section(
      7,
      functions.map(({ name }, number) => [...textBytes(name), 0x00, ...unsigned(number)]),
    ),
    ...section(
      10,
      functions.map(({ codeBytes }) => codeBytes),
    ),
  );
}
