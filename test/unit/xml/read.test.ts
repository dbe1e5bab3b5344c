import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../server/model/effectiveValues';
import type { Included } from '../../../server/model/notation';
import { readXml } from '../../../server/xml/read';

function read(text: string, included: Record<string, string> = {}) {
  const include = (path: string): Included => {
    const found = included[path];
    return found === undefined ? { kind: 'missing' } : { kind: 'text', text: found };
  };
  return readXml(text, { path: 'main.instrument.xml', include });
}

/** The effective values of the regions in `<instrument>…</instrument>`. */
function regionsOf(text: string, included: Record<string, string> = {}) {
  const instrument = read(`<instrument>${text}</instrument>`, included);
  return [...instrument.regions].map((region) => effectiveValues(instrument, region));
}

/** The findings as `code: the text at the span`. */
function findingsOf(text: string, included: Record<string, string> = {}) {
  const instrument = read(text, included);
  return instrument.findings.map(
    ({ code, source, start, end }) => `${code}: ${instrument.sources[source]?.text.slice(start, end)}`,
  );
}

const tunes = (text: string, included?: Record<string, string>) =>
  regionsOf(text, included).map(({ tune, volume, pan }) => [tune, volume, pan]);

// How values are in force follows the rules of inheritance in the public documentation of the open SFZ format (CC0 1.0).
describe('an element with elements inside', () => {
  it('passes its values to the regions inside, inner over outer', () => {
    expect(
      tunes(`<global tune="1" volume="1" pan="1">
        <region/>
        <master volume="2" pan="2"><region/><group pan="3"><region/><region tune="9"/></group><region/></master>
        <region/>
      </global><region/>`),
    ).toEqual([
      [1, 1, 1],
      [1, 2, 2],
      [1, 2, 3],
      [9, 2, 3],
      [1, 2, 2],
      [1, 1, 1],
      [undefined, undefined, undefined],
    ]);
  });
});

describe('an empty element', () => {
  it('applies to what follows on its level, up to another of its kind', () => {
    expect(
      tunes(
        '<global tune="1"/><region/><group volume="2"/><region/><group pan="3"/><region/><group/><region/>',
      ),
    ).toEqual([
      [1, undefined, undefined],
      [1, 2, undefined],
      [1, undefined, 3],
      [1, undefined, undefined],
    ]);
  });

  it('is the same with an end tag', () => {
    expect(tunes('<group volume="2"></group><region/><group pan="3"><!-- none --></group><region/>')).toEqual(
      [
        [undefined, 2, undefined],
        [undefined, undefined, 3],
      ],
    );
  });

  it('ends with the element around it', () => {
    expect(tunes('<global tune="1"><group volume="2"/><region/></global><region/>')).toEqual([
      [1, 2, undefined],
      [undefined, undefined, undefined],
    ]);
  });

  it('ends where one of its kind with elements inside stands', () => {
    expect(tunes('<group volume="2"/><region/><group pan="3"><region/></group><region/>')).toEqual([
      [undefined, 2, undefined],
      [undefined, undefined, 3],
      [undefined, undefined, undefined],
    ]);
  });

  it('clears those further in, as a header in SFZ does', () => {
    expect(
      tunes('<global tune="1"/><group volume="2"/><master pan="3"/><region/><global/><region/>'),
    ).toEqual([
      [1, undefined, 3],
      [undefined, undefined, undefined],
    ]);
  });
});

describe('values', () => {
  it('have key for low key, high key and root key; the later attribute counts', () => {
    expect(regionsOf('<region lokey="1" key="60"/><region key="c#4" hikey="70"/>')).toEqual([
      { lokey: 60, hikey: 60, pitch_keycenter: 60 },
      { lokey: 61, hikey: 70, pitch_keycenter: 61 },
    ]);
  });

  it('lose references and the blanks around them', () => {
    expect(regionsOf(`<region sample=" Tom &amp; Co/a&#32;b.wav " region_label='"a"&lt;&#233;'/>`)).toEqual([
      { sample: 'Tom & Co/a b.wav', region_label: '"a"<é' },
    ]);
  });

  it('follow the control before them', () => {
    expect(
      regionsOf(`<control default_path="A/"/><region sample="1.wav" key="60"/>
        <control default_path="B\\" note_offset="1" octave_offset="1"/><group><region sample="2.wav" key="60"/></group>`),
    ).toEqual([
      { sample: 'A/1.wav', lokey: 60, hikey: 60, pitch_keycenter: 60 },
      { sample: 'B/2.wav', lokey: 73, hikey: 73, pitch_keycenter: 73 },
    ]);
  });

  it('take no notice of names from other vocabularies', () => {
    const text = `<instrument xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance"
      xsi:noNamespaceSchemaLocation="instrument.xsd"><region xml:lang="en" tune="1"/></instrument>`;
    expect(findingsOf(text)).toEqual([]);
    expect(read(text).parameters.count).toBe(1);
  });
});

describe('define', () => {
  it('puts values into later values', () => {
    expect(
      regionsOf(`<define name="DIR" value="soft &amp; low"/><define name="$K" value="60"/><define name="KK" value="$K"/>
        <region sample="$DIR/a.wav" key="$KK" tune="-$K"/>`),
    ).toEqual([{ sample: 'soft & low/a.wav', lokey: 60, hikey: 60, pitch_keycenter: 60, tune: -60 }]);
  });

  it('leaves alone a dollar that is written as a reference', () => {
    expect(regionsOf('<define name="A" value="1"/><region region_label="$A &#36;A"/>')).toEqual([
      { region_label: '1 $A' },
    ]);
  });

  it.each([
    ['<instrument><region key="$NO"/></instrument>', ['define-unknown: $NO']],
    ['<instrument><region sample="&amp;$NO\r\n.wav"/></instrument>', ['define-unknown: $NO']],
    ['<instrument><define name="A"/></instrument>', ['syntax-error: <define']],
    ['<instrument><define name="A B" value="1"/></instrument>', ['syntax-error: <define']],
  ])('%j', (text, findings) => {
    expect(findingsOf(text)).toEqual(findings);
  });
});

describe('include', () => {
  const included = {
    'maps/one.xml':
      '<instrument><region tune="1"/><include path="maps/two.xml"/><region tune="3"/></instrument>',
    'maps/two.xml': '<?xml version="1.0"?><instrument><group pan="5"/><region tune="2"/></instrument>',
    'old.sfz': '<region> tune=7 <group> pan=8 <region> tune=$T',
  };

  it('takes the place of the file, with paths from the main file however deep', () => {
    expect(tunes('<group volume="9"><include path="maps/one.xml"/></group><region/>', included)).toEqual([
      [1, 9, undefined],
      [2, undefined, 5],
      [3, undefined, 5],
      [undefined, undefined, undefined],
    ]);
  });

  it('is the same with an end tag', () => {
    expect(tunes('<include path="maps/two.xml"></include><region/>', included)).toEqual([
      [2, undefined, 5],
      [undefined, undefined, 5],
    ]);
  });

  it('can be SFZ, which knows the variables too', () => {
    expect(
      tunes('<define name="T" value="4"/><global volume="9"><include path="old.sfz"/></global>', included),
    ).toEqual([
      [7, 9, undefined],
      [4, 9, 8],
    ]);
  });

  it('keeps the place of each value', () => {
    const instrument = read(
      '<instrument><include path="maps/one.xml"/><region tune="4"/></instrument>',
      included,
    );
    const places = [...instrument.regions].map((region) => {
      const span = instrument.parameterSpan(instrument.firstParameter(region));
      return `${instrument.sources[span.source]?.path} ${instrument.sources[span.source]?.text.slice(span.start, span.end)}`;
    });
    expect(places).toEqual([
      'maps/one.xml tune="1',
      'maps/two.xml tune="2',
      'maps/one.xml tune="3',
      'main.instrument.xml tune="4',
    ]);
  });

  it('refuses a circle and reports a file that is not there', () => {
    const circle = { 'b.xml': '<instrument><include path="main.instrument.xml"/></instrument>' };
    expect(findingsOf('<instrument><include path="b.xml"/></instrument>', circle)).toEqual([
      'include-cycle: main.instrument.xml',
    ]);
    expect(findingsOf('<instrument><include path="gone.xml"/><include/></instrument>')).toEqual([
      'include-missing: gone.xml',
      'syntax-error: <include',
    ]);
  });

  it('ends a chain of files that double one another', () => {
    const chain: Record<string, string> = {};
    for (let i = 0; i < 40; i++) {
      const next = `<include path="${i + 1}.xml"/>`;
      chain[`${i}.xml`] = `<instrument>${next}${next}</instrument>`;
    }
    chain['40.xml'] = '<instrument><region/></instrument>';
    const instrument = read('<instrument><include path="0.xml"/></instrument>', chain);
    expect(instrument.findings.length).toBeGreaterThan(0);
    expect(instrument.regions.length).toBeLessThan(20_000);
  });
});

describe('elements that have no business where they stand', () => {
  it.each([
    ['<instrument><regoin tune="1"/></instrument>', ['header-unknown: regoin']],
    ['<instrument><region><region/></region></instrument>', ['header-unknown: region']],
    ['<instrument><group><global><region/></global></group></instrument>', ['header-unknown: global']],
    ['<instrument><control><group/></control></instrument>', ['header-unknown: group']],
    ['<instrument><instrument/></instrument>', ['header-unknown: instrument']],
    ['<region/>', ['header-unknown: region']],
    ['<instrument>key=60<region/></instrument>', ['syntax-error: key=60']],
    ['<instrument><region key="60"<region/></instrument>', ['syntax-error: <region key="60"']],
  ])('%j', (text, findings) => {
    expect(findingsOf(text)).toEqual(findings);
  });

  it('still count', () => {
    expect(
      tunes('<group tune="1"><group volume="2"><region/></group><region/></group><odd><region/></odd>'),
    ).toEqual([
      [undefined, 2, undefined],
      [1, undefined, undefined],
      [undefined, undefined, undefined],
    ]);
  });
});

describe('places', () => {
  it('of a header are its tag and its whole element', () => {
    const text = '<instrument><group lovel="1"><region tune="2"/></group><region></region></instrument>';
    const instrument = read(text);
    const cut = ({ start, end }: { start: number; end: number }) => text.slice(start, end);
    expect(
      [0, 1, 2].map((header) => [cut(instrument.headerSpan(header)), cut(instrument.bodySpan(header))]),
    ).toEqual([
      ['<group', '<group lovel="1"><region tune="2"/></group>'],
      ['<region', '<region tune="2"/>'],
      ['<region', '<region></region>'],
    ]);
    expect([cut(instrument.nameSpan(0)), cut(instrument.valueSpan(0))]).toEqual(['lovel', '1']);
  });

  it('of directives and comments are kept', () => {
    const text = '<instrument><!-- a\nb --><define name="A" value="1"/><include path="$A.xml"/></instrument>';
    expect(
      read(text).directives.map(({ kind, start, end, name, value }) => [
        kind,
        text.slice(start, end),
        name,
        value,
      ]),
    ).toEqual([
      ['comment', '<!-- a\nb -->', '', 'a\nb'],
      ['define', '<define name="A" value="1"/>', '$A', '1'],
      ['include', '<include path="$A.xml"/>', '1.xml', '1.xml'],
    ]);
  });
});
