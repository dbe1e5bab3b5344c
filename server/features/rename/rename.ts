import { firstDifference, readEdited } from '../../model/editing/changedInstrument';
import type { Instrument } from '../../model/instrument';
import type { Notation } from '../../model/notation';
import { Parameter } from '../../model/parameterNames';
import { joinPath, nameOf } from '../../model/paths';
import type { Source } from '../../model/text/source';
import type { VariablePlace } from '../../model/variables/variableUses';
import { variablePlaces } from '../../model/variables/variableUses';
import type { EditedFile } from '../fileEdits';
import { FileEdits } from '../fileEdits';
import type { DocumentInContext } from '../navigation/subject';
import { isLabel, parameterInContext, samplePathOf, variableAt } from '../navigation/subject';
import { nameNumber } from '../readDocument';

/** What can be renamed at a place: its stretch of the document, and the name as it is now. */
export type Renaming = { start: number; end: number; name: string } & (
  | { kind: 'variable' }
  /** `opcode` is the canonical name; all labels of that opcode and text are one. */
  | { kind: 'label'; opcode: string }
  /** `path` leads to the sample file; absolute. */
  | { kind: 'sample'; path: string }
);

/** The edits of a renaming by file, or why it cannot be, as a sentence. */
export type Renamed = { files: EditedFile[]; refusal?: undefined } | { files?: undefined; refusal: string };

/** An instrument in which something is renamed. */
export interface InstrumentToRename {
  instrument: Instrument;
  notation: Notation;
  notationOf: NotationOf;
}

/** Which notation a file of an instrument is written in: an included one may have another than the main file. */
export type NotationOf = (source: Source) => Notation;

/** What the place at an offset of a document offers to rename; `undefined` where there is nothing. */
export function renamingAt(context: DocumentInContext, offset: number): Renaming | undefined {
  const { document, instrument, folder, source } = context;
  const variable = variableAt(instrument, source, offset);
  if (variable) {
    const { start, end } = nameOfVariable(instrument, variable);
    return { kind: 'variable', start, end, name: variable.name };
  }
  const place = document.notation.placeAt(document.instrument, offset);
  if (place.kind !== 'value' || place.parameter < 0) return undefined;
  const parameter = parameterInContext(context, place.parameter);
  if (parameter < 0) return undefined;
  const { start, end } = instrument.valueSpan(parameter);
  const opcode = instrument.canonicalName(parameter);
  const value = instrument.valueText(parameter);
  if (value === '' || start >= end) return undefined;
  const name = instrument.names.text(opcode);
  if (isLabel(name)) return { kind: 'label', start, end, name: value, opcode: name };
  if (opcode !== Parameter.sample || folder === undefined) return undefined;
  const path = samplePathOf(instrument, parameter);
  if (path === undefined) return undefined;
  const text = instrument.sources[source]?.text.slice(start, end) ?? '';
  const lastPart = Math.max(text.lastIndexOf('/'), text.lastIndexOf('\\')) + 1;
  return {
    kind: 'sample',
    start: start + lastPart,
    end,
    name: nameOf(path),
    path: joinPath(folder, path),
  };
}

/** The letters of a variable without the `$`, which a definition need not have. */
function nameOfVariable(instrument: Instrument, place: VariablePlace): VariablePlace {
  const text = instrument.sources[place.source]?.text ?? '';
  return text[place.start] === '$' ? { ...place, start: place.start + 1 } : place;
}

/**
 * The edits that give a variable another name in instruments that share files. Refused where the name is none, is
 * taken, or where something would mean another thing then: a use that begins with the new name, or one that the old
 * name left over.
 */
export function renameVariable(
  instruments: readonly InstrumentToRename[],
  name: string,
  typed: string,
): Renamed {
  const newName = typed.trim().replace(/^\$/, '');
  if (!/^[A-Za-z0-9_]+$/.test(newName))
    return { refusal: `"${typed}" cannot name a variable. Use letters, digits and "_".` };
  const edits = new FileEdits();
  if (newName === name) return { files: [] };
  for (const { instrument } of instruments) {
    for (const place of variablePlaces(instrument)) {
      if (place.name === newName) {
        const how = place.isDefined ? 'is defined already' : 'is used already';
        return { refusal: `$${newName} ${how} ${whereText(instrument, place)}. Choose another name.` };
      }
      if (place.name !== name) continue;
      const { source, start, end } = nameOfVariable(instrument, place);
      const file = instrument.sources[source];
      if (file.text.slice(start, end) !== name) {
        return {
          refusal: `$${name} is written in another way ${whereText(instrument, place)}, so it cannot be renamed there.`,
        };
      }
      edits.add(file, { start, end, newText: newName });
    }
  }
  for (const { notation, instrument } of instruments) {
    const before = variablePlaces(instrument);
    const after = readEdited(notation, instrument, edits.of(instrument));
    const places = variablePlaces(after);
    const changed = before.find((place, at) => {
      const now = places[at];
      const expected = place.name === name ? newName : place.name;
      return (
        now?.kind !== place.kind ||
        now.name !== expected ||
        now.rest !== place.rest ||
        now.isDefined !== place.isDefined
      );
    });
    if (changed) {
      return {
        refusal: `The name $${newName} would change what is meant ${whereText(instrument, changed)}. Choose another name.`,
      };
    }
    if (places.length !== before.length || firstDifference(instrument, after, () => false) >= 0)
      return { refusal: `The name $${newName} would change the instrument. Choose another name.` };
  }
  return { files: edits.files };
}

/** The edits that give all labels of one opcode and text another text, in instruments that share files. */
export function renameLabel(
  instruments: readonly InstrumentToRename[],
  { opcode, name }: { opcode: string; name: string },
  typed: string,
): Renamed {
  const newName = typed.trim();
  if (newName === '') return { refusal: 'A label needs a text.' };
  const edits = new FileEdits();
  for (const { instrument, notationOf } of instruments) {
    for (const parameter of labels(instrument, opcode, name)) {
      const { source, start, end } = instrument.valueSpan(parameter);
      const file = instrument.sources[source];
      // A variable that stands for the whole opcode holds no label of its own.
      if (start < instrument.nameSpan(parameter).end) continue;
      const newText = notationOf(file).spelling.value(newName, { text: file.text, start });
      edits.add(file, { start, end, newText });
    }
  }
  for (const { instrument, notation } of instruments) {
    const meant = new Set(labels(instrument, opcode, name));
    const after = readEdited(notation, instrument, edits.of(instrument));
    const isRead =
      firstDifference(instrument, after, (parameter) => meant.has(parameter)) < 0 &&
      [...meant].every((parameter) => after.valueText(parameter) === newName);
    if (!isRead)
      return {
        refusal: `"${newName}" cannot be written as this label, because it would be read as something else. Choose another text.`,
      };
  }
  return { files: edits.files };
}

function labels(instrument: Instrument, opcode: string, text: string): number[] {
  const canonical = nameNumber(instrument, opcode);
  const found: number[] = [];
  for (let parameter = 0; parameter < instrument.parameters.count; parameter++) {
    if (instrument.canonicalName(parameter) === canonical && instrument.valueText(parameter) === text)
      found.push(parameter);
  }
  return found;
}

/** The paths of the files of an instrument in which a variable or label stands. */
function filesWith(instrument: Instrument, renaming: Renaming): Set<string> {
  const sources = new Set<number>();
  if (renaming.kind === 'variable') {
    for (const place of variablePlaces(instrument))
      if (place.name === renaming.name) sources.add(place.source);
  } else if (renaming.kind === 'label') {
    for (const parameter of labels(instrument, renaming.opcode, renaming.name))
      sources.add(instrument.parameterSource(parameter));
  }
  return new Set([...sources].map((source) => instrument.sources[source].path));
}

/** The instruments that have to change together with the first: those that share a file in which the name stands. */
export function changingTogether<Item extends { instrument: Instrument }>(
  first: Item,
  others: readonly Item[],
  renaming: Renaming,
): Item[] {
  const together = [first];
  const files = filesWith(first.instrument, renaming);
  const left = new Set(others);
  for (let grew = true; grew; ) {
    grew = false;
    for (const other of left) {
      if (!other.instrument.sources.some(({ path }) => files.has(path))) continue;
      left.delete(other);
      together.push(other);
      for (const path of filesWith(other.instrument, renaming)) files.add(path);
      grew = true;
    }
  }
  return together;
}

function whereText(instrument: Instrument, { source, start }: VariablePlace): string {
  const at = instrument.sources[source];
  const file = source === 0 || !at ? '' : ` of ${nameOf(at.path)}`;
  return `in line ${at?.positionAt(start).line ?? 1}${file}`;
}
