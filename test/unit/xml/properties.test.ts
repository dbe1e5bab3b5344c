import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../server/model/effectiveValues';
import type { Instrument } from '../../../server/model/instrument';
import { readSfz } from '../../../server/sfz/read';
import { readXml } from '../../../server/xml/read';
import { writeXml } from '../../../server/xml/write';
import { anyText } from './anyXml';
import { problemsOf } from './events';

const include = () => ({ kind: 'missing' }) as const;
const read = (text: string) => readXml(text, { path: 'a.instrument.xml', include });

function regions(instrument: Instrument) {
  return [...instrument.regions].map((region) => effectiveValues(instrument, region));
}

const attribute = fc.constantFrom(
  'key="60"',
  'lokey="c#4"',
  'hikey="-1"',
  'sample=" a b.wav"',
  'sample="&#32;a.wav"',
  'volume="-3.5"',
  'default_path="x/"',
  'note_offset="2"',
  'tune="$A"',
  'tune="99999999999999999999"',
  'locc74="1"',
  'region_label="&quot;&lt;&#9;é&#36;A"',
  'x:y="1"',
  'nonsense="1"',
);
const tag = fc
  .tuple(
    fc.constantFrom('region', 'region', 'group', 'master', 'global', 'control', 'curve', 'effect', 'odd'),
    fc.array(attribute, { maxLength: 3 }),
  )
  .map(([name, attributes]) => ({ name, start: [name, ...new Set(attributes)].join(' ') }));
const { content } = fc.letrec<{ content: string }>((tie) => ({
  content: fc.oneof(
    { maxDepth: 5 },
    tag.map(({ start }) => `<${start}/>`),
    fc.constantFrom(
      '<define name="A" value="7"/>',
      '<!-- - -- -->',
      '<!-- a -->',
      '\n',
      'word',
      '<include path="b"/>',
    ),
    fc.tuple(tag, fc.array(tie('content'), { maxLength: 4 })).map(([{ name, start }, inside]) => {
      return `<${start}>${inside.join('')}</${name}>`;
    }),
  ),
}));
const anyInstrument = fc
  .array(content, { maxLength: 8 })
  .map((list) => `<instrument>${list.join('')}</instrument>`);

const sfzPiece = fc.constantFrom(
  '<region>',
  '<region>',
  '<group>',
  '<master>',
  '<global>',
  '<control>',
  '<curve>',
  '<x>',
  '<define>',
  '\n',
  ' ',
  ' key=60',
  ' lokey=c4',
  ' key=62',
  ' sample=a & b.wav',
  ' sample="x".wav',
  ' default_path=x/',
  ' tune=$A',
  ' Key=3',
  ' 1st=2',
  '\n#define $A 3\n',
  '// -- remark\n',
  '/* two\nlines */',
  ' region_label=<3 > é',
  ' a:b=1',
  ' xmlns=1',
);
const anySfz = fc.array(sfzPiece, { maxLength: 40 }).map((pieces) => pieces.join(''));

describe('any text', () => {
  it('can be read, and every span lies inside it and reproduces its text', () => {
    fc.assert(
      fc.property(fc.oneof(anyText, anyInstrument), (text) => {
        const instrument = read(text);
        // One expectation for all places, as each takes longer than what it looks at.
        const wrong: string[] = [];
        const must = (holds: boolean, what: string) => {
          if (!holds) wrong.push(what);
        };
        let last = 0;
        for (let header = 0; header < instrument.headers.count; header++) {
          const { start, end } = instrument.headerSpan(header);
          const body = instrument.bodySpan(header);
          must(start >= last && end <= body.end && body.end <= text.length, `header ${header}`);
          last = start;
          must(end <= start || text[start] === '<', `start of header ${header}`);
        }
        for (let parameter = 0; parameter < instrument.parameters.count; parameter++) {
          const name = instrument.nameSpan(parameter);
          const value = instrument.valueSpan(parameter);
          const named = instrument.names.text(instrument.name(parameter));
          must(text.slice(name.start, name.end) === named, `name ${named}`);
          must(
            name.end <= value.start && value.start <= value.end && value.end <= text.length,
            `place of ${named}`,
          );
          const raw = text.slice(value.start, value.end);
          must(/[&$\t\r\n]/.test(raw) || instrument.valueText(parameter) === raw, `value of ${named}`);
        }
        for (const { start, end, message, related = [] } of instrument.findings) {
          must(message !== '', `message at ${start}`);
          for (const place of [{ start, end }, ...related])
            must(place.start >= 0 && place.end >= place.start && place.end <= text.length, message);
        }
        expect(wrong).toEqual([]);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('writing', () => {
  it('gives well-formed text with the same effective regions', () => {
    fc.assert(
      fc.property(fc.oneof(anyInstrument, anyText), (text) => {
        const instrument = read(text);
        const written = writeXml(instrument);
        expect(problemsOf(written.text)).toEqual([]);
        const dropped = written.notes.some(({ kind }) => kind === 'dropped');
        if (!dropped) expect(regions(read(written.text))).toEqual(regions(instrument));
      }),
      { numRuns: 1500 },
    );
  });

  it('carries SFZ over: the regions are the same but for what the notes say', () => {
    fc.assert(
      fc.property(anySfz, (text) => {
        const instrument = readSfz(text, { path: 'a.sfz', include });
        const written = writeXml(instrument);
        expect(problemsOf(written.text)).toEqual([]);
        const dropped = new Set(
          written.notes.flatMap(({ kind, message }) =>
            kind === 'dropped' ? [/^"(.+?)" is left out/.exec(message)?.[1] ?? ''] : [],
          ),
        );
        const kept = regions(instrument).map((values) =>
          Object.fromEntries(Object.entries(values).filter(([name]) => !dropped.has(name))),
        );
        expect(regions(read(written.text))).toEqual(kept);
      }),
      { numRuns: 1000 },
    );
  });

  it('settles: what was written and read is written the same', () => {
    fc.assert(
      fc.property(anyInstrument, (text) => {
        const once = writeXml(read(writeXml(read(text)).text)).text;
        expect(writeXml(read(once)).text).toBe(once);
      }),
      { numRuns: 1000 },
    );
  });
});
