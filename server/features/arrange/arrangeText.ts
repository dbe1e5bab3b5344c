import type { Arrangement, GestureRefusal } from '../../gestures/arrangement';
import { readEdited } from '../../model/editing/changedInstrument';
import { joinEdits } from '../../model/editing/edits';
import type { TextEdit } from '../../model/finding';
import type { Instrument } from '../../model/instrument';
import type { Notation } from '../../model/notation';
import { HeaderEdits } from '../../model/style/headerEdits';
import { copyEdit } from './copyEdits';
import { isAsArranged } from './isAsArranged';
import { valuePlaces } from './valuePlaces';

/** An instrument as it stands in text. */
export interface TextToArrange {
  notation: Notation;
  instrument: Instrument;
}

/**
 * The text edits that make an arrangement, in the document's own style, or why there are none. What comes out is read again:
 * edits are answered only where all regions have the values that were wanted and nothing else has changed.
 */
export function arrangeText(
  text: TextToArrange,
  arrangement: Arrangement,
): { edits: TextEdit[] } | GestureRefusal {
  const { notation, instrument } = text;
  const known = [
    ...arrangement.values,
    ...arrangement.copies,
    ...arrangement.removed.map((header) => ({ header })),
  ];
  if (known.some(({ header }) => instrument.regionNumber(header) < 0))
    return { refusal: 'The text changed in the meantime, so nothing was written. Try again.' };
  const editor = new HeaderEdits(notation, instrument);
  const edits: TextEdit[] = [];
  // A copy inherits what its region does, so an outer value that both have has to stay.
  for (const [header, values] of valuePlaces(instrument, arrangement.values, arrangement.copies.length > 0))
    edits.push(...editor.values(header, values));
  for (const [header, values] of valuePlaces(instrument, arrangement.copies, true)) {
    const copy = copyEdit(instrument, header, editor.values(header, values));
    if (!copy) return { refusal: unwritable };
    edits.push(copy);
  }
  for (const header of arrangement.removed) edits.push(...editor.edit({ kind: 'removeHeader', header }));
  if (editor.refusal !== undefined) return { refusal: editor.refusal };
  const joined = joinEdits(edits);
  const before = notation.parameters ? readEdited(notation, instrument, []) : instrument;
  if (!isAsArranged(before, readEdited(notation, instrument, joined), arrangement))
    return { refusal: unwritable };
  return { edits: joined };
}

const unwritable =
  'This would change something else as well, so the text was left as it is. Make the change in the text.';
