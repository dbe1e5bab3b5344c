import { characterNumber, findIllegalCharacters } from '../scan/characters';
import { skipDoctype } from '../scan/prolog';
import { DoctypeCursor } from './doctypeCursor';
import { DoctypeEntities } from './doctypeEntities';
import type { NamedSpan } from './doctypeEntityValue';
import { readExternal, startsExternal } from './doctypeExternal';
import type { DoctypeReport } from './doctypeSubset';
import { DoctypeSubset } from './doctypeSubset';

/** A document type declaration as far as it says what is well formed. */
export interface Doctype {
  /** Where reading goes on. */
  end: number;
  entities: DoctypeEntities;
  /** What default values of attributes refer to. */
  defaults: NamedSpan[];
}

/**
 * Reads the document type declaration whose `<!` stands at `start`: XML 1.0 (fifth edition), productions [28] to [31]
 * and those of what it declares. Nothing is fetched, and nothing that it declares is put in anywhere. Takes time in
 * proportion to its length. `standalone` is what the XML declaration says.
 */
export function readDoctype(
  text: string,
  start: number,
  standalone: boolean,
  report: DoctypeReport,
): Doctype {
  const entities = new DoctypeEntities();
  const { end, closed } = skipDoctype(text, start);
  if (!closed) {
    entities.isComplete = false;
    report.problem(
      start,
      start + 9,
      'This document type declaration is not closed. Put ">" at its end, and close each quote and bracket in it.',
    );
    return { end, entities, defaults: [] };
  }
  report.remark(
    start,
    start + 9,
    'A document type declaration has no effect here, and nothing is fetched. Remove it if nothing else needs it.',
  );
  const whole = text.slice(start, end);
  findIllegalCharacters(whole, 0, whole.length, (from, to, code) =>
    report.problem(
      start + from,
      start + to,
      `XML cannot hold the character ${characterNumber(code)}. Remove it.`,
    ),
  );
  const subset = new DoctypeSubset(entities, report, whole.length, standalone);
  const cursor = new DoctypeCursor(whole, '<!DOCTYPE'.length);
  if (!readOuter(cursor, entities, subset, start, standalone)) {
    const fault = cursor.takeFault();
    if (fault) report.problem(start + fault.start, start + fault.end, fault.message);
  }
  return { end, entities, defaults: subset.defaults };
}

function readOuter(
  cursor: DoctypeCursor,
  entities: DoctypeEntities,
  subset: DoctypeSubset,
  base: number,
  standalone: boolean,
): boolean {
  if (!cursor.needSpace('the name of the outermost element')) return false;
  if (cursor.name('The name of the outermost element') === undefined) return false;
  if (cursor.space() && startsExternal(cursor)) {
    if (!standalone) entities.isComplete = false;
    if (!readExternal(cursor, false)) return false;
    cursor.space();
  }
  if (cursor.take('[')) {
    cursor.at = subset.read(cursor.text, cursor.at, base);
    if (!cursor.take(']')) return cursor.fail('A "]" is missing before this.');
  }
  return cursor.close() && (cursor.done || cursor.fail('The document type declaration ends before this.'));
}
