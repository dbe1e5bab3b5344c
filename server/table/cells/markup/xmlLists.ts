import { isAudioFileName, namesAudioFileIn } from '../../../model/fileNames';
import { TableCells } from '../cells';
import type { TextSpan, XmlElement, XmlElements } from './xmlElements';

const fewestItems = 2;
const fewestLists = 3;
const mostItems = 2000;
const longestUnit = 20;
/** What stands between the items of a list, the surest first. */
const separators: readonly RegExp[] = [/[\r\n]+/g, /[;|]/g, /,(?=\s|\D)|,(?!\d{1,2}(?:\D|$))/g, /,/g, /\s+/g];

interface List {
  element: XmlElement;
  items: readonly TextSpan[];
}

/**
 * The cells of parallel lists: elements beside each other that each hold one value for each sample, of which one names the files. A
 * row for each sample; a list of another length is left out and told of. `undefined` where a text has no such lists.
 */
export function xmlLists(text: string, { all, comments }: XmlElements): TableCells | undefined {
  for (const element of all) {
    const files = filesIn(text, element);
    if (!files) continue;
    // Where files are named elsewhere too, this is no list of all.
    const elsewhere = [text.slice(0, element.start), text.slice(element.end)];
    if (!element.parent || elsewhere.some((one) => namesAudioFileIn(one))) return undefined;
    const count = files.length;
    const beside = element.parent.children.filter((one) => one.children.length === 0);
    const lists = beside.flatMap((one): List[] => {
      const items = one === element ? files : itemsOf(text, one, (found) => found.length === count);
      return items ? [{ element: one, items }] : [];
    });
    if (lists.length < fewestLists) return undefined;
    const others = all.filter(
      (one) => one.children.length === 0 && !lists.some((list) => list.element === one),
    );
    const isProse = (one: XmlElement) => /\p{L}{2,}\s+\p{L}{2,}/u.test(textOf(text, one));
    const cells = cellsOf(text, lists, files);
    cells.assumptions = [
      ...cells.assumptions,
      ...others
        .filter((one) => !isProse(one) && textOf(text, one).trim() !== '')
        .map((one) => leftOut(one, count)),
    ];
    cells.around = [
      ...comments.map(({ start, end }) => text.slice(start, end).trim()),
      ...others.filter(isProse).map((one) => textOf(text, one).trim()),
    ];
    return cells;
  }
  return undefined;
}

function cellsOf(text: string, lists: readonly List[], files: readonly TextSpan[]): TableCells {
  const cells = new TableCells(text);
  const [first] = lists;
  for (const { element } of lists) {
    const start = element.start + 1;
    const cell = cells.add(start, start + element.name.length);
    cells.rewritten.set(cell, headingOf(text, element));
  }
  cells.endRow();
  for (const row of files.keys()) {
    for (const { items } of lists) {
      const { start, end } = items[row] as TextSpan;
      cells.put(start, end);
    }
    cells.endRow();
  }
  const head = { start: first?.element.start ?? 0, end: first?.element.start ?? 0 };
  cells.rowSpans = [head, ...files];
  return cells;
}

function leftOut({ name, start, end }: XmlElement, count: number): TableCells['assumptions'][number] {
  return {
    text: `<${name}> is left out: it does not hold one value for each of the ${count} samples.`,
    start,
    end,
  };
}

/** The name of a list as words, with the unit that an attribute gives: `detune (cents)`. */
function headingOf(text: string, { name, attributes }: XmlElement): string {
  const words = name
    .replace(/^.*:/, '')
    .replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2')
    .replace(/[_.-]+/g, ' ');
  const said = [...attributes.values()].map(({ start, end }) => text.slice(start, end).trim());
  const unit = said.find((one) => one !== '' && one.length <= longestUnit && !/^\d+$/.test(one));
  return unit === undefined ? words : `${words} (${unit})`;
}

function filesIn(text: string, element: XmlElement): readonly TextSpan[] | undefined {
  const areFiles = (items: readonly TextSpan[]) =>
    items.length >= fewestItems && items.every(({ start, end }) => isAudioFileName(text.slice(start, end)));
  return element.children.length > 0 ? undefined : itemsOf(text, element, areFiles);
}

/** The items of an element's text, parted in the first way that is accepted. */
function itemsOf(
  text: string,
  { texts, children }: XmlElement,
  accepts: (items: readonly TextSpan[]) => boolean,
): readonly TextSpan[] | undefined {
  const [only] = texts;
  if (children.length > 0 || texts.length !== 1 || !only) return undefined;
  for (const separator of separators) {
    const items = partsOf(text, only, separator);
    if (items.length <= mostItems && accepts(items)) return items;
  }
  return undefined;
}

function partsOf(text: string, { start, end }: TextSpan, separator: RegExp): TextSpan[] {
  const said = text.slice(start, end);
  const items: TextSpan[] = [];
  let from = 0;
  const add = (to: number) => {
    const part = said.slice(from, to);
    const lead = part.length - part.trimStart().length;
    const value = part.trim();
    if (value !== '') items.push({ start: start + from + lead, end: start + from + lead + value.length });
  };
  for (const found of said.matchAll(separator)) {
    add(found.index);
    from = found.index + found[0].length;
  }
  add(said.length);
  return items;
}

function textOf(text: string, { texts }: XmlElement): string {
  return texts.map(({ start, end }) => text.slice(start, end)).join(' ');
}
