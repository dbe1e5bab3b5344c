import { isInstrumentXmlFileName, isSfzFileName } from '../../model/fileNames';
import type { Notation } from '../../model/notation';
import { sfzNotation } from '../../sfz/notation';
import { isInstrumentXml } from '../../xml/isInstrumentXml';
import { xmlNotation } from '../../xml/notation';

/** Enough of a text to tell what it is. */
export const looked = 65_536;

/**
 * How a text is read where its name and first words leave no doubt; `unknown` for other XML. `undefined` where it takes a
 * look at all of it, and with that at what a table is.
 */
export function certainNotation(
  path: string,
  text: string,
): { kind: 'notation'; notation: Notation } | { kind: 'unknown' } | undefined {
  const start = text.slice(0, looked);
  if (isInstrumentXml(start, path)) return { kind: 'notation', notation: xmlNotation };
  const first = start.trimStart().replace(/^\ufeff/, '');
  const asXml = first.startsWith('<?xml') || first.startsWith('<!') || isInstrumentXmlFileName(path);
  if (asXml) return { kind: 'unknown' };
  return isSfzFileName(path) ? { kind: 'notation', notation: sfzNotation } : undefined;
}
