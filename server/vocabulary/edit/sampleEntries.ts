import { replacing } from '../../model/editing/edits';
import type { TextEdit } from '../../model/finding';
import type { Instrument } from '../../model/instrument';
import type { Edited, EntrySample } from '../../model/notation';
import { commonFolder, joinPath, relativePath } from '../../model/paths';
import { mainSpan } from '../../model/text/span';
import { wholeLine } from '../../model/text/textLines';
import { writeSamplePath } from '../forms/samplePath';
import { sampleTexts } from '../read/usedSamples';
import type { SampleListPlace, ValueForm, Vocabulary } from '../vocabulary';
import { EntryCopy } from './entryCopy';
import { newKeys } from './entryKeys';
import type { ListEntry } from './listEntries';
import { listEntries, plainText } from './listEntries';
import { encodedFor } from './styleElement';
import type { StyledElement } from './styleTree';
import { elementTree } from './styleTree';

type ListedPath = Extract<ValueForm, { kind: 'path' }> & { list: SampleListPlace };

/**
 * The edits that put entries for samples into the list that regions of a text refer to, in the place of those that its example
 * regions alone refer to; see `SamplePlaces.relist`.
 */
export function relistSamples(
  instrument: Instrument,
  vocabulary: Vocabulary,
  examples: ReadonlySet<number>,
  samples: readonly EntrySample[],
): Edited {
  const form = listedPath(vocabulary);
  const text = instrument.sources[0]?.text ?? '';
  if (!form) return { edits: [], notes: [] };
  const { entries, others } = listEntries(text, elementTree(text), form.list);
  if (entries.length === 0) return { edits: [], notes: [] };
  const kept = keptEntries(instrument, text, form.list, entries, others, examples);
  const gone = entries.filter((one) => !kept.has(one));
  const example = gone[0] ?? entries[entries.length - 1];
  const there = new Set([...kept].map(({ path, folder }) => joinPath(folder?.value ?? '', path ?? '')));
  const { list: _, ...plain } = form;
  const missing = samples.flatMap((sample) => {
    const path = writeSamplePath(plain, sample.path);
    return path === undefined || there.has(joinPath('', path)) ? [] : [{ sample, path }];
  });
  const folder = newFolder(
    example,
    kept,
    missing.map(({ path }) => path),
  );
  const keys = keysFor(
    form.list,
    text,
    entries,
    kept,
    others,
    missing.map(({ path }) => path),
  );
  const copy = new EntryCopy(text, vocabulary, form.list, gone.length > 0 ? gone : [example], entries);
  const texts = missing.map(({ sample, path }, at) =>
    copy.text({
      key: keys[at],
      path: folder === undefined ? path : relativePath(folder, path),
      separator: form.separator ?? '/',
      values: sample.values,
    }),
  );
  const edits = entryEdits(text, gone, example, texts);
  if (folder !== undefined && example.folder && folder !== example.folder.value) {
    const { start, end, quote } = example.folder;
    edits.push(replacing(mainSpan(start, end), encodedFor(quote, folder)));
  }
  return { edits, notes: copy.notes(texts.length) };
}

function listedPath({ levels }: Vocabulary): ListedPath | undefined {
  for (const { parameters } of levels)
    for (const { form } of parameters)
      if (form.kind === 'path' && form.list) return { ...form, list: form.list };
  return undefined;
}

/** The entries that something else than an example region refers to; of keys that are positions all, where one is kept. */
function keptEntries(
  instrument: Instrument,
  text: string,
  list: SampleListPlace,
  entries: readonly ListEntry[],
  others: readonly StyledElement[],
  examples: ReadonlySet<number>,
): Set<ListEntry> {
  const isPosition = list.key.startsWith('#');
  const used = new Set(
    [...sampleTexts(instrument, (region) => !examples.has(region))].map((one) =>
      isPosition ? one : one.replace(/^#/, ''),
    ),
  );
  const exampleStarts = new Set([...examples].map((header) => instrument.headerSpan(header).start));
  const isInExample = (element: StyledElement): boolean => {
    for (let at: StyledElement | undefined = element; at; at = at.parent)
      if (exampleStarts.has(at.start)) return true;
    return false;
  };
  const keys = new Set(entries.map(({ key }) => key));
  // A number says nothing of what it refers to.
  for (const other of isPosition ? [] : others) {
    for (const { valueStart, valueEnd } of other.attributes) {
      const value = plainText(text, valueStart, valueEnd, true).replace(/^#/, '');
      if (keys.has(value) && !/^\d*$/.test(value) && !isInExample(other)) used.add(value);
    }
  }
  const kept = entries.filter(({ key }) => key !== undefined && used.has(key));
  return new Set(isPosition && kept.length > 0 ? entries : kept);
}

/** The folder that the element around new entries is to name; `undefined` where it names none. */
function newFolder(
  { folder }: ListEntry,
  kept: ReadonlySet<ListEntry>,
  paths: readonly string[],
): string | undefined {
  if (!folder) return undefined;
  const isShared = [...kept].some((one) => one.folder?.start === folder.start);
  return isShared ? folder.value : commonFolder(paths) || '.';
}

function keysFor(
  { key }: SampleListPlace,
  text: string,
  entries: readonly ListEntry[],
  kept: ReadonlySet<ListEntry>,
  others: readonly StyledElement[],
  paths: readonly string[],
): string[] {
  const known = entries.flatMap((one) =>
    one.key === undefined || one.path === undefined ? [] : [{ key: one.key, path: one.path }],
  );
  const taken = new Set([...kept].flatMap((one) => one.key ?? []));
  // Names of other things of the text, where none is that of an entry now.
  const named = key.startsWith('@')
    ? others.flatMap(({ attributes }) => attributes.filter(({ name }) => name === key.slice(1)))
    : [];
  const names = named.map(({ valueStart, valueEnd }) => plainText(text, valueStart, valueEnd, true));
  const own = new Set(known.map((one) => one.key));
  if (!names.some((name) => own.has(name))) for (const name of names) taken.add(name);
  return newKeys(known, paths, taken);
}

/** Puts new entries in the place of the first that goes, or behind the last one, and takes the others out. */
function entryEdits(
  text: string,
  gone: readonly ListEntry[],
  example: ListEntry,
  texts: readonly string[],
): TextEdit[] {
  const { element } = example;
  let lead = element.start;
  while (lead > 0 && /\s/.test(text[lead - 1])) lead--;
  const between = text.slice(lead, element.start);
  if (gone.length === 0)
    return texts.length === 0
      ? []
      : [replacing(mainSpan(element.end, element.end), between + texts.join(between))];
  const edits = [...emptied(gone, element)].map(({ start, end }) =>
    replacing(wholeLine(text, mainSpan(start, end)), ''),
  );
  const own = mainSpan(element.start, element.end);
  edits.unshift(
    texts.length === 0 ? replacing(wholeLine(text, own), '') : replacing(own, texts.join(between)),
  );
  return edits;
}

/** What goes with each entry: the element around it, where that holds nothing else and the new entries stand elsewhere. */
function emptied(gone: readonly ListEntry[], place: StyledElement): Set<StyledElement> {
  const going = new Set(gone.map((one) => one.element));
  const known = new Map<StyledElement, boolean>();
  const goesWhole = (holder: StyledElement) => {
    const isAround = holder.start <= place.start && place.end <= holder.end;
    return (
      holder.parent !== undefined &&
      !isAround &&
      holder.characters.length === 0 &&
      holder.children.every((child) => going.has(child))
    );
  };
  const whole = new Set<StyledElement>();
  for (const { element } of gone.slice(1)) {
    const { parent } = element;
    if (parent && !known.has(parent)) known.set(parent, goesWhole(parent));
    whole.add(parent && known.get(parent) ? parent : element);
  }
  return whole;
}
