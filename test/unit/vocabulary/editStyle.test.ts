import { describe, expect, it } from 'vitest';
import { completionsAt } from '../../../server/features/completion/completion';
import { refactorings } from '../../../server/features/refactor/refactorings';
import { editedText } from '../../../server/model/editing/changedInstrument';
import type { Change } from '../../../server/model/notation';
import type { Vocabulary } from '../../../server/vocabulary/vocabulary';
import { vocabularyNotation } from '../../../server/vocabulary/vocabularyNotation';
import { documentWithMark } from '../features/documentWithMark';

const apiary: Vocabulary = {
  name: 'Apiary',
  levels: [
    { element: 'apiary', is: 'instrument', parameters: [] },
    {
      element: 'hive',
      is: 'group',
      parameters: [
        { parameter: 'volume', at: '@hum', form: { kind: 'level', unit: 'dB' } },
        { parameter: 'pan', at: 'leaning/@side', form: { kind: 'pan', left: -1, centre: 0, right: 1 } },
      ],
    },
    {
      element: 'bee',
      is: 'region',
      parameters: [
        { parameter: 'sample', at: '@buzz', form: { kind: 'path' } },
        {
          parameter: 'lokey',
          at: 'flight',
          part: 1,
          between: ' to ',
          form: { kind: 'key', written: 'number' },
        },
        {
          parameter: 'hikey',
          at: 'flight',
          part: 2,
          between: ' to ',
          form: { kind: 'key', written: 'number' },
        },
        { parameter: 'volume', at: '@hum', form: { kind: 'level', unit: 'dB' } },
        { parameter: 'tune', at: '@wing', form: { kind: 'tuning', unit: 'semitones' } },
        { parameter: 'loop_start', at: 'dance/@from', form: { kind: 'position', unit: 'frames' } },
        {
          parameter: 'loop_end',
          at: 'dance/@steps',
          form: { kind: 'position', unit: 'frames', from: 'loop_start' },
        },
        {
          parameter: 'loop_mode',
          at: 'dance/@kind',
          form: { kind: 'words', words: { round: 'loop_continuous', none: 'no_loop' } },
        },
      ],
    },
  ],
};

const notation = vocabularyNotation(apiary);
const read = (text: string) => notation.read(text, { path: 'a.xml' });
const changed = (text: string, change: Change) => editedText(text, notation.edit(read(text), change).edits);
const inHive = (...lines: string[]) =>
  ['<apiary>', '  <hive>', ...lines, '  </hive>', '</apiary>'].join('\n');

/** The number of the first region of {@link inHive}: behind those of the instrument, if it has one, and the group. */
const firstRegion = (text: string) => read(text).regions[0];

describe('setting a value', () => {
  it.each([
    ['<bee hum="1" wing="0.50"/>', 'tune', '25', '<bee hum="1" wing="0.25"/>'],
    [`<bee hum='1'/>`, 'tune', '25', `<bee hum='1' wing='0.25'/>`],
    ['<bee/>', 'lokey', '40', '<bee>\n      <flight>40 to 127</flight>\n    </bee>'],
    ['<bee><flight>36 - 48</flight></bee>', 'hikey', '50', '<bee><flight>36 - 50</flight></bee>'],
    ['<bee><flight>36</flight></bee>', 'hikey', '50', '<bee><flight>36 to 50</flight></bee>'],
    ['<bee buzz="a.wav"></bee>', 'sample', 'b & c.wav', '<bee buzz="b &amp; c.wav"></bee>'],
    [
      '<bee>\n      <dance from="5"/>\n    </bee>',
      'loop_mode',
      'no_loop',
      '<bee>\n      <dance from="5" kind="none"/>\n    </bee>',
    ],
    // A loop whose length is written stays where it ends.
    [
      '<bee><dance from="100" steps="50"/></bee>',
      'loop_start',
      '120',
      '<bee><dance from="120" steps="30"/></bee>',
    ],
    [
      '<bee><dance from="100" steps="50"/></bee>',
      'loop_end',
      '159',
      '<bee><dance from="100" steps="60"/></bee>',
    ],
  ])('%j: %s=%s', (element, name, value, result) => {
    const text = inHive(`    ${element}`);
    const change: Change = { kind: 'set', header: firstRegion(text), name, value };
    expect(changed(text, change)).toBe(inHive(`    ${result}`));
  });

  it('goes where other regions have it', () => {
    const text = inHive(
      '    <bee buzz="a.wav"',
      '         wing="1" colour="red"',
      '         hum="-3"/>',
      '    <bee buzz="b.wav" hum="-4"/>',
    );
    const header = read(text).regions[1];
    expect(changed(text, { kind: 'set', header, name: 'tune', value: '100' })).toBe(
      text.replace('"b.wav" hum', '"b.wav" wing="1" hum'),
    );
  });
});

describe('taking out, renaming, several at once', () => {
  it.each([
    ['<bee hum="1" wing="0.5"/>', 'volume', '<bee wing="0.5"/>'],
    [
      '<bee hum="1">\n      <flight>36 to 48</flight>\n    </bee>',
      'lokey',
      '<bee hum="1">\n      <flight>0 to 48</flight>\n    </bee>',
    ],
    [
      '<bee hum="1">\n      <dance from="5"/>\n      <flight>1-2</flight>\n    </bee>',
      'loop_start',
      '<bee hum="1">\n      <flight>1-2</flight>\n    </bee>',
    ],
    ['<bee hum="1"><dance from="5" cheer="9"/></bee>', 'loop_start', '<bee hum="1"><dance cheer="9"/></bee>'],
  ])('%j without %s', (element, name, result) => {
    const text = inHive(`    ${element}`);
    const instrument = read(text);
    const parameter = instrument.own(firstRegion(text), instrument.names.idOf(name));
    expect(changed(text, { kind: 'remove', parameter })).toBe(inHive(`    ${result}`));
  });

  it('takes both ends of a range out together, and adds others', () => {
    const text = inHive('    <bee hum="1">', '      <flight>36 to 48</flight>', '    </bee>');
    const instrument = read(text);
    const header = firstRegion(text);
    const remove = ['lokey', 'hikey'].map((name) => instrument.own(header, instrument.names.idOf(name)));
    const add = [{ name: 'tune', value: '100' }];
    expect(changed(text, { kind: 'revise', header, remove, add })).toBe(
      inHive('    <bee hum="1" wing="1">', '    </bee>'),
    );
  });

  it('takes the values of a group out, and leaves the group to its regions', () => {
    const text =
      '<apiary>\n  <hive hum="3" keeper="x">\n    <leaning side="1"/>\n    <bee/>\n  </hive>\n</apiary>';
    const header = read(text).parent(firstRegion(text));
    expect(changed(text, { kind: 'removeHeader', header })).toBe(
      '<apiary>\n  <hive keeper="x">\n    <bee/>\n  </hive>\n</apiary>',
    );
  });
});

describe('groups', () => {
  const group = (text: string, first: number, last: number) => {
    const instrument = read(text);
    const { edits } = notation.edit(instrument, {
      kind: 'group',
      first: instrument.regions[first],
      last: instrument.regions[last],
      sets: [{ name: 'volume', value: '-3' }],
    });
    return editedText(text, edits);
  };

  it('divides the group that regions stand in', () => {
    const bees = ['a', 'b', 'c'].map((name) => `    <bee buzz="${name}"/>`);
    const [a, b, c] = bees;
    const text = `<apiary>\n  <hive hum='-3'>\n${bees.join('\n')}\n  </hive>\n</apiary>`;
    const next = `  </hive>\n  <hive hum='-3'>`;
    expect(group(text, 1, 1)).toBe(
      `<apiary>\n  <hive hum='-3'>\n${a}\n${next}\n${b}\n${next}\n${c}\n  </hive>\n</apiary>`,
    );
    expect(group(text, 0, 1)).toBe(
      `<apiary>\n  <hive hum='-3'>\n${a}\n${b}\n${next}\n${c}\n  </hive>\n</apiary>`,
    );
  });

  it('makes one around regions that stand in none', () => {
    expect(group('<apiary>\n  <bee buzz="a"/>\n  <bee\n    buzz="b"/>\n</apiary>', 0, 1)).toBe(
      '<apiary>\n  <hive hum="-3">\n    <bee buzz="a"/>\n    <bee\n      buzz="b"/>\n  </hive>\n</apiary>',
    );
  });
});

describe('paths to samples', () => {
  const lodge: Vocabulary = {
    name: 'Lodge',
    levels: [
      { element: 'lodge', is: 'instrument', parameters: [] },
      {
        element: 'guest',
        is: 'region',
        parameters: [
          {
            parameter: 'sample',
            at: '@voice',
            form: { kind: 'path', folder: 'voices', ending: '.wav', separator: '\\' },
          },
        ],
      },
    ],
  };
  const lodgeNotation = vocabularyNotation(lodge);

  it('are completed below the folder of the vocabulary', async () => {
    const marked = '<lodge><guest voice="$0"/></lodge>';
    const { document, text, offset } = await documentWithMark(marked, {
      '/music/voices/deep/a.wav': '',
      '/music/b.wav': '',
    });
    const instrument = lodgeNotation.read(text, { path: '/music/main.xml' });
    const offers = await completionsAt({ ...document, notation: lodgeNotation, instrument }, offset);
    expect(
      offers.filter(({ kind }) => kind === 'folder' || kind === 'file').map(({ label }) => label),
    ).toEqual(['deep/']);
  });

  it('are changed in the form of the vocabulary', () => {
    const text = '<lodge><guest voice="deep\\a"/></lodge>';
    const instrument = lodgeNotation.read(text, { path: 'a.xml' });
    const header = instrument.regions[0];
    const change: Change = { kind: 'set', header, name: 'sample', value: 'voices/high/b.wav' };
    expect(editedText(text, lodgeNotation.edit(instrument, change).edits)).toBe(
      '<lodge><guest voice="high\\b"/></lodge>',
    );
    expect(lodgeNotation.spelling.inForm?.('sample', 'voices/high/b.wav', '')).toBe('high\\b');
  });
});

describe('layout', () => {
  it('indents elements and leaves texts and the order of attributes', () => {
    const text =
      '<apiary>\n<hive hum="1">\n      <!-- a -->\n <bee wing="1"\n      buzz="a"><flight>\n36-48\n</flight>\n</bee>\n</hive>\n  </apiary>';
    const edits = notation.layOut(read(text), {
      headers: 'inline',
      opcodeOrder: 'canonical',
      alignColumns: true,
      indentation: '  ',
    });
    expect(editedText(text, edits)).toBe(
      '<apiary>\n  <hive hum="1">\n    <!-- a -->\n    <bee wing="1"\n         buzz="a"><flight>\n36-48\n</flight>\n    </bee>\n  </hive>\n</apiary>',
    );
  });
});

/** A document with a cursor at `$0`, read in the vocabulary. */
async function documentAt(marked: string) {
  const start = marked.indexOf('$0');
  const { document } = await documentWithMark(marked.replace('$0', ''), {}, 'xml');
  const instrument = read(marked.replace('$0', ''));
  return { ...document, notation, instrument, start, end: start };
}

describe('features', () => {
  it('offers what the vocabulary knows', async () => {
    const labels = async (marked: string) => {
      const document = await documentAt(marked);
      return (await completionsAt(document, document.start)).map(({ label }) => label);
    };
    expect(await labels(inHive('    <bee $0/>'))).toEqual(['buzz', 'hum', 'wing']);
    expect(await labels(inHive('    <bee><dance $0/></bee>'))).toEqual(['from', 'steps', 'kind']);
    expect(await labels(inHive('    <bee><dance kind="$0"/></bee>'))).toEqual(['none', 'round']);
    expect(await labels(inHive('    <bee><fli$0</bee>'))).toContain('flight');
    expect(await labels(inHive('    <b$0'))).toEqual(expect.arrayContaining(['bee', 'hive']));
  });

  it('makes no refactoring that would lose a value', async () => {
    const find = (id: string) => refactorings.find((one) => one.id === id);
    const text = '<apiary>\n  <hive hum="3">\n    <leaning side="1"/>\n    <bee$0/>\n  </hive>\n</apiary>';
    // A region has no place for the group's pan.
    expect(await find('pushDown')?.make(await documentAt(text))).toBeUndefined();
    const made = await find('pushDown')?.make(
      await documentAt(text.replace('    <leaning side="1"/>\n', '')),
    );
    expect(
      editedText(text.replace('$0', '').replace('    <leaning side="1"/>\n', ''), made?.edits ?? []),
    ).toBe('<apiary>\n  <hive>\n    <bee hum="3"/>\n  </hive>\n</apiary>');
    expect(
      find('keysAsNames')?.offer(await documentAt(inHive('    <bee><flight>3$06 to 48</flight></bee>'))),
    ).toBeUndefined();
  });
});
