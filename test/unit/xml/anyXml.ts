import fc from 'fast-check';

/** Names with the characters of XML's own rules in them, and those of opcodes. */
const name = fc.constantFrom(
  'instrument',
  'region',
  'group',
  'global',
  'control',
  'a',
  'b.c',
  'd-e',
  '_f',
  'é',
  'g·h',
  '日本',
  'x:y',
  'locc74',
  '𐀀',
);
const attributeName = fc.constantFrom('lokey', 'hikey', 'sample', 'tune', 'key', 'v', 'w-1', 'ü', 'p:q', '𐀀');
const valueText = fc.array(
  fc.constantFrom(
    '60',
    '-3.5',
    'a b.wav',
    ' ',
    '\n',
    '\t',
    '\r\n',
    '>',
    '$A',
    '=',
    '&amp;',
    '&#233;',
    '&#x1F3B5;',
    'é',
    '🎵',
    ']]>',
    '/',
    '#',
  ),
  { maxLength: 4 },
);

const attribute = fc
  .tuple(attributeName, fc.constantFrom('=', ' = ', '=\n'), fc.constantFrom('"', "'"), valueText)
  .map(([key, equals, quote, parts]) => ({ key, text: `${key}${equals}${quote}${parts.join('')}${quote}` }));

const attributes = fc
  .uniqueArray(attribute, { selector: (one) => one.key, maxLength: 4 })
  .map((list) => list.map((one) => ` ${one.text}`).join(''));

const space = fc.constantFrom('', ' ', '\n  ', '\r\n', '\t');
const comment = fc.constantFrom('<!-- note -->', '<!---->', '<!-- é < & > -->', '<!-- a - b -->');
const instruction = fc.constantFrom('<?note?>', '<?note to self?>', '<?xml-thing a="b"?>', '<?a ? > ??>');
const text = fc.constantFrom('word', 'a &lt; b', 'x > y', '&#10;', '<![CDATA[ <a> & ]] > ]]>', '🎵', ']]');

const { element } = fc.letrec<{ element: string; content: string }>((tie) => ({
  element: fc
    .tuple(name, attributes, space, fc.array(tie('content'), { maxLength: 4 }), fc.boolean())
    .map(([tag, list, gap, inside, empty]) =>
      empty && inside.length === 0
        ? `<${tag}${list}${gap}/>`
        : `<${tag}${list}${gap}>${inside.join('')}</${tag}${gap}>`,
    ),
  content: fc.oneof(
    { maxDepth: 4, withCrossShrink: true },
    text,
    space,
    comment,
    instruction,
    tie('element'),
  ),
}));

const declaration = fc.constantFrom(
  '',
  '',
  '<?xml version="1.0"?>',
  `<?xml version='1.0' encoding="UTF-8" standalone='yes' ?>`,
  '\ufeff',
  '\ufeff<?xml version="1.0"?>',
);
const aside = fc.array(fc.oneof(space, comment, instruction), { maxLength: 3 }).map((list) => list.join(''));

/** Documents that are well formed by construction, without a document type. */
export const wellFormedXml: fc.Arbitrary<string> = fc
  .tuple(declaration, aside, element, aside)
  .map((parts) => parts.join(''));

const scrap = fc.constantFrom(
  '<',
  '>',
  '/',
  '"',
  "'",
  '=',
  '&',
  ';',
  '!',
  '?',
  '-',
  '--',
  '-->',
  '<!--',
  ']]>',
  '<![CDATA[',
  '<?',
  '?>',
  '</',
  '/>',
  '<a',
  '</a>',
  '<a/>',
  ' ',
  '\n',
  '\t',
  'a="1"',
  ' a="1"',
  '&amp;',
  '&b;',
  '&#0;',
  '&#xD800;',
  '&#x;',
  '\u0000',
  '\u0007',
  '\ufffe',
  '\ud800',
  '\udc00',
  'é',
  '1',
  '-',
  '.',
  ':',
  '$',
  'xml',
  '<?xml version="1.0"?>',
  '<?xml version="2.0"?>',
  '<?XML?>',
  '<1',
  '',
);

/** Well-formed documents with random damage: pieces taken out, put in or doubled. Some stay well formed. */
export const damagedXml: fc.Arbitrary<string> = fc
  .tuple(wellFormedXml, fc.array(fc.tuple(fc.nat(10_000), fc.nat(6), scrap), { minLength: 1, maxLength: 3 }))
  .map(([whole, damages]) =>
    damages.reduce((xml, [where, taken, put]) => {
      const at = where % (xml.length + 1);
      return xml.slice(0, at) + put + xml.slice(at + taken);
    }, whole),
  );

/** Any text at all, with a liking for what matters in XML. */
export const anyText: fc.Arbitrary<string> = fc.oneof(
  damagedXml,
  fc
    .array(fc.oneof(scrap, element, fc.string({ maxLength: 5, unit: 'binary' })), { maxLength: 30 })
    .map((list) => list.join('')),
);
