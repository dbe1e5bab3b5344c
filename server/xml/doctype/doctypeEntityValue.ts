import type { Stretch } from '../../model/text/stretch';
import { nameEndAt } from '../scan/characters';
import { readReference } from '../scan/references';
import type { DoctypeCursor } from './doctypeCursor';

/** A reference to an entity by its name. */
export interface NamedSpan extends Stretch {
  name: string;
}

/**
 * What an entity stands for, from the text between the quotes of its declaration: XML 1.0 (fifth edition), production
 * [9] and section 4.5. Characters are put in for their numbers; references to other entities stay. `undefined` where
 * the text has a fault.
 */
export function entityReplacement(cursor: DoctypeCursor, { start, end }: Stretch): string | undefined {
  const { text } = cursor;
  let replacement = '';
  let from = start;
  for (let at = start; at < end; at++) {
    const code = text.charCodeAt(at);
    if (code === 37) {
      cursor.fail('A "%" cannot stand in the text of an entity. Write &#37;.', at);
      return undefined;
    }
    if (code !== 38) continue;
    const reference = readReference(text, at);
    if (reference.name === undefined && reference.problem !== undefined) {
      cursor.fail(reference.problem, at, Math.min(reference.end, end));
      return undefined;
    }
    if (text[at + 1] === '#') {
      replacement += text.slice(from, at) + reference.value;
      from = reference.end;
    }
    at = reference.end - 1;
  }
  return replacement + text.slice(from, end);
}

/**
 * Reads the value that an attribute has where it is not written, production [10]; answers the entities that it refers
 * to, `undefined` where it has a fault.
 */
export function defaultValue(cursor: DoctypeCursor, { start, end }: Stretch): NamedSpan[] | undefined {
  const { text } = cursor;
  const named: NamedSpan[] = [];
  for (let at = start; at < end; at++) {
    const code = text.charCodeAt(at);
    if (code === 60) {
      cursor.fail('A value cannot hold a bare "<". Write &lt;.', at);
      return undefined;
    }
    if (code !== 38) continue;
    const reference = readReference(text, at);
    if (reference.name !== undefined) named.push({ name: reference.name, start: at, end: reference.end });
    else if (reference.problem !== undefined) {
      cursor.fail(reference.problem, at, Math.min(reference.end, end));
      return undefined;
    }
    at = reference.end - 1;
  }
  return named;
}

/** The `%name;` that stands at the cursor, which goes behind it. */
export function parameterReference(cursor: DoctypeCursor): NamedSpan | undefined {
  const { text, at } = cursor;
  const nameEnd = nameEndAt(text, at + 1);
  if (nameEnd === at + 1 || text[nameEnd] !== ';') {
    cursor.fail('A "%" stands before the name of an entity and ";".', at, Math.max(at + 1, nameEnd));
    return undefined;
  }
  cursor.at = nameEnd + 1;
  return { name: text.slice(at + 1, nameEnd), start: at, end: nameEnd + 1 };
}
