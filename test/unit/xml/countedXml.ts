import { scanXml } from '../../../server/xml/scan/scan';

/** How often the scanner told of each kind of thing in a text, without keeping any of it. */
export interface XmlCounts {
  open: number;
  close: number;
  attribute: number;
  characters: number;
  problem: number;
  remark: number;
  /** How many different names attributes have. */
  names: number;
  /** The length of the longest value. */
  longest: number;
}

/** Reads a text and counts what there is in it. */
export function countsOf(text: string): XmlCounts {
  const counts: XmlCounts = {
    open: 0,
    close: 0,
    attribute: 0,
    characters: 0,
    problem: 0,
    remark: 0,
    names: 0,
    longest: 0,
  };
  const add = (kind: 'open' | 'close' | 'characters' | 'problem' | 'remark') => () => {
    counts[kind]++;
  };
  const ignore = () => {};
  scanXml(text, {
    open: add('open'),
    attribute: (name, _nameStart, _nameEnd, start, end) => {
      counts.attribute++;
      counts.names = Math.max(counts.names, name + 1);
      counts.longest = Math.max(counts.longest, end - start);
    },
    openEnd: ignore,
    close: add('close'),
    characters: add('characters'),
    comment: ignore,
    instruction: ignore,
    doctype: ignore,
    problem: add('problem'),
    remark: add('remark'),
  });
  return counts;
}
