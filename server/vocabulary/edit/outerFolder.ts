import { joinPath } from '../../model/paths';
import { decodeXmlAttribute, decodeXmlText } from '../../xml/scan/references';
import { readSamplePath } from '../forms/samplePath';
import { parseListedFolder } from '../listedFolder';
import type { NamedFolder } from '../nestedFolders';
import { nestedFolder } from '../nestedFolders';
import { folderPlaces, parsePlace } from '../places';
import { readEntries, readSampleList, referencesTo } from '../read/sampleList';
import type { ValueForm, Vocabulary } from '../vocabulary';
import type { StyledElement } from './styleTree';
import { elementTree, valueAt } from './styleTree';

/** The tree of the text that was asked about last. */
let last: { text: string; root: StyledElement } | undefined;

/**
 * The form of a path as it is at an offset of a text: with the folder that an element around it names, where the form says that
 * one does. Where the text is the key of an entry in a list of samples, the keys are words. Other forms are answered as they are.
 */
export function withOuterFolder(
  form: ValueForm,
  text: string,
  vocabulary: Vocabulary,
  offset: number,
): ValueForm {
  if (form.kind === 'path' && form.list) return listedForm(form, text);
  if (form.kind !== 'path' || form.under === undefined) return form;
  const { under, ...rest } = form;
  return { ...rest, folder: folderAround(form.folder, folderPlaces(under), text, vocabulary, offset) };
}

/** The folder that elements around an offset name in some places, each joined to the one before. */
export function folderAround(
  folder: string | undefined,
  places: readonly string[],
  text: string,
  vocabulary: Vocabulary,
  offset: number,
): string {
  return places
    .map((place) => outerFolder(text, vocabulary, place, offset))
    .filter((outer): outer is string => outer !== undefined)
    .reduce((path, outer) => joinPath(path, outer), folder ?? '');
}

type PathForm = Extract<ValueForm, { kind: 'path' }>;

/** By form, the text that was asked about last, since many regions of one text ask. */
const lastLists = new WeakMap<PathForm, { text: string; words: ValueForm }>();

function listedForm(form: PathForm, text: string): ValueForm {
  const known = lastLists.get(form);
  if (known?.text === text) return known.words;
  const words = newListedForm(form, text);
  lastLists.set(form, { text, words });
  return words;
}

function newListedForm(form: PathForm, text: string): ValueForm {
  const words: Record<string, string> = Object.create(null);
  const entries = [...(form.list ? readSampleList(text, form.list) : [])];
  // The first word of a path is written: with the sign of a fragment, where the text refers to entries so.
  const written = new Set(Array.from(text.matchAll(/["'>]\s*(#[^"'<>\s]+)/g), ([, reference]) => reference));
  const isFragment = ([key]: readonly [string, string]) => key.startsWith('#');
  const areFragments = entries.some((entry) => isFragment(entry) && written.has(entry[0]));
  for (const [key, path] of areFragments
    ? [...entries].sort((a, b) => Number(isFragment(b)) - Number(isFragment(a)))
    : entries)
    words[key] = readSamplePath(form, path);
  return { kind: 'words', words };
}

function outerFolder(
  text: string,
  vocabulary: Vocabulary,
  under: string,
  offset: number,
): string | undefined {
  const listed = parseListedFolder(under);
  const path = parsePlace(listed?.by ?? under);
  if (!path) return undefined;
  if (last?.text !== text) last = { text, root: elementTree(text) };
  const outer = new Set(vocabulary.levels.map(({ element }) => element));
  let innermost: StyledElement | undefined;
  for (let at: StyledElement | undefined = last.root; at; at = childAround(at, offset)) innermost = at;
  const around: NamedFolder[] = [];
  for (let at = innermost; at; at = at.parent) {
    const value = outer.has(at.name) ? valueAt(text, at, path) : undefined;
    if (!value) continue;
    const written = text.slice(value.start, value.end);
    const folder = value.attribute ? decodeXmlAttribute(written) : decodeXmlText(written);
    if (folder.trim() !== '') around.unshift({ element: at.name, folder: folder.trim() });
  }
  if (!listed) return nestedFolder(around);
  const entries = readEntries(text, listed.listed.element);
  const { key, at } = listed.listed;
  const named = around.at(-1)?.folder;
  const isNamed = (one: string | undefined) =>
    one !== undefined && named !== undefined && referencesTo(one, key).includes(named);
  return entries.find(({ values }) => isNamed(values.get(key)?.text))?.values.get(at)?.text;
}

function childAround({ children }: StyledElement, offset: number): StyledElement | undefined {
  let low = 0;
  let high = children.length - 1;
  while (low <= high) {
    const middle = (low + high) >> 1;
    const child = children[middle];
    if (offset < child.start) high = middle - 1;
    else if (offset >= child.end) low = middle + 1;
    else return child;
  }
  return undefined;
}
