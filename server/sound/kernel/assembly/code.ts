/** The types of values in compiled code: whole numbers and addresses, doubles, and sixteen bytes that hold several numbers. */
export type ValueType = 'i32' | 'f64' | 'v128';

/** Instructions that leave a value of a type (WebAssembly Core Specification 2.0, sections 5.3 and 5.4, as all of this file). */
export interface Code<T extends ValueType> {
  readonly type: T;
  readonly bytes: readonly number[];
}

/** Instructions that leave nothing. */
export type Step = readonly number[];

/** The number of a type in the binary format. */
export const typeNumbers: Readonly<Record<ValueType, number>> = { i32: 0x7f, f64: 0x7c, v128: 0x7b };

/** A whole number without a sign, in groups of seven bits (LEB128; section 5.2.2). */
export function unsigned(value: number): number[] {
  const bytes: number[] = [];
  let rest = value;
  for (; rest > 0x7f; rest = Math.floor(rest / 128)) bytes.push((rest & 0x7f) | 0x80);
  return [...bytes, rest];
}

function signed(value: number): number[] {
  const bytes: number[] = [];
  let rest = value;
  for (; rest < -64 || rest > 63; rest >>= 7) bytes.push((rest & 0x7f) | 0x80);
  return [...bytes, rest & 0x7f];
}

type Binary<T extends ValueType, R extends ValueType = T> = (a: Code<T>, b: Code<T>) => Code<R>;

function binary<T extends ValueType, R extends ValueType>(_of: T, type: R, ...instruction: number[]) {
  return (a: Code<T>, b: Code<T>): Code<R> => ({ type, bytes: [...a.bytes, ...b.bytes, ...instruction] });
}

/** Instructions with vectors have numbers of their own behind this one (section 5.4.7). */
const vector = (number: number) => [0xfd, ...unsigned(number)];

const wholeNumbers = (instruction: number) => binary('i32', 'i32', instruction);
const doubles = (instruction: number) => binary('f64', 'f64', instruction);
const vectors = (number: number): Binary<'v128'> => binary('v128', 'v128', ...vector(number));

/** Whole numbers of 32 bits. */
export const i32 = {
  constant: (value: number): Code<'i32'> => ({ type: 'i32', bytes: [0x41, ...signed(value)] }),
  add: wholeNumbers(0x6a),
  and: wholeNumbers(0x71),
  shiftLeft: wholeNumbers(0x74),
  /** Keeps the sign. */
  shiftRight: wholeNumbers(0x75),
  /** Without signs, as addresses are compared. */
  isLess: wholeNumbers(0x49),
} as const;

/** Doubles. */
export const f64 = {
  add: doubles(0xa0),
  subtract: doubles(0xa1),
  multiply: doubles(0xa2),
  differs: binary('f64', 'i32', 0x62),
} as const;

/** Four numbers of single precision in a vector. */
export const f32x4 = { add: vectors(0xe4), multiply: vectors(0xe6) } as const;

/** Two doubles in a vector. */
export const f64x2 = {
  add: vectors(0xf0),
  multiply: vectors(0xf2),
  splat: ({ bytes }: Code<'f64'>): Code<'v128'> => ({ type: 'v128', bytes: [...bytes, ...vector(0x14)] }),
  lane: ({ bytes }: Code<'v128'>, lane: 0 | 1): Code<'f64'> => ({
    type: 'f64',
    bytes: [...bytes, ...vector(0x21), lane],
  }),
  /** Puts a double into the second place. */
  withSecond: (pair: Code<'v128'>, second: Code<'f64'>): Code<'v128'> => ({
    type: 'v128',
    bytes: [...pair.bytes, ...second.bytes, ...vector(0x22), 1],
  }),
  /** The first two of four numbers of single precision. */
  ofFirstTwo: ({ bytes }: Code<'v128'>): Code<'v128'> => ({
    type: 'v128',
    bytes: [...bytes, ...vector(0x5f)],
  }),
} as const;

/** Addresses of vectors are multiples of four bytes at least; a hint without which the code does the same. */
const alignment = 2;

/** Four of the eight numbers of 32 bits in two vectors: those of the first are 0 to 3. */
export function pick(a: Code<'v128'>, b: Code<'v128'>, places: readonly number[]): Code<'v128'> {
  const bytes = places.flatMap((place) => [0, 1, 2, 3].map((byte) => 4 * place + byte));
  return { type: 'v128', bytes: [...a.bytes, ...b.bytes, ...vector(0x0d), ...bytes] };
}

/** The vector that stands some bytes behind an address. */
export function load(address: Code<'i32'>, offset = 0): Code<'v128'> {
  return { type: 'v128', bytes: [...address.bytes, ...vector(0x00), alignment, ...unsigned(offset)] };
}

/** Puts a vector some bytes behind an address. */
export function store(address: Code<'i32'>, value: Code<'v128'>, offset = 0): Step {
  return [...address.bytes, ...value.bytes, ...vector(0x0b), alignment, ...unsigned(offset)];
}

/** A vector of zeros. */
export const zeros: Code<'v128'> = {
  type: 'v128',
  bytes: [...vector(0x0c), ...new Array<number>(16).fill(0)],
};

const noValue = 0x40;

/** Does steps once, and again as long as a condition holds behind them. */
export function loop(steps: readonly Step[], condition: Code<'i32'>): Step {
  return [0x03, noValue, ...steps.flat(), ...condition.bytes, 0x0d, 0, 0x0b];
}

/** Leaves the function with a value where a condition holds. */
export function returnIf(condition: Code<'i32'>, value: Code<ValueType>): Step {
  return [...condition.bytes, 0x04, noValue, ...value.bytes, 0x0f, 0x0b];
}
