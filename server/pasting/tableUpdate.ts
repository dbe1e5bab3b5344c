import { joinEdits } from '../model/editing/edits';
import type { TextEdit } from '../model/finding';
import type { Instrument } from '../model/instrument';
import type { NewParameter, Notation } from '../model/notation';
import type { ConversionNote } from '../model/notes';
import { defaultNumberOf } from '../model/opcodes/values';
import { Parameter } from '../model/parameterNames';
import { joinPath, nameOf } from '../model/paths';
import type { Steps } from '../model/steps';
import { piecesInStep } from '../model/steps';
import { keyWritingOf } from '../model/style/keySpeller';
import { mainSpan } from '../model/text/span';
import { byCount, counted } from '../model/wording/counted';
import type { GroupedZones } from '../table/zones/groups/sharedValues';
import type { ValueName, ZoneList } from '../table/zones/zoneList';
import { valueNames, zoneValueText } from '../table/zones/zoneList';
import { isDefault, isKeyName } from './tableStyle';

/** A value of a zone, by its name in the open SFZ format. */
interface ZoneValue {
  name: ValueName;
  value: string;
}

/** A zone with all that it says, what its group says among it; `start` and `end` are its row in the text. */
interface ZoneRow {
  start: number;
  end: number;
  values: readonly ZoneValue[];
}

/** A row of a table and the region of a document that it is about. */
export interface MatchedZone {
  zone: ZoneRow;
  header: number;
}

/** A zone by its number, and what its group says for it. */
interface GroupMember {
  zone: number;
  shared: readonly ValueName[];
}

/** Rows of a table beside the regions of a document that play the same samples. */
export interface ZoneMatches {
  matched: MatchedZone[];
  /** Zones without a region, in their groups. */
  others: GroupedZones;
  /** Regions of the document's own text that no row is about, or could be. */
  gone: number[];
  notes: ConversionNote[];
}

/** So often at the most are the rows and regions of one sample compared; instruments have a few of each. */
const mostComparisons = 50_000;

/** After so many rows or comparisons a step ends: each looks at several values. */
const looksInStep = 1024;

/** What tells regions of one sample apart. */
const telling = ['lokey', 'hikey', 'lovel', 'hivel', 'seq_position', 'pitch_keycenter', 'trigger'] as const;

/**
 * Finds for each row of a table the region of a document with the same sample, by its path and else by its name. Where
 * several have it, keys, velocities and turns decide; where these leave it open, nothing is matched and a note says so.
 * `defaultPath` is what stands before the sample paths of the table.
 */
export function* matchZones(
  { zones, groups }: GroupedZones,
  document: Instrument,
  defaultPath: string,
): Steps<ZoneMatches> {
  const byPath = new Map<string, number[]>();
  const byName = new Map<string, number[]>();
  for (const [at, region] of document.regions.entries()) {
    if (at % piecesInStep === 0) yield (0.2 * at) / document.regions.length;
    const sample = document.samplePath(region);
    if (sample === undefined || sample.startsWith('*')) continue;
    const path = pathKey(sample);
    addTo(byPath, path, region);
    addTo(byName, nameOf(path), region);
  }
  const rows = yield* rowsOf({ zones, groups }, defaultPath);
  const matched: MatchedZone[] = [];
  const notes: ConversionNote[] = [];
  const done = new Set<number>();
  const asked = new Set<number>();
  let looks = 0;
  for (const [path, members] of rows) {
    const candidates = new Set(byPath.get(path) ?? byName.get(nameOf(path)) ?? []);
    if (candidates.size === 0) continue;
    const isOpen = () => {
      for (const one of candidates) asked.add(one);
    };
    if (candidates.size * members.length > mostComparisons) {
      for (const { zone } of members) done.add(zone);
      notes.push(openNote(zones.rowSpan(members[0].zone), path, candidates.size));
      isOpen();
      continue;
    }
    for (const member of members) {
      looks += candidates.size;
      if (looks >= looksInStep) {
        looks = 0;
        yield 0.4 + (0.6 * done.size) / zones.count;
      }
      const zone = rowOf(zones, member);
      const [best, ...alike] = likest(zone, candidates, document);
      if (best === undefined) continue;
      if (alike.length > 0 && candidates.size > members.length) {
        notes.push(openNote(zone, path, candidates.size));
        isOpen();
      } else {
        matched.push({ zone, header: best });
        candidates.delete(best);
      }
      done.add(member.zone);
    }
  }
  const others = groups.map((group) => ({ ...group, zones: group.zones.filter((zone) => !done.has(zone)) }));
  for (const { header } of matched) asked.add(header);
  const gone = [...byPath.values()].flat().filter((region) => !asked.has(region));
  return {
    matched,
    others: { zones, groups: others.filter((group) => group.zones.length > 0) },
    gone: gone.filter((region) => document.headerSource(region) === 0).sort((a, b) => a - b),
    notes,
  };
}

/** The zones of a table by the path of their sample. */
function* rowsOf({ zones, groups }: GroupedZones, defaultPath: string): Steps<Map<string, GroupMember[]>> {
  const rows = new Map<string, GroupMember[]>();
  let count = 0;
  for (const { shared, zones: members } of groups) {
    for (const zone of members) {
      if (++count % piecesInStep === 0) yield 0.2 + (0.2 * count) / zones.count;
      const sample = zones.sample(zone);
      addTo(rows, pathKey(sample.startsWith('*') ? sample : defaultPath + sample), { zone, shared });
    }
  }
  return rows;
}

/** What a zone says: first what its group says for it, then its own values in the order of its cells. */
function rowOf(zones: ZoneList, { zone, shared }: GroupMember): ZoneRow {
  const cellOf = (name: ValueName) => zones.values(name)?.cells[zone] ?? -1;
  const own = valueNames.filter((name) => zones.has(name, zone) && !shared.includes(name));
  own.sort((a, b) => cellOf(a) - cellOf(b));
  // Keys that nothing gives change no region that has its own.
  const isAssumed = (name: ValueName) =>
    zones.assumedKeys.has(zone) && (name === 'lokey' || name === 'hikey');
  const given = [...shared, ...own].filter((name) => !isAssumed(name));
  const values = given.map((name) => ({
    name,
    value: name === 'sample' ? zones.sample(zone) : zoneValueText(name, zones.column(name).numbers[zone]),
  }));
  return { ...zones.rowSpan(zone), values };
}

/** So many lines of regions are named in a note. */
const mostLines = 12;

/** What is said of regions that a table has no row for: that they stay, or are taken out. */
export function goneNote(document: Instrument, gone: readonly number[], isTakenOut: boolean): ConversionNote {
  const lines = gone.map((region) => {
    const { source, start } = document.headerSpan(region);
    return document.sources[source]?.positionAt(start).line;
  });
  const more = lines.length > mostLines ? ' …' : '';
  const where = `${byCount(gone.length, 'line', 'lines')} ${lines.slice(0, mostLines).join(', ')}${more}`;
  const what = isTakenOut
    ? byCount(gone.length, 'It is removed.', 'They are removed.')
    : byCount(gone.length, 'It stays as it is.', 'They stay as they are.');
  const message = `The table has no row for ${counted(gone.length, 'region')} of the document (${where}). ${what}`;
  return { kind: isTakenOut ? 'dropped' : 'ignored', ...mainSpan(0, 0), message };
}

function openNote({ start, end }: Omit<ZoneRow, 'values'>, path: string, count: number): ConversionNote {
  const message = `The document has ${count} regions with the sample "${nameOf(path)}", and the table does not say which one is meant. None of them is changed.`;
  return { kind: 'ignored', ...mainSpan(start, end), message };
}

function pathKey(path: string): string {
  return joinPath('', path).toLowerCase();
}

function addTo<Item>(map: Map<string, Item[]>, key: string, item: Item): void {
  const list = map.get(key);
  if (list) list.push(item);
  else map.set(key, [item]);
}

/** The candidates that agree with a row in most of what tells regions apart, in the order of the text. */
function likest(zone: ZoneRow, candidates: ReadonlySet<number>, document: Instrument): number[] {
  let most = -1;
  let best: number[] = [];
  for (const region of candidates) {
    const agreeing = telling.filter((name) => {
      const value = zone.values.findLast((one) => one.name === name || (one.name === 'key' && isKeyOf(name)));
      return value && !differs(document, region, Parameter[name], value.value, name);
    }).length;
    if (agreeing > most) {
      most = agreeing;
      best = [region];
    } else if (agreeing === most) best.push(region);
  }
  return best;
}

function isKeyOf(name: string): boolean {
  return name === 'lokey' || name === 'hikey' || name === 'pitch_keycenter';
}

/** Whether a region says something else than a value. */
function differs(document: Instrument, region: number, id: number, value: string, name: string): boolean {
  const parameter = document.effective(region, id);
  if (parameter < 0) {
    const facts = document.names.opcode(id)?.facts;
    const usual = facts && defaultNumberOf(facts);
    return !(isDefault(name, Number(value)) || (usual !== undefined && usual === Number(value)));
  }
  const number = document.keyNumber(parameter);
  if (!Number.isNaN(number) && value !== '' && !Number.isNaN(Number(value))) {
    const isSame = number === Number(value) || (isDefault(name, number) && isDefault(name, Number(value)));
    return !isSame;
  }
  return document.valueText(parameter).toLowerCase() !== value.toLowerCase();
}

/** How a document's regions are brought up to date with a table. */
export interface RegionUpdate {
  edits: TextEdit[];
  notes: ConversionNote[];
  /** Regions that change, and regions that say all of it already. */
  changed: number;
  unchanged: number;
}

/**
 * The edits that make regions say what the rows of a table say. Only what differs is written. `cleared` lists opcodes
 * that the table has a column for, so that a row without a value says the default; `isDoubtful` tells of rows in which
 * something could not be read.
 */
export function* updateRegions(
  notation: Notation,
  document: Instrument,
  matched: readonly MatchedZone[],
  cleared: readonly string[],
  isDoubtful: (zone: { start: number; end: number }) => boolean,
): Steps<RegionUpdate> {
  const writing = keyWritingOf(document);
  const update: RegionUpdate = { edits: [], notes: [], changed: 0, unchanged: 0 };
  for (const [at, { zone, header }] of matched.entries()) {
    if (at % looksInStep === 0) yield at / matched.length;
    const wanted = wantedValues(document, header, zone.values);
    if (!isDoubtful(zone)) {
      for (const name of cleared)
        if (!zone.values.some((one) => one.name === name)) wanted.push({ name, value: '0' });
    }
    const differing = wanted.filter(({ name, value }) =>
      differs(document, header, document.names.canonical(document.names.idOf(name)), value, name),
    );
    if (differing.length === 0) {
      update.unchanged++;
      continue;
    }
    if (document.headerSource(header) !== 0) {
      const file = document.sources[document.headerSource(header)]?.path ?? '';
      const message = `The region of this row is in the included file ${nameOf(file)}, so it is left as it is.`;
      update.notes.push({ kind: 'ignored', ...mainSpan(zone.start, zone.end), message });
      continue;
    }
    update.changed++;
    const spelt = differing.map(({ name, value }) => ({
      name,
      value: isKeyName(name) && value !== '' ? writing(Number(value)) : value,
    }));
    revise(notation, document, header, spelt, update);
  }
  return { ...update, edits: joinEdits(update.edits) };
}

/** What a region is to say; `key` stands for three values, unless the region has a `key` of its own. */
function wantedValues(document: Instrument, header: number, values: readonly ZoneValue[]): NewParameter[] {
  const hasKey = document.own(header, Parameter.key) >= 0;
  const wanted: NewParameter[] = [];
  for (const { name, value } of values) {
    if (name === 'sample') continue;
    if (name !== 'key' || hasKey) wanted.push({ name, value });
    else for (const one of ['lokey', 'hikey', 'pitch_keycenter']) wanted.push({ name: one, value });
  }
  return wanted;
}

function revise(
  notation: Notation,
  document: Instrument,
  header: number,
  values: readonly NewParameter[],
  update: RegionUpdate,
): void {
  const add: NewParameter[] = [];
  const remove: number[] = [];
  for (const { name, value } of values) {
    const id = document.names.canonical(document.names.idOf(name));
    const own = document.own(header, id);
    if (own >= 0 && document.parameterSource(own) === 0 && document.effective(header, id) === own) {
      const isNothing =
        isDefault(name, Number(value)) && value !== '' && document.effective(document.parent(header), id) < 0;
      if (isNothing && !isKeyName(name)) remove.push(own);
      else {
        const set = notation.edit(document, { kind: 'set', header, name, value });
        update.edits.push(...set.edits);
        update.notes.push(...set.notes);
      }
      continue;
    }
    // What a later opcode of the region overrides goes, and the value is written behind it.
    if (own >= 0 && document.parameterSource(own) === 0) remove.push(own);
    add.push({ name, value });
  }
  if (add.length === 0 && remove.length === 0) return;
  const revised = notation.edit(document, { kind: 'revise', header, remove, add });
  update.edits.push(...revised.edits);
  update.notes.push(...revised.notes);
}
