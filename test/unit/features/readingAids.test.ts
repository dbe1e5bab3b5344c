import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { headerSummaries, regionsToPlay } from '../../../server/features/codeLenses';
import type { InlayChoice } from '../../../server/features/inlayHints';
import { inlayTexts } from '../../../server/features/inlayHints';
import { selectionsAt } from '../../../server/features/selectionRanges';
import { semanticTokens, tokenKinds, tokenMarks } from '../../../server/features/semanticTokens';
import { Source } from '../../../server/model/text/source';
import { tokenData, tokenEdits } from '../../../server/protocol/conversion/tokenData';
import { documentWithMark } from './documentWithMark';

type Format = 'sfz' | 'xml';

/** The tokens of a text as `text:kind` with marks behind it. */
async function tokens(marked: string, format: Format = 'sfz', files = {}): Promise<string[]> {
  const { document, text } = await documentWithMark(marked, files, format);
  return semanticTokens(document.instrument).map(({ start, end, kind, marks }) => {
    const names = tokenMarks.filter((_, bit) => marks & (1 << bit));
    return [`${text.slice(start, end)}:${tokenKinds[kind]}`, ...names].join(' ');
  });
}

describe('semantic tokens', () => {
  it('tell headers, opcodes by level and values by kind', async () => {
    // Levels of the public documentation of the open SFZ format: volume is of version 1, loop_tune of version 2.
    expect(
      await tokens(
        '<region> sample=a b.wav key=c4 hikey=60 loopmode=no_loop loop_tune=3 region_label=My tone',
      ),
    ).toEqual([
      'region:header',
      'sample:opcode v1',
      'a b.wav:path',
      'key:opcode v1',
      'c4:noteName',
      'hikey:opcode v1',
      '60:number',
      'loopmode:opcode v1 otherSpelling',
      'no_loop:option',
      'loop_tune:opcode v2',
      '3:number',
      'region_label:opcode extension',
      'My tone:text',
    ]);
  });

  it('tell variables in names, values and paths', async () => {
    expect(
      await tokens(
        '#define $CC 20\n#include "$CC.sfz"\n<control> label_cc$CC=Level $CC up\n<region> key=$CC $CC=1',
      ),
    ).toEqual([
      '$CC:variable definition',
      '$CC:variable',
      '.sfz:path',
      'control:header',
      'label_cc:opcode extension',
      '$CC:variable',
      'Level :text',
      '$CC:variable',
      ' up:text',
      'region:header',
      'key:opcode v1',
      '$CC:variable',
      '$CC:variable',
    ]);
  });

  it('leave what the format does not know, and words where numbers belong, as they are', async () => {
    expect(await tokens('<region> vlo=1 volume=loud')).toEqual(['region:header', 'volume:opcode v1']);
  });

  it('go line by line through a comment', async () => {
    expect(await tokens('/* one\r\ntwo */ <region> // three')).toEqual([
      '/* one:comment',
      'two */:comment',
      'region:header',
      '// three:comment',
    ]);
  });

  it('are those of the document itself, not of what it includes', async () => {
    const files = { '/music/part.sfz': '<region> sample=in.wav' };
    expect(await tokens('<group>\n#include "part.sfz"\nkey=60', 'sfz', files)).toEqual([
      'group:header',
      'part.sfz:path',
      'key:opcode v1',
      '60:number',
    ]);
  });

  it('work in XML', async () => {
    expect(await tokens('<instrument><!-- x --><region key="c4" volume="-3"/></instrument>', 'xml')).toEqual([
      '<!-- x -->:comment',
      'region:header',
      'key:opcode v1',
      'c4:noteName',
      'volume:opcode v1',
      '-3:number',
    ]);
  });

  it('of a long instrument are those alone that highlighting by patterns cannot tell', async () => {
    const line = '<region> sample=a.wav key=60 hikey=c5 volume=-3 loop_tune=5 // x\n';
    const found = new Set(await tokens(line.repeat(4001)));
    expect([...found]).toEqual(['region:header', 'c5:noteName', 'loop_tune:opcode v2']);
  });

  it('of a stretch are those of the whole text that touch it, in order and apart', async () => {
    const word = fc.constantFrom(
      '<region>',
      'key=60',
      'sample=a b.wav',
      '// x',
      '/* y\nz */',
      '$A',
      '#define $A 1',
      '\n',
    );
    await fc.assert(
      fc.asyncProperty(
        fc.array(word, { maxLength: 30 }),
        fc.nat(200),
        fc.nat(200),
        async (words, a, length) => {
          const { document } = await documentWithMark(words.join(' '));
          const all = semanticTokens(document.instrument);
          for (let at = 1; at < all.length; at++) {
            expect(all[at]?.start).toBeGreaterThanOrEqual(all[at - 1]?.end ?? 0);
          }
          const some = semanticTokens(document.instrument, a, a + length);
          expect(some).toEqual(all.filter(({ start, end }) => end >= a && start <= a + length));
        },
      ),
    );
  });
});

describe('token data', () => {
  it('counts from the token before, as the protocol asks', () => {
    const source = new Source('a', 'ab cd\r\n  ef');
    const token = (start: number, end: number) => ({ start, end, kind: 1, marks: 2 });
    // Language Server Protocol 3.17, "Integer Encoding for Tokens": five numbers, line and start relative.
    expect(tokenData(source, [token(0, 2), token(3, 5), token(9, 11)])).toEqual([
      0, 0, 2, 1, 2, 0, 3, 2, 1, 2, 1, 2, 2, 1, 2,
    ]);
  });

  it('turns into the later one by its edits', () => {
    const numbers = fc.array(fc.nat(2), { maxLength: 20 });
    fc.assert(
      fc.property(numbers, numbers, (before, after) => {
        const result = [...before];
        for (const { start, deleteCount, data } of tokenEdits(before, after)) {
          result.splice(start, deleteCount, ...(data ?? []));
        }
        expect(result).toEqual(after);
      }),
    );
    expect(tokenEdits([1, 2, 3], [1, 2, 3])).toEqual([]);
  });
});

/** The text with each hint written in its place, in brackets. */
async function withHints(
  marked: string,
  choice: Partial<InlayChoice>,
  format: Format = 'sfz',
): Promise<string> {
  const { document, text } = await documentWithMark(marked, {}, format);
  const whole = { keyNames: false, effectiveValues: false, ...choice };
  let result = text;
  for (const { at, label } of inlayTexts(document.instrument, 0, text.length, whole).reverse()) {
    result = `${result.slice(0, at)}[${label}]${result.slice(at)}`;
  }
  return result;
}

describe('hints', () => {
  it('name the keys that are written as numbers', async () => {
    // Key 60 is c4 in SFZ (public documentation of the format).
    expect(await withHints('<region> key=60 hikey=c5 lovel=60 sw_last=0', { keyNames: true })).toBe(
      '<region> key=60[C4] hikey=c5 lovel=60 sw_last=0[C-1]',
    );
    expect(await withHints('<instrument><region key="61"/></instrument>', { keyNames: true }, 'xml')).toBe(
      '<instrument><region key="61[C#4]"/></instrument>',
    );
    expect(await withHints('<region> lokey=-1 key=200', { keyNames: true })).toBe(
      '<region> lokey=-1 key=200',
    );
  });

  it('tell where offsets move a key, which centres of tracking do not follow', async () => {
    expect(
      await withHints('<control> octave_offset=1\n<region> key=60 fil_keycenter=60', { keyNames: true }),
    ).toBe('<control> octave_offset=1\n<region> key=60[C4 → C5] fil_keycenter=60[C4]');
  });

  it('list what a region inherits where that is wanted', async () => {
    const text =
      '<global> volume=-3 tune=5\n<group> volume=-6 key=60\n<region> tune=1 sample=a.wav\n<region>';
    expect(await withHints(text, { effectiveValues: true })).toBe(
      '<global> volume=-3 tune=5\n<group> volume=-6 key=60\n' +
        '<region>[volume=-6 lokey=60 hikey=60 pitch_keycenter=60] tune=1 sample=a.wav\n' +
        '<region>[volume=-6 tune=5 lokey=60 hikey=60 pitch_keycenter=60]',
    );
    expect(await withHints(text, {})).toBe(text);
  });

  it('of a stretch are those that stand in it', async () => {
    const { document, text } = await documentWithMark('<region> key=60\n<region> key=61\n<region> key=62');
    const from = text.indexOf('key=61');
    const choice = { keyNames: true, effectiveValues: true };
    expect(inlayTexts(document.instrument, from, from + 6, choice).map(({ label }) => label)).toEqual([
      'C#4',
    ]);
  });
});

describe('what stands above headers', () => {
  it('counts regions, keys and velocity ranges of all that is inside', async () => {
    const text =
      '<global>\n<group>\n<region> lokey=36 hikey=47 hivel=63\n<region> lokey=36 hikey=47 lovel=64\n<group> volume=1\n<region> key=60\n<group>\n<region> lokey=-1 hikey=-1\n<group>';
    const { document } = await documentWithMark(text);
    const summaries = headerSummaries(document.instrument);
    expect(summaries.map(({ start, tagEnd, title }) => `${text.slice(start, tagEnd)} ${title}`)).toEqual([
      '<global> 4 regions, C2 to C4, 3 velocity ranges',
      '<group> 2 regions, C2 to B2, 2 velocity ranges',
      '<group> 1 region, C4',
      '<group> 1 region, no keys',
    ]);
    expect(summaries.map(({ start, end }) => text.slice(start, end).split('\n').length)).toEqual([
      8, 3, 2, 2,
    ]);
  });

  it('name a group without a label by what its samples share', async () => {
    const { document } = await documentWithMark(
      '<group>\n<region> sample=gong_p.wav key=60\n<region> sample=gong_f.wav key=60',
    );
    expect(headerSummaries(document.instrument).map(({ title }) => title)).toEqual(['Gong: 2 regions, C4']);
  });

  it('works in XML', async () => {
    const { document } = await documentWithMark(
      '<instrument><group key="60"><region/><region hivel="5"/></group></instrument>',
      {},
      'xml',
    );
    expect(headerSummaries(document.instrument).map(({ title }) => title)).toEqual([
      '2 regions, C4, 2 velocity ranges',
    ]);
  });
});

describe('what plays single regions', () => {
  const played = async (text: string) => {
    const { document } = await documentWithMark(text);
    return regionsToPlay(document.instrument).map(({ start, end }) => text.slice(start, end));
  };

  it('stands above those of several lines', async () => {
    const text =
      '<group> volume=1\n<region> key=60 // low\n\n<region>\nkey=61\nsample=a.wav\n<region>\n<region> key=62\ntune=3';
    expect(await played(text)).toEqual(['<region>\nkey=61\nsample=a.wav', '<region> key=62\ntune=3']);
  });

  it('stands above none of more than a thousand', async () => {
    expect(await played('<region>\nkey=60\n'.repeat(1000))).toHaveLength(1000);
    expect(await played('<region>\nkey=60\n'.repeat(1001))).toEqual([]);
  });
});

async function selections(marked: string, format: Format = 'sfz'): Promise<string[]> {
  const { document, text, offset } = await documentWithMark(marked, {}, format);
  return selectionsAt(document, offset).map(({ start, end }) => text.slice(start, end));
}

describe('selections around a place', () => {
  it('go from the value to the opcode, region, group and file', async () => {
    expect(await selections('// x\n<group> volume=1\n<region> key=6$00 hivel=9\n<region> key=61')).toEqual([
      '60',
      'key=60',
      '<region> key=60 hivel=9',
      '<group> volume=1\n<region> key=60 hivel=9\n<region> key=61',
      '// x\n<group> volume=1\n<region> key=60 hivel=9\n<region> key=61',
    ]);
  });

  it('go from the value over its quotes in XML', async () => {
    expect(
      await selections('<instrument><group a="1"><region key="6$00" hivel="9"/></group></instrument>', 'xml'),
    ).toEqual([
      '60',
      '"60"',
      'key="60"',
      '<region key="60" hivel="9"/>',
      '<group a="1"><region key="60" hivel="9"/></group>',
      '<instrument><group a="1"><region key="60" hivel="9"/></group></instrument>',
    ]);
  });

  it('start at a variable', async () => {
    expect((await selections('#define $A 1\n<region> sample=x$$0A.wav')).slice(0, 3)).toEqual([
      '$A',
      'x$A.wav',
      'sample=x$A.wav',
    ]);
  });

  it('each hold the one before and the place itself, wherever that is', async () => {
    const word = fc.constantFrom(
      '<region>',
      '<group>',
      '<global>',
      'key=60',
      'sample=a b.wav',
      '// x',
      '$A',
      '#define $A 1',
      '\n',
    );
    await fc.assert(
      fc.asyncProperty(fc.array(word, { maxLength: 20 }), fc.nat(200), async (words, at) => {
        const { document, text } = await documentWithMark(words.join(' '));
        const offset = Math.min(at, text.length);
        const found = selectionsAt(document, offset);
        expect(found.at(-1)).toEqual({ start: 0, end: text.length });
        let inner = { start: offset, end: offset };
        for (const one of found) {
          expect(one.start <= inner.start && one.end >= inner.end).toBe(true);
          expect(one).not.toEqual(
            text.length === 0 ? undefined : inner.start === inner.end ? undefined : inner,
          );
          inner = one;
        }
      }),
    );
  });
});
