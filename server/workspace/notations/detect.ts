import { isSfzFileName } from '../../model/fileNames';
import type { Notation } from '../../model/notation';
import { sfzNotation } from '../../sfz/notation';
import { mayBeLiteral } from '../../table/cells/literals/literalCells';
import { constantsOf } from '../../table/cells/literals/sourceConstants';
import { hasSections, looksLikeZoneTable, namesEntries } from '../../table/looksLikeZoneTable';
import { tableInXml } from '../../xml/tableInXml';
import { certainNotation, looked } from './certainNotation';

/** What a text is, found from its content; the name decides where the content is too little to tell. */
export type Detected = { kind: 'notation'; notation: Notation } | { kind: 'table' } | { kind: 'unknown' };

const tableName = /\.(tsv|csv)$/i;
/** An SFZ header, directive or opcode at the start of a line. */
const sfzLine =
  /^[ \t]*(?:<(?:control|global|master|group|region|curve|effect|midi|sample)>|#(?:define|include)\b|[a-z]\w*=)/im;
const sfzHeader = /^[ \t]*(?:<\w+>|#(?:define|include)\b)|\bsample=/im;
/** An element that ends: SFZ has headers alone, which do not. */
const endTag = /<\/(?:control|global|master|group|region|instrument)\s*>/;
const comments = /\/\/[^\r\n]*|\/\*[\s\S]*?\*\//g;

/** Finds out how a text is to be read. */
export function detect(path: string, text: string): Detected {
  const certain = certainNotation(path, text);
  if (certain?.kind === 'notation') return certain;
  const table = tableInXml(text);
  if (table !== undefined && looksLikeZoneTable(table)) return { kind: 'table' };
  if (certain && looksLikeZoneTable(text)) return { kind: 'table' };
  if (certain) return certain;
  const start = text.slice(0, looked);
  // Lines such as `lo=36,` stand in scripts too.
  const mayBeList = mayBeLiteral(start) || hasSections(start) || constantsOf(start) !== undefined;
  if (mayBeList && looksLikeZoneTable(start)) return { kind: 'table' };
  const isXml = !isSfzFileName(path) && /^\ufeff?\s*</.test(start) && endTag.test(start);
  const bare = start.replace(comments, '');
  if (!isXml && sfzLine.test(bare)) {
    // Lines such as `Rate=44100` and `C3=60` beside a table are statements about it.
    const isOther =
      !sfzHeader.test(bare) || namesEntries(bare.split(/[\r\n]+/).filter((line) => line.trim()));
    const isTable = isOther && looksLikeZoneTable(start);
    return isTable ? { kind: 'table' } : { kind: 'notation', notation: sfzNotation };
  }
  if (tableName.test(path) || looksLikeZoneTable(start)) return { kind: 'table' };
  return { kind: 'unknown' };
}
