import type { Stretch } from '../../model/text/stretch';
import { readContentModel } from './doctypeContentModel';
import type { DoctypeCursor } from './doctypeCursor';
import { defaultValue, entityReplacement, type NamedSpan } from './doctypeEntityValue';
import { readExternal, startsExternal } from './doctypeExternal';

/** Reads behind `<!ELEMENT`: XML 1.0 (fifth edition), production [45]. */
export function readElementDeclaration(cursor: DoctypeCursor): boolean {
  return (
    cursor.needSpace('the name of the element') &&
    cursor.name('The name of an element') !== undefined &&
    cursor.needSpace('what the element holds') &&
    readContentModel(cursor) &&
    cursor.close()
  );
}

/** Reads behind `<!NOTATION`: production [82]. */
export function readNotationDeclaration(cursor: DoctypeCursor): boolean {
  if (!cursor.needSpace('the name of the notation')) return false;
  if (cursor.name('The name of a notation') === undefined) return false;
  if (!cursor.needSpace('SYSTEM or PUBLIC')) return false;
  if (!startsExternal(cursor)) return cursor.fail('SYSTEM or PUBLIC is missing here.');
  return readExternal(cursor, true) && cursor.close();
}

/** An entity as its declaration gives it. */
export interface EntityDeclaration extends Stretch {
  name: string;
  isParameter: boolean;
  kind: 'internal' | 'external' | 'unparsed';
  replacement: string;
}

/** Reads behind `<!ENTITY`: productions [70] to [76]. `undefined` where the declaration has a fault. */
export function readEntityDeclaration(cursor: DoctypeCursor): EntityDeclaration | undefined {
  if (!cursor.needSpace('the name of the entity')) return undefined;
  const isParameter = cursor.take('%');
  if (isParameter && !cursor.needSpace('the name of the entity')) return undefined;
  const start = cursor.at;
  const name = cursor.name('The name of an entity');
  if (name === undefined) return undefined;
  const end = cursor.at;
  if (!cursor.needSpace('what the entity stands for')) return undefined;
  const entity = { name, start, end, isParameter };
  if (startsExternal(cursor)) {
    if (!readExternal(cursor, false)) return undefined;
    const unparsed = !isParameter && takeNotation(cursor);
    if (unparsed === undefined || !cursor.close()) return undefined;
    return { ...entity, kind: unparsed ? 'unparsed' : 'external', replacement: '' };
  }
  const literal = cursor.literal('What the entity stands for');
  if (!literal) return undefined;
  const replacement = entityReplacement(cursor, literal);
  if (replacement === undefined || !cursor.close()) return undefined;
  return { ...entity, kind: 'internal', replacement };
}

/** Passes over the kind of data that an entity holds, production [76]; whether it stands here. */
function takeNotation(cursor: DoctypeCursor): boolean | undefined {
  const spaced = cursor.space();
  if (cursor.peekWord() !== 'NDATA') return false;
  if (!spaced) {
    cursor.fail('A space is missing before NDATA.');
    return undefined;
  }
  cursor.take('NDATA');
  if (!cursor.needSpace('the name of a notation')) return undefined;
  return cursor.name('The name of a notation') === undefined ? undefined : true;
}

const plainTypes = new Set(['CDATA', 'ID', 'IDREF', 'IDREFS', 'ENTITY', 'ENTITIES', 'NMTOKEN', 'NMTOKENS']);

/**
 * Reads behind `<!ATTLIST`: productions [52] to [60]. `refers` is told of each entity that a default value refers to.
 */
export function readAttributeDeclaration(
  cursor: DoctypeCursor,
  refers: (reference: NamedSpan) => void,
): boolean {
  if (!cursor.needSpace('the name of the element')) return false;
  if (cursor.name('The name of an element') === undefined) return false;
  for (;;) {
    const spaced = cursor.space();
    if (cursor.take('>')) return true;
    if (!spaced) return cursor.fail('A space or ">" is missing here.');
    if (cursor.name('The name of an attribute, or ">",') === undefined) return false;
    if (!cursor.needSpace('the type of the attribute') || !readType(cursor)) return false;
    if (!cursor.needSpace('the default of the attribute')) return false;
    if (cursor.take('#REQUIRED') || cursor.take('#IMPLIED')) continue;
    if (cursor.take('#FIXED') && !cursor.needSpace('the value of the attribute')) return false;
    const literal = cursor.literal('#REQUIRED, #IMPLIED or a value');
    const references = literal && defaultValue(cursor, literal);
    if (!references) return false;
    for (const reference of references) refers(reference);
  }
}

function readType(cursor: DoctypeCursor): boolean {
  if (cursor.take('(')) return readChoices(cursor, () => cursor.nameToken('A value'));
  const from = cursor.at;
  const word = cursor.name('The type of the attribute');
  if (word === undefined || plainTypes.has(word)) return word !== undefined;
  if (word !== 'NOTATION') {
    return cursor.fail('This is no type of an attribute, such as CDATA.', from, cursor.at);
  }
  if (!cursor.needSpace('the names of notations')) return false;
  if (!cursor.take('(')) return cursor.fail('The names of notations are missing here, in brackets.');
  return readChoices(cursor, () => cursor.name('The name of a notation') !== undefined);
}

/** Reads on behind the `(` of productions [58] and [59]. */
function readChoices(cursor: DoctypeCursor, readOne: () => boolean): boolean {
  for (;;) {
    cursor.space();
    if (!readOne()) return false;
    cursor.space();
    if (cursor.take(')')) return true;
    if (!cursor.take('|')) return cursor.fail('A "|" or ")" is missing here.');
  }
}
