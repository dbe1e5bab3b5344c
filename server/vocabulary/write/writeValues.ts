import type { Instrument } from '../../model/instrument';
import { plainNumber } from '../../model/instrumentBuilder';
import { keyOfNoteName } from '../../model/keys';
import type { SampleFactsLookup } from '../../model/notation';
import { resolveOpcode } from '../../model/opcodes/resolve';
import type { SampleFacts } from '../../model/samples';
import { encodeXmlAttribute } from '../../xml/scan/references';
import { numberFormOf } from '../forms/numberFormOf';
import { readValue, writeValue } from '../forms/valueForms';
import type { ValueSurroundings } from '../forms/valueSurroundings';
import type { ValueForm } from '../vocabulary';
import { rootFrequency } from './rootFrequency';
import { withSingleKey } from './singleKey';
import type { Accounts } from './writeAccounts';
import type { SourceValue } from './writeOwnValues';
import { keyParts } from './writeOwnValues';
import type { LevelPlaces, WritingPlace } from './writePlaces';
import { otherHalf } from './writePlaces';

/** A text with the place that it is to stand in, given by the first parameter there. */
export interface PlacedText {
  place: WritingPlace;
  text: string;
  /** The text ready to stand between double quotes. */
  encoded: string;
}

/** What the values of a header depend on: the sample in force and other positions in it. It is looked up when asked for. */
export function surroundingsOf(
  instrument: Instrument,
  header: number,
  parameter: string,
  sampleFacts: SampleFactsLookup | undefined,
  changed?: ReadonlyMap<string, string>,
): ValueSurroundings {
  return new HeaderSurroundings(instrument, header, parameter, sampleFacts, changed);
}

class HeaderSurroundings implements ValueSurroundings {
  readonly parameter: string;
  statedRate: number | undefined;
  readonly #instrument: Instrument;
  readonly #header: number;
  readonly #sampleFacts: SampleFactsLookup | undefined;
  readonly #changed: ReadonlyMap<string, string> | undefined;

  constructor(
    instrument: Instrument,
    header: number,
    parameter: string,
    sampleFacts: SampleFactsLookup | undefined,
    changed: ReadonlyMap<string, string> | undefined,
  ) {
    this.parameter = parameter;
    this.#instrument = instrument;
    this.#header = header;
    this.#sampleFacts = sampleFacts;
    this.#changed = changed;
  }

  get sampleRate(): number | undefined {
    return this.#facts()?.sampleRate;
  }

  get frames(): number | undefined {
    const frames = this.#facts()?.frames ?? 0;
    return frames > 0 ? frames : undefined;
  }

  frameOf(name: string): number {
    const value = this.#changed?.get(name) ?? effectiveText(this.#instrument, this.#header, name);
    const plain = value === undefined ? Number.NaN : plainNumber(value);
    const number = Number.isNaN(plain) ? (keyOfNoteName(value ?? '') ?? plain) : plain;
    return Number.isNaN(number) ? 0 : number;
  }

  #facts(): SampleFacts | undefined {
    if (!this.#sampleFacts || this.#header < 0) return undefined;
    const path = this.#changed?.get('sample') ?? this.#instrument.samplePath(this.#header);
    return path === undefined ? undefined : this.#sampleFacts(path);
  }
}

/** The value that is in force in a header; `undefined` where none is set. */
export function effectiveText(instrument: Instrument, header: number, name: string): string | undefined {
  if (header < 0) return undefined;
  const parameter = instrument.effective(header, instrument.names.canonical(instrument.names.idOf(name)));
  return parameter < 0 ? undefined : instrument.valueText(parameter);
}

/** What a parameter is where nobody sets it: the default of the open SFZ format; of an end, the last frame of the sample. */
export function defaultText(name: string, around: ValueSurroundings): string | undefined {
  if ((name === 'end' || name === 'loop_end') && around.frames !== undefined)
    return String(around.frames - 1);
  if (name === 'loop_end') return undefined;
  const text = resolveOpcode(name)?.facts.defaultText;
  return text === undefined || Number.isNaN(plainNumber(text)) ? undefined : text;
}

/** What is needed to write the values of one header. */
export interface ValueContext {
  instrument: Instrument;
  /** The header that the values are for; −1 where there is none. */
  header: number;
  sampleFacts: SampleFactsLookup | undefined;
  accounts: Accounts;
  /** The form that a place takes where the values are to stand; the place's own where nothing is said. */
  formThere?: (form: ValueForm) => ValueForm;
  /** Fits a number to the style of the text that it is to stand in. */
  inStyle?: (text: string) => string;
  /** What was written before of values that go by nothing around them; for a row of elements of one instrument. */
  written?: WrittenBefore;
}

/** A value as it is written in a form, and what XML cannot hold of it. */
export interface EncodedValue {
  text: string;
  /** As in `WrittenValue`. */
  approximated: string | undefined;
  encoded: string;
  leftOut: readonly string[];
}

/** By place and value, what was written for it. */
export type WrittenBefore = Map<WritingPlace, Map<string, EncodedValue>>;

/**
 * The texts of an element of a level, in the order of the vocabulary: values in their forms, ranges put together from
 * their halves. What finds no place, or is not exact, is told to the accounts.
 */
export function placedTexts(
  level: LevelPlaces,
  values: ReadonlyMap<string, SourceValue>,
  context: ValueContext,
): PlacedText[] {
  const { instrument, header, accounts } = context;
  const inForce = (name: string) => effectiveText(instrument, header, name);
  const single = withSingleKey(level, values, () => inForce('pitch_keycenter'), accounts);
  const wanted = withKeyPlace(level, single);
  const frequency = rootFrequency(level, wanted, inForce, accounts);
  const texts: PlacedText[] = [];
  const taken: ({ text: string; by: SourceValue } | undefined)[] = [];
  const done = new Set<string>();
  for (const place of level.all) {
    const value = wanted.get(place.name);
    if (!value || done.has(place.name)) continue;
    done.add(place.name);
    if (
      frequency &&
      place.slot === frequency.slot &&
      (place.name === 'pitch_keycenter' || place.name === 'tune')
    ) {
      const { text } = frequency;
      if (taken[place.slot] === undefined)
        texts.push({ place, text, encoded: encodeXmlAttribute(text).text });
      taken[place.slot] = { text, by: value };
      continue;
    }
    const written = textFor(level, place, value, wanted, done, context);
    if (written === undefined) continue;
    const before = taken[place.slot];
    if (before !== undefined) {
      if (before.text !== written.text) noteTaken(value, before.by, context);
      continue;
    }
    taken[place.slot] = { text: written.text, by: value };
    texts.push({ place, ...written });
  }
  for (const [name, value] of wanted) {
    if (done.has(name)) continue;
    // Where loop points stand the mode follows from them.
    if (name === 'loop_mode' && value.value === level.loops && wanted.has('loop_end'))
      context.accounts.keep(value.parameter);
    else noteNoPlace(value, context);
  }
  if (level.sharing.size > 0) {
    for (const { place, text } of texts) {
      const value = wanted.get(place.name);
      if (value) noteShared(level, place, text, value, wanted, context);
    }
  }
  return texts;
}

/** Notes which other parameters a text sets that stands in their place too. */
function noteShared(
  { sharing }: LevelPlaces,
  place: WritingPlace,
  text: string,
  { value, parameter }: SourceValue,
  wanted: ReadonlyMap<string, SourceValue>,
  { instrument, header, sampleFacts, accounts }: ValueContext,
): void {
  for (const { name, parameter: other } of sharing.get(place) ?? []) {
    if (wanted.has(name) || other.part !== undefined) continue;
    const around = surroundingsOf(instrument, header, name, sampleFacts);
    const read = readValue(other.form, text, around);
    const before = effectiveText(instrument, header, name) ?? defaultText(name, around);
    if (!read || read.text === before) continue;
    const message = `${name} becomes ${read.text} as well: it stands in the same place as ${place.name} ${value}.`;
    accounts.note(parameter, 'assumed', message, name, place.slot);
  }
}

function noteNoPlace({ name, value, parameter }: SourceValue, { accounts }: ValueContext): void {
  noteWithoutPlace(name, value, parameter, accounts);
}

function noteTaken(
  { name, value, parameter }: SourceValue,
  by: SourceValue,
  { accounts }: ValueContext,
): void {
  const message = `${name} ${value} is left out: it stands in the same place as ${by.name} ${by.value}.`;
  accounts.note(parameter, 'dropped', message, name);
}

/** Notes that there is no place for a value. */
export function noteWithoutPlace(name: string, value: string, parameter: number, accounts: Accounts): void {
  const message = () => `${name} ${value} is left out: there is no place for it.`;
  accounts.note(parameter, 'dropped', message, name);
}

/** Where a level has a place for `key` but not for all that it stands for, these become `key` as far as that is the same. */
function withKeyPlace(
  { byName }: LevelPlaces,
  values: ReadonlyMap<string, SourceValue>,
): ReadonlyMap<string, SourceValue> {
  if (!byName.has('key') || !keyParts.some((part) => values.has(part) && !byName.has(part))) return values;
  const low = values.get('lokey');
  const high = values.get('hikey');
  if (!low || low.value !== high?.value) return values;
  const changed = new Map(values);
  changed.set('key', { name: 'key', value: low.value, parameter: low.parameter });
  for (const part of keyParts) {
    if (!byName.has(part) && values.get(part)?.value === low.value) changed.delete(part);
  }
  // `key` sets the root key too, so that one that differs has to be said.
  if (byName.has('pitch_keycenter') && !values.has('pitch_keycenter')) {
    changed.set('pitch_keycenter', { name: 'pitch_keycenter', value: '60', parameter: -1 });
  }
  return changed;
}

/** A text that is to stand in a place, as it is and ready to stand between double quotes. */
interface PlaceText {
  text: string;
  encoded: string;
}

function textFor(
  level: LevelPlaces,
  place: WritingPlace,
  value: SourceValue,
  values: ReadonlyMap<string, SourceValue>,
  done: Set<string>,
  context: ValueContext,
): PlaceText | undefined {
  const own = formText(place, value, context);
  const half = otherHalf(level, place);
  if (!half) return own;
  const halfValue = values.get(half.name);
  done.add(half.name);
  const other = halfValue ? formText(half, halfValue, context) : missingHalf(half, value, context);
  if (own === undefined || other === undefined) {
    if (own !== undefined) noteNoPlace(value, context);
    else if (halfValue && other !== undefined) noteNoPlace(halfValue, context);
    return undefined;
  }
  const [first, second] = place.parameter.part === 2 ? [other, own] : [own, other];
  const text = first.text + place.between + second.text;
  return { text, encoded: encodeXmlAttribute(text).text };
}

function missingHalf(
  half: WritingPlace,
  value: SourceValue,
  { instrument, header, sampleFacts, accounts, inStyle }: ValueContext,
): PlaceText | undefined {
  const { name, slot } = half;
  const around = surroundingsOf(instrument, header, name, sampleFacts);
  const inForce = effectiveText(instrument, header, name);
  const missing = inForce ?? defaultText(name, around);
  const written = missing === undefined ? undefined : writeValue(half.parameter.form, missing, around);
  if (!written) return undefined;
  if (inForce === undefined) {
    const message = `${name} is written as ${missing}, its default, because ${value.name} ${value.value} stands in a range with it.`;
    accounts.note(value.parameter, 'assumed', message, name, slot);
  }
  const text = inStyle && isNumeric(half.parameter.form) ? inStyle(written.text) : written.text;
  return { text, encoded: text };
}

/** A value in the form of its place, with what there is to be said of it told to the accounts. */
function formText(
  place: WritingPlace,
  { name, value, parameter }: SourceValue,
  context: ValueContext,
): PlaceText | undefined {
  const written = writtenBefore(place, name, value, context);
  account(written, place.slot, { name, value, parameter }, context.accounts);
  return written;
}

/** Tells the accounts what became of a value that is written in a slot, `undefined` where it cannot be. */
export function account(
  written: EncodedValue | undefined,
  slot: number,
  { name, value, parameter }: SourceValue,
  accounts: Accounts,
): void {
  if (!written) {
    const message = () =>
      `${name} ${value} is left out: it cannot be written in the form that its place takes.`;
    accounts.note(parameter, 'dropped', message, name);
    return;
  }
  const { text, leftOut, approximated } = written;
  if (leftOut.length > 0) {
    const message = () =>
      `XML cannot hold ${leftOut.join(', ')}, so the value of ${name} is written without.`;
    accounts.note(parameter, 'dropped', message, name, slot);
  } else if (approximated === undefined) accounts.keep(parameter, slot);
  else {
    const message = () => `${name} ${value} is written as ${text}. ${approximated}`;
    accounts.note(parameter, 'approximated', message, name, slot);
  }
}

/** A value in the form of its place, looked up where it was written before and goes by nothing around it. */
function writtenBefore(
  place: WritingPlace,
  name: string,
  value: string,
  context: ValueContext,
): EncodedValue | undefined {
  const { written } = context;
  if (!written || !canRemember(place.parameter.form, name))
    return newlyWritten(place, name, value, context.header, context);
  let known = written.get(place);
  if (!known) {
    known = new Map();
    written.set(place, known);
  }
  let encoded = known.get(value);
  if (!encoded) {
    encoded = newlyWritten(place, name, value, context.header, context);
    if (encoded) known.set(value, encoded);
  }
  return encoded;
}

/** Whether a value is written the same each time; those of which hardly two are the same are not worth remembering. */
function canRemember(form: ValueForm, name: string): boolean {
  if (form.kind === 'path' || form.kind === 'text') return false;
  return form.kind !== 'count' && (form.kind !== 'position' || !numberFormOf(form, name).needsSurroundings);
}

/** A value in the form of its place, for a header. */
export function newlyWritten(
  { parameter: { form } }: WritingPlace,
  name: string,
  value: string,
  header: number,
  { instrument, sampleFacts, formThere, inStyle }: Omit<ValueContext, 'header'>,
): EncodedValue | undefined {
  const around = surroundingsOf(instrument, header, name, sampleFacts);
  const written = writeValue(formThere ? formThere(form) : form, value, around);
  if (!written) return undefined;
  const text = inStyle && isNumeric(form) ? inStyle(written.text) : written.text;
  const { text: encoded, leftOut } = encodeXmlAttribute(text);
  return { text, approximated: written.approximated, encoded, leftOut };
}

/** Whether values of a form are written as numbers, so that their style may be that of numbers. */
export function isNumeric({ kind }: ValueForm): boolean {
  return kind !== 'text' && kind !== 'path' && kind !== 'words' && kind !== 'key';
}
