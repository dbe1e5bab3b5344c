import { isAudioFileName } from '../../../model/fileNames';
import { readHeading } from '../../../trade/headings/headings';
import { unitOf } from '../../../trade/languages/cellWords';
import { readKeyRange } from '../../../trade/readings/keyReading';
import { triggerOf } from '../../../trade/readings/triggers';
import { meansShared } from '../../../trade/sharedWords';
import { turnStatement } from '../../../trade/statements/playing/turns';
import type { SharedValues } from './handedOn';
import { sharedInside, withoutOverridden } from './handedOn';
import type { LiteralField } from './literalField';
import type { LiteralEntry, LiteralList, LiteralMap, LiteralNode, LiteralValue } from './literalTree';

/** A zone of a literal: its values and where it stands. */
export interface LiteralRecord {
  fields: LiteralField[];
  start: number;
  end: number;
}

/** Words of keys that only hold others together. */
const holderWord =
  /^(?:zones?|regions?|samples?|files?|params?|parameters?|settings?|values?|data|map(?:ping)?|props?|properties|attributes?|rows)$/i;
/** The heading of places among zones that play in turn. */
const turnHeading = 'round robin';
/** Keys that name a part of an instrument. */
const nameWord = /^(?:name|label|title|group|layer|articulation|id)$/i;
/** Keys of folders that samples of a part lie in. */
const folderWord = /^(?:samples?|audio|files?|wavs?)?[ _-]?(?:dir|directory|folder|path|root|base)$/i;
/** No heading of a text: the folder that a part hands on. */
const folderHeading = '\0folder';
const unitKey = /^(?:units?|einheit|unit[\u00e9e\u00e0a]|unidad|unidade|eenheid|enhet)$/i;
const nothingWord = /^(?:null|nil|none|undefined|nan)$/i;
const mostFields = 200;

/** What a part of a literal hands on to the zones in it. */
interface Inherited {
  fields: readonly LiteralField[];
  /** Headings of values by their places. */
  headings: readonly LiteralValue[];
  isTop: boolean;
}

/** Finds the zones of a literal: the innermost maps and lists that name a sample; `around` are texts of what is not in them. */
export function literalRecords(top: LiteralMap): {
  records: LiteralRecord[];
  around: string[];
  shared: readonly SharedValues[];
} {
  const finder = new RecordFinder();
  finder.look(top, { fields: [], headings: [], isTop: true });
  headAlike(finder.records);
  return finder;
}

/** Puts samples that no key names under the heading of those that one does. */
function headAlike(records: readonly LiteralRecord[]): void {
  const fields = records.flatMap((record) => record.fields);
  const heading = fields.find(
    ({ key, heading, text }) => key && isAudioFileName(text) && isSampleKey(heading),
  )?.heading;
  if (heading === undefined) return;
  for (const { fields } of records) {
    if (fields.some((one) => one.heading === heading)) continue;
    const own = fields.find((one) => one.key === undefined && one.heading === 'sample');
    if (own) own.heading = heading;
  }
}

class RecordFinder {
  readonly records: LiteralRecord[] = [];
  readonly around: string[] = [];
  /** Values for all zones that stand apart from them. */
  readonly shared: SharedValues[] = [];

  /** Adds the zones in a node. */
  look(node: LiteralNode, inherited: Inherited): void {
    if (node.kind === 'value') return;
    if (!holdsRecords(node)) {
      if (namesSample(node)) this.#add(recordFields(node, inherited.headings), node, inherited.fields);
      return;
    }
    const inner = node.items.filter((item) => holdsRecords(item) || namesSample(item));
    const headings = headingsAmong(node) ?? inherited.headings;
    const isTop = inherited.isTop && node.kind === 'map' && inner.length < 2;
    const fields = node.kind === 'map' ? this.#handedOn(node, inherited) : inherited.fields;
    for (const item of node.items) this.look(item, { fields, headings, isTop: isTop && item.kind === 'map' });
    if (node.kind !== 'map') return;
    const parts = node.entries.filter(isPart);
    for (const part of parts)
      this.#lookAtPart(part, { fields, headings, isTop: inherited.isTop }, parts.length > 1);
  }

  /** What the values of a map beside its zones say of them; of the outermost map they are texts around too. */
  #handedOn(map: LiteralMap, { fields, isTop }: Inherited): LiteralField[] {
    const handed = [...fields, ...(isTop ? [] : nameFields(map))];
    // What stands in a map around one zone is the zone's own, whatever it is called.
    const isZone = !isTop && isAroundOneZone(map);
    for (const entry of map.entries) {
      if (isPart(entry)) continue;
      // `for f, root in zones: write(f, root, tune=cents)` is a program that uses them.
      if (isCallOfNames(entry.value)) continue;
      if (meansShared(entry.key.text) && entry.value.kind === 'map') {
        for (const inner of entry.value.entries) handed.push(...fieldsOf(inner, ''));
        continue;
      }
      const shared = sharedInside(entry.value);
      for (const { map: values } of shared)
        for (const inner of values.entries) handed.push(...fieldsOf(inner, ''));
      if (shared.length > 0) this.shared.push(...shared);
      if (!isTop && namesFolder(entry)) {
        handed.push({ ...fieldFrom('', undefined, entry.value), heading: folderHeading });
        continue;
      }
      if (isTop) this.around.push(sentenceOf(entry));
      for (const field of fieldsOf(entry, '')) {
        const meaning = readHeading(field.heading)?.meaning;
        const isTelling =
          meaning === undefined
            ? triggerOf(field.text) !== undefined || (!isTop && (isZone || isPairOfNumbers(entry.value)))
            : !namingMeanings.has(meaning);
        if (isTelling && field.text !== '') handed.push(field);
      }
    }
    return handed;
  }

  /** A part under a key, which may be a file, a key of the keyboard, or the name of a group. */
  #lookAtPart({ key, value }: LiteralEntry, inherited: Inherited, hasSiblings: boolean): void {
    const { text, start, end } = key;
    const own = (heading: string): LiteralField => ({ heading, key: undefined, text, start, end });
    const { fields } = inherited;
    if (isAudioFileName(text)) {
      const values = value.kind === 'value' ? [fieldFrom('key', undefined, value)] : recordFields(value, []);
      this.#add([own('sample'), ...values], { start, end: value.end }, fields);
      return;
    }
    if (value.kind === 'list' && value.items.length > 1 && playsInTurn(text)) {
      this.#addTurns(value, inherited);
      return;
    }
    const isKey = readKeyRange(text) !== undefined;
    if (value.kind === 'value') {
      if (isKey)
        this.#add([own('key'), fieldFrom('sample', undefined, value)], { start, end: value.end }, fields);
      return;
    }
    const isGroup = hasSiblings && !isKey && !holderWord.test(text);
    const more = isKey ? [own('key')] : isGroup ? [own('group')] : [];
    const isTop = inherited.isTop && more.length === 0 && value.kind === 'map';
    this.look(value, { ...inherited, fields: [...fields, ...more], isTop });
  }

  /** Zones that play in turn, in the order of their list. */
  #addTurns({ items }: LiteralList, inherited: Inherited): void {
    for (const [at, item] of items.entries()) {
      const { start, end } = item;
      const position = String(at + 1);
      const turn = { heading: turnHeading, key: undefined, text: position, start, end };
      const fields = [...inherited.fields, turn];
      if (item.kind === 'value')
        this.#add([{ heading: 'sample', key: undefined, text: item.text, start, end }], item, fields);
      else this.look(item, { ...inherited, fields, isTop: false });
    }
  }

  #add(
    own: LiteralField[],
    { start, end }: { start: number; end: number },
    handed: readonly LiteralField[],
  ): void {
    const others = withoutOverridden(own, handed).filter(({ heading }) => heading !== folderHeading);
    const folder = handed.findLast(({ heading }) => heading === folderHeading)?.text;
    const placed = folder === undefined ? own : own.map((field) => inFolder(field, folder));
    this.records.push({ fields: [...placed, ...others].slice(0, mostFields), start, end });
  }
}

/** Whether a map holds one zone in a map under one of its keys, and its other values beside that. */
function isAroundOneZone(map: LiteralMap): boolean {
  if (map.items.some((item) => holdsRecords(item) || namesSample(item))) return false;
  const parts = map.entries.filter(isPart);
  const inner = parts.length === 1 ? parts[0].value : undefined;
  if (inner?.kind !== 'map') return false;
  return holdsRecords(inner) ? isAroundOneZone(inner) : namesSample(inner);
}

/** Whether a node is two numbers, in a list or under keys, as ends of a range are. */
function isPairOfNumbers(node: LiteralNode): boolean {
  if (node.kind === 'value') return /^\s*\d+\s*(?:[-:\u2013]|\.{2,3})\s*\d+\s*$/.test(node.text);
  const values = [...node.items, ...(node.kind === 'map' ? node.entries.map(({ value }) => value) : [])];
  return (
    values.length === 2 && values.every((one) => one.kind === 'value' && /^\d+(?:\.\d+)?$/.test(one.text))
  );
}

/** A sample without a folder in the one that its part names. */
function inFolder(field: LiteralField, folder: string): LiteralField {
  if (!isAudioFileName(field.text) || /[/\\]/.test(field.text)) return field;
  return { ...field, text: `${folder.replace(/[/\\]+$/, '')}/${field.text}` };
}

/** Meanings that a part does not hand on to its zones: they would name them, or say nothing of them. */
const namingMeanings: ReadonlySet<string> = new Set(['sample', 'group', 'comment', 'row_number']);

const holding = new WeakMap<LiteralNode, boolean>();

/** Whether some part of a node is a zone of its own. */
export function holdsRecords(node: LiteralNode): boolean {
  if (node.kind === 'value') return false;
  let holds = holding.get(node);
  if (holds === undefined) {
    const isSet = (one: LiteralNode) => namesSample(one) || holdsRecords(one);
    // A list that is one sample and a map of its values is one zone.
    const isOne = node.kind === 'list' && node.items.some(isSample) && !node.items.some(isSet);
    holds = !isOne && (node.items.some(isSet) || (node.kind === 'map' && node.entries.some(isPart)));
    holding.set(node, holds);
  }
  return holds;
}

/** Whether a function is called with names in place of values. */
function isCallOfNames(node: LiteralNode): boolean {
  if (node.kind === 'value' || node.name === '') return false;
  return node.items.some(
    (item) => item.kind === 'value' && !item.isQuoted && /^[\p{L}_]\w*$/u.test(item.text),
  );
}

/** Whether an entry gives a folder; a `root` is one only where it is no key. */
function namesFolder({ key, value }: LiteralEntry): boolean {
  return folderWord.test(key.text) && value.kind === 'value' && readKeyRange(value.text) === undefined;
}

/** Whether the name of a list says that what it holds plays in turn. */
function playsInTurn(name: string): boolean {
  const words = name.replaceAll('_', ' ');
  return readHeading(words)?.meaning === 'seq_position' || turnStatement([words]) !== undefined;
}

/** Whether an entry holds zones or is one: a file with its values, or a key with its file. */
function isPart({ key, value }: LiteralEntry): boolean {
  if (isAudioFileName(key.text)) return true;
  if (value.kind === 'value') return isSample(value) && readKeyRange(key.text) !== undefined;
  return holdsRecords(value) || namesSample(value);
}

/** Whether a node names a sample by itself: a file, or a text under a key for samples beside others. */
function namesSample(node: LiteralNode): boolean {
  if (node.kind === 'value') return false;
  if (node.items.some(isSample)) return true;
  if (node.kind === 'list') return false;
  return node.entries.some(
    ({ key, value }) =>
      value.kind === 'value' &&
      readKeyRange(key.text) === undefined &&
      (isSample(value) || (value.isQuoted && node.entries.length > 2 && isSampleKey(key.text))),
  );
}

function isSampleKey(text: string): boolean {
  return readHeading(text)?.meaning === 'sample' && !nameWord.test(text);
}

function isSample(node: LiteralNode): boolean {
  return node.kind === 'value' && isAudioFileName(node.text);
}

/** Headings that stand in a list of their own, before the zones or beside them. */
function headingsAmong(node: LiteralList | LiteralMap): LiteralValue[] | undefined {
  const beside = node.kind === 'map' ? node.entries.map(({ value }) => value) : [];
  for (const one of [...node.items.slice(0, 1), ...beside]) {
    if (one.kind !== 'list' || one.items.length < 2) continue;
    const values = one.items.flatMap((item) => (item.kind === 'value' ? [item] : []));
    const known = values.filter(({ text }) => readHeading(text)).length;
    // Names between bars are those that a program gives to values.
    if (values.some(({ text }) => text.includes('|'))) continue;
    if (values.length === one.items.length && known * 2 > values.length) return values;
  }
  return undefined;
}

/** The name of a part of an instrument, as a group. */
function nameFields(map: LiteralMap): LiteralField[] {
  const named = map.entries.find(({ key, value }) => nameWord.test(key.text) && value.kind === 'value');
  return named?.value.kind === 'value' ? [fieldFrom('group', undefined, named.value)] : [];
}

/** The values of a zone: those under keys, and those by their places. */
function recordFields(node: LiteralNode, headings: readonly LiteralValue[]): LiteralField[] {
  if (node.kind === 'value') return [];
  const fields: LiteralField[] = [];
  for (const [at, item] of node.items.entries()) {
    if (item.kind === 'map') fields.push(...recordFields(item, []));
    else fields.push(fieldFrom(headings[at]?.text ?? '', headings[at], item));
  }
  if (node.kind === 'map') for (const entry of node.entries) fields.push(...fieldsOf(entry, ''));
  return fields;
}

/** The values under a key: one, or those of a map with both keys as heading. */
export function fieldsOf({ key, value }: LiteralEntry, before: string): LiteralField[] {
  const outer = holderWord.test(before) ? '' : before;
  const heading = `${outer} ${key.text}`.trim();
  if (value.kind !== 'map') return [fieldFrom(heading, key, value)];
  const unit = value.entries.find(namesUnit);
  const fields = value.entries.flatMap((entry) => (entry === unit ? [] : fieldsOf(entry, heading)));
  const united = unit?.value.kind === 'value' ? unit.value.text : undefined;
  return fields
    .slice(0, mostFields)
    .map((field) =>
      united !== undefined && /^[-+]?[\d.,]+$/.test(field.text)
        ? { ...field, text: `${field.text} ${united}` }
        : field,
    );
}

/** Whether an entry gives the unit of the numbers beside it. */
function namesUnit({ key, value }: LiteralEntry): boolean {
  return unitKey.test(key.text) && value.kind === 'value' && unitOf(value.text) !== undefined;
}

/** A value under a heading. */
export function fieldFrom(heading: string, key: LiteralValue | undefined, value: LiteralNode): LiteralField {
  const field = { heading, key, text: textOf(value, heading), start: value.start, end: value.end };
  return value.kind === 'list' ? { ...field, items: value.items } : field;
}

/** A value as a cell gives it: of a list its values, of two as a range; nothing for what says that there is none. */
function textOf(node: LiteralNode, heading: string): string {
  if (node.kind === 'value') return !node.isQuoted && nothingWord.test(node.text) ? '' : node.text;
  if (node.kind === 'map') return '';
  const texts = node.items.map((item) => textOf(item, ''));
  const [first = '', second = ''] = texts;
  if (texts.length !== 2) return texts.join(', ');
  // In scripts the end of a range is behind its last number.
  if (node.name === 'range' && /^\d+$/.test(second)) return `${first}-${Number(second) - 1}`;
  return /loop/i.test(heading) ? `${first}/${second}` : `${first}-${second}`;
}

function sentenceOf({ key, value }: LiteralEntry): string {
  const words = key.text.replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2').replaceAll('_', ' ');
  return `${words}: ${textOf(value, '')}`;
}
