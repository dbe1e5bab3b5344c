import type { Steps } from '../../../model/steps';
import type { XmlHandler } from '../../../xml/scan/handler';
import { scanXmlInSteps } from '../../../xml/scan/scan';
import { isAmongEffects, isForeignElement } from '../elements/foreignElement';
import { NamesByNumber } from '../elements/namesByNumber';
import type { RegionElement } from '../elements/regionElement';
import type { Selectors } from '../elements/selectors';
import type { Cell, ElementType, Survey } from '../elements/survey';
import { cellAt } from '../elements/survey';
import { nameWords } from '../words/nameWords';
import type { Column } from './column';
import { isUnitName } from './unitNames';

/** The regions that were looked at, spread over the document, and the places that hold something in them or around them. */
export interface Rows {
  count: number;
  columns: Column[];
  /** The first tag of each element of the chain. */
  tags: ({ start: number; end: number } | undefined)[];
}

const mostRows = 600;
const mostColumns = 3000;
const mostCellsInElement = 400;
const mostDepth = 48;

/** Goes through the document a second time, in steps, and keeps what stands in some regions and in the elements around them. */
export function* readRows(
  text: string,
  survey: Survey,
  region: RegionElement,
  selectors: Selectors,
): Steps<Rows> {
  const reader = new RowReader(text, survey, region, selectors);
  yield* scanXmlInSteps(text, reader);
  return reader.rows();
}

/** An element of the chain that is open or that a kept region stands in. */
interface Holder {
  level: number;
  around: Holder | undefined;
  cells: Map<string, Cell>;
  isKept: boolean;
}

interface Open {
  type: ElementType | undefined;
  holder: Holder | undefined;
  /** The path from the holder, with a slash at its end; empty for the holder itself. */
  path: string;
  hasOwnText: boolean;
}

class RowReader implements XmlHandler {
  readonly #text: string;
  readonly #root: ElementType | undefined;
  readonly #region: RegionElement;
  readonly #selectors: Selectors;
  readonly #levels: ReadonlyMap<string, number>;
  readonly #open: Open[] = [];
  readonly #kept: Holder[] = [];
  readonly #names = new Map<string, { own: readonly string[]; around: readonly (readonly string[])[] }>();
  readonly #tags: ({ start: number; end: number } | undefined)[];
  #regions = 0;
  #tooDeep = 0;
  #next: Open = { type: undefined, holder: undefined, path: '', hasOwnText: false };
  #attributes: { name: string; cell: Cell }[] = [];
  readonly #attributeNames: NamesByNumber;

  constructor(text: string, survey: Survey, region: RegionElement, selectors: Selectors) {
    this.#text = text;
    this.#attributeNames = new NamesByNumber(text);
    this.#root = survey.root;
    this.#region = region;
    this.#selectors = selectors;
    const others = region.also.map((name) => [name, region.chain.length - 1] as const);
    this.#levels = new Map([...region.chain.map((name, level) => [name, level] as const), ...others]);
    this.#tags = region.chain.map(() => undefined);
  }

  open(tagStart: number, nameStart: number, nameEnd: number): void {
    this.#attributes = [];
    const around = this.#open.at(-1);
    const name = this.#text.slice(nameStart, Math.min(nameEnd, nameStart + 200));
    const type = around
      ? around.type?.children.get(name)
      : this.#root?.name === name
        ? this.#root
        : undefined;
    const next: Open = { type, holder: around?.holder, path: '', hasOwnText: false };
    this.#next = next;
    if (!type || this.#open.length >= mostDepth) {
      next.type = undefined;
      return;
    }
    const level = this.#levels.get(name);
    const isRegion = this.#region.types.has(type);
    const isLevel =
      level !== undefined &&
      (isRegion || (level < this.#region.chain.length - 1 && around?.path === '') || !around);
    if (isLevel) {
      this.#tags[level] ??= { start: tagStart, end: nameEnd };
      const isKept = isRegion && this.#keeps(this.#regions++);
      next.holder = { level, around: around?.holder, cells: new Map(), isKept: isKept || !isRegion };
      if (isKept) this.#kept.push(next.holder);
    } else if (this.#isListed(type, around?.holder) || this.#isForeign(type, around)) next.type = undefined;
    else next.path = `${around?.path ?? ''}${name}/`;
  }

  /** Elements of a list beside the regions say nothing of all regions. */
  #isListed(type: ElementType, holder: Holder | undefined): boolean {
    const isOutside = holder !== undefined && holder.level < this.#region.chain.length - 1;
    return isOutside && type.mostInParent > 1 && !this.#selectors.has(type);
  }

  /** Effects, panels and their files say nothing of regions. */
  #isForeign(type: ElementType, around: Open | undefined): boolean {
    const holder = around?.holder;
    const isOutside = holder !== undefined && holder.level < this.#region.chain.length - 1;
    if (this.#selectors.has(type)) return false;
    return isForeignElement(type, isOutside) || (isOutside && around?.path !== '' && isAmongEffects(type));
  }

  /** All regions where they are few, else some at irregular distances, so that no repeating pattern is missed. */
  #keeps(position: number): boolean {
    if (this.#kept.length >= mostRows * 2) return false;
    const { count } = this.#region;
    return count <= mostRows || (Math.imul(position, 2654435761) >>> 0) % count < mostRows;
  }

  attribute(
    attribute: number,
    nameStart: number,
    nameEnd: number,
    valueStart: number,
    valueEnd: number,
    _number: number,
    marks: number,
  ): void {
    if (!this.#next.type || !this.#next.holder?.isKept || this.#attributes.length >= mostCellsInElement)
      return;
    const name = this.#attributeNames.of(attribute, nameStart, nameEnd);
    this.#attributes.push({ name, cell: cellAt(this.#text, valueStart, valueEnd, false, marks) });
  }

  openEnd(_end: number, empty: boolean): void {
    const next = this.#next;
    this.#place(next);
    if (empty) return;
    if (this.#open.length >= mostDepth) this.#tooDeep++;
    else this.#open.push(next);
  }

  #place(next: Open): void {
    const { type, holder } = next;
    if (!type || !holder?.isKept) return;
    const naming = next.path === '' ? undefined : this.#selectors.get(type);
    const chosen = naming === undefined ? undefined : this.#attributes.find(({ name }) => name === naming);
    if (chosen && !/["&<]/.test(chosen.cell.text)) {
      const base = next.path.slice(0, -1);
      next.path = `${base}[@${naming}="${chosen.cell.text}"]/`;
      const own = nameWords(chosen.cell.text);
      const around = wordsAround(base).slice(0, -1);
      this.#names.set(next.path.slice(0, -1), { own, around });
      // One value beside the name is what the name says; of several, each has a name of its own within it.
      const isAlone = this.#attributes.filter(({ name }) => !isUnitName(nameWords(name))).length === 2;
      for (const { name, cell } of this.#attributes) {
        if (name === naming) continue;
        const isUnit = isUnitName(nameWords(name));
        const words =
          isAlone && !isUnit ? { own, around } : { own: nameWords(name), around: [...around, own] };
        this.#keep(holder, `${next.path}@${name}`, cell, () => words);
      }
      return;
    }
    for (const { name, cell } of this.#attributes) {
      this.#keep(holder, `${next.path}@${name}`, cell, () => ({
        own: nameWords(name),
        around: wordsAround(next.path.slice(0, -1)),
      }));
    }
  }

  #keep(
    holder: Holder,
    at: string,
    cell: Cell,
    names: () => { own: readonly string[]; around: readonly (readonly string[])[] },
  ): void {
    if (holder.cells.size >= mostCellsInElement && !holder.cells.has(at)) return;
    if (cell.text.trim() === '') return;
    holder.cells.set(at, cell);
    if (!this.#names.has(at)) {
      if (this.#names.size >= mostColumns) return;
      this.#names.set(at, names());
    }
  }

  close(): void {
    if (this.#tooDeep > 0) this.#tooDeep--;
    else this.#open.pop();
  }

  characters(start: number, end: number): void {
    const open = this.#tooDeep > 0 ? undefined : this.#open.at(-1);
    if (!open?.type || !open.holder?.isKept || open.hasOwnText) return;
    open.hasOwnText = true;
    const cell = cellAt(this.#text, start, end, true);
    const path = open.path.slice(0, -1);
    if (path === '') {
      this.#keep(open.holder, '.', cell, () => ({ own: nameWords(open.type?.name ?? ''), around: [] }));
      return;
    }
    this.#keep(open.holder, path, cell, () => {
      const words = wordsAround(path);
      return { own: words.at(-1) ?? [], around: words.slice(0, -1) };
    });
  }

  comment(): void {}
  instruction(): void {}
  doctype(): void {}
  problem(): void {}

  /** What was found, as columns; what no kept region sees is left out. */
  rows(): Rows {
    const columns = new Map<string, Column>();
    const count = this.#kept.length;
    for (const [row, region] of this.#kept.entries()) {
      for (let holder: Holder | undefined = region; holder; holder = holder.around) {
        for (const [at, cell] of holder.cells) {
          const id = `${holder.level} ${at}`;
          let column = columns.get(id);
          if (!column) {
            const names = this.#names.get(at);
            if (!names || columns.size >= mostColumns) continue;
            column = { level: holder.level, at, ...names, cells: new Array(count).fill(undefined) };
            columns.set(id, column);
          }
          if (column.cells[row] === undefined) column.cells[row] = cell;
          else column.repeats = true;
        }
      }
    }
    return { count, columns: [...columns.values()], tags: this.#tags };
  }
}

/** The words of each element of a path. */
function wordsAround(path: string): string[][] {
  if (path === '') return [];
  return path.split('/').map((name) => nameWords(name.replace(/\[.*$/, '')));
}
