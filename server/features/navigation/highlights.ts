import type { SubjectReference } from './references';
import { referencesOf } from './references';
import type { DocumentInContext } from './subject';
import { subjectAt } from './subject';

/** Places that are answered at the most: those nearest to the cursor, since it asks at each of its moves. */
const most = 2000;

/** The places of a document that are about the same as the one at an offset, in order. */
export function highlightsAt(context: DocumentInContext, offset: number): SubjectReference[] {
  const at = subjectAt(context, offset);
  if (!at) return [];
  const places = referencesOf(context.instrument, at.subject).filter(
    ({ source }) => source === context.source,
  );
  if (places.length <= most) return places;
  const here = Math.max(
    0,
    places.findLastIndex(({ start }) => start <= offset),
  );
  const first = Math.max(0, Math.min(here - most / 2, places.length - most));
  return places.slice(first, first + most);
}
