import { declaredEntities } from '../../xml/declaredEntities';
import { decodeXmlAttribute, decodeXmlText } from '../../xml/scan/references';
import { parsePlace } from '../places';
import { folderAttribute } from '../read/sampleList';
import type { SampleListPlace } from '../vocabulary';
import type { StyledElement } from './styleTree';
import { attributeOf, valueAt } from './styleTree';

/** An entry of a list of samples as it stands in a text. */
export interface ListEntry {
  element: StyledElement;
  /** What regions refer to; `undefined` for an entry without it. */
  key: string | undefined;
  /** The path as the entry gives it, without folders around. */
  path: string | undefined;
  /** The attribute around it, or its own, that names the folder of its path. */
  folder: FolderAttribute | undefined;
}

/** An attribute that names a folder. */
export interface FolderAttribute {
  element: StyledElement;
  quote: string;
  start: number;
  end: number;
  value: string;
}

/** The entries of a list in a text, and all elements that are none and stand in none. */
export function listEntries(
  text: string,
  root: StyledElement,
  { element, key, path, under }: SampleListPlace,
): { entries: ListEntry[]; others: StyledElement[] } {
  const entries: ListEntry[] = [];
  const others: StyledElement[] = [];
  const waiting = [...root.children].reverse();
  for (let at = waiting.pop(); at; at = waiting.pop()) {
    if (at.name === element) {
      const ownKey = key.startsWith('#')
        ? String(entries.length + Number(key.slice(1)))
        : textAt(text, at, key);
      entries.push({
        element: at,
        key: ownKey,
        path: textAt(text, at, path),
        folder: folderOf(text, at, under),
      });
      continue;
    }
    others.push(at);
    for (let child = at.children.length - 1; child >= 0; child--) waiting.push(at.children[child]);
  }
  return { entries, others };
}

/** The text that a stretch stands for, in an attribute or between tags. */
export function plainText(text: string, start: number, end: number, isAttribute: boolean): string {
  const raw = text.slice(start, end);
  if (isAttribute) return decodeXmlAttribute(raw, declaredEntities(text)).trim();
  if (raw.startsWith('<![CDATA[')) return raw.slice(9, raw.endsWith(']]>') ? -3 : undefined).trim();
  return decodeXmlText(raw, undefined, declaredEntities(text)).trim();
}

function textAt(text: string, element: StyledElement, place: string): string | undefined {
  const path = parsePlace(place);
  const found = path && valueAt(text, element, path);
  const value = found && plainText(text, found.start, found.end, found.attribute !== undefined);
  return value === '' ? undefined : value;
}

function folderOf(
  text: string,
  entry: StyledElement,
  under: string | undefined,
): FolderAttribute | undefined {
  if (under === undefined) return undefined;
  for (let at: StyledElement | undefined = entry; at; at = at.parent) {
    const attribute = folderAttribute(under, at.name);
    const found = attribute && attributeOf(at, attribute.slice(1));
    if (!found) continue;
    const { quote, valueStart: start, valueEnd: end } = found;
    const value = plainText(text, start, end, true);
    if (value !== '') return { element: at, quote, start, end, value };
  }
  return undefined;
}
