import { decodeText } from '../../model/text/decodeText';
import { parseVocabulary } from '../../vocabulary/parseVocabulary';
import { detect } from '../../workspace/notations/detect';

/** Enough of a file to tell what it is. */
export const kindBytes = 65_536;

/**
 * A word for what the start of a file says that it is: the same for two files of one kind, so that one may take the place of
 * the other. Text that is nothing known is told apart by its first words.
 */
export function contentKind(start: Uint8Array): string {
  const decoded = decodeText(start);
  if (decoded.kind !== 'text') return binaryKind(start);
  const text = decoded.text.trimStart();
  if (text.startsWith('{')) return parseVocabulary(decoded.text).vocabulary ? 'vocabulary' : 'JSON object';
  if (text.startsWith('[')) return 'JSON list';
  const detected = detect('', decoded.text);
  if (detected.kind === 'notation') return detected.notation.format;
  if (text.startsWith('<')) return xmlKind(text);
  return /^[^\r\n]*/.exec(text)?.[0].split(' ').slice(0, 2).join(' ') ?? '';
}

/** RIFF and FORM files say in their third word what they hold (Multimedia Programming Interface 1.0, 1991; EA IFF 85). */
function binaryKind(start: Uint8Array): string {
  const word = (at: number) => String.fromCharCode(...start.subarray(at, at + 4));
  const first = word(0);
  return first === 'RIFF' || first === 'FORM' ? `${first} ${word(8)}` : `bytes ${first}`;
}

function xmlKind(text: string): string {
  const root = /<([A-Za-z_][\w.:-]*)/.exec(text.replace(/<!--[\s\S]*?-->/g, ''))?.[1] ?? '';
  return root === 'svg' || root === 'html' ? root : 'xml';
}
