import type { DoctypeCursor } from './doctypeCursor';

/** XML 1.0 (fifth edition), production [13]. */
const publicCharacters = /^[ \r\na-zA-Z0-9'()+,./:=?;!*#@$_%-]*$/;

/** Whether the name of another file can start here: production [75]. */
export function startsExternal(cursor: DoctypeCursor): boolean {
  const first = cursor.text[cursor.at];
  if (first !== 'S' && first !== 'P') return false;
  const word = cursor.peekWord();
  return word === 'SYSTEM' || word === 'PUBLIC';
}

/**
 * Passes over the name of another file, productions [75] and [83]; `SYSTEM` or `PUBLIC` stands here. A notation may
 * have a public name alone.
 */
export function readExternal(cursor: DoctypeCursor, isNotation: boolean): boolean {
  if (cursor.take('PUBLIC')) {
    if (!cursor.needSpace('the public name')) return false;
    const name = cursor.literal('A public name');
    if (!name) return false;
    if (!publicCharacters.test(cursor.text.slice(name.start, name.end))) {
      return cursor.fail(
        'This public name has a character that XML does not allow in one.',
        name.start,
        name.end,
      );
    }
    const spaced = cursor.space();
    const next = cursor.text[cursor.at];
    if (isNotation && next !== '"' && next !== "'") return true;
    if (!spaced) return cursor.fail('A space is missing before the path.');
  } else {
    cursor.take('SYSTEM');
    if (!cursor.needSpace('the path')) return false;
  }
  return cursor.literal('A path') !== undefined;
}
