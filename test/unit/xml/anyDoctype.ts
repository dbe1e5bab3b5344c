import fc from 'fast-check';

const name = fc.constantFrom('a', 'b', 'c-d', '_e', 'é', 'CDATA', 'ANY');
const space = fc.constantFrom(' ', '\n', '\t ');
const gap = fc.constantFrom('', '', ' ', '\n');
const count = fc.constantFrom('', '', '?', '*', '+');

const { group } = fc.letrec<{ group: string; part: string }>((tie) => ({
  group: fc
    .tuple(fc.constantFrom(',', '|'), fc.array(tie('part'), { minLength: 1, maxLength: 3 }), gap, count)
    .map(([mark, parts, blank, many]) => `(${blank}${parts.join(`${blank}${mark}${blank}`)}${blank})${many}`),
  part: fc.oneof(
    { maxDepth: 4, withCrossShrink: true },
    fc.tuple(name, count).map((list) => list.join('')),
    tie('group'),
  ),
}));
const mixed = fc
  .array(name, { maxLength: 2 })
  .map((names) =>
    names.length > 0 ? `(#PCDATA${names.map((one) => ` | ${one}`).join('')})*` : '( #PCDATA )',
  );
const element = fc
  .tuple(space, name, space, fc.oneof(fc.constantFrom('EMPTY', 'ANY'), mixed, group), gap)
  .map(([before, of, between, model, end]) => `<!ELEMENT${before}${of}${between}${model}${end}>`);

/** What entities stand for: some of it well formed by itself, some in pieces alone. */
const entityText = fc
  .array(
    fc.constantFrom(
      'text',
      ' ',
      '&e0;',
      '&e1;',
      '&e2;',
      '&later;',
      '&amp;',
      '&#60;',
      '&#38;#60;',
      '&#38;',
      '&#233;',
      '<b/>',
      '<b>',
      '</b>',
      "<b c='&e1;'/>",
      "<b c='<'/>",
      '<![CDATA[<]]>',
      '<?x y?>',
      '<!-- x -->',
      ']]>',
      '<?xml version="1.0"?>'.replaceAll('"', "'"),
    ),
    { maxLength: 3 },
  )
  .map((parts) => parts.join(''));
const entityName = fc.constantFrom('e0', 'e1', 'e2', 'e3');
const external = fc.constantFrom(
  'SYSTEM "x.xml"',
  "SYSTEM  'x y'",
  'PUBLIC "-//A//B 1.0//EN" "x.xml"',
  'PUBLIC\n"a"\n\'b\'',
);
const entity = fc.oneof(
  { weight: 4, arbitrary: fc.tuple(entityName, entityText).map(([of, text]) => `<!ENTITY ${of} "${text}">`) },
  fc.tuple(entityName, external, gap).map(([of, file, end]) => `<!ENTITY ${of} ${file}${end}>`),
  fc.tuple(entityName, external).map(([of, file]) => `<!ENTITY ${of} ${file} NDATA n >`),
);
const notation = fc.oneof(external, fc.constant('PUBLIC "a"')).map((file) => `<!NOTATION n ${file}>`);
const attributeType = fc.constantFrom(
  'CDATA',
  'ID',
  'IDREFS',
  'NMTOKENS',
  'ENTITY',
  'NOTATION (n)',
  'NOTATION ( n | m )',
  '(1|2)',
  '( x )',
);
const attributeDefault = fc.oneof(
  fc.constantFrom('#REQUIRED', '#IMPLIED', '"1"', "#FIXED '2'", '"&amp;&#65;"'),
  entityName.map((of) => `"&${of};"`),
);
const attributes = fc
  .array(fc.tuple(space, name, space, attributeType, space, attributeDefault), { maxLength: 2 })
  .map((list) => `<!ATTLIST a${list.map((one) => one.join('')).join('')} >`);
const aside = fc.constantFrom('<!-- ]> " -->', "<?x ]> ' ?>", ' ', '\n', '<!---->');
const parameter = fc.constantFrom('%p;', '%q;', '');

/** The `p` and `q` that each subset declares before all else, since readers differ in undeclared ones. */
const parameters = fc
  .tuple(
    fc.constantFrom(
      '',
      '<!ELEMENT f ANY>',
      "<!ENTITY later 'x'>",
      '&#37;q;',
      '<!-- x -->',
      '<!ELEMENT f >',
      'x',
    ),
    fc.constantFrom('', '<!ELEMENT g (f)>', "<!ENTITY e3 '&#60;b/>'>", '<?x y?>', '&#37;p;'),
  )
  .map(([p, q]) => `<!ENTITY % q "${q}"><!ENTITY % p "${p}">`);

const use = fc
  .array(fc.constantFrom('&e0;', '&e1;', '&e2;', '&e3;', '&later;', '<b c="&e0;"/>', '<b c="&e1;"/>', 'x'), {
    maxLength: 3,
  })
  .map((parts) => parts.join(''));

const declarations = fc
  .array(fc.oneof(element, entity, entity, attributes, notation, aside, parameter), { maxLength: 6 })
  .map((list) => list.join(''));

/** Documents with a document type declaration in order, whose entities may or may not be used in order. */
export const doctypeXml: fc.Arbitrary<string> = fc
  .tuple(
    fc.constantFrom('', '', '<?xml version="1.0" standalone="yes"?>'),
    fc.constantFrom('', '', ' SYSTEM "x.dtd"'),
    fc.oneof(fc.constant(''), parameters),
    declarations,
    use,
  )
  .map(
    ([first, outside, start, list, inside]) =>
      `${first}<!DOCTYPE a${outside} [${start}${start === '' ? list.replace(/%[pq];/g, '') : list}] ><a>${inside}</a>`,
  );

const scrap = fc.constantFrom(
  '<',
  '>',
  '"',
  "'",
  '(',
  ')',
  '|',
  ',',
  '*',
  '[',
  ']',
  '&',
  ';',
  '%',
  '%e;x',
  '--',
  '<!--',
  ' ',
  'x',
  'é',
  '\u0001',
  '<!ELEMENT ',
  '<!ENTITY x "y">',
  '<!FOO>',
  '<![INCLUDE[]]>',
  '<?xml version="1.0"?>',
  '',
);

/** Such documents with damage in the document type declaration: pieces taken out or put in. */
export const damagedDoctypeXml: fc.Arbitrary<string> = fc
  .tuple(doctypeXml, fc.array(fc.tuple(fc.nat(10_000), fc.nat(3), scrap), { minLength: 1, maxLength: 2 }))
  .map(([whole, damages]) =>
    damages.reduce((xml, [where, taken, put]) => {
      const end = Math.max(1, xml.lastIndexOf('<a>'));
      const at = where % end;
      return xml.slice(0, at) + put + xml.slice(at + taken);
    }, whole),
  );
