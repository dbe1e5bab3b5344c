import type { LineBuffer } from '../model/text/lineBuffer';
import type { VariableText } from '../model/variables/variableText';
import { joinedText } from '../model/variables/variableText';
import { isXmlName } from './scan/characters';
import type { EncodedAttribute } from './scan/references';
import { encodeXmlAttribute } from './scan/references';

/** A text as the value of an attribute: a `$` that starts no variable is written as a reference. */
export function encodedAttributeText(text: VariableText): EncodedAttribute {
  const plain = joinedText(text);
  const encoded = encodeXmlAttribute(plain);
  if (!plain.includes('$')) return encoded;
  const literal: boolean[] = [];
  for (const piece of text) for (const sign of piece.text) if (sign === '$') literal.push(piece.literal);
  let at = 0;
  return { ...encoded, text: encoded.text.replace(/\$/g, (sign) => (literal[at++] ? '&#36;' : sign)) };
}

/** Whether a parameter's name can be an attribute that is read back as it is. */
export function isAttributeName(name: string): boolean {
  return isXmlName(name) && !name.includes(':') && name !== 'xmlns';
}

/** By character: 1 where it stands for itself between double quotes, and needs no reference; blanks do within a value. */
const isPlain = Uint8Array.from({ length: 256 }, (_, code) =>
  code >= 32 && code < 127 && !'&<>"$'.includes(String.fromCharCode(code)) ? 1 : 0,
);

/** Adds a value to a line from the bytes of its text; `false` where it holds what is written otherwise between quotes. */
export function addPlainValue(lines: LineBuffer, codes: Uint8Array, start: number, end: number): boolean {
  const out = lines.room(end - start);
  let at = lines.length;
  for (let place = start; place < end; place++) {
    const code = codes[place];
    if (isPlain[code] === 0) return false;
    out[at++] = code;
  }
  lines.length = at;
  return true;
}
