import { editedText } from '../../model/editing/changedInstrument';
import { replacing } from '../../model/editing/edits';
import type { Instrument } from '../../model/instrument';
import type { Edited, SampleFactsLookup } from '../../model/notation';
import type { ConversionNote } from '../../model/notes';
import { mainSpan, spanIn } from '../../model/text/span';
import { lineEndOf } from '../../model/text/textLines';
import { decodeXmlAttribute, encodeXmlAttribute } from '../../xml/scan/references';
import { splitRange } from '../forms/rangeText';
import { readValue, writeValue } from '../forms/valueForms';
import type { ValueSurroundings } from '../forms/valueSurroundings';
import { parsePlace } from '../places';
import type { Vocabulary } from '../vocabulary';
import { keyParts } from '../write/writeOwnValues';
import type { WritingPlace } from '../write/writePlaces';
import { canonicalNameOf, otherHalf, placesOf } from '../write/writePlaces';
import { defaultText, effectiveText, isNumeric, surroundingsOf } from '../write/writeValues';
import { removeChange, setChange } from './editElement';
import type { HeaderText } from './editHeader';
import { elementIn, exampleOf, headerText } from './editHeader';
import type { EditStyle, ElementInText, StretchChange } from './elementInText';
import { withOuterFolder } from './outerFolder';
import { hasDecimalCommas, indentUnitOf, withDecimalComma } from './styleDocument';
import { valueAt } from './styleTree';

/** A value that a header is to get, or is to lose where there is none. */
export interface ValueChange {
  name: string;
  value: string | undefined;
}

/** The two parts of a range as it stands, with what parts them. */
interface RangeText {
  first: string;
  between: string;
  second: string;
}

/** A place that is changed, and that of another parameter with the same text, with the value that this had before. */
interface SharedPlace {
  place: WritingPlace;
  other: WritingPlace;
  before: string | undefined;
}

/** The edits that change values of a header's element, all of them or, with a note why, none. */
export function changeValues(
  instrument: Instrument,
  vocabulary: Vocabulary,
  header: number,
  changes: readonly ValueChange[],
  sampleFacts: SampleFactsLookup | undefined,
): Edited {
  const found = headerText(instrument, vocabulary, header);
  if (!found)
    return refused(instrument, header, 'This is no element of the vocabulary, so nothing was changed.');
  const editor = new ValueEditor(instrument, vocabulary, header, found, sampleFacts);
  return editor.make(changes);
}

/** No edits, and why. */
export function refused(instrument: Instrument, header: number, message: string): Edited {
  const span = header < 0 ? mainSpan(0, 0) : instrument.headerSpan(header);
  return { edits: [], notes: [{ kind: 'dropped', ...span, message }] };
}

const units = new WeakMap<Instrument, string>();

class ValueEditor {
  readonly #instrument: Instrument;
  readonly #vocabulary: Vocabulary;
  readonly #header: number;
  readonly #found: HeaderText;
  readonly #sampleFacts: SampleFactsLookup | undefined;
  readonly #notes: ConversionNote[] = [];
  /** Values that hold after the change. */
  readonly #changed = new Map<string, string>();
  readonly #removed = new Set<string>();
  readonly #edits: StretchChange[] = [];
  #text: string;
  #parsed: ElementInText | undefined;
  #problem: string | undefined;
  /** Whether numbers are written with a comma before their decimals. */
  #commas = false;

  constructor(
    instrument: Instrument,
    vocabulary: Vocabulary,
    header: number,
    found: HeaderText,
    sampleFacts: SampleFactsLookup | undefined,
  ) {
    this.#instrument = instrument;
    this.#vocabulary = vocabulary;
    this.#header = header;
    this.#found = found;
    this.#sampleFacts = sampleFacts;
    this.#text = found.text;
  }

  make(changes: readonly ValueChange[]): Edited {
    const all = changes.flatMap((change) => this.#spread(change));
    for (const { name, value } of all) {
      if (value === undefined) this.#removed.add(name);
      this.#changed.set(name, value ?? this.#without(name) ?? '');
    }
    const shared = all.flatMap((change) => this.#sharedWith(change, all));
    for (const change of all) if (change.value === undefined) this.#remove(change.name);
    for (const { name, value } of all) if (value !== undefined) this.#set(name, value);
    for (const name of this.#dependents(all)) {
      const value = effectiveText(this.#instrument, this.#header, name);
      if (value !== undefined) this.#set(name, value);
    }
    for (const one of shared) this.#noteShared(one);
    if (this.#problem !== undefined) return refused(this.#instrument, this.#header, this.#problem);
    return { edits: this.#textEdits(), notes: this.#notes };
  }

  /** Ends written as a length from a value that changes: they are to stay where they are. */
  #dependents(all: readonly ValueChange[]): string[] {
    const names = new Set(all.map(({ name }) => name));
    return this.#found.places.all
      .filter(
        ({ parameter: { form } }) =>
          (form.kind === 'position' || form.kind === 'count') && names.has(form.from ?? ''),
      )
      .map(({ parameter }) => canonicalNameOf(parameter.parameter))
      .filter((name) => !names.has(name) && this.#own(name) >= 0);
  }

  /** Other parameters that the text of a change's place gives a value. What is asked of them in the same place has to be the same. */
  #sharedWith({ name, value }: ValueChange, all: readonly ValueChange[]): SharedPlace[] {
    const place = this.#placeOf(name);
    const others = (place && this.#found.places.sharing.get(place)) ?? [];
    return others.flatMap((other) => {
      const asked = all.find((one) => one.name === other.name);
      if (!place || (!asked && this.#placeOf(other.name)?.slot !== place.slot)) return [];
      if (!asked) return { place, other, before: this.#valueOf(other.name) };
      const isSame =
        asked.value === value ||
        (asked.value !== undefined &&
          value !== undefined &&
          this.#isSameText(place, value, other, asked.value));
      if (!isSame) {
        this.#problem ??= `${name} and ${other.name} stand in the same place and cannot differ, so nothing was changed.`;
      }
      return [];
    });
  }

  #isSameText(place: WritingPlace, value: string, other: WritingPlace, otherValue: string): boolean {
    const text = writeValue(place.parameter.form, value, this.#around(place.name))?.text;
    return text === writeValue(other.parameter.form, otherValue, this.#around(other.name))?.text;
  }

  /** The value that the header itself sets; `undefined` where it sets none. */
  #valueOf(name: string): string | undefined {
    const parameter = this.#own(name);
    return parameter < 0 ? undefined : this.#instrument.valueText(parameter);
  }

  /** Says what became of a parameter that shares the place of one that was changed. */
  #noteShared({ place, other, before }: SharedPlace): void {
    const within = this.#tree();
    const found = within && valueAt(within.text, within.element, other.path);
    const text = found ? decodeXmlAttribute(within.text.slice(found.start, found.end)) : '';
    const half = otherHalf(this.#found.places, other);
    const range = half && this.#rangeAt(other, half);
    const own = range ? (other.parameter.part === 1 ? range.first : range.second) : text;
    const around = this.#around(other.name);
    const after = own === '' ? undefined : readValue(other.parameter.form, own, around)?.text;
    if (after === before) return;
    const becomes = after === undefined ? 'is not set any more' : `becomes ${after} as well`;
    this.#note('approximated', `${other.name} ${becomes}: it stands in the same place as ${place.name}.`);
  }

  #own(name: string): number {
    const { names } = this.#instrument;
    return this.#instrument.own(this.#header, names.canonical(names.idOf(name)));
  }

  /** `key` as the three values that it stands for, where the level has no place for it. */
  #spread({ name: written, value }: ValueChange): ValueChange[] {
    const name = canonicalNameOf(written);
    const { byName } = this.#found.places;
    if (name !== 'key' || byName.has('key')) return [{ name, value }];
    const parts = keyParts.filter((part) => byName.has(part));
    if (parts.length === 0) return [{ name, value }];
    return parts.map((part) => ({ name: part, value }));
  }

  /** The value that would be in force if the header did not set it: inherited, else the default. */
  #without(name: string): string | undefined {
    const outer = effectiveText(this.#instrument, this.#instrument.parent(this.#header), name);
    return outer ?? defaultText(name, this.#around(name));
  }

  /** The element as the text is now. */
  #tree(): ElementInText | undefined {
    if (this.#parsed?.text !== this.#text) this.#parsed = elementIn({ text: this.#text });
    return this.#parsed;
  }

  #around(name: string): ValueSurroundings {
    const around = surroundingsOf(this.#instrument, this.#header, name, this.#sampleFacts, this.#changed);
    around.statedRate = this.#statedRate();
    return around;
  }

  /** The sample rate that stands in the element itself. */
  #statedRate(): number | undefined {
    const path = parsePlace(this.#found.places.level.rate ?? '');
    const within = path && this.#tree();
    const found = path && within && valueAt(within.text, within.element, path);
    const rate = Number(found ? within.text.slice(found.start, found.end) : '');
    return rate > 0 ? rate : undefined;
  }

  /** The place in which a value stands, else the first that it could. */
  #placeOf(name: string): WritingPlace | undefined {
    const places = this.#found.places.byName.get(name) ?? [];
    const within = this.#tree();
    const standing = within && places.find(({ path }) => valueAt(within.text, within.element, path));
    return standing ?? places[0];
  }

  #set(name: string, value: string): void {
    const place = this.#placeOf(name);
    const within = this.#tree();
    if (!place || !within) {
      const element = this.#found.places.level.element;
      this.#problem ??= `<${element}> has no place for ${name}, so nothing was changed.`;
      return;
    }
    const example = valueAt(within.text, within.element, place.path)
      ? undefined
      : exampleOf(this.#instrument, this.#vocabulary, this.#header, this.#found.level, name);
    this.#commas = hasDecimalCommas(this.#vocabulary, within.text + (example?.text ?? ''));
    const written = this.#written(place, name, value);
    if (written === undefined) {
      this.#problem ??= `${name} ${value} cannot be written in the form that its place takes, so nothing was changed.`;
      return;
    }
    const text = this.#wholeText(place, written);
    if (text === undefined) {
      this.#problem ??= `${name} ${value} cannot be written in a range, so nothing was changed.`;
      return;
    }
    const { leftOut } = encodeXmlAttribute(text);
    if (leftOut.length > 0) {
      this.#note(
        'dropped',
        `XML cannot hold ${leftOut.join(', ')}, so the value of ${name} is written without.`,
      );
    }
    this.#apply(setChange(within, place.path, text, { ...this.#style(), example }));
  }

  #written(place: WritingPlace, name: string, value: string): string | undefined {
    const { source, start } = this.#instrument.headerSpan(this.#header);
    const text = this.#instrument.sources[source]?.text ?? '';
    const form = withOuterFolder(place.parameter.form, text, this.#vocabulary, start);
    const written = writeValue(form, value, this.#around(name));
    if (written?.approximated !== undefined) {
      this.#note('approximated', `${name} ${value} is written as ${written.text}. ${written.approximated}`);
    }
    return written && this.#commas && isNumeric(place.parameter.form)
      ? withDecimalComma(written.text)
      : written?.text;
  }

  #note(kind: ConversionNote['kind'], message: string): void {
    this.#notes.push({ kind, ...this.#instrument.headerSpan(this.#header), message });
  }

  /** What is to stand at a place: of a range the part that stays as well. */
  #wholeText(place: WritingPlace, written: string): string | undefined {
    const half = otherHalf(this.#found.places, place);
    if (!half) return written;
    const range = this.#rangeAt(place, half);
    if (range) {
      return place.parameter.part === 1
        ? written + range.between + range.second
        : range.first + range.between + written;
    }
    const otherName = canonicalNameOf(half.parameter.parameter);
    const other =
      this.#changed.get(otherName) ??
      effectiveText(this.#instrument, this.#header, otherName) ??
      defaultText(otherName, this.#around(otherName));
    const otherText = other === undefined ? undefined : this.#written(half, otherName, other);
    if (otherText === undefined) return undefined;
    const { between } = place;
    return place.parameter.part === 2 ? otherText + between + written : written + between + otherText;
  }

  #rangeAt(place: WritingPlace, half: WritingPlace): RangeText | undefined {
    const within = this.#tree();
    const found = within && valueAt(within.text, within.element, place.path);
    if (!found) return undefined;
    const text = decodeXmlAttribute(within.text.slice(found.start, found.end));
    const { between } = place;
    const parts = place.parameter.part === 1 ? [place, half] : [half, place];
    const range = splitRange(text, between, (part, which) => {
      const { form, parameter } = parts[which - 1].parameter;
      return readValue(form, part, this.#around(canonicalNameOf(parameter))) !== undefined;
    });
    if (!range) return undefined;
    const { first, second } = range;
    return {
      first: text.slice(first.start, first.end),
      between: second.start < first.end ? between : text.slice(first.end, second.start),
      second: text.slice(second.start, second.end),
    };
  }

  #remove(name: string): void {
    const place = this.#placeOf(name);
    const within = this.#tree();
    if (!place || !within) return;
    const half = otherHalf(this.#found.places, place);
    if (half && !this.#removed.has(canonicalNameOf(half.parameter.parameter)) && this.#rangeAt(place, half)) {
      const value = this.#without(name);
      this.#commas = hasDecimalCommas(this.#vocabulary, within.text);
      const written = value === undefined ? undefined : this.#written(place, name, value);
      const text = written === undefined ? undefined : this.#wholeText(place, written);
      if (text === undefined) {
        this.#problem ??= `${name} is one end of a range and cannot be removed by itself, so nothing was changed.`;
        return;
      }
      this.#apply(setChange(within, place.path, text, { ...this.#style(), example: undefined }));
      return;
    }
    const change = removeChange(within, place.path);
    if (change) this.#apply(change);
  }

  #style(): Omit<EditStyle, 'example'> {
    const text = this.#instrument.sources[this.#found.source]?.text ?? '';
    const inner = placesOf(this.#vocabulary)[this.#found.level + 1]?.level;
    return {
      places: this.#found.places.all,
      inner: new Set(inner ? [...(inner.inside ?? []), inner.element] : []),
      unit: this.#unit(text),
      lineEnd: lineEndOf(text),
    };
  }

  /** Worked out once for a document, whose findings may ask for many edits. */
  #unit(text: string): string {
    let unit = units.get(this.#instrument);
    if (unit === undefined) {
      unit = indentUnitOf(text);
      units.set(this.#instrument, unit);
    }
    return unit;
  }

  #apply(change: StretchChange): void {
    this.#text = editedText(this.#text, [change]);
    this.#edits.push(change);
  }

  /** One change as it is; several as one stretch, from the first to the last place where the text differs. */
  #textEdits(): Edited['edits'] {
    const { source, start: offset, text: before } = this.#found;
    const after = this.#text;
    const [only, ...more] = this.#edits;
    if (!only || after === before) return [];
    let { start, end, newText } = only;
    if (more.length > 0) {
      start = 0;
      while (start < before.length && start < after.length && before[start] === after[start]) start++;
      let same = 0;
      const most = Math.min(before.length, after.length) - start;
      while (same < most && before[before.length - 1 - same] === after[after.length - 1 - same]) same++;
      end = before.length - same;
      newText = after.slice(start, after.length - same);
    }
    return [replacing(spanIn(source, offset + start, offset + end), newText)];
  }
}
