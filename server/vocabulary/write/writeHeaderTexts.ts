import type { Instrument } from '../../model/instrument';
import type { WriteOptions } from '../../model/notation';
import { Parameter } from '../../model/parameterNames';
import { encodeXmlAttribute } from '../../xml/scan/references';
import { numberFormOf } from '../forms/numberFormOf';
import type { ValueForm } from '../vocabulary';
import type { SourceValue } from './writeOwnValues';
import { isKeyPart, sourceValue } from './writeOwnValues';
import type { LevelPlaces, WritingPlace } from './writePlaces';
import type { EncodedValue, ValueContext } from './writeValues';
import { account, newlyWritten, noteWithoutPlace } from './writeValues';

/** Where values of one name stand, and what was written of them before. */
interface HeaderPlace {
  place: WritingPlace;
  /** 1 or 2 for a part of a range text, else 0. */
  part: 0 | 1 | 2;
  /** Whether the number of a value says all. */
  isNumber: boolean;
  /** Whether the same value is written the same each time and worth remembering. */
  isRemembered: boolean;
  /** Whether values are written as they are. */
  isAsItIs: boolean;
  byNumber: Map<number, EncodedValue | undefined>;
  byText: Map<string, EncodedValue | undefined>;
}

/** An inherited value, and what is written of it. */
interface Inherited {
  source: SourceValue;
  /** The number of its name. */
  id: number;
  /** Missing where there is no place for it. */
  place: HeaderPlace | undefined;
  written: EncodedValue | undefined;
  /** Whether it has been told to the accounts. */
  isAccounted: boolean;
}

type Values = ReadonlyMap<string, SourceValue>;

/**
 * Makes the texts of elements that carry just what their headers set and what they inherit, each value in a place of its
 * own: the usual case, without a map of values for each element.
 */
export class HeaderTexts {
  /** By slot, the texts of the element asked about last. */
  readonly texts: (string | undefined)[] = [];
  readonly #context: Omit<ValueContext, 'header'>;
  readonly #instrument: Instrument;
  readonly #level: LevelPlaces;
  readonly #move: WriteOptions['move'];
  /** By the number of a canonical name: its place, none, or `closer` for one that needs a closer look. */
  readonly #places: (HeaderPlace | 'none' | 'closer' | undefined)[] = [];
  /** The first halves of ranges. */
  readonly #ranges: readonly WritingPlace[];
  /** By slot, the parts of its range. */
  readonly #first: (string | undefined)[] = [];
  readonly #second: (string | undefined)[] = [];
  readonly #inherited = new WeakMap<Values, readonly Inherited[] | 'closer'>();
  /** By the number of a canonical name, the header that set it last. */
  readonly #setBy: number[] = [];
  /** What is written of the parameters of the header, in their order. */
  readonly #written: (EncodedValue | undefined)[] = [];

  constructor(context: Omit<ValueContext, 'header'>, level: LevelPlaces, move: WriteOptions['move']) {
    this.#context = context;
    this.#instrument = context.instrument;
    this.#level = level;
    this.#move = move;
    this.#ranges = [...level.halves.keys()].filter(({ parameter }) => parameter.part === 1);
  }

  /**
   * Makes the texts of a header whose names are each set once, and accounts for its values. Answers `false`, with nothing
   * accounted for, where one of them needs a closer look.
   */
  make(header: number, inherited: Values): boolean {
    const instrument = this.#instrument;
    this.texts.fill(undefined);
    if (this.#ranges.length > 0) {
      this.#first.fill(undefined);
      this.#second.fill(undefined);
    }
    const outer = this.#inheritedFrom(inherited);
    if (outer === 'closer') return false;
    for (const { place, written } of outer) if (place) this.#put(place, written);
    const first = instrument.firstParameter(header);
    const end = instrument.endParameter(header);
    for (let parameter = first; parameter < end; parameter++) {
      const id = instrument.canonicalName(parameter);
      const place = this.#placeOf(id);
      if (place === 'closer') return false;
      this.#setBy[id] = header;
      if (place === 'none') continue;
      const written = this.#writtenOf(place, parameter, header);
      this.#written[parameter - first] = written;
      this.#put(place, written);
    }
    if (!this.#joinRanges()) return false;
    for (let parameter = first; parameter < end; parameter++)
      this.#account(parameter, header, this.#written[parameter - first]);
    for (const one of outer) {
      if (one.isAccounted || this.#setBy[one.id] === header) continue;
      one.isAccounted = true;
      const { source, place, written } = one;
      if (place) account(written, place.place.slot, source, this.#context.accounts);
      else noteWithoutPlace(source.name, source.value, source.parameter, this.#context.accounts);
    }
    return true;
  }

  #put({ part, place: { slot } }: HeaderPlace, written: EncodedValue | undefined): void {
    const texts = part === 0 ? this.texts : part === 1 ? this.#first : this.#second;
    texts[slot] = written?.encoded;
  }

  /** Puts ranges together; `false` where half of one is missing. */
  #joinRanges(): boolean {
    for (const { slot, between } of this.#ranges) {
      const low = this.#first[slot];
      const high = this.#second[slot];
      if ((low === undefined) !== (high === undefined)) return false;
      if (low !== undefined && high !== undefined) this.texts[slot] = low + between + high;
    }
    return true;
  }

  #account(parameter: number, header: number, written: EncodedValue | undefined): void {
    const instrument = this.#instrument;
    const { accounts } = this.#context;
    const id = instrument.canonicalName(parameter);
    const place = this.#placeOf(id);
    if (place === 'closer') return;
    if (place === 'none' || !written || written.approximated !== undefined || written.leftOut.length > 0) {
      const name = instrument.names.text(id);
      const value = sourceValue(instrument, parameter, header, this.#move);
      if (place === 'none') noteWithoutPlace(name, value, parameter, accounts);
      else account(written, place.place.slot, { name, value, parameter }, accounts);
    } else accounts.keep(parameter, place.place.slot);
  }

  /** What is written of inherited values. */
  #inheritedFrom(values: Values): readonly Inherited[] | 'closer' {
    let found = this.#inherited.get(values);
    if (!found) {
      found = this.#newInherited(values);
      this.#inherited.set(values, found);
    }
    return found;
  }

  #newInherited(values: Values): readonly Inherited[] | 'closer' {
    const { names } = this.#instrument;
    const all: Inherited[] = [];
    for (const source of values.values()) {
      const id = names.canonical(names.idOf(source.name));
      const place = this.#placeOf(id);
      if (place === 'closer') return 'closer';
      if (place === 'none')
        all.push({ source, id, place: undefined, written: undefined, isAccounted: false });
      else if (!place.isRemembered && goesBySample(place.place)) return 'closer';
      else {
        const written = newlyWritten(place.place, source.name, source.value, -1, this.#context);
        all.push({ source, id, place, written, isAccounted: false });
      }
    }
    return all;
  }

  #placeOf(id: number): HeaderPlace | 'none' | 'closer' {
    let place = this.#places[id];
    if (place === undefined) {
      place = this.#newPlace(this.#instrument.names.text(id), id);
      this.#places[id] = place;
    }
    return place;
  }

  #newPlace(name: string, id: number): HeaderPlace | 'none' | 'closer' {
    const { byName, halves, sharing } = this.#level;
    if (id === Parameter.key || (isKeyPart(name) && byName.has('key'))) return 'closer';
    const [place, ...others] = byName.get(name) ?? [];
    if (!place) return 'none';
    const half = halves.get(place);
    const { form, part = 0 } = place.parameter;
    const isShared = sharing.has(place) || (half !== undefined && sharing.has(half));
    // What parts a range may need references in XML.
    const parted = `0${place.between}0`;
    if (others.length > 0 || isShared || (part !== 0 && !half) || encodeXmlAttribute(parted).text !== parted)
      return 'closer';
    const isRemembered = form.kind !== 'text' && form.kind !== 'path' && !goesBySample(place);
    const isNumber = isRemembered && form.kind !== 'words';
    return {
      place,
      part,
      isNumber,
      isRemembered,
      isAsItIs: isAsItIs(form),
      byNumber: new Map(),
      byText: new Map(),
    };
  }

  /** What is written of a parameter; `undefined` where its value has no form there. */
  #writtenOf(place: HeaderPlace, parameter: number, header: number): EncodedValue | undefined {
    const instrument = this.#instrument;
    const { isNumber, isRemembered, byNumber, byText } = place;
    if (isNumber) {
      const number = instrument.number(parameter);
      const isKey = place.place.parameter.form.kind === 'key';
      if (!Number.isNaN(number) && !(isKey && instrument.control(header).keyOffset !== 0)) {
        let written = byNumber.get(number);
        if (!written && !byNumber.has(number)) {
          written = this.#newlyWritten(place, instrument.valueText(parameter), header);
          byNumber.set(number, written);
        }
        return written;
      }
    }
    const value = sourceValue(instrument, parameter, header, this.#move);
    if (!isRemembered) return this.#newlyWritten(place, value, header);
    let written = byText.get(value);
    if (!written && !byText.has(value)) {
      written = this.#newlyWritten(place, value, header);
      byText.set(value, written);
    }
    return written;
  }

  #newlyWritten({ place, isAsItIs }: HeaderPlace, value: string, header: number): EncodedValue | undefined {
    if (isAsItIs && value !== '') {
      const { text: encoded, leftOut } = encodeXmlAttribute(value);
      return { text: value, approximated: undefined, encoded, leftOut };
    }
    return newlyWritten(place, place.name, value, header, this.#context);
  }
}

/** Whether what is written of a value goes by the sample of the region or by other values in it. */
function goesBySample({ name, parameter: { form } }: WritingPlace): boolean {
  return form.kind === 'count' || (form.kind === 'position' && numberFormOf(form, name).needsSurroundings);
}

/** Whether values of a form are written as they are. */
function isAsItIs(form: ValueForm): boolean {
  if (form.kind === 'text') return true;
  if (form.kind !== 'path' || form.list) return false;
  const { folder = '', ending = '', separator = '/' } = form;
  return folder === '' && ending === '' && separator === '/';
}
