import { isXmlSpace, nameEndAt, spaceEndAt } from './characters';

/** Where something ends, and what is wrong with it if anything is. */
export interface Skipped {
  end: number;
  problem?: string;
  /** An XML declaration in order says that nothing outside the file says how to read it. */
  standalone?: boolean;
}

/** XML 1.0 (fifth edition), productions [23] to [26], [32], [80] and [81]. */
const declaration =
  /^<\?xml\s+version\s*=\s*(["'])1\.[0-9]+\1(?:\s+encoding\s*=\s*(["'])[A-Za-z][A-Za-z0-9._-]*\2)?(?:\s+standalone\s*=\s*(["'])(yes|no)\3)?\s*\?>$/;

/** Passes over the processing instruction or XML declaration whose `<?` stands at `start`. */
export function skipInstruction(text: string, start: number): Skipped {
  const nameEnd = nameEndAt(text, start + 2);
  const close = text.indexOf('?>', start + 2);
  if (close < 0) {
    return { end: text.length, problem: 'This processing instruction is not closed. Put "?>" at its end.' };
  }
  const end = close + 2;
  if (nameEnd === start + 2) {
    return { end, problem: 'A processing instruction starts with a name: <?name …?>.' };
  }
  const name = text.slice(start + 2, Math.min(nameEnd, start + 6));
  if (nameEnd - start === 5 && name.toLowerCase() === 'xml') {
    const first = start === (text.charCodeAt(0) === 0xfeff ? 1 : 0);
    if (!first)
      return { end, problem: 'An XML declaration stands at the very start of the file or nowhere.' };
    const parts = end - start > 1000 ? null : declaration.exec(text.slice(start, end));
    if (!parts) return { end, problem: 'An XML declaration reads <?xml version="1.0" encoding="UTF-8"?>.' };
    return { end, standalone: parts[4] === 'yes' };
  }
  if (nameEnd < close && !isXmlSpace(text.charCodeAt(nameEnd))) {
    return { end, problem: 'The name of a processing instruction ends with a space or with "?>".' };
  }
  return { end };
}

/** Passes over the document type declaration whose `<!` stands at `start`, with all that it holds. */
export function skipDoctype(text: string, start: number): { end: number; closed: boolean } {
  let inside = false;
  let at = spaceEndAt(text, start + 9);
  while (at < text.length) {
    const character = text[at];
    if (character === '>' && !inside) return { end: at + 1, closed: true };
    if (character === '[') inside = true;
    else if (character === ']') inside = false;
    else if (character === '"' || character === "'") at = indexOrEnd(text, character, at + 1);
    else if (text.startsWith('<!--', at)) at = indexOrEnd(text, '-->', at + 4) + 2;
    else if (text.startsWith('<?', at)) at = indexOrEnd(text, '?>', at + 2) + 1;
    at++;
  }
  // It is not closed: the file goes on behind the first ">", so that the rest is not lost.
  const close = text.indexOf('>', start);
  return { end: close < 0 ? text.length : close + 1, closed: false };
}

function indexOrEnd(text: string, part: string, from: number): number {
  const at = text.indexOf(part, from);
  return at < 0 ? text.length : at;
}
