import { conceptsOf } from '../words/tradeWords';
import { changed, groupsOf } from './besideColumns';
import type { Column } from './column';
import { isOctaveWord } from './unitNames';

/** Words for a key within its octave (from memory). */
const stepWords: ReadonlySet<string> = new Set(
  'step note semitone key pitch tone class degree chroma letter name schritt stufe ton halbton taste pas demiton touche nota tasto tecla paso semitono grado passo trap toon toets noot steg tonart krok nuta klawisz'.split(
    ' ',
  ),
);
const tuningConcepts: ReadonlySet<string> = new Set(['tune', 'cents', 'fine', 'coarse']);
/** A key within its octave: the name of a note without a number, or one of twelve numbers. */
const withinOctave = /^\s*(?:[A-Ha-h](?:#|b|\u266f|\u266d|is|es|s)?|\d|1[0-2])\s*$/u;

/**
 * Without places that hold a key within its octave where another one beside it holds the octave, as in `<low octave="3" step="7"/>`: by
 * itself it is no key, and all of its keys would lie too low. They are told of as what is not read.
 */
export function withoutPartsOfKeys(columns: readonly Column[]): readonly Column[] {
  const changes = new Map<Column, Column[]>();
  for (const group of groupsOf(columns).values()) {
    if (group.some(isOfTuning)) continue;
    for (const octave of group.filter(holdsOctaves)) {
      const rest = octave.own.filter((word) => !isOctaveWord(word)).join(' ');
      const isWithin = ({ own }: Column) =>
        own.some((word) => stepWords.has(word)) &&
        own.filter((word) => !stepWords.has(word) || rest.split(' ').includes(word)).join(' ') === rest;
      for (const column of group)
        if (column !== octave && isWithin(column) && areAll(column, withinOctave)) changes.set(column, []);
    }
  }
  return changed(columns, changes);
}

/** A tuning may be told in octaves, semitones and cents, which add up. */
function isOfTuning({ own, around }: Column): boolean {
  const words = [...own, ...(around.at(-1) ?? [])];
  return words.some((word) => conceptsOf(word)?.concepts.some((one) => tuningConcepts.has(one)) === true);
}

function holdsOctaves(column: Column): boolean {
  return column.own.some(isOctaveWord) && areAll(column, /^\s*-?\d{1,2}\s*$/u);
}

function areAll({ cells }: Column, pattern: RegExp): boolean {
  return cells.some((cell) => cell) && cells.every((cell) => !cell || pattern.test(cell.text));
}
