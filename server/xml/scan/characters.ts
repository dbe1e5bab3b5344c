/** White space in the sense of XML 1.0 (fifth edition), production [3]. */
export function isXmlSpace(code: number): boolean {
  return code === 32 || code === 10 || code === 13 || code === 9;
}

/** Whether a character can start a name: XML 1.0 (fifth edition), production [4]. */
export function isNameStart(code: number): boolean {
  if (code < 0x80)
    return (code >= 97 && code <= 122) || (code >= 65 && code <= 90) || code === 95 || code === 58;
  return (
    (code >= 0xc0 && code <= 0x2ff && code !== 0xd7 && code !== 0xf7) ||
    (code >= 0x370 && code <= 0x1fff && code !== 0x37e) ||
    code === 0x200c ||
    code === 0x200d ||
    (code >= 0x2070 && code <= 0x218f) ||
    (code >= 0x2c00 && code <= 0x2fef) ||
    (code >= 0x3001 && code <= 0xd7ff) ||
    (code >= 0xf900 && code <= 0xfdcf) ||
    (code >= 0xfdf0 && code <= 0xfffd) ||
    (code >= 0x10000 && code <= 0xeffff)
  );
}

/** Whether a character can stand in a name behind its start: XML 1.0 (fifth edition), production [4a]. */
export function isNameCharacter(code: number): boolean {
  if (code < 0x80) return isNameStart(code) || (code >= 48 && code <= 57) || code === 45 || code === 46;
  return (
    isNameStart(code) ||
    code === 0xb7 ||
    (code >= 0x300 && code <= 0x36f) ||
    code === 0x203f ||
    code === 0x2040
  );
}

/** Whether XML 1.0 can hold a character at all: production [2]. Halves of a surrogate pair by themselves it cannot. */
export function isXmlCharacter(code: number): boolean {
  if (code < 32) return code === 9 || code === 10 || code === 13;
  return code < 0xd800 || (code > 0xdfff && code < 0xfffe) || (code > 0xffff && code <= 0x10ffff);
}

/** The end of the XML name that starts at `start`; `start` itself where none does. */
export function nameEndAt(text: string, start: number): number {
  let at = start;
  for (;;) {
    const code = text.codePointAt(at);
    if (code === undefined || !(at === start ? isNameStart(code) : isNameCharacter(code))) return at;
    at += code > 0xffff ? 2 : 1;
  }
}

/** Whether a text is a name in XML. */
export function isXmlName(text: string): boolean {
  return text !== '' && nameEndAt(text, 0) === text.length;
}

/** The end of the white space that starts at `start`. */
export function spaceEndAt(text: string, start: number): number {
  let at = start;
  while (at < text.length && isXmlSpace(text.charCodeAt(at))) at++;
  return at;
}

/** The characters of a stretch of text that XML 1.0 cannot hold, one call each. */
export function findIllegalCharacters(
  text: string,
  start: number,
  end: number,
  found: (start: number, end: number, code: number) => void,
): void {
  for (let at = start; at < end; at++) {
    const code = text.charCodeAt(at);
    if (code < 32) {
      if (code !== 9 && code !== 10 && code !== 13) found(at, at + 1, code);
    } else if (code >= 0xd800) {
      if (code < 0xdc00 && at + 1 < end && (text.charCodeAt(at + 1) & 0xfc00) === 0xdc00) at++;
      else if (!isXmlCharacter(code)) found(at, at + 1, code);
    }
  }
}

/** A character by its number, as Unicode writes it: `U+0007`. */
export function characterNumber(code: number): string {
  return `U+${code.toString(16).toUpperCase().padStart(4, '0')}`;
}
