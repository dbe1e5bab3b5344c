import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import fc from 'fast-check';
import type { Texts } from './includingTexts';
import { mutated, mutations } from './includingTexts';

const demo = join(__dirname, '../../../samples-demo');

/** A folder of other instruments to try as well, for those who have one. */
const more = process.env.ZONEWRIGHT_INSTRUMENTS;

/** The SFZ files of a folder and those below it, each as the main file with all others beside it. */
function textsBelow(folder: string): Texts[] {
  const paths = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.sfz'))
    .map((path) => join(folder, path));
  const read = new Map(paths.map((path) => [path, readFileSync(path, 'utf8')]));
  return paths.map((path) => ({
    main: read.get(path) ?? '',
    // Includes are found from the folder of the main file.
    files: Object.fromEntries(
      [...read]
        .filter(([other]) => other !== path && read.get(path)?.includes('#include'))
        .map(([other, text]) => [join('/music', relative(dirname(path), other)).replaceAll('\\', '/'), text]),
    ),
  }));
}

/** Instruments that are there, changed word by word, with parts of them put into files that are included, also again. */
export const anyMutatedSfz: fc.Arbitrary<Texts> = fc
  .tuple(fc.constantFrom(...textsBelow(demo), ...(more === undefined ? [] : textsBelow(more))), mutations)
  .map(([texts, changes]) => mutated(texts, changes));
