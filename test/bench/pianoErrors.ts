import { quantile } from './compare';

/** A measured note: the key that its file is named for, and the pitch in semitones on the scale of MIDI keys. */
export interface MeasuredNote {
  key: number;
  /** `NaN` where no pitch was found. */
  pitch: number;
}

/** How far measured notes are from where they belong. Errors are magnitudes in cents. */
export interface PianoErrors {
  notes: number;
  median: number;
  p95: number;
  /** Magnitudes of deviations from a smooth tuning curve of the tool's own measures. */
  curveMedian: number;
  curveP95: number;
  /** Magnitudes of deviations from the middle of all measures of the same key: the layers are of one string. */
  layersMedian: number;
  layersP95: number;
  /** Notes more than half an octave off, among all and among keys 28 to 96. */
  octaveErrors: number;
  octaveErrorsInside: number;
  /** Notes between 50 cents and half an octave off. */
  otherErrors: number;
}

const inside = { low: 28, high: 96 };

/** Errors against equal temperament. What is missing counts as an octave off. */
export function pianoErrors(notes: readonly MeasuredNote[]): PianoErrors {
  const cents = notes.map(({ key, pitch }) => (Number.isNaN(pitch) ? 1200 : 100 * (pitch - key)));
  const near = notes
    .map(({ key }, number) => ({ key, cents: cents[number] }))
    .filter((note) => Math.abs(note.cents) < 50);
  const curve = cubicThrough(near);
  const fromCurve = near.map(({ key, cents }) => Math.abs(cents - curve(key)));
  const magnitudes = cents.map(Math.abs);
  const fromLayers = near.map(({ key, cents }) => {
    const same = near.filter((other) => other.key === key);
    return Math.abs(cents - quantile(same.map((other) => other.cents)));
  });
  const isOctave = (number: number) => magnitudes[number] > 600;
  return {
    notes: notes.length,
    median: quantile(magnitudes),
    p95: quantile(magnitudes, 0.95),
    curveMedian: quantile(fromCurve),
    curveP95: quantile(fromCurve, 0.95),
    layersMedian: quantile(fromLayers),
    layersP95: quantile(fromLayers, 0.95),
    octaveErrors: notes.filter((_, number) => isOctave(number)).length,
    octaveErrorsInside: notes.filter(
      ({ key }, number) => key >= inside.low && key <= inside.high && isOctave(number),
    ).length,
    otherErrors: magnitudes.filter((error) => error >= 50 && error <= 600).length,
  };
}

/** A polynomial of the third degree through points by least squares (normal equations), over keys scaled to −1…1. */
function cubicThrough(points: readonly { key: number; cents: number }[]): (key: number) => number {
  const size = 4;
  const scaled = (key: number) => (key - 64) / 44;
  const rows = Array.from({ length: size }, () => new Float64Array(size + 1));
  for (const { key, cents } of points) {
    const powers = Array.from({ length: size }, (_, power) => scaled(key) ** power);
    rows.forEach((row, one) => {
      for (let other = 0; other < size; other++) row[other] = row[other] + powers[one] * powers[other];
      row[size] = row[size] + powers[one] * cents;
    });
  }
  for (let pivot = 0; pivot < size; pivot++) {
    const row = rows[pivot] as Float64Array;
    for (let other = 0; other < size; other++) {
      const below = rows[other] as Float64Array;
      if (other === pivot || !row[pivot]) continue;
      const share = below[pivot] / row[pivot];
      for (let at = 0; at <= size; at++) below[at] = below[at] - share * row[at];
    }
  }
  const coefficients = rows.map((row, pivot) => (row[pivot] ? row[size] / row[pivot] : 0));
  return (key) => coefficients.reduce((sum, one, power) => sum + one * scaled(key) ** power, 0);
}
