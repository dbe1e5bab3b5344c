import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { foldedLines } from '../../../server/features/folding';
import { definitionAt } from '../../../server/features/navigation/definition';
import { highlightsAt } from '../../../server/features/navigation/highlights';
import { fileLinks } from '../../../server/features/navigation/links';
import { referencesOf } from '../../../server/features/navigation/references';
import { subjectAt } from '../../../server/features/navigation/subject';
import type { HeaderSymbol } from '../../../server/features/navigation/symbols';
import { headerSymbols } from '../../../server/features/navigation/symbols';
import { matchesQuery, namedPlaces } from '../../../server/features/navigation/workspaceSymbols';
import { waveBytes } from '../server/host/waveBytes';
import { documentWithMark, inOwnContext } from './documentWithMark';

const files = {
  '/music/Samples/a.wav': waveBytes(10),
  '/music/parts/keys.sfz': '#define $LOW 36\n<region> key=60\n',
};

async function definitions(marked: string, format: 'sfz' | 'xml' = 'sfz') {
  const { document, offset, text } = await documentWithMark(marked, files, format);
  const found = await definitionAt(inOwnContext(document), document.samples, offset);
  return found?.targets.map((target) =>
    target.kind === 'text' && target.source === 0
      ? [text.slice(target.start, target.end), target.start]
      : target,
  );
}

describe('definition', () => {
  it('leads from a sample to its file, however it is spelt', async () => {
    const file = [{ kind: 'file', path: '/music/Samples/a.wav' }];
    expect(await definitions('<region> sample=Samples/$0a.wav')).toEqual(file);
    expect(await definitions('<control> default_path=Sam\n<region> sample=ples\\$0a.wav')).toEqual(file);
    expect(await definitions('<region> sample=samples/$0A.WAV')).toEqual(file);
    expect(await definitions('<region> sample=$0b.wav')).toBeUndefined();
    expect(await definitions('<region> sample=*si$0ne')).toBeUndefined();
  });

  it('leads from an include to the file', async () => {
    expect(await definitions('#include "parts/$0keys.sfz"')).toEqual([
      { kind: 'file', path: '/music/parts/keys.sfz' },
    ]);
    expect(await definitions('#include "parts/$0none.sfz"')).toBeUndefined();
  });

  it('leads from a variable to where it got its value last, in this file or an included one', async () => {
    expect(await definitions('#define $A 1\n#define $A 2\n<region> key=$$0A\n#define $A 3')).toEqual([
      ['$A', 21],
    ]);
    expect(await definitions('#include "parts/keys.sfz"\n<region> key=$L$0OW')).toMatchObject([
      { source: 1, start: 8, end: 12 },
    ]);
  });

  it('reads a variable as the reader does: the longest that is defined', async () => {
    const text = '#define $KEY 6\n#define $KEYS 7\n';
    expect(await definitions(`${text}<region> key=$KEY$00`)).toEqual([['$KEY', 8]]);
    expect(await definitions(`${text}<region> key=$KEYS$0`)).toEqual([['$KEYS', 23]]);
    expect(await definitions(`${text}<region> key=$OTHER$0`)).toBeUndefined();
    expect(
      await definitions('<instrument><define name="A" value="1"/><region key="$$0A"/></instrument>', 'xml'),
    ).toEqual([['A', 26]]);
  });

  it('leads from off_by to the headers of that group', async () => {
    const text = '<group> group=1\n<region>\n<region> group=01\n<region> group=2 off_by=1$0';
    expect(await definitions(text)).toEqual([
      ['<group>', 0],
      ['<region>', 25],
    ]);
    expect(await definitions('<region> off_by=3$0')).toBeUndefined();
    expect(
      await definitions('<instrument><group polyphony_group="4"/><region off_by="$04"/></instrument>', 'xml'),
    ).toEqual([['<group', 12]]);
  });

  it('leads from an opcode to the value that counts instead, or further out', async () => {
    expect(await definitions('<global> volume=1\n<group> pan=1\n<region> vol$0ume=2')).toEqual([
      ['<global>', 0],
    ]);
    expect(await definitions('<region> lo$0key=1 key=2')).toEqual([['key=2', 17]]);
    expect(await definitions('<region> lo$0key=1')).toBeUndefined();
    expect(
      await definitions('<instrument><group pan="3"><region p$0an="4"/></group></instrument>', 'xml'),
    ).toEqual([['<group', 12]]);
  });

  it('leads from a header to the one that it inherits from', async () => {
    expect(await definitions('<global>\n<group>\n<reg$0ion> key=1')).toEqual([['<group>', 9]]);
    expect(await definitions('<reg$0ion> key=1')).toBeUndefined();
  });
});

/** The references to what stands at the mark, as the text of each with its file where that is another. */
async function references(
  marked: string,
  more: Record<string, string> = {},
  format: 'sfz' | 'xml' = 'sfz',
): Promise<string[]> {
  const { document, offset } = await documentWithMark(marked, { ...files, ...more }, format);
  const { instrument } = document;
  const at = subjectAt(inOwnContext(document), offset);
  if (!at) return [];
  return referencesOf(instrument, at.subject).map(({ source, start, end, isDeclaration }) => {
    const file = instrument.sources[source];
    const { line, column } = file?.positionAt(start) ?? { line: 0, column: 0 };
    const where = source === 0 ? '' : `${file?.path}:`;
    return `${where}${line}:${column} ${file?.text.slice(start, end)}${isDeclaration ? ' !' : ''}`;
  });
}

describe('references', () => {
  it('of a sample are all regions that play it, their own value or the tag of those that inherit it', async () => {
    const text = `<control> default_path=Samples/
<group> sample=a.$0wav
<region>
<region> sample=./a.wav
<region> sample=b.wav
<control> default_path=
<region>
<group>
<region> sample=Samples\\a.wav`;
    expect(await references(text)).toEqual([
      '2:16 a.wav',
      '3:1 <region>',
      '4:17 ./a.wav',
      '9:17 Samples\\a.wav',
    ]);
  });

  it('of a variable are its uses in names, values, include paths and definitions, in all files', async () => {
    const text = `#define $PART parts
#define $$0N 7
#define $M $N4
<region> locc$N=1 key=$N
#include "$PART/two.sfz"
<region> key=$NO key=$PART`;
    const more = { '/music/parts/two.sfz': '<region> cutoff_oncc$N=$N0\n#define $NO 1\n' };
    expect(await references(text, more)).toEqual([
      '2:9 $N !',
      '3:12 $N',
      '4:14 $N',
      '4:23 $N',
      '/music/parts/two.sfz:1:21 $N',
      '/music/parts/two.sfz:1:24 $N',
    ]);
    expect(await references('#define $A a\n#include "$$0A.sfz"\n<region> sample=x$A$A.wav')).toEqual([
      '1:9 $A !',
      '2:11 $A',
      '3:18 $A',
      '3:20 $A',
    ]);
  });

  it('of a variable that stands for a whole opcode', async () => {
    expect(await references('#define $$0SOFT hivel=63\n<region> $SOFT')).toEqual([
      '1:9 $SOFT !',
      '2:10 $SOFT',
    ]);
  });

  it('of a variable are the same in XML', async () => {
    const text = `<instrument><define name="N" value="7"/>
<define name="M" value="$N4"/><region hicc="1" key="$$0N" sample="&#36;N &amp; $N"/></instrument>`;
    expect(await references(text, {}, 'xml')).toEqual(['1:27 N !', '2:25 $N', '2:53 $N', '2:78 $N']);
  });

  it('of a controller are all opcodes that react to it, label it or set it', async () => {
    const text = `<control> label_cc74=Bright set_cc74=64 set_hdcc74=0.5
<region> locc$074=1 cutoff_cc74=1200 eg01_time2_oncc74=1 pan_oncc7=4 sustain_cc=74 xfin_locc74=1
<region> pan_curvecc74=1 delay_cc074=1 vol74=1`;
    expect(await references(text)).toEqual([
      '1:11 label_cc74 !',
      '1:29 set_cc74 !',
      '1:41 set_hdcc74 !',
      '2:10 locc74',
      '2:19 cutoff_cc74',
      '2:36 eg01_time2_oncc74',
      '2:79 74',
      '2:82 xfin_locc74',
      '3:10 pan_curvecc74',
      '3:26 delay_cc074',
    ]);
    expect(await references(text.replace('$0', '').replace('Bright', 'Bri$0ght'))).toHaveLength(10);
  });

  it('of a group are the headers that belong to it and those that it silences', async () => {
    const text = '<group> group=1\n<region> off_by=2 group=2\n<region> off_by=$01 polyphony_group=1';
    expect(await references(text)).toEqual(['1:15 1 !', '3:17 1', '3:35 1 !']);
    const xml = '<instrument><group group="$01"/><region offby="1"/></instrument>';
    expect(await references(xml, {}, 'xml')).toEqual(['1:27 1 !', '1:46 1']);
  });

  it('of an include are all places that include the file', async () => {
    expect(await references('#include "parts/$0keys.sfz"\n#include "./parts/keys.sfz"')).toHaveLength(2);
  });

  it('are none for what stands alone', async () => {
    for (const text of [
      '<region> vol$0ume=3',
      '<region> key=6$00',
      '// rem$0ark',
      '<reg$0ion>',
      '<region> sample=*si$0ne',
    ])
      expect(await references(text)).toEqual([]);
  });
});

describe('highlights', () => {
  it('stay within the file, also in the instrument that includes it', async () => {
    const main = '#define $LOW 1\n#include "parts/keys.sfz"\n<region> lokey=$LOW';
    const { document: whole } = await documentWithMark(main, files);
    const part = await documentWithMark('#define $L$0OW 36\n<region> key=60\n', files);
    const context = { document: part.document, instrument: whole.instrument, folder: '/music', source: 1 };
    expect(highlightsAt(context, part.offset)).toEqual([
      { source: 1, start: 8, end: 12, isDeclaration: true },
    ]);
  });
});

describe('highlights of very many places', () => {
  it('are those around the cursor', async () => {
    const text = '<region> locc7=1\n'.repeat(5000);
    const length = '<region> locc7=1\n'.length;
    for (const region of [0, 2500, 4999]) {
      const { document } = await documentWithMark(text);
      const found = highlightsAt(inOwnContext(document), region * length + 10);
      expect(found).toHaveLength(2000);
      expect(found.some(({ start }) => start === region * length + 9)).toBe(true);
    }
  });
});

describe('what can be found by name', () => {
  it('is the instrument, its labelled groups, its samples and its variables, each once', async () => {
    const text = `#define $A 1
#include "parts/keys.sfz"
<group> group_label=Soft hammers
<region> sample=Samples/a.wav
<region> sample=Samples/x/../a.wav
<region> sample=*sine
<group> volume=1`;
    const { document } = await documentWithMark(text, files);
    expect(namedPlaces(document.instrument).map(({ name, kind }) => `${kind} ${name}`)).toEqual([
      'instrument main.sfz',
      'variable $A',
      'header Soft hammers',
      'sample a.wav',
    ]);
  });

  it('is found by some of its letters in their order', () => {
    expect(matchesQuery('Soft hammers', 'sfham')).toBe(true);
    expect(matchesQuery('Soft hammers', 'hams')).toBe(true);
    expect(matchesQuery('Soft hammers', 'hamx')).toBe(false);
    expect(matchesQuery('anything', '')).toBe(true);
  });
});

describe('links', () => {
  it('stand on includes and samples that are there', async () => {
    const text =
      '#include "parts/keys.sfz"\n#include "none"\n<group> sample=Samples/a.wav\n<region>\n<region> sample=b.wav\n';
    const { document } = await documentWithMark(text, files);
    await document.samples.fetchState('/music', 'Samples/a.wav');
    expect(fileLinks(document).map(({ start, end, path }) => [text.slice(start, end), path])).toEqual([
      ['parts/keys.sfz', '/music/parts/keys.sfz'],
      ['Samples/a.wav', '/music/Samples/a.wav'],
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
  it('says how many headers it leaves out of a very long text', async () => {
    const text = `<group> group_label=Soft\n${'<region> sample=a.wav\n'.repeat(5)}`;
    const { document } = await documentWithMark(text);
    const names = (list: readonly HeaderSymbol[]): unknown[] =>
      list.map(({ name, children }) => (children.length > 0 ? [name, names(children)] : name));
    const outline = headerSymbols(document.instrument, 3);
    expect(names(outline)).toEqual([['Soft', ['a', 'a']], '3 more headers are not listed']);
    expect(outline[1].start).toBeGreaterThanOrEqual(outline[0].end);
    expect(names(headerSymbols(document.instrument, 6))).toEqual([['Soft', ['a', 'a', 'a', 'a', 'a']]]);
  });

  const expected = [
    'control',
    'global (2 parts)',
    '  soft (group, 2 regions)',
    '    a (C4 to E4, velocity 1 to 63)',
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

  it('names a group without a label by what its samples share', async () => {
    const text =
      '<master> master_label=room\n<group>\n<region> sample=gong_p.wav\n<region> sample=gong_f.wav';
    expect(outline(await symbolsOf(text)).slice(0, 2)).toEqual([
      'room (master, 1 part)',
      '  Gong (group, 2 regions)',
    ]);
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
