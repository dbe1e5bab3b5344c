import type { OddVariable, Variables } from '../model/variables/variables';
import type { VariableText } from '../model/variables/variableText';
import { isXmlSpace } from './scan/characters';
import { decodeXmlText } from './scan/references';

/** A reference, white space other than blanks (CRLF counts as one), or text without either. */
const piece = /&[^;&]*;|\r\n|[\t\n\r]|[^&\t\n\r]+|&/g;

/**
 * What the text of an attribute's value means: white space is blanks (XML 1.0, fifth edition, sections 2.11 and 3.3.3),
 * variables are put in, and references are the characters that they stand for. A `$` that is written as a reference
 * starts no variable.
 */
export function attributeValue(
  raw: string,
  variables: Variables,
  odd: (variable: OddVariable) => void,
): string {
  return raw.replace(piece, (text, start: number) => {
    const first = text.charCodeAt(0);
    if (first === 38) return decodeXmlText(text);
    if (first !== 32 && isXmlSpace(first)) return ' ';
    return variables.expand(text, (variable) =>
      odd({ ...variable, start: start + variable.start, end: start + variable.end }),
    );
  });
}

/** The text of an attribute's value with references and white space read as {@link attributeValue} does, but no variables put in. */
export function attributeText(raw: string): VariableText {
  return Array.from(raw.matchAll(piece), ([text]) => {
    const first = text.charCodeAt(0);
    if (first === 38) return { text: decodeXmlText(text), literal: true };
    return { text: first !== 32 && isXmlSpace(first) ? ' ' : text, literal: false };
  });
}
