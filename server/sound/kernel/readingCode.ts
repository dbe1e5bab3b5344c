import type { Code, Step } from './assembly/code';
import { f32x4, f64x2, i32, load, loop, pick, store } from './assembly/code';
import { FunctionWriter, type Local } from './assembly/moduleBytes';

/** How far the arrays of the right channel stand behind those of the left one, in bytes. */
export interface ChannelDistances {
  input: number;
  sound: number;
}

const frames = [0, 1, 2, 3];

/**
 * The compiled reading by the nearest phase, four values a turn, so that up to three are written behind the last one. It
 * takes the addresses of the rows and of the first tap, the place between two frames in 2^-26, the step and the slope in the
 * same, and the addresses of the first value and of the end of the values.
 */
export function readingFunction(name: string, taps: 8 | 16, right?: ChannelDistances): FunctionWriter {
  const code = new FunctionWriter(name);
  const rows = code.parameter('i32');
  const input = code.parameter('i32');
  const fraction = code.parameter('i32');
  const step = code.parameter('i32');
  const slope = code.parameter('i32');
  const output = code.parameter('i32');
  const end = code.parameter('i32');
  const row = code.local('i32');
  const sums = frames.map(() => code.local('v128'));
  const rightSums = right ? frames.map(() => code.local('v128')) : [];
  const phase = i32.shiftRight(i32.add(fraction.value, i32.constant(0x4000)), i32.constant(15));
  const whole = i32.shiftRight(fraction.value, i32.constant(26));
  const turn = frames.flatMap((frame) => [
    row.set(i32.add(rows.value, i32.shiftLeft(phase, i32.constant(Math.log2(taps * 4))))),
    sums[frame].set(products(input, row, taps, 0)),
    ...(right ? [rightSums[frame].set(products(input, row, taps, right.input))] : []),
    fraction.set(i32.add(fraction.value, step.value)),
    step.set(i32.add(step.value, slope.value)),
    input.set(i32.add(input.value, i32.shiftLeft(whole, i32.constant(2)))),
    fraction.set(i32.and(fraction.value, i32.constant(0x3ffffff))),
  ]);
  code.do(
    loop(
      [
        ...turn,
        ...storeSums(sums, output, 0),
        ...(right ? storeSums(rightSums, output, right.sound) : []),
        output.set(i32.add(output.value, i32.constant(32))),
      ],
      i32.isLess(output.value, end.value),
    ),
  );
  return code;
}

/** The products of all taps and frames, added up to four numbers. */
function products(input: Local<'i32'>, row: Local<'i32'>, taps: number, offset: number): Code<'v128'> {
  let parts = Array.from({ length: taps / 4 }, (_, part) =>
    f32x4.multiply(load(input.value, offset + 16 * part), load(row.value, 16 * part)),
  );
  for (; parts.length > 1; ) {
    const half = parts.length / 2;
    parts = parts.slice(0, half).map((part, at) => f32x4.add(part, parts[half + at]));
  }
  return parts[0];
}

/** Adds up the four numbers of each of four vectors and puts the sums down as doubles. */
function storeSums(sums: readonly Local<'v128'>[], output: Local<'i32'>, offset: number): Step[] {
  const [a, b, c, d] = sums.map(({ value }) => value);
  const ab = f32x4.add(pick(a, b, [0, 1, 4, 5]), pick(a, b, [2, 3, 6, 7]));
  const cd = f32x4.add(pick(c, d, [0, 1, 4, 5]), pick(c, d, [2, 3, 6, 7]));
  const [first, second] = sums;
  return [
    first.set(ab),
    second.set(cd),
    first.set(
      f32x4.add(pick(first.value, second.value, [0, 2, 4, 6]), pick(first.value, second.value, [1, 3, 5, 7])),
    ),
    store(output.value, f64x2.ofFirstTwo(first.value), offset),
    store(output.value, f64x2.ofFirstTwo(pick(first.value, first.value, [2, 3, 2, 3])), offset + 16),
  ];
}
