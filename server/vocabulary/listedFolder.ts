import { isXmlName } from '../xml/scan/characters';
import { parsePlace } from './places';
import type { ListPlace } from './vocabulary';

/** A folder that the entry of a list names to which an element refers. */
export interface ListedFolder {
  /** The place that refers to the entry, seen from the element. */
  by: string;
  listed: ListPlace;
}

const written = /^\/\/([^/[\]=]+)\[([^[\]=]+)=current\(\)\/([^[\]=]+)\]\/(.+)$/s;

/** Takes a place of folders apart that goes by a reference, as `//stencil[@id=current()/@like]/@folder`; `undefined` for any other. */
export function parseListedFolder(place: string): ListedFolder | undefined {
  const [, element = '', key = '', by = '', at = ''] = written.exec(place) ?? [];
  if (!isXmlName(element) || ![key, by, at].every((one) => parsePlace(one))) return undefined;
  return { by, listed: { element, key, at } };
}

/** Writes such a place; the words are those of XPath 1.0 and of XSLT 1.0 (W3C Recommendations, 1999). */
export function writeListedFolder({ by, listed: { element, key, at } }: ListedFolder): string {
  return `//${element}[${key}=current()/${by}]/${at}`;
}
