import { unitOf } from '../../../trade/languages/cellWords';
import type { Unit } from '../../../trade/meaning';
import type { Cell } from '../elements/survey';
import { octaves } from '../words/meanings';
import { conceptsOf } from '../words/tradeWords';
import { changed, elementOf, holdsNumbers, lastSlash } from './besideColumns';
import type { Column } from './column';
import { isOctaveWord, isUnitName } from './unitNames';

/** Concepts of names by the units that they stand for. */
const unitConcepts: Readonly<Record<Unit, string | undefined>> = {
  dB: 'dB',
  centibels: 'centibels',
  percent: 'percent',
  linear: 'ratio',
  cents: 'cents',
  semitones: 'semis',
  frames: 'frames',
  s: 's',
  ms: 'ms',
  Hz: 'hertz',
  kHz: undefined,
};

/** The unit that a place beside others states, as a concept of names; `undefined` where it states none. */
export function statedUnit(cell: Cell): string | undefined {
  const text = cell.text.trim();
  if (isOctaveWord(text)) return octaves;
  // The sign for a hundredth of a dB; other letters in capitals stand for something else.
  if (text === 'mB' || /^millibels?$/i.test(text)) return 'millibels';
  const unit = unitOf(text);
  return unit && unitConcepts[unit];
}

/** Whether a place states units: all that stands there are units, or its name says so and some are. */
function statesUnits({ own, cells, at }: Column): boolean {
  const isUnit = (cell: Cell | undefined) => cell !== undefined && statedUnit(cell) !== undefined;
  if (isUnitName(own)) return cells.some(isUnit);
  // A letter may stand for much.
  return (
    at.includes('@') &&
    cells.some(isUnit) &&
    cells.every((cell) => !cell || (isUnit(cell) && cell.text.trim().length > 1))
  );
}

/** Numbers in child elements with the unit that stands beside them, which then tells elements of that name apart. */
export function withUnits(columns: readonly Column[]): readonly Column[] {
  const changes = new Map<Column, Column[]>();
  const byElement = new Map<string, Column[]>();
  for (const column of columns) {
    const path = column.at.includes('@') ? elementOf(column) : column.at;
    if (path === '' || path === '.') continue;
    const id = `${column.level} ${path}`;
    byElement.set(id, [...(byElement.get(id) ?? []), column]);
  }
  for (const group of byElement.values()) {
    const unit = group.find(statesUnits);
    if (!unit) continue;
    let isUsed = false;
    for (const column of group) {
      if (column === unit || !holdsNumbers(column) || isKeyBesideTuning(column, unit)) continue;
      const parts = partsByUnit(column, unit);
      if (!parts) continue;
      isUsed = true;
      changes.set(column, parts);
    }
    if (isUsed) changes.set(unit, []);
  }
  return changed(columns, changes);
}

const unitsOfTunings: ReadonlySet<string | undefined> = new Set(['cents', 'semis', octaves]);
const keyConcepts: ReadonlySet<string> = new Set(['key', 'root', 'midi', 'num', 'weak']);

/** Whether a place is a key by its name, which is counted in no unit of the tuning beside it. */
function isKeyBesideTuning({ own, at }: Column, { cells }: Column): boolean {
  const isOfKey = (word: string) => conceptsOf(word)?.concepts.every((one) => keyConcepts.has(one)) === true;
  const isTuning = (cell: Cell | undefined) => !cell || unitsOfTunings.has(statedUnit(cell));
  return at.includes('@') && own.length > 0 && own.every(isOfKey) && cells.every(isTuning);
}

/** A place once for each unit; `undefined` where a value has none. */
function partsByUnit(column: Column, unit: Column): Column[] | undefined {
  const name = unit.at.slice(lastSlash(unit.at) + 2);
  const parts = new Map<string, Column>();
  for (const [row, cell] of column.cells.entries()) {
    if (!cell) continue;
    const said = unit.cells[row];
    if (said && /["&<]/.test(said.text)) return undefined;
    // What is in a unit that nobody knows is not read, and told.
    if (said && statedUnit(said) === undefined) continue;
    let part = parts.get(said?.text ?? '');
    if (!part) {
      const isText = !column.at.includes('@');
      const path = isText ? column.at : elementOf(column);
      const behind = isText ? '' : column.at.slice(path.length);
      part = {
        ...column,
        ...(said && { at: `${path}[@${name}="${said.text}"]${behind}`, unit: statedUnit(said) }),
        cells: new Array(column.cells.length).fill(undefined),
      };
      parts.set(said?.text ?? '', part);
    }
    part.cells[row] = cell;
  }
  return [...parts.values()];
}
