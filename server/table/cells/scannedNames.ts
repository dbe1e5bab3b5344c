const alike = /[lIOo]/g;
const likeDigit = /(?<=\d)[lIOo]+|[lIOo]+(?=\d)|(?<![\p{L}\d])[lIO](?![\p{L}\d])/gu;
const number = /\d+/g;
/** So many other names have to be counted in the same way (our choice). */
const fewest = 2;

/** A name that was read with digits, and its place in a list. */
interface ScannedName {
  at: number;
  name: string;
}

/**
 * Names with digits in place of letters that look like them, as `harp_0l.wav` between `harp_00.wav` and `harp_02.wav`: where others are
 * written so, none has that name, and a number of it follows or precedes that of the name beside it.
 */
export function scannedNames(names: readonly string[]): ScannedName[] {
  const shapes = names.map(shapeOf);
  const counts = new Map<string, number>();
  for (const shape of shapes) counts.set(shape, (counts.get(shape) ?? 0) + 1);
  const all = new Set(names);
  return names.flatMap((name, at) => {
    const read = name.replace(likeDigit, (letters) =>
      letters.replace(alike, (letter) => (/[oO]/.test(letter) ? '0' : '1')),
    );
    const shape = shapeOf(read);
    if (read === name || all.has(read) || (counts.get(shape) ?? 0) < fewest) return [];
    const isBeside = [at - 1, at + 1].some((place) => {
      if (shapes[place] !== shape) return false;
      const [own, other] = [numbersOf(read), numbersOf(names[place] ?? '')];
      const steps = own.map((one, index) => one - (other[index] ?? Number.NaN)).filter((step) => step !== 0);
      return steps.length === 1 && steps[0] === at - place;
    });
    return isBeside ? [{ at, name: read }] : [];
  });
}

/** A name with one sign for each of its digits. */
function shapeOf(name: string): string {
  return name.replace(/\d/g, '0');
}

function numbersOf(name: string): number[] {
  return Array.from(name.matchAll(number), ([digits]) => Number(digits));
}
