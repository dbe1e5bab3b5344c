import { createRequire } from 'node:module';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { notesPage } from '../../../server/features/notesPage';
import type { Files } from '../../../server/model/files';
import type { LineNote } from '../../../server/model/writing/lineNotes';
import { foldNotes, lineNotes, parameterAbout } from '../../../server/model/writing/lineNotes';
import { sfzNotation } from '../../../server/sfz/notation';
import type { Vocabulary } from '../../../server/vocabulary/vocabulary';
import { vocabularyNotation } from '../../../server/vocabulary/vocabularyNotation';
import { convertInstrument } from '../../../server/workspace/convertInstrument';
import { SampleStore } from '../../../server/workspace/samples/sampleStore';
import { xmlNotation } from '../../../server/xml/notation';
import { examples } from '../vocabulary/examples';
import { anyInstrument } from '../vocabulary/writeAnyInstrument';

/** A reader of Markdown that others wrote (CommonMark 0.31, tables of GitHub Flavored Markdown), to read what we write. */
const markdown = (createRequire(import.meta.url)('markdown-it') as () => { render(text: string): string })();

const orchard: Vocabulary = {
  name: 'cider press',
  levels: [
    {
      element: 'press',
      is: 'group',
      parameters: [{ parameter: 'volume', at: '@force', form: { kind: 'level', unit: 'dB' } }],
    },
    {
      element: 'apple',
      is: 'region',
      parameters: [
        { parameter: 'sample', at: '@peel', form: { kind: 'path' } },
        {
          parameter: 'lokey',
          at: 'branch[@side="lower"]/@at',
          form: { kind: 'key', written: 'name', middleC: 'C4' },
        },
        { parameter: 'hikey', at: 'branch[@side="upper"]/@at', form: { kind: 'key', written: 'number' } },
        {
          parameter: 'loop_mode',
          at: '@juice',
          form: { kind: 'words', words: { on: 'loop_continuous', off: '' } },
        },
        { parameter: 'region_label', at: 'tag', form: { kind: 'text' } },
      ],
    },
  ],
};

/** Where no file is. */
const noFiles: Files = {
  stat: async () => undefined,
  list: async () => undefined,
  open: async () => undefined,
};
const samples = () => new SampleStore(noFiles);

describe('the account of a conversion from a vocabulary', () => {
  const text = `<press force="-3" colour="red">
  <apple peel="a.wav" juice="off" ripe="very">
    <branch side="lower" at="E2"/><branch side="upper" at="4x"/><branch side="inner" at="9"/>
    <tag>first</tag><leaf>green</leaf>
  </apple>
</press>
`;

  it.each([xmlNotation, sfzNotation])('has every value of the text ($format)', async (notation) => {
    const instrument = vocabularyNotation(orchard).read(text, { path: '/orchard/a.xml' });
    const {
      notes,
      kept,
      text: written,
    } = await convertInstrument(
      { instrument, vocabulary: orchard, folder: '/orchard' },
      notation,
      {},
      samples(),
    );
    const told = notes.map(({ kind, start, end }) => [kind, text.slice(start, end)]);
    expect(told).toEqual([
      ['ignored', 'colour="red'],
      ['ignored', 'ripe="very'],
      ['dropped', '4x'],
      // What elements of a name hold besides is told once, at the first.
      ['ignored', 'side="inner'],
      ['ignored', 'green'],
    ]);
    expect(notes.find(({ start }) => text.startsWith('side="inner', start))?.message).toContain('at="9"');
    expect(kept).toBe(4);
    const again = notation.read(written, { path: '/orchard/b' });
    expect(again.parameters.count).toBe(4);
    // Key 60 is C4 here, so E2 is 60 − 24 + 4.
    expect(again.lowKey[again.regions[0]]).toBe(40);
  });
});

describe('the account of a conversion to a vocabulary', () => {
  it('has every value: kept, rounded, or without a place', async () => {
    const text =
      '<region> sample=a.wav lokey=40 hikey=41 volume=-3 cutoff=900\n<region> sample=b.wav cutoff=800\nstray';
    const instrument = sfzNotation.read(text, { path: '/orchard/a.sfz' });
    const { notes, kept } = await convertInstrument(
      { instrument, folder: '/orchard' },
      vocabularyNotation(orchard),
      {},
      samples(),
    );
    const told = lineNotes(instrument, notes).map(({ kind, line, parameter, value }) => [
      kind,
      line,
      parameter,
      value,
    ]);
    expect(told).toContainEqual(['dropped', 1, 'cutoff', '900']);
    expect(told).toContainEqual(['dropped', 2, 'cutoff', '800']);
    expect(told).toContainEqual(['ignored', 3, undefined, undefined]);
    expect(told).toContainEqual(['assumed', 1, undefined, undefined]);
    // The word in the last line and the outermost element are no values.
    expect(kept + new Set(told.map(String)).size).toBe(instrument.parameters.count + 2);
  });
});

describe.each(Object.entries(examples))(
  'the account of a conversion to the vocabulary of the %s',
  (_, { vocabulary }) => {
    it('leaves no value out', async () => {
      const odd = fc.constantFrom(
        '',
        '<region> cutoff=900 lokey=x\n',
        '<curve> v000=1\n',
        '<group> tune=1 tune=2\n',
        'stray\n',
      );
      const texts = fc.tuple(odd, anyInstrument(vocabulary), odd).map((parts) => parts.join(''));
      await fc.assert(
        fc.asyncProperty(texts, async (text) => {
          const instrument = sfzNotation.read(text, { path: '/orchard/a.sfz' });
          const { notes, kept } = await convertInstrument(
            { instrument, folder: '/orchard' },
            vocabularyNotation(vocabulary),
            {},
            samples(),
          );
          const noted = new Set<number>();
          for (const { source, start, end } of notes) {
            const about = parameterAbout(instrument, source, start, end);
            if (about >= 0) noted.add(about);
          }
          const within = (parameter: number) => {
            const { start, end } = instrument.parameterSpan(parameter);
            return notes.some((one) => one.start <= start && end <= one.end);
          };
          for (let parameter = 0; parameter < instrument.parameters.count; parameter++)
            if (within(parameter)) noted.add(parameter);
          expect(kept + noted.size).toBe(instrument.parameters.count);
        }),
        { numRuns: 60 },
      );
    });
  },
);

const note = (line: number, message: string, more: Partial<LineNote> = {}): LineNote => ({
  kind: 'dropped',
  line,
  message,
  ...more,
});

describe('notes that say the same', () => {
  it('are put together with their lines', () => {
    const notes = [3, 4, 5, 9].map((line) =>
      note(line, `cutoff ${line}00 is left out.`, { parameter: 'cutoff', value: `${line}00` }),
    );
    const other = note(6, 'pan 3 is left out.', { parameter: 'pan', value: '3' });
    expect(foldNotes([...notes, other])).toEqual([
      { note: notes[0], count: 4, lines: '3–5, 9' },
      { note: other, count: 1, lines: '6' },
    ]);
  });

  it('of a thousand places are no thousand words', () => {
    const notes = Array.from({ length: 1000 }, (_, at) => note(at * 2 + 1, `"a${at}" is not read.`));
    const [only, ...more] = foldNotes(notes);
    expect(more).toEqual([]);
    expect(only).toMatchObject({
      count: 1000,
      lines: expect.stringMatching(/^1, 3, .* and 988 more places$/),
    });
  });

  it('never lose a note', () => {
    const anyNote = fc.record({
      kind: fc.constantFrom('assumed', 'approximated', 'dropped', 'ignored'),
      line: fc.integer({ min: 1, max: 40 }),
      message: fc.constantFrom('a 1 b', 'a 2 b', 'x "y" z', 'other'),
    }) as fc.Arbitrary<LineNote>;
    fc.assert(
      fc.property(fc.array(anyNote), (notes) => {
        const folded = foldNotes(notes);
        expect(folded.reduce((sum, { count }) => sum + count, 0)).toBe(notes.length);
      }),
    );
  });
});

describe('the page of notes', () => {
  it('has the counts at the top, as a reader of Markdown sees them', () => {
    const html = markdown.render(
      notesPage(
        'Notes for a*b*.sfz #',
        [note(3, 'x | <y> is *left* out', { parameter: 'x', value: '<b>' })],
        12,
      ),
    );
    expect(html).toContain('<h1>Notes for a*b*.sfz #</h1>');
    const items = [...html.matchAll(/<li>(.*?)<\/li>/g)].map(([, item]) => item);
    expect(items).toEqual([
      'Carried over exactly: 12',
      'Assumed: 0',
      'Written in another way: 0',
      'Left out: 1',
      'Not used: 0',
    ]);
    const cells = [...html.matchAll(/<td[^>]*>(.*?)<\/td>/g)].map(([, cell]) => cell);
    expect(cells).toEqual(['3', 'x | &lt;y&gt; is *left* out', 'x=&lt;b&gt;']);
  });

  it('says where nothing was lost', () => {
    expect(notesPage('Notes', [], 5)).toContain('Everything was carried over exactly.');
  });
});
