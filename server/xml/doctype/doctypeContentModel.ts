import type { DoctypeCursor } from './doctypeCursor';

/**
 * Passes over what an element may hold: XML 1.0 (fifth edition), productions [46] to [51]. Groups may be nested to any
 * depth, since no call is made for one.
 */
export function readContentModel(cursor: DoctypeCursor): boolean {
  if (cursor.text[cursor.at] !== '(') {
    const word = cursor.peekWord();
    if (word !== 'EMPTY' && word !== 'ANY') {
      return cursor.fail('What the element holds is missing here: EMPTY, ANY or a group in brackets.');
    }
    return cursor.take(word);
  }
  cursor.at++;
  cursor.space();
  if (cursor.take('#PCDATA')) return readMixed(cursor);
  return readGroups(cursor);
}

function readMixed(cursor: DoctypeCursor): boolean {
  let names = 0;
  for (;;) {
    cursor.space();
    if (cursor.take(')')) break;
    if (!cursor.take('|')) return cursor.fail('A "|" or ")" is missing here.');
    cursor.space();
    if (cursor.name('The name of an element') === undefined) return false;
    names++;
  }
  const starred = cursor.take('*');
  return starred || names === 0 || cursor.fail('A group with #PCDATA and names ends with ")*".');
}

const none = 0;
const comma = 44;
const bar = 124;

/** Reads on behind the `(` of the outermost group. */
function readGroups(cursor: DoctypeCursor): boolean {
  const { text } = cursor;
  /** What separates the parts of each open group, {@link none} where it has one part so far. */
  const separators: number[] = [none];
  for (;;) {
    cursor.space();
    if (cursor.take('(')) {
      separators.push(none);
      continue;
    }
    if (cursor.name('The name of an element, or a group in brackets,') === undefined) return false;
    takeCount(cursor);
    for (;;) {
      cursor.space();
      if (cursor.take(')')) {
        takeCount(cursor);
        separators.pop();
        if (separators.length === 0) return true;
        continue;
      }
      const code = text.charCodeAt(cursor.at);
      if (code !== comma && code !== bar) return cursor.fail('A ",", "|" or ")" is missing here.');
      const own = separators[separators.length - 1];
      if (own !== none && own !== code) return cursor.fail('One group cannot have both "," and "|".');
      separators[separators.length - 1] = code;
      cursor.at++;
      break;
    }
  }
}

function takeCount(cursor: DoctypeCursor): void {
  if (!cursor.take('?') && !cursor.take('*')) cursor.take('+');
}
