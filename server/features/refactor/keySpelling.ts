import { replacing } from '../../model/editing/edits';
import type { TextEdit } from '../../model/finding';
import type { Instrument } from '../../model/instrument';
import { keyOfNoteName, noteNameOf } from '../../model/keys';
import type { Refactoring, SelectedDocument } from './refactoring';

type Spelling = (instrument: Instrument, parameter: number) => string | undefined;

const asName: Spelling = (instrument, parameter) => {
  const key = instrument.number(parameter);
  return Number.isInteger(key) && key >= 0 && key <= 127 ? noteNameOf(key) : undefined;
};

const asNumber: Spelling = (instrument, parameter) => {
  const key = keyOfNoteName(instrument.valueText(parameter));
  return key === undefined ? undefined : String(key);
};

/** A key that can be written otherwise, in place. */
function newSpelling(instrument: Instrument, parameter: number, spell: Spelling): TextEdit | undefined {
  const { translated, values } = instrument.parameters;
  // A notation with forms of its own says itself how keys are written.
  if (instrument.parameterSource(parameter) !== 0 || translated || values.has(parameter)) return undefined;
  if (instrument.names.opcode(instrument.name(parameter))?.facts.kind !== 'key') return undefined;
  const newText = spell(instrument, parameter);
  return newText === undefined ? undefined : replacing(instrument.valueSpan(parameter), newText);
}

function* newSpellings({ instrument, start, end }: SelectedDocument, spell: Spelling): Generator<TextEdit> {
  const first = Math.max(0, instrument.parameterAt(0, start));
  const last = instrument.parameterAt(0, end);
  for (let parameter = first; parameter <= last; parameter++) {
    const edit = newSpelling(instrument, parameter, spell);
    if (edit && edit.start <= end && instrument.nameSpan(parameter).start <= end && edit.end >= start)
      yield edit;
  }
}

function firstOf(selected: SelectedDocument, spell: Spelling): TextEdit | undefined {
  for (const edit of newSpellings(selected, spell)) return edit;
  return undefined;
}

function whole(selected: SelectedDocument): SelectedDocument {
  return { ...selected, start: 0, end: selected.instrument.sources[0]?.text.length ?? 0 };
}

function inSelection(
  id: string,
  spell: Spelling,
  several: string,
  single: (edit: TextEdit) => string,
): Refactoring {
  return {
    id,
    kind: 'refactor.rewrite',
    offer(selected) {
      const edit = firstOf(selected, spell);
      if (!edit) return undefined;
      return selected.start === selected.end ? single(edit) : several;
    },
    make: (selected) => ({ edits: [...newSpellings(selected, spell)] }),
  };
}

function inDocument(id: string, spell: Spelling, title: string): Refactoring {
  return {
    id,
    kind: 'refactor.rewrite',
    // Offered at a key alone: to look for one in the whole document at each move of the cursor would cost time.
    offer: (selected) => (firstOf(selected, spell) ? title : undefined),
    make: (selected) => ({ edits: [...newSpellings(whole(selected), spell)] }),
  };
}

/** Numbers written as note names and the other way round, at the cursor, in a selection and everywhere. */
export const keySpellings: readonly Refactoring[] = [
  inSelection(
    'keysAsNames',
    asName,
    'Write key numbers as note names',
    ({ newText }) => `Write the key as ${newText}`,
  ),
  inDocument('allKeysAsNames', asName, 'Write all key numbers of the document as note names'),
  inSelection(
    'keysAsNumbers',
    asNumber,
    'Write note names as key numbers',
    ({ newText }) => `Write the key as ${newText}`,
  ),
  inDocument('allKeysAsNumbers', asNumber, 'Write all note names of the document as key numbers'),
];
