import type { Reference } from './references';
import { referencesOf } from './references';
import type { DocumentInContext } from './subject';
import { subjectAt } from './subject';

/** The places of a document that are about the same as the one at an offset. */
export function highlightsAt(context: DocumentInContext, offset: number): Reference[] {
  const at = subjectAt(context, offset);
  if (!at) return [];
  return referencesOf(context.instrument, at.subject).filter(({ source }) => source === context.source);
}
