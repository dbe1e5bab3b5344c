import { isAudioFileName } from '../../../model/fileNames';
import type { XmlElement, XmlElements } from './xmlElements';

/** Rows of cells in XML of any names, as spreadsheets are written. */
export interface XmlGrid {
  rows: readonly XmlElement[];
  /** The cells of a row in their order. */
  cellsOf: (row: XmlElement) => readonly XmlElement[];
  /** The attribute of cells that holds what stands in them; `undefined` where their text does. */
  value: string | undefined;
}

const fewestCells = 3;
const fewestRows = 2;
/** Two letters or more that tell cells apart are the names of their values: such elements are no cells. */
const namingWord = /^\p{L}{3,}/u;

/** The rows of cells in which audio files are named; `undefined` where elements are something else. */
export function xmlGrid(text: string, { all }: XmlElements): XmlGrid | undefined {
  const places = new Map<string, { cells: XmlElement[]; value: string | undefined }>();
  for (const element of all) {
    const value = valuePlace(text, element);
    if (value === false) continue;
    const cell = cellAround(element);
    if (!cell?.parent) continue;
    const id = `${cell.name} ${cell.parent.name} ${value ?? ''}`;
    const place = places.get(id) ?? { cells: [], value };
    place.cells.push(cell);
    places.set(id, place);
  }
  const [best] = [...places.values()].sort((one, other) => other.cells.length - one.cells.length);
  if (!best || new Set(best.cells.map(({ parent }) => parent)).size < fewestRows) return undefined;
  const [{ name, parent: first }] = best.cells;
  if (!first) return undefined;
  const isRow = (one: XmlElement) =>
    one.name === first.name && one.children.some((child) => child.name === name);
  const heads = headsBefore(first, all.filter(isRow));
  const rows = all.filter((one) => isRow(one) || heads.includes(one));
  const cellsOf = (row: XmlElement) => row.children;
  if (rows.some((row) => row.children.some((child) => child.name !== name && !heads.includes(row))))
    return undefined;
  return areNamed(text, rows.filter(isRow)) ? undefined : { rows, cellsOf, value: best.value };
}

/** The attribute of an element that names an audio file; `undefined` where its own text does, `false` where nothing does. */
function valuePlace(text: string, { attributes, texts, children }: XmlElement): string | undefined | false {
  const [only] = texts;
  if (children.length === 0 && texts.length === 1 && only)
    if (isAudioFileName(text.slice(only.start, only.end).trim())) return undefined;
  for (const [name, { start, end }] of attributes)
    if (attributes.size < fewestCells && isAudioFileName(text.slice(start, end).trim())) return name;
  return false;
}

/** The cell that an element stands in, or is itself: it has others of its name beside it. */
function cellAround(element: XmlElement): XmlElement | undefined {
  for (
    let at: XmlElement | undefined = element, depth = 0;
    at?.parent && depth < 3;
    at = at.parent, depth++
  ) {
    const { name, parent } = at;
    const alike = parent.children.filter((one) => one.name === name).length;
    if (alike >= fewestCells) return at;
    if (parent.children.length > 1) return undefined;
  }
  return undefined;
}

/** The rows of other names above the first one, in the same element or one beside it: they hold headings. */
function headsBefore(first: XmlElement, rows: readonly XmlElement[]): XmlElement[] {
  const { parent } = first;
  const isHead = (one: XmlElement) => {
    const [cell] = one.children;
    return (
      one.children.length >= fewestCells &&
      one.children.every(({ name, texts }) => name === cell?.name && texts.length <= 2)
    );
  };
  const near = [...(parent?.children ?? []), ...(parent?.parent?.children ?? [])];
  const before = near.filter(({ end }) => end <= (rows[0]?.start ?? 0));
  return before.flatMap((one) => (isHead(one) ? [one] : one.children.filter(isHead)));
}

/** Whether an attribute of cells names what stands in each, the same names in each row. */
function areNamed(text: string, rows: readonly XmlElement[]): boolean {
  const names = new Set(
    rows.flatMap(({ children }) => children.flatMap((one) => [...one.attributes.keys()])),
  );
  return [...names].some((name) => {
    const said = rows.map(({ children }) =>
      children.map(({ attributes }) => {
        const span = attributes.get(name);
        return span ? text.slice(span.start, span.end).trim() : '';
      }),
    );
    return said.every(
      (row) =>
        new Set(row).size === row.length && row.every((word) => namingWord.test(word)) && row.length > 1,
    );
  });
}
