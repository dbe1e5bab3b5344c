import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatDocument, formatOnType, formatRange } from '../../../server/features/format';
import type { FormatStyle } from '../../../server/model/formatStyle';
import { headerLayouts, opcodeOrders, usualFormatStyle } from '../../../server/model/formatStyle';
import { notations } from '../../../server/workspace/notations/notationOf';
import type { Format } from './anyInstrument';
import {
  anyInstrumentXml,
  anySfz,
  effective,
  faultyInstrumentXml,
  faultySfz,
  includedFiles,
  readText,
} from './anyInstrument';
import { withEdits } from './appliedEdits';
import { documentWithMark } from './documentWithMark';

async function formatted(
  text: string,
  style: Partial<FormatStyle> = {},
  format: Format = 'sfz',
): Promise<string> {
  const { document } = await documentWithMark(text, {}, format);
  return withEdits(text, formatDocument(document, { ...usualFormatStyle, ...style }));
}

describe('formatting SFZ', () => {
  it('puts regions in a line and opcodes of other headers below them', async () => {
    expect(
      await formatted(
        '<group>  lovel=1 hivel=63\n<region>sample=soft a.wav\n\tlokey=  60\n hikey=64\n\n\n\n<region> key=65   ',
      ),
    ).toBe('<group>\nlovel=1\nhivel=63\n<region> sample=soft a.wav lokey=60 hikey=64\n\n<region> key=65\n');
  });

  it('goes on in lines that are laid out already', async () => {
    expect(
      await formatted('<region> key=60 pan=1\nvolume=2\n<region> key=61 pan= 2 tune=3\n<region> key=62\n'),
    ).toBe('<region> key=60 pan=1 volume=2\n<region> key=61 pan=2 tune=3\n<region> key=62\n');
  });

  it('puts every header in the line of its opcodes', async () => {
    expect(await formatted('<group>\nlovel=1\nhivel=63\n<region>\nkey=60\n', { headers: 'inline' })).toBe(
      '<group> lovel=1 hivel=63\n<region> key=60\n',
    );
  });

  it('puts every header and opcode in a line of its own', async () => {
    expect(await formatted('<group> lovel=1 // soft\n<region> key=60 pan=3\n', { headers: 'ownLine' })).toBe(
      '<group> // soft\nlovel=1\n<region>\nkey=60\npan=3\n',
    );
  });

  it('puts opcodes in the usual order and keeps the order of those that override one another', async () => {
    expect(
      await formatted('<region> pan=5 hikey=62 key=60 hivel=40 sample=a.wav lovel=2 nothing_known=1 tune=1', {
        opcodeOrder: 'canonical',
      }),
    ).toBe('<region> sample=a.wav hikey=62 key=60 lovel=2 hivel=40 pan=5 tune=1 nothing_known=1\n');
  });

  it('aligns regions in successive lines as far as their opcodes agree', async () => {
    expect(
      await formatted(
        '<region> sample=a.wav lokey=0 hikey=9\n<region> sample=soft b.wav lokey=10 hikey=100 pan=3\n<region> sample=c.wav pan=1\n',
        { alignColumns: true },
      ),
    ).toBe(
      '<region> sample=a.wav      lokey=0  hikey=9\n<region> sample=soft b.wav lokey=10 hikey=100 pan=3\n<region> sample=c.wav      pan=1\n',
    );
  });

  it('leaves remarks, defines and includes where they belong', async () => {
    expect(
      await formatted(
        '//   head\n#define  $K   60 // middle\n#include   "x.sfz"\n<region> key=$K // here\n/* all\n   of it */\n<region> key=1 /* one */ pan=2',
      ),
    ).toBe(
      '//   head\n#define $K 60 // middle\n#include "x.sfz"\n<region> key=$K // here\n/* all\n   of it */\n<region> key=1 /* one */ pan=2\n',
    );
  });

  it('leaves lines with syntax errors as they are', async () => {
    expect(await formatted('<region>   key=1\n  stray   words  key=3\n<region>  pan=2')).toBe(
      '<region> key=1\n  stray   words  key=3\n<region> pan=2\n',
    );
    expect(await formatted('<region>   key=1 /* open\n   end  ')).toBe('<region>   key=1 /* open\n   end  ');
  });

  it('keeps line ends and a byte order mark', async () => {
    expect(await formatted('\ufeff<region>\r\nkey=1\r\n<region>  pan=2')).toBe(
      '\ufeff<region> key=1\r\n<region> pan=2\r\n',
    );
  });

  it('moves no byte order mark from further down to the start, where it would be none of the text', async () => {
    const text = '\n\ufeff#include "b.sfz"\n<region> key=1\n';
    expect(await formatted(text)).toBe(text);
    expect(await formatted('\n#include "b.sfz"\n<region> key=1\n')).toBe(
      '#include "b.sfz"\n<region> key=1\n',
    );
  });

  it('has nothing to do in an empty text', async () => {
    expect(await formatted('')).toBe('');
    expect(await formatted('\n\n')).toBe('\n\n');
  });
});

describe('formatting instrument XML', () => {
  it('indents elements and spaces attributes', async () => {
    expect(
      await formatted(
        '<?xml version="1.0"?><instrument><!-- x --><group lovel = "1"\n hivel=\'63\'><region sample="a.wav"   key="60" />\n\n\n<region/></group  ></instrument>',
        {},
        'xml',
      ),
    ).toBe(
      '<?xml version="1.0"?>\n<instrument> <!-- x -->\n  <group lovel="1" hivel=\'63\'>\n    <region sample="a.wav" key="60"/>\n\n    <region/>\n  </group>\n</instrument>\n',
    );
  });

  it('puts attributes on lines of their own, in the usual order, or in columns', async () => {
    const text =
      '<instrument>\n<define name="A" value="1"/>\n<region pan="1" sample="a.wav"/>\n<region pan="10" sample="b.wav"/></instrument>\n';
    expect(
      await formatted(text, { headers: 'ownLine', indentation: '\t', opcodeOrder: 'canonical' }, 'xml'),
    ).toBe(
      '<instrument>\n\t<define name="A" value="1"/>\n\t<region\n\t\tsample="a.wav"\n\t\tpan="1"/>\n\t<region\n\t\tsample="b.wav"\n\t\tpan="10"/>\n</instrument>\n',
    );
    expect(await formatted(text, { alignColumns: true }, 'xml')).toBe(
      '<instrument>\n  <define name="A" value="1"/>\n  <region pan="1"  sample="a.wav"/>\n  <region pan="10" sample="b.wav"/>\n</instrument>\n',
    );
  });

  it('leaves lines with syntax errors as they are', async () => {
    expect(
      await formatted(
        '<instrument>\n<region   key=60  />\n<region   key="61"/>\nstray  <region/>\n</instrument>',
        {},
        'xml',
      ),
    ).toBe('<instrument>\n<region   key=60  />\n  <region key="61"/>\nstray  <region/>\n</instrument>\n');
  });
});

describe('formatting a part', () => {
  it('lays out the lines that a selection touches and nothing else', async () => {
    const text = '<region>  key=1\n<region>  key=2  pan=1\n<region>  key=3\n';
    const { document } = await documentWithMark(text);
    const at = text.indexOf('key=2');
    expect(withEdits(text, formatRange(document, at, at, usualFormatStyle))).toBe(
      '<region>  key=1\n<region> key=2 pan=1\n<region>  key=3\n',
    );
    const line = text.indexOf('<region>  key=2');
    expect(withEdits(text, formatRange(document, 0, line, usualFormatStyle))).toBe(
      '<region> key=1\n<region>  key=2  pan=1\n<region>  key=3\n',
    );
  });

  it('indents the first line of a selection in XML', async () => {
    const text = '<instrument>\n<region/>\n<region/>\n</instrument>\n';
    const { document } = await documentWithMark(text, {}, 'xml');
    const at = text.indexOf('<region/>');
    expect(withEdits(text, formatRange(document, at, at + 3, usualFormatStyle))).toBe(
      '<instrument>\n  <region/>\n<region/>\n</instrument>\n',
    );
  });

  it.each([
    [
      'sfz',
      '<region>  key=1\n<region>   key=2  \n$0\n<region>  key=3\n',
      '<region>  key=1\n<region> key=2\n\n<region>  key=3\n',
    ],
    ['sfz', 'key=1  <region>$0  pan=2', 'key=1\n<region>  pan=2'],
    [
      'xml',
      '<instrument>\n<region  key="1"  />$0</instrument>',
      '<instrument>\n  <region key="1"/></instrument>',
    ],
  ] as const)('lays out the %s line that was finished by typing', async (format, marked, expected) => {
    const { document, text, offset } = await documentWithMark(marked, {}, format);
    const typed = text[offset - 1];
    expect(withEdits(text, formatOnType(document, offset, typed, usualFormatStyle))).toBe(expected);
  });
});

it('does not bring an empty value before a directive in the same line', async () => {
  const text = '<region> volume= sample=a.wav #define $A hivel=60\n$A\n';
  const { document } = await documentWithMark(text);
  const edits = formatDocument(document, { ...usualFormatStyle, opcodeOrder: 'canonical' });
  const before = effective(document.instrument);
  for (const edit of edits) {
    expect(
      effective(
        readText(
          'sfz',
          withEdits(
            text,
            edits.filter((one) => one !== edit),
          ),
        ),
      ),
    ).toEqual(before);
  }
});

const styles: fc.Arbitrary<FormatStyle> = fc.record({
  headers: fc.constantFrom(...headerLayouts),
  opcodeOrder: fc.constantFrom(...opcodeOrders),
  alignColumns: fc.boolean(),
  indentation: fc.constantFrom('  ', '\t'),
});

describe.each([
  ['sfz', anySfz],
  ['sfz', faultySfz],
  ['xml', anyInstrumentXml],
  ['xml', faultyInstrumentXml],
] as const)('formatting any %s text', (format, texts) => {
  const meaning = (text: string) => {
    const instrument = readText(format, text, includedFiles);
    return {
      effective: effective(instrument),
      kinds: [...instrument.headers.kinds.subarray(0, instrument.headers.count)],
      comments: instrument.directives.map(({ kind, name, value }) => [
        kind,
        name,
        value.replace(/\s+/g, ' '),
      ]),
      parameters: instrument.parameters.count,
    };
  };
  const once = (text: string, style: FormatStyle) =>
    withEdits(text, notations[format].layOut(readText(format, text, includedFiles), style));

  it('leaves its meaning', () => {
    fc.assert(
      fc.property(texts, styles, (text, style) => {
        const before = meaning(text);
        const after = meaning(once(text, style));
        expect(after.effective).toEqual(before.effective);
        expect(after.kinds).toEqual(before.kinds);
        expect(after.parameters).toBe(before.parameters);
        expect(after.comments).toEqual(before.comments);
      }),
      { numRuns: 150 },
    );
  });

  it('changes nothing the second time', () => {
    fc.assert(
      fc.property(texts, styles, (text, style) => {
        const first = once(text, style);
        expect(once(first, style)).toBe(first);
      }),
      { numRuns: 150 },
    );
  });

  it('leaves its meaning when only some of the edits are made', () => {
    fc.assert(
      fc.property(texts, styles, fc.nat(), (text, style, some) => {
        const edits = notations[format].layOut(readText(format, text, includedFiles), style);
        const part = edits.filter((_, place) => (some >> (place % 20)) & 1);
        expect(meaning(withEdits(text, part)).effective).toEqual(meaning(text).effective);
      }),
      { numRuns: 80 },
    );
  });
});
