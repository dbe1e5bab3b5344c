import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { detect } from '../../../../server/workspace/notations/detect';

function kindOf(path: string, text: string): string {
  const found = detect(path, text);
  return found.kind === 'notation' ? found.notation.format : found.kind;
}

describe('what a text is', () => {
  it.each([
    ['a.sfz', '', 'sfz'],
    ['a.sfzh', 'lokey=1', 'sfz'],
    ['a.txt', '<region> sample=a.wav', 'sfz'],
    ['a.txt', '\ufeff// made up\r\n/* two\nlines */\r\n  <group>\r\n', 'sfz'],
    ['a.txt', '#define $K 60', 'sfz'],
    ['a.txt', 'tune=1\nvolume=2\n', 'sfz'],
    ['a.xml', '<instrument><region key="60"/></instrument>', 'xml'],
    ['a.xml', '<?xml version="1.0"?>\n<!-- made up -->\n<instrument>', 'xml'],
    ['a.instrument.xml', '', 'xml'],
    ['a.xml', '<?xml version="1.0"?><html/>', 'unknown'],
    ['a.xml', '<instrument>\n<region><file>a.wav</file><key>60</key></region>\n</instrument>', 'unknown'],
    ['a.txt', '<instrument>\n<global>\n<region><file>a.wav</file></region></global></instrument>', 'unknown'],
    ['a.sfz', '<global>\n<region> sample=a.wav\n</region>', 'sfz'],
    ['a.xml', '<!DOCTYPE html><html></html>', 'unknown'],
    ['a.txt', 'Sample\tLow\tHigh\tRoot\na.wav\t40\t50\t45\nb.wav\t51\t60\t55\n', 'table'],
    ['a.csv', 'a.wav,40,50,45\n', 'table'],
    ['a.txt', 'Dear reader, this is a letter.\nIt holds no instrument.\n', 'unknown'],
    ['a.txt', '', 'unknown'],
  ])('%s with %j is %s', (path, text, kind) => {
    expect(kindOf(path, text)).toBe(kind);
  });

  it('is found for any text without failing', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('a.sfz', 'a.xml', 'a.txt', 'a.csv', ''),
        fc.string({ unit: 'binary' }),
        (path, text) => {
          expect(['sfz', 'xml', 'table', 'unknown']).toContain(kindOf(path, text));
        },
      ),
    );
  });
});
