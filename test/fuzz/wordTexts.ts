import fc from 'fast-check';
import { looksLikeZoneTable } from '../../server/table/looksLikeZoneTable';
import { readZoneTable } from '../../server/table/readTable';
import { languages } from '../../server/trade/languages/languages';
import { inferVocabulary } from '../../server/vocabulary/infer/inferVocabulary';
import { target } from './target';

const longest = 40_000;
const told = languages.flatMap((one) => Object.values(one.told).flat());
const headings = languages.flatMap((one) => Object.values(one.phrases).flat());
const signs = ', ; : . = ( ) [ ] { } " \' | / \\ # * - \u2013 -> <- ~ .. \u2026 // % _ + <br>'.split(' ');
const values =
  '0 1 60 127 -3 0,5 1.000 +12 C4 c#3 A-1 60-72 12/34 [1,2] {"a":1} -6.5 50% a.wav "b c.wav" dB cents ms Hz pp ff L R not except only and und et y e z to bis no all null'.split(
    ' ',
  );
const word = fc.oneof(
  fc.constantFrom(...values),
  fc.constantFrom(...told),
  fc.constantFrom(...headings).map((phrase) => phrase.replace(/[{}]/g, '')),
  fc.constantFrom(...signs),
);
/** Few words many times over are what readers that try one after another take longest for. */
const line = fc
  .record({
    words: fc.array(word, { minLength: 1, maxLength: 8 }),
    between: fc.array(fc.constantFrom(' ', ' ', ' ', '\t', ',', ', ', ';', ' | ', '  ', ' - ', ': '), {
      minLength: 1,
      maxLength: 3,
    }),
    times: fc.integer({ min: 1, max: 40 }),
  })
  .map(({ words, between, times }) =>
    Array.from({ length: words.length * times }, (_, at) =>
      [words[at % words.length], between[at % between.length]].join(''),
    ).join(''),
  );
const starts = ['', 'Sample\tLow\tHigh\tRoot\na.wav\t1\t2\t1\n', 'a.wav: key 60\n'];
const text = fc
  .record({
    start: fc.constantFrom(...starts),
    lines: fc.array(line, { minLength: 1, maxLength: 5 }),
    times: fc.integer({ min: 1, max: 60 }),
    isNamed: fc.boolean(),
  })
  .map(({ start, lines, times, isNamed }) => {
    const all = Array.from({ length: lines.length * times }, (_, at) =>
      [isNamed ? `s${at}.wav ` : '', lines[at % lines.length]].join(''),
    );
    return `${start}${all.join('\n')}`.slice(0, longest);
  });

const inAttribute = (said: string) => said.slice(0, 400).replace(/[<>&"]/g, ' ');
const nameOf = (said: string) => said.replace(/[^\p{L}]/gu, '') || 'x';
const element = fc.record({
  name: word.map(nameOf),
  attribute: word.map(nameOf),
  says: line.map(inAttribute),
  number: fc.integer({ min: 0, max: 127 }),
  kind: fc.integer({ min: 0, max: 4 }),
});
const xml = fc.array(element, { minLength: 1, maxLength: 8 }).chain((list) =>
  fc.record({ times: fc.integer({ min: 1, max: 40 }) }).map(({ times }) => {
    const inside = Array.from({ length: list.length * times }, (_, at) => {
      const { name, attribute, says, number, kind } = list[at % list.length] ?? list[0];
      if (kind === 0) return `<!-- ${says.replaceAll('-', ' ')} --><${name} ${attribute}="${number}"/>`;
      if (kind === 1) return `<${name} ${attribute}="s${at}.wav" b="${says}"/>`;
      if (kind === 2) return `<${name}><${attribute}>${number}</${attribute}><a>s${at}.wav</a></${name}>`;
      if (kind === 3) return `<${name} b="${says}"><${attribute} c="${number}"/></${name}>`;
      return `<${name}>${says}</${name}>`;
    });
    return `<rack>${inside.join('')}</rack>`.slice(0, longest);
  }),
);

/** Texts of the trade's own words, over and over: what would take readers longest if they tried too much. */
export const wordTargets = [
  target('words of the trade', 'texts', text, (one) => {
    looksLikeZoneTable(one);
    readZoneTable(one);
  }),
  target('XML of such words', 'texts', xml, (one) => {
    inferVocabulary(one, { path: '/music/a.xml' });
  }),
];
