import { keepsRegions } from '../../model/editing/editReach';
import { joinEdits } from '../../model/editing/edits';
import type { Notation } from '../../model/notation';
import type { RefactorEdit, Refactoring, SelectedDocument } from './refactoring';

/**
 * A refactoring as it can be offered in notations that have a place only for some parameters: it is not made where a value
 * would be lost, nor where regions would sound different without its saying so. `needsAll` says that it is nothing for such a notation: it spells keys itself, or uses variables or includes.
 */
export function whereItFits(refactoring: Refactoring, needsAll: boolean): Refactoring {
  return {
    ...refactoring,
    offer(selected) {
      return needsAll && selected.notation.parameters ? undefined : refactoring.offer(selected);
    },
    async make(selected) {
      if (needsAll && selected.notation.parameters) return undefined;
      const { notation, isComplete } = watched(selected.notation);
      const made = await refactoring.make({ ...selected, notation });
      return made && isComplete() && isSound(refactoring, selected, made) ? made : undefined;
    },
  };
}

/** Whether a change keeps what it says it keeps; in a text with faults, what stands there may be read in another way then. */
function isSound(
  { keeps = 'all' }: Refactoring,
  { notation, instrument }: SelectedDocument,
  { edits, newFile }: RefactorEdit,
): boolean {
  return keepsRegions(
    notation,
    instrument,
    joinEdits(edits),
    keeps,
    newFile && { [newFile.path]: newFile.text },
  );
}

/** A notation that tells whether all changes could be made. */
function watched(notation: Notation): { notation: Notation; isComplete(): boolean } {
  let complete = true;
  return {
    notation: {
      ...notation,
      edit(instrument, change) {
        const edited = notation.edit(instrument, change);
        if (edited.notes.some(({ kind }) => kind === 'dropped')) complete = false;
        return edited;
      },
    },
    isComplete: () => complete,
  };
}
