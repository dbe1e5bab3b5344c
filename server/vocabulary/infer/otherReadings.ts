import { listText } from '../../model/wording/listText';

/** The label of the choice that leaves a place out, which says nothing of what it could be. */
export const noneOfThese = 'it is none of these';

/** What else a decision could be, as sentences: ` It could also be percent.` and ` Or C3 is key 60.`; empty where nothing is left to say. */
export function otherReadings(labels: readonly string[]): string {
  const said = labels.filter((label) => label !== noneOfThese);
  const isClause = (label: string) => /^it\s|\s(?:is|are)\s/.test(label);
  const things = said.filter((label) => !isClause(label));
  const clauses = said.filter(isClause);
  const could = things.length > 0 ? ` It could also be ${listText(things, 'or')}.` : '';
  return clauses.length > 0 ? `${could} Or ${listText(clauses, 'or')}.` : could;
}
