import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ValueMark } from '../../../../server/xml/scan/handler';
import { scanXml } from '../../../../server/xml/scan/scan';
import { anyText } from '../anyXml';
import { eventsOf, problemsOf, remarksOf } from '../events';

/** Problems as `text at the span: message`. */
function messagesOf(text: string): string[] {
  return eventsOf(text)
    .filter((event) => event.kind === 'problem')
    .map(({ start, end, detail }) => `${text.slice(start, end)}: ${detail}`);
}

/** Elements as they nest for a reader: `a(b c(d))`. */
function shapeOf(text: string): string {
  let shape = '';
  for (const { kind, detail } of eventsOf(text)) {
    if (kind === 'open') shape += `${shape === '' || shape.endsWith('(') ? '' : ' '}${detail}`;
    else if (kind === 'openEnd' && detail !== 'empty') shape += '(';
    else if (kind === 'close') shape += ')';
  }
  return shape;
}

function attributesOf(text: string): [string, string, number, number][] {
  return eventsOf(text).flatMap(({ kind, detail, value }) =>
    kind === 'attribute' && value
      ? [[detail as string, text.slice(value.start, value.end), value.number, value.marks]]
      : [],
  );
}

const manyNames = Array.from({ length: 900 }, (_, at) => `a${at}`);

/** Names that all have one hash: 31 · 65 + 97 = 31 · 66 + 66, so "Aa" and "BB" can change places. */
const namesOfOneHash = Array.from({ length: 256 }, (_, number) =>
  Array.from({ length: 8 }, (_one, word) => (number & (1 << word) ? 'Aa' : 'BB')).join(''),
);

// What is well formed: XML 1.0 (W3C Recommendation, fifth edition), 2.1 to 3.1; how to read on behind a fault is our choice.
describe('what a well-formed text holds', () => {
  it('is told in order, with spans', () => {
    const text = '<?xml version="1.0"?><!-- c --><a b="1"><?p q?>x<![CDATA[<y>]]><d/></a>';
    expect(eventsOf(text).map(({ kind, start, end }) => [kind, text.slice(start, end)])).toEqual([
      ['instruction', '<?xml version="1.0"?>'],
      ['comment', '<!-- c -->'],
      ['open', '<a'],
      ['attribute', 'b'],
      ['openEnd', ''],
      ['instruction', '<?p q?>'],
      ['characters', 'x'],
      ['characters', '<![CDATA[<y>]]>'],
      ['open', '<d'],
      ['openEnd', ''],
      ['close', '</a>'],
    ]);
  });

  it('has values without blanks around them, read as numbers where they are', () => {
    expect(attributesOf(`<a b=" 60 " c='-3.5' d="+.5" e="7." f="1e3" g="" h="a b " i="."/>`)).toEqual([
      ['b', '60', 60, 0],
      ['c', '-3.5', -3.5, 0],
      ['d', '+.5', 0.5, 0],
      ['e', '7.', 7, 0],
      ['f', '1e3', Number.NaN, 0],
      ['g', '', Number.NaN, 0],
      ['h', 'a b', Number.NaN, 0],
      ['i', '.', Number.NaN, 0],
    ]);
  });

  it('marks values that read differently from their text', () => {
    const { encoded, dollar, prefixed } = ValueMark;
    expect(attributesOf('<a b="x&amp;y" c="x\ny" d="$K" e="$K&lt;" x:f="1" g = "é"/>')).toEqual([
      ['b', 'x&amp;y', Number.NaN, encoded],
      ['c', 'x\ny', Number.NaN, encoded],
      ['d', '$K', Number.NaN, dollar],
      ['e', '$K&lt;', Number.NaN, dollar | encoded],
      ['x:f', '1', 1, prefixed],
      ['g', 'é', Number.NaN, 0],
    ]);
  });

  it('may be written in any script', () => {
    expect(problemsOf('<größe ü="ä"><日本 値="🎵"/></größe>')).toEqual([]);
    expect(attributesOf('<a sample="Töne/é 🎵.wav" k="1"/>').map(([, value]) => value)).toEqual([
      'Töne/é 🎵.wav',
      '1',
    ]);
  });

  it('numbers equal names alike, in the order of their first use', () => {
    const names = fc.uniqueArray(
      fc.constantFrom('lokey', 'hikey', 'é', 'a-b', 'c:d', ...manyNames, ...namesOfOneHash),
      {
        maxLength: 900,
      },
    );
    fc.assert(
      fc.property(fc.array(names, { minLength: 1, maxLength: 6 }), (tags) => {
        const text = `<r>${tags.map((list) => `<a ${list.map((name) => `${name}="1"`).join(' ')}/>`).join('')}</r>`;
        const order = [...new Set(tags.flat())];
        const numbers: number[] = [];
        const ignore = () => {};
        scanXml(text, {
          open: ignore,
          attribute: (name) => numbers.push(name),
          openEnd: ignore,
          close: ignore,
          characters: ignore,
          comment: ignore,
          instruction: ignore,
          doctype: ignore,
          problem: (_start, _end, message) => expect(message).toBe(''),
        });
        expect(numbers).toEqual(tags.flat().map((name) => order.indexOf(name)));
      }),
      { numRuns: 60 },
    );
  });
});

describe('a tag that is broken', () => {
  it.each([
    ['<a><b c="1"\n<b/></a>', ['<b c="1"'], 'a(b() b)'],
    ['<a><b c="1"\n<d/></a>', ['<b c="1"'], 'a(b(d))'],
    ['<a><b\n<b/></a>', ['<b'], 'a(b() b)'],
    ['<a><b', ['<b', '<a'], 'a(b())'],
    ['<a b="1', ['"1', '<a b="1'], 'a()'],
    ['<a b="1 c="2"/>', ['"1'], 'a'],
    ['<a><r b="x.wav/>\n<r b="y.wav"/></a>', ['"x.wav'], 'a(r r)'],
    ['<a><r b="x.wav>\n</r></a>', ['"x.wav'], 'a(r())'],
    ['<a b=1 c="2"/>', ['1'], 'a'],
    ['<a b=1" c="2"/>', ['1'], 'a'],
    ['<a b c="2"/>', ['b'], 'a'],
    ['<a b= c="2"/>', ['b'], 'a'],
    ['<a b "1"/>', ['b'], 'a'],
    ['<a b="1"c="2"/>', ['c'], 'a'],
    ['<a b="1" b="2"/>', ['b'], 'a'],
    ['<a ="1"/>', ['="1"'], 'a'],
    ['<a / b="1"/>', ['/'], 'a'],
    ['<a b="x<y"/>', ['<'], 'a'],
    ['<a b="\u0007"/>', ['\u0007'], 'a'],
  ])('%j', (text, problems, shape) => {
    expect(problemsOf(text)).toEqual(problems);
    expect(shapeOf(text)).toBe(shape);
  });

  it('keeps the attributes around the fault', () => {
    expect(
      attributesOf('<a sample="x.wav lokey="60" hikey=61 tune="3"/>').map(
        ([name, value]) => `${name}=${value}`,
      ),
    ).toEqual(['sample=x.wav', 'lokey=60', 'hikey=61', 'tune=3']);
  });
});

describe('elements that do not fit', () => {
  it('says which element an end tag without one leaves open', () => {
    expect(messagesOf('<a>\n<group>\n</grup></a>')).toEqual([
      '</grup>: </grup> closes nothing. <group>, opened in line 2, must be closed first, with </group>.',
    ]);
  });

  it('says what is not closed before an end tag further out', () => {
    expect(messagesOf('<a>\n<b><c>\n</a>')).toEqual([
      '<c: <c> is not closed before </a> in line 3. Add </c>, or end its tag with "/>" if nothing stands inside.',
      '<b: <b> is not closed before </a> in line 3. Add </b>, or end its tag with "/>" if nothing stands inside.',
    ]);
  });

  it.each([
    ['<a></a></b>', ['</b>'], 'a()'],
    ['<a></other><b/></a>', ['</other>'], 'a(b)'],
    ['<a></>', ['</>'], 'a()'],
    ['<a></a x>', ['</a x>'], 'a()'],
    ['<a><b></b\n</a>', ['</b'], 'a(b())'],
    ['<a><b>', ['<b', '<a'], 'a(b())'],
    ['<a/><b/>', ['<b'], 'a b'],
    ['', [''], ''],
    ['<!-- only -->', [''], ''],
  ])('%j', (text, problems, shape) => {
    expect(problemsOf(text)).toEqual(problems);
    expect(shapeOf(text)).toBe(shape);
  });
});

describe('text and what is no element', () => {
  it.each([
    ['<a>x & y</a>', ['&']],
    ['<a>&nbsp;</a>', ['&nbsp;']],
    ['<a>&amp</a>', ['&amp']],
    ['<a>&#0;&#xD800;&#x110000;&#;&#xg;</a>', ['&#0;', '&#xD800;', '&#x110000;', '&#', '&#x']],
    ['<a>1 < 2</a>', ['<']],
    ['<a>]]></a>', [']]>']],
    ['<a>\u0000\ufffe</a>', ['\u0000', '\ufffe']],
    ['<a>\ud83c</a>', ['\ud83c']],
    ['x<a/>y', ['x', 'y']],
    ['<a/><![CDATA[x]]>', ['<![CDATA[x]]>']],
    ['<a><!-- x', ['<!--', '<a']],
    ['<a><!-- x -- y --></a>', ['--']],
    ['<a><!-- x ---></a>', ['--']],
    ['<a><![CDATA[ x', ['<![CDATA[', '<a']],
    ['<a><!ELEMENT b></a>', ['<!ELEMENT b>']],
    ['<a><?x', ['<?x', '<a']],
    ['<a><? x?></a>', ['<? x?>']],
    [' <?xml version="1.0"?><a/>', ['<?xml version="1.0"?>']],
    ['<?xml encoding="UTF-8"?><a/>', ['<?xml encoding="UTF-8"?>']],
  ])('%j', (text, problems) => {
    expect(problemsOf(text)).toEqual(problems);
  });

  it.each([
    ['<a>1 <<< 2 < <<b/></a>', ['<<<', '<', '<']],
    ['<a><<</a>', ['<<']],
    ['<<<', ['<<<', '<<<', '']],
  ])('takes bare "<" in a row for one fault: %j', (text, problems) => {
    expect(problemsOf(text)).toEqual(problems);
  });

  it('says that a document type has no effect, expands nothing of it and reads on', () => {
    const text = '<!DOCTYPE a [<!ENTITY b "<c/>]>"> <!-- ]> --> <?x ]>?>]><a>&b;</a>';
    expect(problemsOf(text)).toEqual([]);
    expect(remarksOf(text)).toEqual(['<!DOCTYPE', '&b;']);
    expect(shapeOf(text)).toBe('a()');
  });

  it('reads on behind a document type that is not closed', () => {
    const text = '<!DOCTYPE a [ <!ENTITY b "c"> <a/>';
    expect(problemsOf(text)).toEqual(['<!DOCTYPE']);
    expect(shapeOf(text)).toBe('a');
  });
});

describe('any text', () => {
  it('is read to its end, with spans that lie inside it', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const events = eventsOf(text);
        const isWithin = (start: number, end: number) => start >= 0 && end >= start && end <= text.length;
        // One expectation for all events, as each takes longer than what it looks at.
        const wrong = events.filter(({ kind, start, end, detail, value }) => {
          if (!isWithin(start, end) || (kind === 'open' && text[start] !== '<')) return true;
          if (kind !== 'attribute') return false;
          return detail === '' || !value || value.start < end || !isWithin(value.start, value.end);
        });
        expect(wrong).toEqual([]);
        let [depth, least] = [0, 0];
        for (const { kind, detail } of events) {
          if (kind === 'openEnd' && detail !== 'empty') depth++;
          if (kind === 'close') depth--;
          least = Math.min(least, depth);
        }
        expect([depth, least]).toEqual([0, 0]);
      }),
      { numRuns: 1000 },
    );
  });

  // Each of these is read in a moment, though a reader that goes back over its text would need hours.
  it.each([
    ['open tags', '<a>'.repeat(200_000)],
    ['start tags without an end', '<a b="'.repeat(200_000)],
    ['quotes of both kinds', `<a b="x c='`.repeat(100_000)],
    ['end tags that fit nothing', `${'<a>'.repeat(50_000)}${'</b>'.repeat(50_000)}`],
    ['attributes in one tag', `<a ${Array.from({ length: 100_000 }, (_, at) => `a${at}="1"`).join(' ')}/>`],
    ['the same attribute', `<a ${'b="1" '.repeat(100_000)}/>`],
    ['ampersands', `<a>${'&'.repeat(300_000)}</a>`],
    ['comments that never end', '<!--'.repeat(200_000)],
    ['declarations that never end', '<!'.repeat(200_000)],
    ['document types that never end', '<!DOCTYPE [>'.repeat(100_000)],
    ['swallowed attributes', `<a ${'b="c '.repeat(100_000)}/>`],
  ])('with very many %s is read', (_, text) => {
    expect(problemsOf(text).length + attributesOf(text).length).toBeGreaterThan(0);
  });
});
