import { isAudioFileName } from '../../../model/fileNames';
import { dynamicIn } from '../../../trade/dynamics';
import { readHeading } from '../../../trade/headings/headings';
import { bareWord } from '../../../trade/languages/spelling';
import type { ColumnMeaning } from '../../../trade/meaning';
import { withoutOverridden } from './handedOn';
import type { LiteralField } from './literalField';
import type { LiteralRecord } from './literalRecords';
import { fieldFrom, fieldsOf, holdsRecords } from './literalRecords';
import type { LiteralEntry, LiteralMap, LiteralNode } from './literalTree';

/** More names than these are no few things that zones share. */
const mostNames = 100;
const mostDepth = 4;
const nameWord = /^(?:name|id|key|label|title)$/i;
const greatestVelocity = 127;
const keys: ReadonlySet<ColumnMeaning> = new Set(['lokey', 'hikey', 'key_range', 'key']);
const velocities: ReadonlySet<ColumnMeaning> = new Set(['lovel', 'hivel', 'velocity_range']);

/** Values by name that zones refer to: `VEL = {"p": (1, 50), "f": (51, 127)}`. */
interface LookUp {
  heading: string;
  /** By bare name. */
  values: ReadonlyMap<string, readonly LiteralField[]>;
}

/**
 * Gives zones what a dictionary beside them says of a name that they all use: velocities of layers, settings of groups. What a zone
 * says itself counts before that.
 */
export function useLookUps(top: LiteralMap, records: readonly LiteralRecord[]): void {
  const lookUps = lookUpsIn(top, 0).slice(0, 20);
  if (lookUps.length === 0) return;
  const headings = new Map<string, string[]>();
  for (const { fields } of records) {
    let place = 0;
    for (const { heading, text } of fields) {
      const name = heading === '' ? ` ${place++}` : heading;
      const texts = headings.get(name);
      if (texts) texts.push(text);
      else headings.set(name, [text]);
    }
  }
  for (const [heading, texts] of headings) {
    const names = texts.filter((text) => text !== '').map(nameOf);
    const lookUp = lookUps.find(({ values }) => names.every((name) => values.has(name)));
    if (!lookUp || names.length === 0) continue;
    if (new Set(names).size < 2 && bareWord(lookUp.heading) !== bareWord(heading)) continue;
    for (const record of records) giveTo(record, heading, lookUp);
  }
}

/** A name without what it stands in: `VEL.soft`. */
function nameOf(text: string): string {
  return bareWord(text.slice(text.lastIndexOf('.') + 1));
}

function giveTo({ fields }: LiteralRecord, heading: string, { values }: LookUp): void {
  let place = 0;
  const at = fields.findIndex((field) => (field.heading === '' ? ` ${place++}` : field.heading) === heading);
  const field = fields[at];
  const given = field && values.get(nameOf(field.text));
  if (!given) return;
  const [range] = given;
  if (heading.startsWith(' ')) {
    if (given.length === 1 && range) fields[at] = { ...range, heading: '' };
    return;
  }
  const meanings = new Set(fields.map((one) => readHeading(one.heading)?.meaning));
  for (const one of withoutOverridden(fields, given)) {
    const meaning = readHeading(one.heading)?.meaning;
    if (meaning === undefined || !meanings.has(meaning)) fields.push(one);
  }
}

function lookUpsIn(map: LiteralMap, depth: number): LookUp[] {
  const found: LookUp[] = [];
  for (const entry of map.entries) {
    const values = valuesOf(entry);
    if (values && values.size > 0) found.push({ heading: entry.key.text, values });
    else if (entry.value.kind === 'map' && depth < mostDepth)
      found.push(...lookUpsIn(entry.value, depth + 1));
  }
  for (const item of map.items)
    if (item.kind === 'map' && depth < mostDepth) found.push(...lookUpsIn(item, depth + 1));
  return found;
}

/** What a dictionary, or a list of things with names, gives by name; `undefined` for anything else. */
function valuesOf({ key, value }: LiteralEntry): Map<string, LiteralField[]> | undefined {
  const named = value.kind === 'map' && value.items.length === 0 ? value.entries : namedItems(value);
  if (named.length < 2 || named.length > mostNames) return undefined;
  // What holds the zones themselves hands its values on to them.
  if (named.some((one) => holdsRecords(one.value))) return undefined;
  const values = new Map<string, LiteralField[]>();
  const isLayered = areLayers(named);
  for (const one of named) {
    const fields = fieldsFor(key.text, one, isLayered);
    if (!fields || isAudioFileName(one.key.text)) return undefined;
    values.set(bareWord(one.key.text), fields);
  }
  return values;
}

function namedItems(node: LiteralNode): LiteralEntry[] {
  if (node.kind !== 'list') return [];
  const entries = node.items.flatMap((item) => {
    const name = item.kind === 'map' ? item.entries.find(({ key }) => nameWord.test(key.text)) : undefined;
    if (item.kind !== 'map' || name?.value.kind !== 'value') return [];
    return [{ key: name.value, value: { ...item, entries: item.entries.filter((one) => one !== name) } }];
  });
  return entries.length === node.items.length ? entries : [];
}

function fieldsFor(heading: string, { value }: LiteralEntry, isLayered: boolean): LiteralField[] | undefined {
  const said = readHeading(heading.replaceAll('_', ' '))?.meaning;
  const isOfKeys = said !== undefined && keys.has(said);
  if (value.kind === 'list') {
    if (value.items.length !== 2 || value.items.some((item) => item.kind !== 'value')) return undefined;
    const isOfVelocities = said !== undefined && velocities.has(said);
    if (!isOfKeys && !isOfVelocities && !isLayered) return undefined;
    return [fieldFrom(isOfKeys ? 'key range' : 'velocity range', undefined, value)];
  }
  if (value.kind === 'value') {
    const isKnown = said !== undefined && said !== 'group' && said !== 'sample' && said !== 'comment';
    return isKnown ? [fieldFrom(heading, undefined, value)] : undefined;
  }
  // Zones take values from the part that they are in; others are not theirs.
  if (holdsRecords(value)) return undefined;
  const fields = value.entries.flatMap((entry) => fieldsOf(entry, ''));
  if (fields.some(({ text }) => isAudioFileName(text))) return undefined;
  // `lo` and `hi` of layers are velocities.
  const meaningOf = (one: LiteralField) => readHeading(one.heading)?.meaning;
  if (isOfKeys || !fields.some((one) => keys.has(meaningOf(one) ?? 'unknown'))) return fields;
  return isLayered
    ? fields.map((one) =>
        keys.has(meaningOf(one) ?? 'unknown') ? { ...one, heading: `velocity ${one.heading}` } : one,
      )
    : fields;
}

/** Whether ranges under names share out the velocities without a hole, or the names are dynamics. */
function areLayers(named: readonly LiteralEntry[]): boolean {
  const ends = named.flatMap(({ value }) => {
    const parts =
      value.kind === 'list' ? value.items : value.kind === 'map' ? value.entries.map((one) => one.value) : [];
    const numbers = parts.flatMap((one) =>
      one.kind === 'value' && /^\d{1,3}$/.test(one.text) ? [Number(one.text)] : [],
    );
    const [low, high] = numbers;
    return low !== undefined && high !== undefined && low <= high ? [{ low, high }] : [];
  });
  if (ends.length < named.length) return false;
  if (named.every(({ key }) => dynamicIn(key.text) >= 0)) return true;
  const sorted = [...ends].sort((a, b) => a.low - b.low);
  const meet = sorted.every(({ low }, at) => (at === 0 ? low <= 1 : low === (sorted[at - 1]?.high ?? 0) + 1));
  return meet && sorted.at(-1)?.high === greatestVelocity;
}
