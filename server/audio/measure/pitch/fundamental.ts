import type { SoundPartial } from './soundPartial';

/** A fundamental that explains the partials of a sound, and how far these are stretched. */
export interface Fundamental {
  /** The frequency of the first partial. */
  hertz: number;
  /** B in f(n) = n·f0·√(1 + B·n²): 0 for exact multiples, some 0.0004 in the middle of a piano. */
  inharmonicity: number;
}

/** Strings of the highest notes reach about this (Fletcher and Rossing, The Physics of Musical Instruments). */
const mostInharmonicity = 0.01;
/** Partials that are further than this share off their place belong to something else (our choice). */
const furthest = 0.04;
/** Partials of strings and pipes lie this close to their places: some 20 cents (our choice). */
const onPlace = 0.012;

/**
 * The fundamental of partials near multiples of `expected` by least squares, with the stretch of stiff strings: f(n)/n is
 * close to f0·(1 + B·n²/2), a straight line over n² (Fletcher, Journal of the Acoustical Society of America 36(1), 1964).
 * A partial counts by its power and, since its error is divided by its number, by the square of that. `undefined` where
 * no partial is near its place.
 */
export function fundamentalOf(partials: readonly SoundPartial[], expected: number): Fundamental | undefined {
  let greatest = 0;
  for (const { power } of partials) greatest = Math.max(greatest, power);
  const near = partials.filter(
    ({ number, hertz, power }) =>
      power > greatest * 1e-5 && Math.abs(hertz / number - expected) <= furthest * expected,
  );
  if (near.length === 0) return undefined;
  const points = near.map(({ number, hertz, power }) => ({
    square: number * number,
    hertz: hertz / number,
    // The root keeps one strong partial from having all the say: what it says may be off, as many small ones are not.
    weight: Math.sqrt(power) * number,
  }));
  const level = lineThrough(points, 0);
  if (points.length < 4) return level;
  const tilted = lineThrough(points);
  // Stretch is believed where it is possible and explains the partials clearly better.
  const isString = tilted.inharmonicity > 0 && tilted.inharmonicity <= mostInharmonicity;
  // Half the misfit (our choice).
  return isString && tilted.misfit < 0.5 * level.misfit ? tilted : level;
}

/** The share of the power of partials, from 0 to 1, that lies where a fundamental and its stretch put them. */
export function explainedShare(
  partials: readonly SoundPartial[],
  { hertz, inharmonicity }: Fundamental,
): number {
  const atZero = hertz / Math.sqrt(1 + inharmonicity);
  let explained = 0;
  let all = 0;
  for (const partial of partials) {
    const { number, power } = partial;
    const place = number * atZero * Math.sqrt(1 + inharmonicity * number * number);
    all += power;
    if (Math.abs(partial.hertz - place) <= onPlace * place) explained += power;
  }
  return all > 0 ? explained / all : 0;
}

interface Point {
  square: number;
  hertz: number;
  weight: number;
}

function lineThrough(points: readonly Point[], fixedSlope?: number): Fundamental & { misfit: number } {
  let weights = 0;
  let meanSquare = 0;
  let meanHertz = 0;
  for (const { square, hertz, weight } of points) {
    weights += weight;
    meanSquare += weight * square;
    meanHertz += weight * hertz;
  }
  meanSquare /= weights;
  meanHertz /= weights;
  let both = 0;
  let squares = 0;
  for (const { square, hertz, weight } of points) {
    both += weight * (square - meanSquare) * (hertz - meanHertz);
    squares += weight * (square - meanSquare) ** 2;
  }
  const slope = fixedSlope ?? (squares > 0 ? both / squares : 0);
  let misfit = 0;
  for (const { square, hertz, weight } of points) {
    misfit += weight * (hertz - meanHertz - slope * (square - meanSquare)) ** 2;
  }
  const atZero = meanHertz - slope * meanSquare;
  return { hertz: atZero + slope, inharmonicity: (2 * slope) / atZero, misfit };
}
