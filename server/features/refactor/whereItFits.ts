import type { Notation } from '../../model/notation';
import type { Refactoring } from './refactoring';

/**
 * A refactoring as it can be offered in notations that have a place only for some parameters: it is not made where a value
 * would be lost. `needsAll` says that it is nothing for such a notation: it spells keys itself, or uses variables or includes.
 */
export function whereItFits(refactoring: Refactoring, needsAll: boolean): Refactoring {
  return {
    ...refactoring,
    offer(selected) {
      return needsAll && selected.notation.parameters ? undefined : refactoring.offer(selected);
    },
    async make(selected) {
      if (!selected.notation.parameters) return refactoring.make(selected);
      if (needsAll) return undefined;
      const { notation, isComplete } = watched(selected.notation);
      const made = await refactoring.make({ ...selected, notation });
      return isComplete() ? made : undefined;
    },
  };
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
