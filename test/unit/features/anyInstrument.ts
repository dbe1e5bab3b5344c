import fc from 'fast-check';
import { effectiveValues } from '../../../server/model/effectiveValues';
import type { Instrument } from '../../../server/model/instrument';
import { notations } from '../../../server/workspace/notations/notationOf';

export type Format = 'sfz' | 'xml';

/** What each region of an instrument sounds like: its values in force, whatever order they were set in. */
export function effective(instrument: Instrument): Record<string, number | string>[] {
  return [...instrument.regions].map((region) =>
    Object.fromEntries(
      Object.entries(effectiveValues(instrument, region)).sort(([a], [b]) => (a < b ? -1 : 1)),
    ),
  );
}

/** Reads a text as if it stood in the folder `/music`, among included files. */
export function readText(format: Format, text: string, files: Record<string, string> = {}): Instrument {
  return notations[format].read(text, {
    path: format === 'sfz' ? '/music/main.sfz' : '/music/main.instrument.xml',
    include: (path) => {
      const found = files[path];
      return found === undefined ? { kind: 'missing' } : { kind: 'text', text: found };
    },
  });
}

const key = fc.oneof(
  fc.integer({ min: 0, max: 127 }).map(String),
  fc.constantFrom('c4', 'C#3', 'db2', '$LOW', '$KEY'),
);
const opcode = fc.oneof(
  { weight: 4, arbitrary: fc.tuple(fc.constantFrom('key', 'lokey', 'hikey', 'pitch_keycenter'), key) },
  {
    weight: 2,
    arbitrary: fc.tuple(fc.constantFrom('lovel', 'hivel'), fc.integer({ min: 0, max: 127 }).map(String)),
  },
  {
    weight: 2,
    arbitrary: fc.tuple(
      fc.constant('sample'),
      fc.constantFrom(
        'a.wav',
        'soft bell 1.wav',
        'sub/loud=1.wav'.replace('=', '-'),
        '*sine',
        '$FOLDER/x.wav',
        'a b',
      ),
    ),
  },
  {
    weight: 3,
    arbitrary: fc.tuple(
      fc.constantFrom(
        'volume',
        'pan',
        'tune',
        'ampeg_release',
        'amp_velcurve_64',
        'lfo01_freq',
        'unheard_of',
        'loopmode',
        'loop_mode',
      ),
      fc.constantFrom('0', '-6', '1.5', '+3', 'one_shot', 'loop_continuous', ''),
    ),
  },
  {
    weight: 1,
    arbitrary: fc.tuple(fc.constantFrom('group_label', 'region_label'), fc.constantFrom('Soft', 'two words')),
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
  'curve',
);
const blank = fc.constantFrom(' ', ' ', '  ', '\t', '\n', '\n', '\n\n', '\n\n\n', '\r\n', ' \n ');
const comment = fc.constantFrom(
  '// a remark\n',
  '/* aside */',
  '/* over\n lines */',
  '//\n',
  '/* x */ /* y */',
);
const sfzPart = fc.oneof(
  { weight: 12, arbitrary: opcode.map(([name, value]) => `${name}=${value}`) },
  { weight: 5, arbitrary: header.map((name) => `<${name}>`) },
  { weight: 2, arbitrary: comment },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      '#define $KEY 60\n',
      '#define $KEY 61\n',
      '#define $LOW c2',
      '#define $SOFT hivel=63',
      '\n#include "part.sfz"',
      '\n$SOFT\n',
      '\n$SOFT $SOFT key=$KEY\n',
      'odd-name=3',
      'lokey= 40',
      'lokey=',
    ),
  },
);
const faulty = fc.constantFrom(
  'stray words',
  '=',
  '<region',
  'a = b',
  '/*',
  '\0',
  '<>',
  '$NOT_SET',
  'pan=a=b',
  '\u00a0',
  '#define X',
  '#include part.sfz',
);

/** SFZ texts with headers, opcodes, remarks, directives and odd white space. */
export const anySfz: fc.Arbitrary<string> = fc
  .array(fc.tuple(sfzPart, blank), { maxLength: 40 })
  .map((parts) => parts.flat().join(''));

/** The same with faults in between. */
export const faultySfz: fc.Arbitrary<string> = fc
  .array(fc.tuple(fc.oneof({ weight: 6, arbitrary: sfzPart }, { weight: 1, arbitrary: faulty }), blank), {
    maxLength: 30,
  })
  .map((parts) => parts.flat().join(''));

/** What `part.sfz` holds. */
export const includedFiles = {
  '/music/part.sfz': '<region> sample=part.wav\nkey=50',
  '/music/part.xml': '<instrument><region sample="part.wav" key="50"/></instrument>',
};

const attributes = fc
  .uniqueArray(opcode, { selector: ([name]) => name, maxLength: 6 })
  .chain((list) =>
    fc
      .array(fc.constantFrom(' ', ' ', '  ', '\n', '\n\n   ', '\t'), { minLength: 7, maxLength: 7 })
      .map((gaps) =>
        list
          .map(
            ([name, value], at) =>
              `${gaps[at]}${name}${at === 2 ? ' = ' : '='}${at === 1 ? `'${value}'` : `"${value}"`}`,
          )
          .join(''),
      ),
  );
const xmlBlank = fc.constantFrom('', ' ', '\n', '\n\n\n', '\n      ', '\r\n');
const xmlComment = fc.constantFrom('<!-- a remark -->', '<!-- over\n lines -->');
const region = fc
  .tuple(attributes, xmlBlank, fc.constantFrom('/>', ' />', '></region>', '>\n</region >'))
  .map(([list, gap, end]) => `<region${list}${end}${gap}`);
const directive = fc.constantFrom(
  '<define name="KEY" value="60"/>',
  '<define  name="LOW"\n value="c2" />',
  '<include path="part.xml"/>',
);
const inner = fc.array(
  fc.oneof(
    { weight: 5, arbitrary: region },
    { weight: 1, arbitrary: xmlComment },
    { weight: 1, arbitrary: directive },
  ),
  { maxLength: 5 },
);
const group = fc
  .tuple(attributes, inner, xmlBlank)
  .map(([list, parts, gap]) => `<group${list}>${gap}${parts.join(gap)}</group>${gap}`);
const flatHeader = fc
  .tuple(header, attributes, xmlBlank)
  .map(([name, list, gap]) => `<${name}${list}/>${gap}`);
const xmlPart = fc.oneof(
  { weight: 3, arbitrary: region },
  { weight: 2, arbitrary: group },
  flatHeader,
  xmlComment,
  directive,
);

/** Instrument XML with nested and flat headers, remarks, directives and odd white space. */
export const anyInstrumentXml: fc.Arbitrary<string> = fc
  .tuple(
    fc.constantFrom('', '<?xml version="1.0"?>', '\ufeff<!-- top -->\n'),
    fc.array(fc.tuple(xmlPart, xmlBlank), { maxLength: 12 }),
  )
  .map(([start, parts]) => `${start}<instrument>${parts.flat().join('')}</instrument>`);

/** The same with pieces of text taken out or put in. */
export const faultyInstrumentXml: fc.Arbitrary<string> = fc
  .tuple(
    anyInstrumentXml,
    fc.array(
      fc.tuple(
        fc.nat(5000),
        fc.nat(4),
        fc.constantFrom('', '<', '>', '"', 'x', '</group>', '<a b=1>', '&', '\n'),
      ),
      { minLength: 1, maxLength: 3 },
    ),
  )
  .map(([text, damages]) =>
    damages.reduce((damaged, [where, taken, put]) => {
      const at = where % (damaged.length + 1);
      return damaged.slice(0, at) + put + damaged.slice(at + taken);
    }, text),
  );
