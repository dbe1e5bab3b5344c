import { isAudioFileName } from '../../model/fileNames';
import type { Instrument } from '../../model/instrument';
import type { ConversionNote } from '../../model/notes';
import { nameOf } from '../../model/paths';
import { mainSpan } from '../../model/text/span';
import { listText } from '../../model/wording/listText';
import { isForeignWord } from '../infer/elements/foreignElement';
import { nameWords } from '../infer/words/nameWords';

interface Lost {
  files: Set<string>;
  start: number;
  end: number;
}

/** So many files of an element are named; the others are counted. */
const mostNamed = 3;

/** Audio files that a text names where nothing is read and that no region plays, gathered by the names of their elements. */
export class LostFiles {
  readonly #instrument: Instrument;
  /** The names of the files that regions play, in small letters; found once they are asked for. */
  #played: ReadonlySet<string> | undefined;
  readonly #lost = new Map<string, Lost>();

  constructor(instrument: Instrument) {
    this.#instrument = instrument;
  }

  /** Takes in a value that is not read; whether it is such a file. `open` are the names of the elements around it. */
  add(value: string, open: readonly string[], start: number, end: number): boolean {
    const path = value.trim();
    if (!isAudioFileName(path) || open.slice(1).some((name) => nameWords(name).some(isForeignWord)))
      return false;
    this.#played ??= playedIn(this.#instrument);
    if (this.#played.has(plainName(path))) return false;
    const element = open.at(-1) ?? '';
    const known = this.#lost.get(element);
    if (known) known.files.add(path);
    else this.#lost.set(element, { files: new Set([path]), start, end });
    return true;
  }

  /** A note for the files in elements of each name. */
  notes(): ConversionNote[] {
    return [...this.#lost].map(([element, { files, start, end }]) => {
      const named = [...files].slice(0, mostNamed).map((file) => `"${file.slice(0, 80)}"`);
      const rest = files.size - named.length;
      const listed = listText(rest > 0 ? [...named, `${rest} more`] : named, 'and');
      const isOne = files.size === 1;
      const message = `${listed} of <${element}> ${isOne ? 'is' : 'are'} not read, and no region plays ${isOne ? 'it' : 'them'}. Check whether ${isOne ? 'it is a sample' : 'they are samples'} of the instrument.`;
      return { kind: 'dropped', ...mainSpan(start, end), message };
    });
  }
}

function playedIn(instrument: Instrument): ReadonlySet<string> {
  const played = new Set<string>();
  for (const region of instrument.regions) {
    const path = instrument.samplePath(region);
    if (path !== undefined) played.add(plainName(path));
  }
  return played;
}

function plainName(path: string): string {
  return nameOf(path.replaceAll('\\', '/')).toLowerCase();
}
