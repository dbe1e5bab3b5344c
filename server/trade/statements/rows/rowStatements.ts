import { endsOnRelease, saysOnRelease } from '../../readings/startInTitle';
import { triggerOf } from '../../readings/triggers';
import { turningWords } from '../../turningWords';
import { saysInTurn } from '../playing/turns';
import type { RowChoice } from './namedRows';
import { rowClausesIn } from './namedRows';

/** What a text says of rows that it names by their place. */
export interface RowStatement {
  says: 'release' | 'turns';
  rows: RowChoice;
  /** All rows that the clauses before it in the sentence name, for `the rest`. */
  before: readonly RowChoice[];
  text: string;
}

const negated = new RegExp(turningWords('not', 'none', 'without'), 'iu');
/** A time, and what else a release may be. */
const ofTime = /\d\s?(?:ms|s|sec\p{L}*)(?!\p{L})|(?<!\p{L})(?:long|short|slow|fast|quick)\p{L}* release/u;

/** Reads sentences such as `Rows 3 and 4 play on release, the rest normally` and `The last two take turns`. */
export function rowStatementsIn(texts: readonly string[]): RowStatement[] {
  const found: RowStatement[] = [];
  for (const text of texts) {
    const before: RowChoice[] = [];
    let sentence = '';
    for (const clause of rowClausesIn(text)) {
      if (clause.text !== sentence) before.length = 0;
      sentence = clause.text;
      const says = saidOf(clause.says);
      const isKnown = found.some((one) => one.text === clause.text && one.says === says);
      if (says && !(isKnown && before.length === 0))
        found.push({ says, rows: clause.rows, before: [...before], text: clause.text });
      before.push(clause.rows);
    }
  }
  return found;
}

function saidOf(clause: string): RowStatement['says'] | undefined {
  if (negated.test(clause)) return undefined;
  if (saysInTurn(clause)) return 'turns';
  if (ofTime.test(clause) || endsOnRelease(clause)) return undefined;
  const short = clause.replace(
    /^(?:are|is|sind|ist|sont|est|son|es|sono|e|sao|zijn|ar|er)\s|[\s:=–-]+$/gu,
    '',
  );
  const isRelease =
    saysOnRelease(clause) ||
    triggerOf(clause) === 'release' ||
    triggerOf(short.replace(/^[:=–-]\s*/u, '')) === 'release';
  return isRelease ? 'release' : undefined;
}
