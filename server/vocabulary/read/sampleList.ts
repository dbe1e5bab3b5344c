import { joinPath } from '../../model/paths';
import type { Steps } from '../../model/steps';
import { finish } from '../../model/steps';
import { declaredEntities } from '../../xml/declaredEntities';
import type { XmlHandler } from '../../xml/scan/handler';
import { ValueMark } from '../../xml/scan/handler';
import { decodeXmlAttribute, decodeXmlText } from '../../xml/scan/references';
import { scanXmlInSteps } from '../../xml/scan/scan';
import { parseListedFolder } from '../listedFolder';
import { folderPlaces } from '../places';
import type { ListPlace, SampleListPlace, VocabularyParameter } from '../vocabulary';

/** What stands in a place of an entry, as XML means it and without white space around it. */
export interface EntryValue {
  text: string;
  start: number;
  end: number;
}

/** An entry of a list. */
export interface SampleListEntry {
  /** Its first tag. */
  start: number;
  end: number;
  /** By place: `@file`, `.` for its text, `file` and `file/@name` for those of an element in it. */
  values: ReadonlyMap<string, EntryValue>;
  /** The folder that an element around it names. */
  folder: string | undefined;
}

/** All elements of a name, with what stands in them; `under` says where elements around name a folder. */
export function readEntries(text: string, element: string, under?: string): SampleListEntry[] {
  return finish(readEntriesInSteps(text, element, under));
}

/** As {@link readEntries}, in steps. */
export function* readEntriesInSteps(text: string, element: string, under?: string): Steps<SampleListEntry[]> {
  const look = new EntryLook(text, element, under);
  yield* scanXmlInSteps(text, look);
  return look.entries;
}

/** What the entry refers to itself by: the text of a place, or, for `#0` and `#1`, its position counted from there. */
export function keyOfEntry({ values }: SampleListEntry, position: number, key: string): string | undefined {
  if (key.startsWith('#')) return String(position + Number(key.slice(1)));
  return values.get(key)?.text;
}

/**
 * The paths of a list of samples by what refers to them, as the text has them. The first entry of a key counts.
 */
export function readSampleList(text: string, list: SampleListPlace): ReadonlyMap<string, string> {
  return finish(readSampleListInSteps(text, list));
}

/** As {@link readSampleList}, in steps. */
export function* readSampleListInSteps(
  text: string,
  list: SampleListPlace,
): Steps<ReadonlyMap<string, string>> {
  return pathsOf(yield* readEntriesInSteps(text, list.element, list.under), list);
}

/** What stands in a place of the entries of a list, by their keys, in steps. */
export function* readListedInSteps(
  text: string,
  { element, key }: Pick<ListPlace, 'element' | 'key'>,
  at: string,
): Steps<ReadonlyMap<string, string>> {
  return valuesOf(yield* readEntriesInSteps(text, element), { element, key, at });
}

/** How texts refer to an entry: by its key, and, where that is no position, also with the sign of a fragment before it (RFC 3986), as `#s4`. */
export function referencesTo(name: string, key: string): string[] {
  return key.startsWith('#') ? [name] : [name, `#${name}`];
}

function pathsOf(
  entries: readonly SampleListEntry[],
  { key, path }: SampleListPlace,
): ReadonlyMap<string, string> {
  const paths = new Map<string, string>();
  for (const [position, entry] of entries.entries()) {
    const name = keyOfEntry(entry, position, key);
    const file = entry.values.get(path)?.text;
    if (!name || !file || paths.has(name)) continue;
    const { folder } = entry;
    const whole =
      folder === undefined ? file : joinPath(folder.replaceAll('\\', '/'), file.replaceAll('\\', '/'));
    for (const reference of referencesTo(name, key)) if (!paths.has(reference)) paths.set(reference, whole);
  }
  return paths;
}

function valuesOf(entries: readonly SampleListEntry[], { key, at }: ListPlace): ReadonlyMap<string, string> {
  const values = new Map<string, string>();
  for (const [position, entry] of entries.entries()) {
    const name = keyOfEntry(entry, position, key);
    const value = entry.values.get(at)?.text;
    if (!name || !value) continue;
    for (const reference of referencesTo(name, key)) if (!values.has(reference)) values.set(reference, value);
  }
  return values;
}

/** The attribute by which an element of a name says the folder of a list, such as `@folder`, or `dir/@name` for those named `dir` alone. */
export function folderAttribute(under: string | undefined, element: string): string | undefined {
  const [name, attribute] = under?.includes('/') ? under.split('/') : [element, under];
  return name === element ? attribute : undefined;
}

const mostEntries = 50_000;
const deepest = 2;

class EntryLook implements XmlHandler {
  readonly entries: SampleListEntry[] = [];
  readonly #text: string;
  readonly #element: string;
  readonly #under: string | undefined;
  #depth = 0;
  /** The entry that is open, the depth of its content, and the elements that are open in it. */
  #entry: (SampleListEntry & { values: Map<string, EntryValue> }) | undefined;
  #entryDepth = -1;
  #inside: string[] = [];
  /** The place of the tag that is being read, with a slash at its end; `undefined` outside of entries. */
  #place: string | undefined;
  /** The folder that each open element names, and the one whose tag is being read. */
  readonly #folders: (string | undefined)[] = [];
  #folder: string | undefined;
  /** The attribute that names a folder, where it does so in the tag that is being read. */
  #folderAttribute: string | undefined;

  constructor(text: string, element: string, under: string | undefined) {
    this.#text = text;
    this.#element = element;
    this.#under = under;
  }

  open(tagStart: number, nameStart: number, nameEnd: number): void {
    this.#folder = undefined;
    this.#place = undefined;
    this.#folderAttribute = folderAttribute(this.#under, this.#text.slice(nameStart, nameEnd));
    const element = this.#element;
    if (this.#entry) {
      this.#inside.push(this.#text.slice(nameStart, nameEnd));
      if (this.#inside.length <= deepest) this.#place = `${this.#inside.join('/')}/`;
      return;
    }
    const isEntry = element.length === nameEnd - nameStart && this.#text.startsWith(element, nameStart);
    if (!isEntry || this.entries.length >= mostEntries) return;
    this.#entry = { start: tagStart, end: nameEnd, values: new Map(), folder: undefined };
    this.#place = '';
  }

  attribute(
    _attribute: number,
    nameStart: number,
    nameEnd: number,
    valueStart: number,
    valueEnd: number,
    _number: number,
    marks: number,
  ): void {
    if (this.#place === undefined && this.#under === undefined) return;
    const name = `@${this.#text.slice(nameStart, nameEnd)}`;
    const raw = this.#text.slice(valueStart, valueEnd);
    const text = (
      marks & ValueMark.encoded ? decodeXmlAttribute(raw, declaredEntities(this.#text)) : raw
    ).trim();
    if (name === this.#folderAttribute && text !== '') this.#folder = text;
    if (this.#place !== undefined)
      this.#entry?.values.set(this.#place + name, { text, start: valueStart, end: valueEnd });
  }

  openEnd(end: number, empty: boolean): void {
    const entry = this.#entry;
    if (entry && this.#place === '') {
      entry.end = end;
      entry.folder = this.#folder ?? this.#folders.findLast((one) => one !== undefined);
      this.entries.push(entry);
      this.#entryDepth = this.#depth;
    }
    if (empty) this.#leave();
    else {
      this.#depth++;
      if (this.#under !== undefined) this.#folders.push(this.#folder);
    }
  }

  /** Leaves an element, the innermost in the entry or the entry itself. */
  #leave(): void {
    if (!this.#entry) return;
    if (this.#inside.length > 0) this.#inside.pop();
    else if (this.#depth <= this.#entryDepth) this.#entry = undefined;
  }

  close(): void {
    if (this.#depth > 0) this.#depth--;
    if (this.#under !== undefined) this.#folders.pop();
    this.#leave();
  }

  characters(start: number, end: number): void {
    const entry = this.#entry;
    if (!entry || this.#inside.length > deepest) return;
    const place = this.#inside.length === 0 ? '.' : this.#inside.join('/');
    const raw = this.#text.slice(start, end);
    const text = raw.startsWith('<![CDATA[')
      ? raw.slice(9, raw.endsWith(']]>') ? -3 : undefined).trim()
      : decodeXmlText(raw, undefined, declaredEntities(this.#text)).trim();
    const before = entry.values.get(place);
    if (text !== '')
      entry.values.set(place, before ? { ...before, text: before.text + text, end } : { text, start, end });
  }

  comment(): void {}
  instruction(): void {}
  doctype(): void {}
  problem(): void {}
}

/** The lists of a text, each read once. */
export class SampleLists {
  readonly #text: string;
  readonly #entries = new Map<string, readonly SampleListEntry[]>();
  readonly #known = new Map<SampleListPlace, ReadonlyMap<string, string>>();
  readonly #values = new Map<string, ReadonlyMap<string, string>>();

  constructor(text: string) {
    this.#text = text;
  }

  /** Reads the lists that targets refer to, in steps, so that none has to be read in between. */
  *readAll(targets: readonly Pick<VocabularyParameter, 'form' | 'listed'>[]): Steps<void> {
    for (const { form, listed } of targets) {
      if (listed) yield* this.#read(listed.element, undefined);
      const list = form.kind === 'path' ? form.list : undefined;
      if (list) yield* this.#read(list.element, list.under);
      if (list?.rate) yield* this.#read(list.element, undefined);
      const under = form.kind === 'path' && form.under ? folderPlaces(form.under) : [];
      for (const place of under) {
        const folder = parseListedFolder(place);
        if (folder) yield* this.#read(folder.listed.element, undefined);
      }
    }
  }

  *#read(element: string, under: string | undefined): Steps<readonly SampleListEntry[]> {
    const id = `${element} ${under ?? ''}`;
    const known = this.#entries.get(id);
    if (known) return known;
    const entries = yield* readEntriesInSteps(this.#text, element, under);
    this.#entries.set(id, entries);
    return entries;
  }

  #of(element: string, under: string | undefined): readonly SampleListEntry[] {
    return finish(this.#read(element, under));
  }

  /** What a place of a list holds, by the keys of its entries. */
  valuesOf(list: ListPlace): ReadonlyMap<string, string> {
    const id = `${list.element} ${list.key} ${list.at}`;
    let values = this.#values.get(id);
    if (!values) {
      values = valuesOf(this.#of(list.element, undefined), list);
      this.#values.set(id, values);
    }
    return values;
  }

  /** The sample rates that a list states, by the keys of its entries. */
  ratesOf({ element, key, rate = '' }: SampleListPlace): ReadonlyMap<string, string> {
    return this.valuesOf({ element, key, at: rate });
  }

  /** The paths of a list by the keys that name them. */
  of(place: SampleListPlace): ReadonlyMap<string, string> {
    let list = this.#known.get(place);
    if (!list) {
      list = pathsOf(this.#of(place.element, place.under), place);
      this.#known.set(place, list);
    }
    return list;
  }
}
