import { HeaderKind } from '../../model/headerKinds';
import type { Instrument } from '../../model/instrument';
import type { Notation, ScaleEnd } from '../../model/notation';
import type { ConversionNote } from '../../model/notes';
import type { OutputAccount } from '../../model/output';
import { Parameter } from '../../model/parameterNames';
import { joinPath } from '../../model/paths';
import { decimalText } from '../../model/text/decimalText';
import { spanIn } from '../../model/text/span';
import { AddedValues } from './addedValues';
import { isNearTo, isSameValue, numberOf, offBy } from './comparedValues';
import type { CopyValues } from './copyValues';
import type { ExampleCopy } from './repeatExamples';
import type { SourceRegion } from './sourceSections';
import { isSoundOfRecording, valueClass } from './valueClass';
import { writtenValues } from './writtenValues';

/** A region as it was written. */
export interface WrittenRegion extends ExampleCopy {
  source: SourceRegion;
  /** Its header in the result. */
  header: number;
}

/** What was put into a template, and the result as it reads. */
export interface TemplateWork {
  instrument: Instrument;
  notation: Notation;
  values: CopyValues;
  result: Instrument;
  regions: readonly WrittenRegion[];
  saysFirst: boolean;
  /** Regions of the source that were not written, which is told of them as a whole. */
  leftOut: ReadonlySet<number>;
}

/** Compares each region of the result with what it is to be, and accounts for every value of the source. */
export function accountOf(work: TemplateWork): OutputAccount {
  const accounts = new Accounts(work.instrument, work.notation);
  const added = new AddedValues();
  for (const region of work.regions) compareRegion(work, region, accounts, added);
  for (const region of work.leftOut) accounts.leavesOut(region);
  return accounts.finish([...added.notes(work.instrument), ...nameNotes(work)]);
}

/** A note on groups without a name where those of the examples have one each. */
function nameNotes({ instrument, values }: TemplateWork): ConversionNote[] {
  const [region] = instrument.regions;
  if (!values.leavesNames || region === undefined) return [];
  const message =
    'Groups of the source have no name, and those of the example groups differ, so the place for it is left out there. Check whether it is needed.';
  return [{ kind: 'dropped', ...instrument.headerSpan(region), message }];
}

function compareRegion(
  { instrument, values, result, saysFirst }: TemplateWork,
  region: WrittenRegion,
  accounts: Accounts,
  added: AddedValues,
): void {
  const { source, header } = region;
  const found = writtenValues(result, header);
  const expected = values.expected(region);
  const label = result.groupLabel(header)?.trim();
  for (const [name, value] of expected) {
    const parameter = source.parameters.get(name);
    // The name of a keyswitch may be that of its group.
    const there = found.get(name) ?? (name === 'sw_label' ? label : undefined);
    const isSame = name === 'sample' ? isSameSample(result, header, value) : isSameValue(name, value, there);
    const merged = source.merged.get(name);
    if (merged !== undefined) accounts.merges(merged, name, there);
    const isSaid = isSame || (name === 'sw_default' && saysFirst && source.values.has('sw_last'));
    if (isSaid) accounts.carried(parameter ?? -1);
    else if (parameter !== undefined) accounts.differs(parameter, name, value, there);
    else if (there !== undefined) added.add(name, there, source.header);
  }
  for (const [name, parameter] of source.parameters)
    if (!source.values.has(name))
      accounts.differs(parameter, name, instrument.valueText(parameter), found.get(name));
  compareKeys(instrument, source, result, header, accounts);
  for (const id of [Parameter.group_label, Parameter.master_label, Parameter.global_label]) {
    const parameter = instrument.effective(source.header, id);
    if (parameter < 0) continue;
    const text = instrument.valueText(parameter);
    if (text.trim() === label) accounts.carried(parameter);
    else accounts.differs(parameter, instrument.names.text(id), text, undefined);
  }
  for (const [name, value] of found)
    if (!expected.has(name) && valueClass(name, false) !== 'label' && !changesNothing(name, value))
      added.add(name, value, source.header);
}

/** Whether a value says no more than is so without it. */
function changesNothing(name: string, value: string): boolean {
  if (name === 'lovel') return Number(value) <= 1;
  return (isSoundOfRecording(name) && Number(value) === 0) || (name === 'hivel' && Number(value) >= 127);
}

/** A template that moves all keys cannot reach each of them. */
function compareKeys(
  instrument: Instrument,
  source: SourceRegion,
  result: Instrument,
  header: number,
  accounts: Accounts,
): void {
  const ends = [
    ['lokey', instrument.lowKey[source.header], result.lowKey[header]],
    ['hikey', instrument.highKey[source.header], result.highKey[header]],
    ['pitch_keycenter', instrument.rootKey(source.header), result.rootKey(header)],
  ] as const;
  for (const [name, key, there] of ends) {
    const parameter = source.parameters.get(name);
    if (parameter !== undefined && key !== there)
      accounts.differs(parameter, name, String(key), String(there));
  }
}

/** Whether a region of a result plays the sample that is to be written as `value`. */
export function isSameSample(result: Instrument, header: number, value: string): boolean {
  const path = result.samplePath(header);
  if (path === undefined) return value === '';
  const expected = value.startsWith('*') ? value : result.control(header).defaultPath + value;
  return path === expected || joinPath('', path) === joinPath('', expected);
}

/** What became of each parameter of the source. */
class Accounts {
  readonly #source: Instrument;
  readonly #notation: Notation;
  readonly #carried = new Set<number>();
  readonly #notes = new Map<number, ConversionNote>();
  /** Those that regions have in force which are left out. */
  readonly #leftOut = new Set<number>();

  constructor(source: Instrument, notation: Notation) {
    this.#source = source;
    this.#notation = notation;
  }

  carried(parameter: number): void {
    this.#carried.add(parameter);
  }

  leavesOut(region: number): void {
    for (const { parameter } of this.#source.effectiveParameters(region)) this.#leftOut.add(parameter);
  }

  differs(parameter: number, name: string, value: string, there: string | undefined): void {
    if (this.#notes.has(parameter)) return;
    const isGone = there === undefined;
    const isNear = !isGone && isNearTo(name, value, there);
    const off = isGone ? '' : offBy(name, value, there);
    const end = isGone ? undefined : this.#endBetween(name, value, there);
    const message = isGone
      ? `${name}=${value} has no place in the template, so it is left out.`
      : isNear
        ? `${name}=${value} is written as ${there}, the nearest that the template's notation can say.${off}`
        : end
          ? `${name}=${value} is written as ${there}, because the scale there ends at ${end.written}.${off}`
          : `${name}=${value} cannot be written there, and the result says ${there}.${off || ' Check it.'}`;
    this.#notes.set(parameter, {
      kind: isNear ? 'approximated' : 'dropped',
      ...this.#source.parameterSpan(parameter),
      message,
    });
  }

  /** The end of the scale that a value lies above, where the result says that end. */
  #endBetween(name: string, value: string, there: string): ScaleEnd | undefined {
    const end = this.#notation.scaleEnd?.(name);
    const isAtEnd = end && isNearTo(name, decimalText(end.value), there) && numberOf(name, value) > end.value;
    return isAtEnd ? end : undefined;
  }

  /** Notes a value that stands in another one: a transposition in the tuning, an amplitude in the level. */
  merges(parameter: number, name: string, there: string | undefined): void {
    if (there === undefined) return;
    const source = this.#source;
    const said = `${source.names.text(source.name(parameter))}=${source.valueText(parameter)}`;
    const becomes =
      name === 'tune'
        ? `the tuning, which becomes ${there} cents`
        : `the level, which becomes ${decibels(there)} dB`;
    const message = `${said} is written in ${becomes}.`;
    this.#notes.set(parameter, { kind: 'approximated', ...source.parameterSpan(parameter), message });
  }

  finish(more: readonly ConversionNote[]): OutputAccount {
    const source = this.#source;
    let kept = 0;
    const notes: ConversionNote[] = [...more, ...this.#notes.values()];
    for (let header = 0; header < source.headers.count; header++) {
      for (let one = source.firstParameter(header); one < source.endParameter(header); one++) {
        if (this.#notes.has(one)) continue;
        if (this.#carried.has(one)) kept++;
        else if (takesEffect(source, one)) kept++;
        else if (!this.#leftOut.has(one)) notes.push(this.#unused(header, one));
      }
    }
    for (const { kind, source: file, start, end } of source.directives)
      if (kind === 'comment')
        notes.push({ kind: 'ignored', ...spanIn(file, start, end), message: commentNote });
    return { notes, kept };
  }

  #unused(header: number, parameter: number): ConversionNote {
    const source = this.#source;
    const name = source.names.text(source.name(parameter));
    const said = `${name}=${source.valueText(parameter)}`;
    const kind = source.kind(header);
    const isForRegions = kind >= HeaderKind.global && kind <= HeaderKind.region;
    const message = isForRegions
      ? `${said} has no effect in the source: no region gets it, or each sets its own.`
      : `${said} stands in <${source.headerName(header)}>, which the template has of its own, so it is left out.`;
    return { kind: isForRegions ? 'ignored' : 'dropped', ...source.parameterSpan(parameter), message };
  }
}

function decibels(level: string): number {
  return Math.round(Number(level) * 100) / 100;
}

const commentNote = 'A remark of the source is not taken into a template.';

/** Values that are in the paths and keys of all regions and so need no place of their own. */
function takesEffect(source: Instrument, parameter: number): boolean {
  const name = source.canonicalName(parameter);
  return (
    name === Parameter.default_path || name === Parameter.note_offset || name === Parameter.octave_offset
  );
}
