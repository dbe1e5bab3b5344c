import type { Instrument } from '../model/instrument';
import { plainNumber } from '../model/instrumentBuilder';
import type { SampleFactsLookup } from '../model/notation';
import { resolveOpcode } from '../model/opcodes/resolve';
import { encodeXmlAttribute } from '../xml/references';
import type { ValueSurroundings } from './valueForms';
import { writeValue } from './valueForms';
import type { ValueForm } from './vocabulary';
import type { Accounts } from './writeAccounts';
import type { SourceValue } from './writeOwnValues';
import { keyParts } from './writeOwnValues';
import type { LevelPlaces, WritingPlace } from './writePlaces';
import { canonicalNameOf, otherHalf } from './writePlaces';

/** A text with the place that it is to stand in, given by the first parameter there. */
export interface PlacedText {
  place: WritingPlace;
  text: string;
}

/** What the values of a header depend on: the sample in force and other positions in it. */
export function surroundingsOf(
  instrument: Instrument,
  header: number,
  parameter: string,
  sampleFacts: SampleFactsLookup | undefined,
  changed?: ReadonlyMap<string, string>,
): ValueSurroundings {
  const path = header >= 0 ? instrument.samplePath(header) : undefined;
  const facts = path === undefined ? undefined : sampleFacts?.(path);
  return {
    parameter,
    sampleRate: facts?.sampleRate,
    frames: facts && facts.frames > 0 ? facts.frames : undefined,
    frameOf(name) {
      const value = changed?.get(name) ?? effectiveText(instrument, header, name);
      const number = value === undefined ? Number.NaN : plainNumber(value);
      return Number.isNaN(number) ? 0 : number;
    },
  };
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
}

/**
 * The texts of an element of a level, in the order of the vocabulary: values in their forms, ranges put together from
 * their halves. What finds no place, or is not exact, is told to the accounts.
 */
export function placedTexts(
  level: LevelPlaces,
  values: ReadonlyMap<string, SourceValue>,
  context: ValueContext,
): PlacedText[] {
  const wanted = withKeyPlace(level, values);
  const texts: PlacedText[] = [];
  const taken = new Map<string, string>();
  const done = new Set<string>();
  for (const place of level.all) {
    const name = canonicalNameOf(place.parameter.parameter);
    const value = wanted.get(name);
    if (!value || done.has(name)) continue;
    done.add(name);
    const text = textFor(level, place, value, wanted, done, context);
    if (text === undefined) continue;
    const { at } = place.parameter;
    const before = taken.get(at);
    if (before !== undefined) {
      if (before !== text) noteNoPlace(value, context);
      continue;
    }
    taken.set(at, text);
    texts.push({ place, text });
  }
  for (const [name, value] of wanted) if (!done.has(name)) noteNoPlace(value, context);
  return texts;
}

function noteNoPlace({ name, value, parameter }: SourceValue, { accounts }: ValueContext): void {
  const message = `${name} ${value} is left out: there is no place for it.`;
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

function textFor(
  level: LevelPlaces,
  place: WritingPlace,
  value: SourceValue,
  values: ReadonlyMap<string, SourceValue>,
  done: Set<string>,
  context: ValueContext,
): string | undefined {
  const own = formText(place, value, context);
  const half = otherHalf(level, place);
  if (!half) return own;
  const halfName = canonicalNameOf(half.parameter.parameter);
  const halfValue = values.get(halfName);
  done.add(halfName);
  const other = halfValue ? formText(half, halfValue, context) : missingHalf(half, halfName, value, context);
  if (own === undefined || other === undefined) {
    if (own !== undefined) noteNoPlace(value, context);
    else if (halfValue && other !== undefined) noteNoPlace(halfValue, context);
    return undefined;
  }
  const between = place.parameter.between ?? half.parameter.between ?? '-';
  return place.parameter.part === 2 ? other + between + own : own + between + other;
}

function missingHalf(
  half: WritingPlace,
  name: string,
  value: SourceValue,
  { instrument, header, sampleFacts, accounts }: ValueContext,
): string | undefined {
  const around = surroundingsOf(instrument, header, name, sampleFacts);
  const inForce = effectiveText(instrument, header, name);
  const missing = inForce ?? defaultText(name, around);
  const written = missing === undefined ? undefined : writeValue(half.parameter.form, missing, around);
  if (written && inForce === undefined) {
    const message = `${value.name} ${value.value} stands in a range, so ${name} is written as ${missing}, which holds where nothing is said.`;
    accounts.note(value.parameter, 'assumed', message, name);
  }
  return written?.text;
}

/** A value in the form of its place, with what there is to be said of it told to the accounts. */
function formText(
  { parameter: { form } }: WritingPlace,
  { name, value, parameter }: SourceValue,
  { instrument, header, sampleFacts, accounts, formThere }: ValueContext,
): string | undefined {
  const written = writeValue(
    formThere?.(form) ?? form,
    value,
    surroundingsOf(instrument, header, name, sampleFacts),
  );
  if (!written) {
    const message = `${name} ${value} is left out: it cannot be written in the form that its place takes.`;
    accounts.note(parameter, 'dropped', message, name);
    return undefined;
  }
  const { leftOut } = encodeXmlAttribute(written.text);
  if (leftOut.length > 0) {
    const message = `XML cannot hold ${leftOut.join(', ')}, so the value of ${name} is written without.`;
    accounts.note(parameter, 'dropped', message, name);
  } else if (written.approximated === undefined) accounts.keep(parameter);
  else {
    const message = `${name} ${value} is written as ${written.text}. ${written.approximated}`;
    accounts.note(parameter, 'approximated', message, name);
  }
  return written.text;
}
