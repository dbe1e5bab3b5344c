import type { ReadDocument } from '../readDocument';
import { mainSource } from '../readDocument';
import type { CompletionOffer } from './completionOffer';
import { shapeBlanks, shapeInstrument, shapes } from './shapes';

/** Longer texts are not read once more for this. */
const longest = 300_000;

/**
 * Common arrangements of regions, written in the style of the document, in the place of the word between two offsets;
 * where a tag is begun with that word, its first sign goes too. None where something else stands on the line before.
 */
export function shapeOffers(document: ReadDocument, start: number, end: number): CompletionOffer[] {
  const { notation } = document;
  const { text, path } = mainSource(document);
  if (text.length > longest) return [];
  const from = text[start - 1] === '<' ? start - 1 : start;
  const before = /[^\r\n]*$/.exec(text.slice(0, from))?.[0] ?? '';
  if (before.trim() !== '') return [];
  // Without what is typed so far, which is no whole header yet.
  const bare = notation.read(text.slice(0, from) + text.slice(end), { path });
  return shapes.flatMap((shape): CompletionOffer[] => {
    const { edits } = notation.edit(bare, {
      kind: 'insert',
      offset: from,
      instrument: shapeInstrument(shape),
    });
    const [edit] = edits;
    // Elsewhere than at the cursor, or in several places, it cannot be offered.
    if (!edit || edits.length > 1 || edit.source !== 0 || edit.end !== from) return [];
    const taken = text.slice(edit.start, from);
    if (taken.trim() !== '') return [];
    const newText = edit.newText.startsWith(taken)
      ? edit.newText.slice(taken.length)
      : edit.newText.trimStart();
    return [
      {
        kind: 'shape',
        label: shape.name,
        start: from,
        end,
        insert: [newText, ''],
        blanks: shapeBlanks(shape, newText),
        detail: shape.about,
        filter: `${text.slice(from, start)}${shape.name}`,
        rank: 20,
      },
    ];
  });
}
