import type { Code, Step } from './assembly/code';
import { f64, f64x2, i32, load, loop, returnIf, store, zeros } from './assembly/code';
import { FunctionWriter, type Local } from './assembly/moduleBytes';

/** Bytes of two doubles, and of the four that are mixed in a turn. */
const pairBytes = 16;
const turnBytes = 2 * pairBytes;

/**
 * The compiled mixing of one channel into two, or of two into two: it gives 0 where the sound holds what is no number, and mixes
 * nothing then. It takes the addresses of the sound, of its end and of the mix, whose right channels stand `distance` bytes
 * behind; then the gains in the order of `MixGains`, each with its slope. Up to three values behind the end become 0.
 */
export function mixingFunction(name: string, channels: 1 | 2, distance: number): FunctionWriter {
  const code = new FunctionWriter(name);
  const sound = code.parameter('i32');
  const end = code.parameter('i32');
  const mix = code.parameter('i32');
  const places = Array.from({ length: 2 * channels }, () => [code.parameter('f64'), code.parameter('f64')]);
  const at = code.local('i32');
  const sum = code.local('v128');
  const total = code.local('f64');
  const gains = places.map(([gain, slope]) => new MovingGain(code, gain, slope));
  const sounds = Array.from({ length: channels }, (_, channel) => channel * distance);
  const mixed = (side: number, offset: number): Code<'v128'> =>
    sounds.reduce(
      (so, channel, number) =>
        f64x2.add(
          so,
          f64x2.multiply(load(at.value, channel + offset), gains[side * channels + number].value),
        ),
      load(mix.value, side * distance + offset),
    );
  const mixPair = (offset: number): Step[] => [
    ...[0, 1].map((side) => store(mix.value, mixed(side, offset), side * distance + offset)),
    ...gains.map((gain) => gain.moveOn()),
  ];
  const goOn = (place: Local<'i32'>) => place.set(i32.add(place.value, i32.constant(turnBytes)));
  const isBefore = i32.isLess(at.value, end.value);
  const parts = sounds.flatMap((channel) => [load(at.value, channel), load(at.value, channel + pairBytes)]);
  const addedUp = parts.reduce((so, part) => f64x2.add(so, part));
  code.do(
    ...sounds.flatMap((channel) => [
      store(end.value, zeros, channel),
      store(end.value, zeros, channel + pairBytes),
    ]),
    at.set(sound.value),
    loop([sum.set(f64x2.add(sum.value, addedUp)), goOn(at)], isBefore),
    total.set(f64.add(f64x2.lane(sum.value, 0), f64x2.lane(sum.value, 1))),
    // What is endless or no number, less itself, is no number, and that differs from all, itself too.
    total.set(f64.subtract(total.value, total.value)),
    returnIf(f64.differs(total.value, total.value), i32.constant(0)),
    ...gains.flatMap((gain) => gain.begin()),
    at.set(sound.value),
    loop([...mixPair(0), ...mixPair(pairBytes), goOn(at), goOn(mix)], isBefore),
  );
  code.give(i32.constant(1));
  return code;
}

/** The gains of two frames, which go on in a straight line. */
class MovingGain {
  readonly #gain: Local<'f64'>;
  readonly #slope: Local<'f64'>;
  readonly #pair: Local<'v128'>;
  readonly #twice: Local<'v128'>;

  constructor(code: FunctionWriter, gain: Local<'f64'>, slope: Local<'f64'>) {
    this.#gain = gain;
    this.#slope = slope;
    this.#pair = code.local('v128');
    this.#twice = code.local('v128');
  }

  get value(): Code<'v128'> {
    return this.#pair.value;
  }

  begin(): Step[] {
    const gain = this.#gain.value;
    const slope = this.#slope.value;
    return [
      this.#pair.set(f64x2.withSecond(f64x2.splat(gain), f64.add(gain, slope))),
      this.#twice.set(f64x2.splat(f64.add(slope, slope))),
    ];
  }

  moveOn(): Step {
    return this.#pair.set(f64x2.add(this.#pair.value, this.#twice.value));
  }
}
