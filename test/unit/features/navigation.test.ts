import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { definitionAt } from '../../../server/features/definition';
import { foldedLines } from '../../../server/features/folding';
import { fileLinks } from '../../../server/features/links';
import type { HeaderSymbol } from '../../../server/features/symbols';
import { headerSymbols } from '../../../server/features/symbols';
import { waveBytes } from '../server/waveBytes';
import { documentWithMark } from './documentWithMark';

const files = {
  '/work/Samples/a.wav': waveBytes(10),
  '/work/parts/keys.sfz': '#define $LOW 36\n<region> key=60\n',
};

async function definition(marked: string) {
  const { document, offset } = await documentWithMark(marked, files);
  return (await definitionAt(document, offset))?.target;
}

describe('definition', () => {
  it('leads from a sample to its file, however it is spelt', async () => {
    const file = { kind: 'file', path: '/work/Samples/a.wav' };
    expect(await definition('<region> sample=Samples/$0a.wav')).toEqual(file);
    expect(await definition('<control> default_path=Sam\n<region> sample=ples\\$0a.wav')).toEqual(file);
    expect(await definition('<region> sample=samples/$0A.WAV')).toEqual(file);
    expect(await definition('<region> sample=$0b.wav')).toBeUndefined();
    expect(await definition('<region> sample=*si$0ne')).toBeUndefined();
  });

  it('leads from an include to the file', async () => {
    expect(await definition('#include "parts/$0keys.sfz"')).toEqual({
      kind: 'file',
      path: '/work/parts/keys.sfz',
    });
    expect(await definition('#include "parts/$0none.sfz"')).toBeUndefined();
  });

  it('leads from a variable to where it got its value last, in this file or an included one', async () => {
    expect(await definition('#define $A 1\n#define $A 2\n<region> key=$$0A\n#define $A 3')).toEqual({
      kind: 'text',
      source: 0,
      start: 21,
      end: 23,
    });
    expect(await definition('#include "parts/keys.sfz"\n<region> key=$L$0OW')).toMatchObject({
      source: 1,
      start: 8,
      end: 12,
    });
  });
});

describe('links', () => {
  it('stand on includes and samples that are there', async () => {
    const text =
      '#include "parts/keys.sfz"\n#include "none"\n<group> sample=Samples/a.wav\n<region>\n<region> sample=b.wav\n';
    const { document } = await documentWithMark(text, files);
    await document.samples.fetchState('/work', 'Samples/a.wav');
    expect(fileLinks(document).map(({ start, end, path }) => [text.slice(start, end), path])).toEqual([
      ['parts/keys.sfz', '/work/parts/keys.sfz'],
      ['Samples/a.wav', '/work/Samples/a.wav'],
    ]);
  });
});

async function symbolsOf(text: string, format: 'sfz' | 'xml' = 'sfz') {
  const { document } = await documentWithMark(text, files, format);
  return headerSymbols(document.instrument);
}

/** Symbols as indented lines. */
function outline(symbols: readonly HeaderSymbol[], depth = ''): string[] {
  return symbols.flatMap(({ name, detail, children }) => [
    `${depth}${name}${detail && ` (${detail})`}`,
    ...outline(children, `${depth}  `),
  ]);
}

describe('the outline', () => {
  const expected = [
    'control',
    'global (2 parts)',
    '  soft (group, 2 regions)',
    '    a (C4–E4, velocity 1–63)',
    '    Lowest (C-1)',
    '  group (1 region)',
    '    region (all keys)',
  ];

  it('nests headers by what they inherit from and names them for what they hold', async () => {
    const text = `<control> default_path=x/
<global> volume=-3
<group> group_label=soft
<region> sample=Samples/a.wav lokey=60 hikey=64 hivel=63
<region> sample=b.wav region_label=Lowest key=0
<group>
<region>
`;
    expect(outline(await symbolsOf(text))).toEqual(expected);
  });

  it('is the same in XML', async () => {
    const text = `<instrument><control default_path="x/"/>
<global volume="-3">
<group group_label="soft"><region sample="Samples/a.wav" lokey="60" hikey="64" hivel="63"/>
<region sample="b.wav" region_label="Lowest" key="0"/></group>
<group><region/></group>
</global></instrument>`;
    expect(outline(await symbolsOf(text, 'xml'))).toEqual(expected);
  });

  it('leaves out what stands in included files', async () => {
    expect(outline(await symbolsOf('<group>\n#include "parts/keys.sfz"\n<region> key=1'))).toEqual([
      'group (1 region)',
      '  region (C#-1)',
    ]);
  });

  it('has every header within the one around it, and headers side by side apart', async () => {
    const header = fc.constantFrom(
      '<region>',
      '<group>',
      '<global>',
      '<master>',
      '<control>',
      '<curve>',
      '<x>',
    );
    const opcode = fc.constantFrom(' key=60', '\nsample=a b.wav', ' // remark', '\n', ' lokey=c4');
    await fc.assert(
      fc.asyncProperty(fc.array(fc.oneof(header, opcode), { maxLength: 30 }), async (parts) => {
        const text = parts.join('');
        const check = (symbols: readonly HeaderSymbol[], start: number, end: number) => {
          let last = start;
          for (const symbol of symbols) {
            expect(symbol.start).toBeGreaterThanOrEqual(last);
            expect(symbol.end).toBeLessThanOrEqual(end);
            expect(symbol.tagStart).toBeGreaterThanOrEqual(symbol.start);
            expect(symbol.tagEnd).toBeLessThanOrEqual(symbol.end);
            expect(symbol.name).not.toBe('');
            check(symbol.children, symbol.tagEnd, symbol.end);
            last = symbol.end;
          }
        };
        check(await symbolsOf(text), 0, text.length);
      }),
    );
  });
});

describe('folding', () => {
  it('folds headers with all inside them, and block comments', async () => {
    const text =
      '/* two\nlines */\n<group>\nkey=60\n<region> sample=a.wav\n<region>\nsample=b.wav\n\n// end\n';
    const { document } = await documentWithMark(text);
    const { instrument } = document;
    const source = instrument.sources[0];
    if (!source) throw new Error('no source');
    const comments = instrument.directives.filter(({ kind }) => kind === 'comment');
    expect(foldedLines(source, headerSymbols(instrument), comments)).toEqual([
      { startLine: 2, endLine: 6 },
      { startLine: 5, endLine: 6 },
      { startLine: 0, endLine: 1, kind: 'comment' },
    ]);
  });
});
