import type { Instrument } from '../instrument';
import { keyOfNoteName, noteNameOf } from '../keys';
import { keyNames } from './keyParameters';

/** So many parameters are looked at to see how a document spells keys. */
const mostLooks = 2000;

const flatNames: Readonly<Record<string, string>> = { C: 'Db', D: 'Eb', F: 'Gb', G: 'Ab', A: 'Bb' };

/** How a document writes its keys. */
export type KeyWriting = (key: number) => string;

/** How keys are written in a document: as most of its own are, as numbers where it has none. */
export function keyWritingOf(document: Instrument): KeyWriting {
  const isKey: (boolean | undefined)[] = [];
  let numbers = 0;
  let names = 0;
  let small = 0;
  let flats = 0;
  let sharps = 0;
  for (let one = 0; one < document.parameters.count && numbers + names < mostLooks; one++) {
    const name = document.name(one);
    isKey[name] ??= document.names.opcode(name)?.facts.kind === 'key';
    if (!isKey[name]) continue;
    const text = document.valueText(one);
    if (!Number.isNaN(document.number(one))) numbers++;
    else if (keyOfNoteName(text) !== undefined) {
      names++;
      if (/^[a-g]/.test(text)) small++;
      if (/^.[b♭]/.test(text)) flats++;
      else if (/^.[#♯]/.test(text)) sharps++;
    }
  }
  if (names <= numbers) return String;
  return (key) => nameOf(key, flats > sharps ? 'b' : '#', small * 2 > names);
}

/** Spells keys as a document does: as numbers, or as note names in the same case and with the same signs. */
export class KeySpeller {
  readonly #instrument: Instrument;
  #usual: KeyWriting | undefined;

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
    this.#usual ??= keyWritingOf(instrument);
    return this.#usual(key);
  }
}

/** A key as an example is spelled: `c#4` gives lower case and sharps, `Eb3` flats, a number a number. */
function spelledLike(example: string, key: number): string {
  if (keyOfNoteName(example) === undefined) return String(key);
  const sign = /^.([#♯b♭B])/.exec(example)?.[1] ?? '#';
  return nameOf(key, sign, /^[a-g]/.test(example));
}

function nameOf(key: number, sign: string, isSmall: boolean): string {
  if (key < 0 || key > 127) return String(key);
  const usual = noteNameOf(key);
  const isFlat = /[b♭B]/.test(sign) && usual[1] === '#';
  const plain = isFlat ? `${flatNames[usual[0]]}${usual.slice(2)}` : usual;
  const name = sign === '♯' ? plain.replace('#', sign) : sign === '♭' ? plain.replace('b', sign) : plain;
  return isSmall ? name.charAt(0).toLowerCase() + name.slice(1) : name;
}
