import { HeaderKind } from '../../model/headerKinds';
import { InstrumentBuilder, plainNumber } from '../../model/instrumentBuilder';
import type { Notation } from '../../model/notation';

/** Characters and words that could mean something else in some notation. */
const suspicious = /[<>$="'\n\r\t\0]|\/\/|\/\*|#|^\s|\s$|\s{2}/;

/**
 * Whether a notation can hold a value as it stands, so that it reads back the same and nothing else is read of it. Known by
 * writing it alone and reading that, where it holds anything odd.
 */
export function isHeldBy(notation: Notation, name: string, value: string): boolean {
  if (notation.parameters || notation.format === 'xml' || !suspicious.test(value)) return true;
  const builder = new InstrumentBuilder('table', value.length);
  builder.enterSource('value', value);
  builder.openHeader(HeaderKind.region, 0, 0);
  builder.addParameter(builder.names.idOf(name), 0, 0, value.length, plainNumber(value));
  const { text } = notation.write(builder.finish());
  if (!text.includes(`${name}=${value}`)) return false;
  const read = notation.read(text, { path: '' });
  return read.parameters.count === 1 && read.directives.length === 0 && read.valueText(0) === value;
}
