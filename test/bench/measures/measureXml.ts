import { SaxesParser } from 'saxes';
import { readXml } from '../../../server/xml/read';
import { bareScan } from '../bareScan';
import { compare } from '../compare';
import { largeInstrument } from '../largeInstrument';
import type { AddRow } from '../table';
import { ratioRow } from '../table';

/** Instrument XML to effective regions, against a bare scan of the same text and against a strict XML parser. */
export async function measureXml(add: AddRow): Promise<void> {
  const text = largeInstrument(10_000, 'xml');
  const read = () => readXml(text, { path: '/a.instrument.xml' });
  if (read().regions.length !== 10_000)
    throw new Error('The large XML instrument was not read as it was meant.');
  const toScan = await compare(read, () => bareScan(text));
  add(ratioRow('XML to regions, to a bare scan', toScan, '≤ 3'));
  const toParser = await compare(read, () => parseWithSaxes(text), { warmUp: 5, pairs: 21 });
  add(ratioRow('XML to regions, to the parser saxes', toParser, '≤ 3'));
}

function parseWithSaxes(text: string): number {
  const parser = new SaxesParser();
  let attributes = 0;
  parser.on('attribute', () => attributes++);
  parser.write(text).close();
  return attributes;
}
