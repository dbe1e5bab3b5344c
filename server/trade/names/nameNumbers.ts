import { keyBounds } from '../bounds';

const number = /(?<![\d.])\d{1,3}(?!\d|\.\d|k?hz|k(?!\p{L})|bit)/giu;

/** The numbers in the name of a file that may be those of keys, in their order, without its folders and its ending. */
export function partsWithNumbers(path: string): number[] {
  const name = path
    .slice(-200)
    .replace(/^.*[\\/]/, '')
    .replace(/\.\w{1,5}$/, '');
  return Array.from(name.matchAll(number), ([digits]) => Number(digits)).filter(
    (key) => key >= keyBounds.least && key <= keyBounds.most,
  );
}
