import type { Directive } from '../../model/instrumentParts';
import type { Refactoring, SelectedDocument } from './refactoring';

/** Puts what an included file holds in the place of its include. */
export const inlineInclude: Refactoring = {
  id: 'inlineInclude',
  kind: 'refactor.inline',
  offer(selected) {
    const directive = includeAt(selected);
    return directive && `Put the text of "${directive.name}" here`;
  },
  make(selected) {
    const directive = includeAt(selected);
    if (!directive) return undefined;
    const { edits } = selected.notation.edit(selected.instrument, { kind: 'inline', directive });
    return edits.length > 0 ? { edits } : undefined;
  },
};

/** The include at the selection whose file could be read. */
function includeAt({ instrument, start, end }: SelectedDocument): Directive | undefined {
  return instrument.directives.find(
    (one) =>
      one.kind === 'include' &&
      one.source === 0 &&
      one.start <= end &&
      one.end >= start &&
      instrument.sources.some(({ path }, at) => at > 0 && path === one.value),
  );
}
