import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../server/model/effectiveValues';
import type { ReadOptions } from '../../../server/model/notation';
import { readVocabularyXml } from '../../../server/vocabulary/read/readVocabularyXml';
import type { Vocabulary, VocabularyParameter } from '../../../server/vocabulary/vocabulary';
import type { Example, TrueValues } from './examples';
import { examples } from './examples';
import { facts } from './examples/invented';

function read({ vocabulary, text, samples }: Example) {
  return readVocabularyXml(vocabulary)(text, {
    path: 'instrument.xml',
    sampleFacts: (path) => samples.get(path),
  });
}

/** Numbers to half a hundred-thousandth: the texts hold exact decimals, what follows from them by a logarithm is none. */
function nearly(values: TrueValues): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(values).map(([name, value]) => [
      name,
      typeof value === 'number' && !Number.isInteger(value) ? expect.closeTo(value, 5) : value,
    ]),
  );
}

// What is true of each region was there before the text, which is rendered from it without any reader or writer.
describe.each(Object.entries(examples))('reading %s', (_, example) => {
  it('gives the true values of every region, and nothing to complain of', () => {
    const instrument = read(example);
    expect(instrument.findings).toEqual([]);
    const values = [...instrument.regions].map((region) => effectiveValues(instrument, region));
    expect(values).toEqual(example.regions.map(nearly));
  });

  it('keeps the parameters of each header in the order of their names', () => {
    const instrument = read(example);
    for (let header = 0; header < instrument.headers.count; header++) {
      for (let at = instrument.firstParameter(header) + 1; at < instrument.endParameter(header); at++) {
        expect(instrument.nameSpan(at).start).toBeGreaterThanOrEqual(instrument.nameSpan(at - 1).start);
        expect(instrument.valueSpan(at).start).toBeGreaterThanOrEqual(instrument.nameSpan(at).start);
      }
    }
  });
});

const number = { kind: 'number' } as const;
const key = { kind: 'key', written: 'number' } as const;

/** A vocabulary of levels that each have `tune` and more at the same places. */
function nested(...elements: string[]): Vocabulary {
  const parameters = [
    { parameter: 'tune', at: '@t', form: number },
    { parameter: 'volume', at: 'sound/@v', form: number },
    { parameter: 'pan', at: 'place', form: number },
  ];
  return {
    name: 'Nested',
    levels: elements.map((element, at) => ({
      element,
      is: at === elements.length - 1 ? 'region' : at === 0 ? 'instrument' : 'group',
      parameters,
    })),
  };
}

function instrumentOf(vocabulary: Vocabulary, text: string, options: Partial<ReadOptions> = {}) {
  return readVocabularyXml(vocabulary)(text, { path: 'a.xml', ...options });
}

const regionsOf = (vocabulary: Vocabulary, text: string) => {
  const instrument = instrumentOf(vocabulary, text);
  return [...instrument.regions].map((region) => effectiveValues(instrument, region));
};

/** A flat vocabulary with these parameters. */
function flat(...parameters: VocabularyParameter[]): Vocabulary {
  return {
    name: 'Flat',
    levels: [
      { element: 'shelf', is: 'instrument', parameters: [] },
      { element: 'jar', is: 'region', parameters },
    ],
  };
}

const findingsOf = (vocabulary: Vocabulary, text: string) =>
  instrumentOf(vocabulary, text).findings.map(
    ({ code, start, end, message }) => `${code} [${text.slice(start, end)}] ${message}`,
  );

describe('inheritance', () => {
  it('goes from outer elements to inner ones, and ends with the element', () => {
    const text = `<a t="1"><b t="2"><d/><c t="3"><d/><d t="4"/></c><d/></b><b><d/></b><d/></a>`;
    expect(regionsOf(nested('a', 'b', 'c', 'd'), text).map(({ tune }) => tune)).toEqual([2, 3, 4, 2, 1, 1]);
  });

  it('takes in what stands behind the regions', () => {
    const text = `<a><b t="2"><d t="4"/><d/><sound v="-3"/></b><d/><place>7</place><sound v="-1"/></a>`;
    expect(regionsOf(nested('a', 'b', 'd'), text)).toEqual([
      { pan: 7, volume: -3, tune: 4 },
      { pan: 7, volume: -3, tune: 2 },
      { pan: 7, volume: -1 },
    ]);
  });

  it('stays right in more levels than the model has headers', () => {
    const text = `<a t="1"><b><sound v="1"/><c><place>3</place><d t="5"><sound v="5"/><e><f/><sound v="6"/></e><f/></d>
      <f/><d><f/></d></c><f/></b><f t="9"/></a>`;
    expect(
      regionsOf(nested('a', 'b', 'c', 'd', 'e', 'f'), text).map(({ tune, volume, pan }) => [
        tune,
        volume,
        pan,
      ]),
    ).toEqual([
      [5, 6, 3],
      [5, 5, 3],
      [1, 1, 3],
      [1, 1, 3],
      [1, 1, undefined],
      [9, undefined, undefined],
    ]);
  });

  it('takes values of inner groups that stand behind inner regions', () => {
    const text = `<a><b><c><d><f/></d><place>8</place></c></b></a>`;
    expect(regionsOf(nested('a', 'b', 'c', 'd', 'f'), text)).toEqual([{ pan: 8 }]);
  });

  it('passes over elements between levels that are left out', () => {
    const vocabulary = nested('a', 'b', 'd');
    const wrapped = {
      ...vocabulary,
      levels: vocabulary.levels.map((level, at) => (at === 2 ? { ...level, inside: ['w', 'x'] } : level)),
    };
    const text = '<a><b t="1"><w><x><d/></x></w><d/><w><d/></w><y><d/></y></b><w><x><d/></x></w></a>';
    expect(regionsOf(wrapped, text)).toEqual([{ tune: 1 }, { tune: 1 }, { tune: 1 }, {}]);
  });
});

describe('values', () => {
  it('count as they stand last', () => {
    const vocabulary = flat(
      { parameter: 'tune', at: '@t', form: number },
      { parameter: 'tune', at: 'tone', form: number },
    );
    expect(regionsOf(vocabulary, '<shelf><jar t="1"><tone>2</tone><tone>3</tone></jar></shelf>')).toEqual([
      { tune: 3 },
    ]);
  });

  it('may be given to several parameters by one place', () => {
    const vocabulary = flat(
      { parameter: 'lokey', at: '@k', form: key },
      { parameter: 'hikey', at: '@k', form: key },
    );
    expect(regionsOf(vocabulary, '<shelf><jar k="60"/></shelf>')).toEqual([{ lokey: 60, hikey: 60 }]);
  });

  it('are read through references, CDATA sections and white space', () => {
    const vocabulary = flat(
      { parameter: 'sample', at: 'file', form: { kind: 'path' } },
      { parameter: 'region_label', at: '@n', form: { kind: 'text' } },
      { parameter: 'tune', at: '@t', form: number },
    );
    const text = `<shelf><jar n="Plum &amp; &#x41;pple" t=" &#49;2 "><file>
      a &amp;<!-- and --><![CDATA[ <b>.wav ]]> </file></jar>
      <jar><file><![CDATA[c & d.wav]]></file></jar></shelf>`;
    expect(regionsOf(vocabulary, text)).toEqual([
      { region_label: 'Plum & Apple', tune: 12, sample: 'a & <b>.wav' },
      { sample: 'c & d.wav' },
    ]);
    expect(findingsOf(vocabulary, text)).toEqual([]);
  });

  it('stand at their own part of a range', () => {
    const range = (part: 1 | 2, parameter: string) =>
      ({ parameter, at: '@k', part, form: { kind: 'key', written: 'name' } }) as const;
    const vocabulary = flat(range(1, 'lokey'), range(2, 'hikey'));
    const spans = (value: string) => {
      const text = `<shelf><jar k="${value}"/></shelf>`;
      const instrument = instrumentOf(vocabulary, text);
      return [0, 1].map((parameter) => {
        const { start, end } = instrument.valueSpan(parameter);
        return `${text.slice(start, end)}=${instrument.valueText(parameter)}`;
      });
    };
    expect(spans('C-1-C3')).toEqual(['C-1=0', 'C3=48']);
    expect(spans('36 - 48')).toEqual(['36=36', '48=48']);
    expect(spans('C2..C3')).toEqual(['C2=36', 'C3=48']);
    expect(spans('C2 to c3')).toEqual(['C2=36', 'c3=48']);
    expect(spans('36 48')).toEqual(['36=36', '48=48']);
    expect(spans('60')).toEqual(['60=60', '60=60']);
  });

  it('that say nothing set nothing', () => {
    const vocabulary = flat(
      { parameter: 'lokey', at: '@k', form: key },
      {
        parameter: 'loop_mode',
        at: '@l',
        form: { kind: 'words', words: { round: 'loop_continuous', '-': '' } },
      },
      { parameter: 'tune', at: 'tone', form: number },
    );
    const text = '<shelf><jar k="" l="-"><tone/></jar><jar l="round"><tone>  </tone></jar></shelf>';
    expect(regionsOf(vocabulary, text)).toEqual([{}, { loop_mode: 'loop_continuous' }]);
    expect(findingsOf(vocabulary, text)).toEqual([]);
  });

  it('go by what attributes say of their element', () => {
    const of = (name: string, more = '') => `set[@n="${name}"]${more}`;
    const vocabulary = flat(
      { parameter: 'tune', at: of('tone', '/@v'), form: number },
      { parameter: 'pan', at: of('side'), form: number },
      { parameter: 'volume', at: 'set[@n="loud"][@u="dB"]/@v', form: number },
      { parameter: 'amplitude', at: 'set[@n="loud"][@u="%"]/much/@v', form: number },
    );
    const text = `<shelf><jar><set v="3" n="tone"/><set n="side">4</set><set n="loud" u="dB" v="-1"/>
      <set u="%" n="loud"><much v="50"/></set><set n="other" v="9">9</set><set v="9"/></jar></shelf>`;
    expect(regionsOf(vocabulary, text)).toEqual([{ tune: 3, pan: 4, volume: -1, amplitude: 50 }]);
  });

  it('that go by the sample say what was assumed while it is not known', () => {
    const vocabulary = flat(
      { parameter: 'sample', at: '@f', form: { kind: 'path' } },
      { parameter: 'offset', at: '@o', form: { kind: 'position', unit: 'seconds' } },
    );
    const text = '<shelf><jar o="0.5" f="a.wav"/></shelf>';
    const unknown = instrumentOf(vocabulary, text);
    expect([unknown.valueText(0), unknown.parameters.translated?.assumed.get(0)]).toEqual([
      '22050',
      expect.stringContaining('44100 frames a second were assumed'),
    ]);
    const known = instrumentOf(vocabulary, text, { sampleFacts: () => facts(90_000, 48_000) });
    expect([known.valueText(0), known.parameters.translated?.assumed.size]).toEqual(['24000', 0]);
  });

  it('are counted from other values, inherited ones too', () => {
    const vocabulary: Vocabulary = {
      name: 'Lengths',
      levels: [
        {
          element: 'shelf',
          is: 'instrument',
          parameters: [{ parameter: 'loop_start', at: '@from', form: { kind: 'position', unit: 'frames' } }],
        },
        {
          element: 'jar',
          is: 'region',
          parameters: [
            {
              parameter: 'loop_end',
              at: '@long',
              form: { kind: 'position', unit: 'frames', from: 'loop_start' },
            },
            {
              parameter: 'loop_start',
              at: '@after',
              form: { kind: 'position', unit: 'frames', from: 'offset' },
            },
            { parameter: 'offset', at: '@skip', form: { kind: 'position', unit: 'frames' } },
          ],
        },
      ],
    };
    expect(
      regionsOf(vocabulary, '<shelf from="100"><jar long="50"/><jar long="50" after="7" skip="3"/></shelf>'),
    ).toEqual([
      { loop_start: 100, loop_end: 149 },
      { loop_start: 10, loop_end: 59, offset: 3 },
    ]);
  });
});

describe('what makes no sense', () => {
  const vocabulary = flat(
    { parameter: 'lokey', at: '@k', form: key },
    { parameter: 'hivel', at: '@v', form: { kind: 'velocity', most: 1 } },
    { parameter: 'loop_mode', at: '@l', form: { kind: 'words', words: { round: 'loop_continuous' } } },
    { parameter: 'offset', at: '@o', form: { kind: 'position', unit: 'seconds' } },
  );

  it('is told with what was expected, and sets nothing', () => {
    const text = '<shelf><jar k="H2" v="90" l="square" o="-1"/><jar k="3"/></shelf>';
    expect(findingsOf(vocabulary, text)).toEqual([
      'opcode-value [H2] "H2" sets no lokey. It takes a key number or a note name; key 60 is C4.',
      'opcode-value [90] "90" sets no hivel. It takes a velocity from 0 to 1.',
      'opcode-value [square] "square" sets no loop_mode. It takes one of round.',
      'opcode-value [-1] "-1" sets no offset. It takes a place in the sample in seconds, 0 or more.',
    ]);
    expect(regionsOf(vocabulary, text)).toEqual([{}, { lokey: 3 }]);
  });

  it('does not keep the rest from being read', () => {
    const text = '<shelf><jar k="3"<jar k="4"/></cupboard><jar k=5/>';
    expect(regionsOf(vocabulary, text)).toEqual([{ lokey: 3 }, { lokey: 4 }, { lokey: 5 }]);
    expect(findingsOf(vocabulary, text).every((one) => one.startsWith('syntax-error'))).toBe(true);
  });

  it('is passed over where the vocabulary does not know it', () => {
    const text = '<shelf x="1"><lid><jar k="1"/></lid><jar k="2" z:k="9"><k>7</k>stray</jar></shelf>';
    expect(regionsOf(vocabulary, text)).toEqual([{ lokey: 2 }]);
    expect(findingsOf(vocabulary, text)).toEqual([]);
  });

  it('is expanded from what the document declares itself, and never fetched', () => {
    const text = `<!DOCTYPE shelf [<!ENTITY k "60"><!ENTITY b SYSTEM "file:///b">]>
      <shelf><jar k="&k;"/><jar k="1"/></shelf>`;
    expect(regionsOf(vocabulary, text)).toEqual([{ lokey: 60 }, { lokey: 1 }]);
    expect(findingsOf(vocabulary, text)[0]).toContain(
      '[<!DOCTYPE] A document type declaration has no effect',
    );
  });

  it('is read through to its end, however much there is of it', () => {
    const depth = 200_000;
    expect(regionsOf(vocabulary, `${'<shelf>'.repeat(depth)}<jar k="1"/>`)).toEqual([]);
    const bomb = `<shelf><jar ${Array.from({ length: depth }, (_, at) => `a${at}="1"`).join(' ')} k="1"/></shelf>`;
    expect(regionsOf(vocabulary, bomb)).toEqual([{ lokey: 1 }]);
  });
});

describe.each(Object.entries(examples))('any text in the manner of %s', (_, { vocabulary, text }) => {
  it('is read without an error, with all places in it', () => {
    const start = text.slice(0, 4000);
    const mangled = fc
      .tuple(
        fc.nat(start.length),
        fc.nat(60),
        fc.string({ maxLength: 6, unit: fc.constantFrom(...'<>/"=& -a1') }),
      )
      .map(([at, length, put]) => start.slice(0, at) + put + start.slice(at + length));
    fc.assert(
      fc.property(mangled, (broken) => {
        const instrument = instrumentOf(vocabulary, broken);
        // One expectation for all, as each takes longer than what it looks at.
        const faults: unknown[] = [];
        for (let parameter = 0; parameter < instrument.parameters.count; parameter++) {
          for (const { start, end } of [instrument.nameSpan(parameter), instrument.valueSpan(parameter)]) {
            if (!(start <= end && start >= 0 && end <= broken.length)) faults.push({ start, end });
          }
          if (instrument.valueText(parameter) === '') faults.push(parameter);
        }
        expect(faults).toEqual([]);
      }),
    );
  });
});
