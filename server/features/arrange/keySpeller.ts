import type { Instrument } from '../../model/instrument';
import { keyOfNoteName, noteNameOf } from '../../model/keys';
import { keyNames } from '../refactor/movedValues';

/** So many parameters are looked at to see how a document spells keys. */
const mostLookedAt = 4000;

const flatNames = ['C', 'Db', 'D', 'Eb', 'E', 'F', 'Gb', 'G', 'Ab', 'A', 'Bb', 'B'] as const;

/** Spells keys as a document does: as numbers, or as note names in the same case and with the same signs. */
export class KeySpeller {
  readonly #instrument: Instrument;
  #usual: string | undefined;

  constructor(instrument: Instrument) {
    this.#instrument = instrument;
  }

  /** A key as the value of a parameter is spelled. */
  like(parameter: number, key: number): string {
    return spelledLike(this.#instrument.valueText(parameter), key);
  }

  /** A key as those of a header are spelled, else as most of the document. */
  in(header: number, key: number): string {
    const instrument = this.#instrument;
    for (let one = instrument.firstParameter(header); one < instrument.endParameter(header); one++) {
      if (keyNames.has(instrument.canonicalName(one))) return this.like(one, key);
    }
    this.#usual ??= this.#mostUsual();
    return spelledLike(this.#usual, key);
  }

  #mostUsual(): string {
    const instrument = this.#instrument;
    const names: string[] = [];
    let numbers = 0;
    const end = Math.min(instrument.parameters.count, mostLookedAt);
    for (let one = 0; one < end; one++) {
      if (!keyNames.has(instrument.canonicalName(one))) continue;
      const text = instrument.valueText(one);
      if (keyOfNoteName(text) === undefined) numbers++;
      else names.push(text);
    }
    if (names.length <= numbers) return '0';
    return names.find((text) => /^.[#♯b♭]/.test(text)) ?? names[0];
  }
}

/** A key as an example is spelled: `c#4` gives lower case and sharps, `Eb3` flats, a number a number. */
function spelledLike(example: string, key: number): string {
  if (key < 0 || key > 127 || keyOfNoteName(example) === undefined) return String(key);
  const sign = /^.(.)/.exec(example)?.[1] ?? '';
  const isFlat = sign === 'b' || sign === '♭' || sign === 'B';
  let name = isFlat ? `${flatNames[key % 12]}${Math.floor(key / 12) - 1}` : noteNameOf(key);
  if (sign === '♯') name = name.replace('#', '♯');
  if (sign === '♭') name = name.replace('b', '♭');
  return /^[a-g]/.test(example) ? name.toLowerCase() : name;
}
