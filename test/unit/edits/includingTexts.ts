import fc from 'fast-check';

/** The texts of an instrument by path; the main file first. */
export interface Texts {
  main: string;
  files: Readonly<Record<string, string>>;
}

const folder = '/music/';

/** Opcodes and values for which there are findings with fixes: aliases, faults, missing files, loops past their end. */
const opcode = fc.oneof(
  {
    weight: 4,
    arbitrary: fc.tuple(
      fc.constantFrom('key', 'lokey', 'hikey', 'pitch_keycenter'),
      fc.constantFrom('60', '60', '61', '72', 'c4', '$KEY', '$KEYS', '40'),
    ),
  },
  {
    weight: 4,
    arbitrary: fc.tuple(
      fc.constant('sample'),
      fc.constantFrom('a.wav', 'a.wav', 'A.WAV', 'b.wav', 'c.wav', '$NAME.wav', 'two words.wav'),
    ),
  },
  {
    weight: 3,
    arbitrary: fc.tuple(
      fc.constantFrom('lovel', 'hivel'),
      fc.constantFrom('0', '63', '64', '127', '200', 'x', '30'),
    ),
  },
  {
    weight: 3,
    arbitrary: fc.tuple(
      fc.constantFrom('offset', 'end', 'loop_start', 'loop_end', 'loopend'),
      fc.constantFrom('10', '99', '100', '5000'),
    ),
  },
  {
    weight: 3,
    arbitrary: fc.tuple(
      fc.constantFrom('seq_length', 'seq_position', 'lorand', 'hirand', 'xfin_lokey', 'xfin_hikey'),
      fc.constantFrom('1', '2', '3', '0.5', '70'),
    ),
  },
  {
    weight: 3,
    arbitrary: fc.constantFrom<[string, string][]>(
      ['volum', '-3'],
      ['loopmode', 'loop_continuous'],
      ['loop_mode', 'loop_continuous'],
      ['volume', '-6'],
      ['volume', '-6'],
      ['tune', '20'],
      ['transpose', '1'],
      ['pan', '300'],
      ['trigger', 'attac'],
      ['off_by', '3'],
      ['default_path', 'x/'],
      ['ampeg_release', '0.5'],
      ['sw_last', '36'],
      ['locc64', '64'],
      ['group_label', 'Soft'],
      ['region_label', 'one'],
      ['odd-name', '1'],
    ),
  },
);

const header = fc.constantFrom(
  'region',
  'region',
  'region',
  'region',
  'group',
  'group',
  'master',
  'global',
  'control',
);
const gap = fc.constantFrom(' ', ' ', ' ', '\n', '\n', '\n\n', '\t', '  ', '\r\n');
const remark = fc.constantFrom('// remark\n', '/* aside */', '/* over\nlines */', '// <region> key=3\n');
const define = fc.constantFrom(
  '#define $KEY 60\n',
  '\n#define $KEYS 62\n',
  '#define $NAME a\n',
  '\n#define $KEY 61\n',
  '#define $SOFT hivel=63\n',
  '\n$SOFT\n',
);

function sfzPart(includes: readonly string[]): fc.Arbitrary<string> {
  const parts = [
    { weight: 12, arbitrary: opcode.map(([name, value]) => `${name}=${value}`) },
    { weight: 6, arbitrary: header.map((name) => `<${name}>`) },
    { weight: 2, arbitrary: fc.constant('<region> sample=a.wav key=60') },
    { weight: 1, arbitrary: remark },
    { weight: 2, arbitrary: define },
  ];
  if (includes.length > 0) {
    const include = fc.constantFrom(...includes.map((name) => `#include "${name}"\n`));
    parts.push({ weight: 3, arbitrary: include.chain((one) => fc.constantFrom(one, `\n${one}`)) });
  }
  return fc.oneof(...parts);
}

function sfzText(includes: readonly string[], most: number): fc.Arbitrary<string> {
  return fc
    .array(fc.tuple(sfzPart(includes), gap), { maxLength: most })
    .map((parts) => parts.flat().join(''));
}

/** SFZ whose parts stand in files that include one another anywhere, several times as well. */
export const anyIncludingSfz: fc.Arbitrary<Texts> = fc
  .tuple(
    sfzText(['a.sfz', 'b.sfz', 'c.sfz'], 30),
    sfzText(['b.sfz', 'c.sfz'], 10),
    sfzText(['c.sfz'], 8),
    sfzText([], 6),
  )
  .map(([main, a, b, c]) => ({
    main,
    files: { [`${folder}a.sfz`]: a, [`${folder}b.sfz`]: b, [`${folder}c.sfz`]: c },
  }));

const attributes = fc.uniqueArray(opcode, { selector: ([name]) => name, maxLength: 6 }).chain((list) =>
  fc.array(fc.constantFrom(' ', ' ', '\n   ', '\t'), { minLength: 6, maxLength: 6 }).map((gaps) =>
    list
      .filter(([name]) => /^\w+$/.test(name))
      .map(([name, value], at) => `${gaps[at]}${name}=${at === 1 ? `'${value}'` : `"${value}"`}`)
      .join(''),
  ),
);
const xmlGap = fc.constantFrom('', ' ', '\n', '\n\n', '\r\n  ');
const xmlDefine = fc.constantFrom(
  '<define name="KEY" value="60"/>',
  '<define name="KEYS" value="62"/>',
  '<define name="NAME" value="a"/>',
);

function xmlParts(includes: readonly string[], depth: number): fc.Arbitrary<string> {
  const region = fc
    .tuple(attributes, fc.constantFrom('/>', ' />', '></region>'))
    .map(([list, end]) => `<region${list}${end}`);
  const flat = fc
    .tuple(fc.constantFrom('group', 'master', 'global', 'control'), attributes)
    .map(([name, list]) => `<${name}${list}/>`);
  const parts: fc.WeightedArbitrary<string>[] = [
    { weight: 6, arbitrary: region },
    { weight: 2, arbitrary: fc.constant('<region sample="a.wav" key="60"/>') },
    { weight: 1, arbitrary: fc.constant('<!-- remark -->') },
    { weight: 1, arbitrary: xmlDefine },
    { weight: 1, arbitrary: flat },
  ];
  if (depth > 0) {
    const inner = fc
      .constantFrom('group', 'master')
      .chain((name) =>
        fc
          .tuple(attributes, xmlParts(includes, depth - 1), xmlGap)
          .map(([list, inside, blank]) => `<${name}${list}>${blank}${inside}</${name}>`),
      );
    parts.push({ weight: 2, arbitrary: inner });
  }
  if (includes.length > 0)
    parts.push({
      weight: 2,
      arbitrary: fc.constantFrom(...includes.map((name) => `<include path="${name}"/>`)),
    });
  return fc
    .array(fc.tuple(fc.oneof(...parts), xmlGap), { maxLength: depth > 0 ? 8 : 4 })
    .map((list) => list.flat().join(''));
}

function xmlText(includes: readonly string[]): fc.Arbitrary<string> {
  return xmlParts(includes, 1).map((parts) => `<instrument>${parts}</instrument>`);
}

/** Instrument XML whose parts stand in files of XML and SFZ that are included anywhere, several times as well. */
export const anyIncludingXml: fc.Arbitrary<Texts> = fc
  .tuple(
    xmlText(['a.xml', 'b.xml', 'c.sfz']),
    xmlText(['b.xml', 'c.sfz']),
    xmlText(['c.sfz']),
    sfzText([], 8),
  )
  .map(([main, a, b, c]) => ({
    main,
    files: { [`${folder}a.xml`]: a, [`${folder}b.xml`]: b, [`${folder}c.sfz`]: c },
  }));

/** One way of changing a text: where, how much of it, and how. */
export interface Mutation {
  kind: 'drop' | 'repeat' | 'moveOut' | 'include' | 'swap';
  from: number;
  length: number;
}

const mutation: fc.Arbitrary<Mutation> = fc.record({
  kind: fc.constantFrom('drop', 'repeat', 'moveOut', 'moveOut', 'include', 'include', 'swap'),
  from: fc.nat(10_000),
  length: fc.nat(12),
});

/** Ways of changing SFZ that is there: words taken out or repeated, parts put into files that are included, also again. */
export const mutations: fc.Arbitrary<Mutation[]> = fc.array(mutation, { minLength: 1, maxLength: 6 });

/** SFZ texts changed, word by word; what is moved out or included stands in `moved-….sfz`. */
export function mutated({ main, files }: Texts, changes: readonly Mutation[], base = folder): Texts {
  let words = main.split(/(?<=\s)(?=\S)/);
  const all: Record<string, string> = { ...files };
  const moved: string[] = [];
  for (const { kind, from, length } of changes) {
    const at = words.length === 0 ? 0 : from % words.length;
    const part = words.slice(at, at + length);
    switch (kind) {
      case 'drop':
        words = words.toSpliced(at, Math.min(2, length));
        break;
      case 'repeat':
        words = words.toSpliced(at, 0, ...part);
        break;
      case 'moveOut':
        moved.push(`moved-${moved.length}.sfz`);
        all[`${base}${moved.at(-1)}`] = part.join('');
        words = words.toSpliced(at, length, `\n#include "${moved.at(-1)}"\n`);
        break;
      case 'include':
        if (moved.length > 0) words = words.toSpliced(at, 0, `\n#include "${moved[from % moved.length]}"\n`);
        break;
      case 'swap':
        words = words.toSpliced(at, 2, ...words.slice(at, at + 2).reverse());
    }
  }
  return { main: words.join(''), files: all };
}
