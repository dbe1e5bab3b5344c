import type { XmlElement } from './xmlElements';
import type { XmlGrid } from './xmlGrid';

/** What the number in an attribute of cells says. */
type Role = 'none' | 'rows' | 'moreRows' | 'columns' | 'moreColumns' | 'from0' | 'from1';

const roles: readonly Role[] = ['none', 'rows', 'moreRows', 'columns', 'moreColumns', 'from0', 'from1'];
const mostAttributes = 3;
const mostLooked = 200;
/** Parts of names that say so of rows, of columns and of positions (from memory). */
const words: Readonly<Record<string, RegExp>> = {
  rows: /row|zeil|lig|rig|fil|rij|rad|r[æe]kke|down|vert|wier|ř[áa]d|linh|строк/iu,
  columns: /col|spalt|kol|sloup|across|hor[iz]|breit|kolumn|столб/iu,
  positions:
    /^(?:c|col|column|spalte|kolumne|colonne?a?|columna|coluna|kolom|kolumn|kolonne|index|pos\p{L}*|nr|no|at|ref|r|n|adress?e?)$/iu,
};

/** A cell with the column that it stands in and how many rows and columns it covers. */
export interface PlacedCell {
  cell: XmlElement;
  column: number;
  rows: number;
  columns: number;
}

/** The rows of a grid with their cells in place: beside cells that reach down, over several columns, or where a number puts them. */
export function placedRows(text: string, { rows, cellsOf }: XmlGrid): PlacedCell[][] {
  const read = (cell: XmlElement, name: string) => {
    const span = cell.attributes.get(name);
    return span ? numberIn(text.slice(span.start, span.end).trim()) : undefined;
  };
  const looked = rows.slice(0, mostLooked);
  const names = [
    ...new Set(looked.flatMap((row) => cellsOf(row).flatMap((one) => [...one.attributes.keys()]))),
  ]
    .filter((name) => {
      const numbers = looked.flatMap((row) => cellsOf(row).map((cell) => read(cell, name)));
      return numbers.some((one) => one !== undefined && one > 0);
    })
    .slice(0, mostAttributes);
  const positions = new Map(
    names.flatMap((name): [string, Role][] => {
      const role = positionRole(looked.map((row) => cellsOf(row).map((cell) => read(cell, name))));
      return role ? [[name, role]] : [];
    }),
  );
  const scoreOf = (given: ReadonlyMap<string, Role>) => {
    const found = placed(looked, cellsOf, given, read);
    if (positions.size === 0) return evenness(found) + likelihood(given);
    const isHeld = [...positions].every(([name, role]) =>
      doStandThere(found, role, (cell) => read(cell, name)),
    );
    return isHeld ? evenness(found) + likelihood(given) - holesIn(found) * ofHole : -1;
  };
  let best: ReadonlyMap<string, Role> = positions;
  let most = scoreOf(best);
  for (const given of choices(names.filter((name) => !positions.has(name)))) {
    const all = new Map([...positions, ...given]);
    const score = scoreOf(all);
    if (score > most) [best, most] = [all, score];
  }
  return placed(rows, cellsOf, best, read);
}

/** A place that is left free counts for a little more than what a name says of rows or more rows. */
const ofHole = 0.06;

/** Whether each cell stands in the column that it says itself; those that reach down from above have said so there. */
function doStandThere(
  rows: readonly PlacedCell[][],
  role: Role,
  read: (cell: XmlElement) => number | undefined,
): boolean {
  const base = role === 'from1' ? 1 : 0;
  return rows.every((row) =>
    row.every(({ cell, column }) => {
      const said = read(cell);
      return said === undefined || said - base === column;
    }),
  );
}

/** How many places are left free in rows that have cells in at least half of theirs. */
function holesIn(rows: readonly PlacedCell[][]): number {
  const widths = rows.map((row) => row.reduce((sum, { columns }) => sum + columns, 0));
  const most = Math.max(0, ...widths);
  return widths.reduce((sum, width) => sum + (width * 2 >= most ? most - width : 0), 0);
}

/** What an attribute counts from whose numbers go up in each row, in one of them from cell to cell without a gap. */
function positionRole(rows: readonly (readonly (number | undefined)[])[]): Role | undefined {
  const doGoUp = rows.every((row) =>
    row.every((one, at) => one !== undefined && (at === 0 || one > (row[at - 1] ?? one))),
  );
  if (!doGoUp) return undefined;
  const doCount = (base: number) =>
    rows.some((row) => row.length > 1 && row.every((one, at) => one === base + at));
  return doCount(1) ? 'from1' : doCount(0) ? 'from0' : undefined;
}

/** A whole number, or the number of the column that letters stand for: `B` and `B7` are 2. */
function numberIn(text: string): number | undefined {
  if (/^\d{1,4}$/.test(text)) return Number(text);
  const letters = /^([A-Z]{1,2})\d{0,6}$/.exec(text)?.[1];
  if (letters === undefined) return undefined;
  return [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);
}

function choices(names: readonly string[]): Map<string, Role>[] {
  let all: Map<string, Role>[] = [new Map()];
  for (const name of names)
    all = all.flatMap((one) => roles.map((role) => new Map<string, Role>([...one, [name, role]])));
  return all;
}

/** A little for names that say what is assumed, less than a row that comes out even. */
function likelihood(given: ReadonlyMap<string, Role>): number {
  let sum = 0;
  for (const [name, role] of given) {
    const kind = /rows/i.test(role) ? 'rows' : /columns/i.test(role) ? 'columns' : 'positions';
    if (role === 'none') continue;
    sum += words[kind]?.test(name) ? 0.2 : -0.1;
    if (role.startsWith('more')) sum -= 0.05;
  }
  return sum;
}

/** How many rows are as wide as most are; none where cells lie on one another. */
function evenness(rows: readonly PlacedCell[][] | undefined): number {
  if (!rows) return -1;
  const widths = new Map<number, number>();
  for (const row of rows) {
    const last = row.at(-1);
    const width = last ? last.column + last.columns : 0;
    widths.set(width, (widths.get(width) ?? 0) + 1);
  }
  return Math.max(0, ...widths.values());
}

/** Cells in place as attributes with such roles say; those that reach down stand in each of their rows. */
function placed(
  rows: readonly XmlElement[],
  cellsOf: XmlGrid['cellsOf'],
  given: ReadonlyMap<string, Role>,
  read: (cell: XmlElement, name: string) => number | undefined,
): PlacedCell[][] {
  let reaching: PlacedCell[] = [];
  return rows.map((row) => {
    const found: PlacedCell[] = [];
    let column = 0;
    const take = () => {
      for (let above = at(reaching, column); above; above = at(reaching, column)) {
        found.push({ ...above, rows: above.rows - 1 });
        column += above.columns;
      }
    };
    for (const cell of cellsOf(row)) {
      take();
      const one = { cell, column, rows: 1, columns: 1 };
      for (const [name, role] of given) {
        const number = read(cell, name);
        if (number === undefined || role === 'none') continue;
        const count = Math.min(mostCovered, role.startsWith('more') ? number + 1 : number);
        if (/rows/i.test(role)) one.rows = Math.max(1, count);
        else if (/columns/i.test(role)) one.columns = Math.max(1, count);
        else one.column = Math.max(column, role === 'from1' ? number - 1 : number);
      }
      found.push(one);
      column = one.column + one.columns;
    }
    take();
    reaching = found.filter((one) => one.rows > 1);
    return found;
  });
}

const mostCovered = 500;

function at(reaching: readonly PlacedCell[], column: number): PlacedCell | undefined {
  return reaching.find((one) => one.column === column && one.rows > 1);
}
