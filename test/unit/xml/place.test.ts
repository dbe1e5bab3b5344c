import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeInXml } from '../../../server/xml/place';
import { readXml } from '../../../server/xml/read';
import { anyText } from './anyXml';

const read = (text: string) => readXml(text, { path: 'a.instrument.xml' });

/** What stands at `|`: the kind of place, the text that it spans, and what more is known of it. */
function placeAt(marked: string): string {
  const offset = marked.indexOf('|');
  const text = marked.slice(0, offset) + marked.slice(offset + 1);
  const instrument = read(text);
  const place = placeInXml(instrument, offset);
  if (place.kind === 'other') return 'other';
  const span = `${place.kind} [${text.slice(place.start, place.end)}]`;
  const of = (header: number) => (header < 0 ? '' : ` of ${instrument.headerName(header)}`);
  const parameter = (at: number) => (at < 0 ? '' : ` #${at}`);
  switch (place.kind) {
    case 'header':
      return span + of(place.header);
    case 'name':
      return span + of(place.header) + parameter(place.parameter);
    case 'value':
      return `${span}${of(place.header)}${parameter(place.parameter)} ${place.name}`;
    case 'variable':
      return `${span} ${place.name}`;
    case 'include':
      return span;
  }
}

const inside = (text: string) => placeAt(`<instrument>${text}</instrument>`);

describe('what the cursor is on', () => {
  it.each([
    ['<reg|ion key="1"/>', 'header [region] of region'],
    ['<|', 'header []'],
    ['<|region/>', 'header [region] of region'],
    ['<gr|\n<region/>', 'header [gr] of gr'],
    ['<region | key="1"/>', 'name [] of region'],
    ['<region key="1" |/>', 'name [] of region'],
    ['<region lo|/>', 'name [lo] of region'],
    ['<group><region lo|key="1"/></group>', 'name [lokey] of region #0'],
    ['<region key="1" lok|ey="2"/>', 'name [lokey] of region #1'],
    ['<region key="|60"/>', 'value [60] of region #0 key'],
    [`<region key='60|'/>`, 'value [60] of region #0 key'],
    ['<region key="|"/>', 'value [] of region #0 key'],
    ['<region loopmode="one|_shot"/>', 'value [one_shot] of region #0 loop_mode'],
    ['<region sample="a > b/|c.wav"/>', 'value [a > b/c.wav] of region #0 sample'],
    ['<region sample="a|\n<region/>', 'value [a] of region #0 sample'],
    ['<region key="60"|/>', 'other'],
    ['<region key=|/>', 'other'],
    ['<region sample="a$D|IR/b.wav"/>', 'variable [$DIR] $DIR'],
    ['<include path="a|.xml"/>', 'include [a.xml]'],
    ['<include path="$D|/a.xml"/>', 'variable [$D] $D'],
    ['<inc|lude path="a.xml"/>', 'header [include]'],
    ['<define name="DI|R" value="1"/>', 'variable [DIR] $DIR'],
    ['<define name="DIR" value="$A|"/>', 'variable [$A] $A'],
    ['<define name="DIR" value="1|"/>', 'other'],
    ['<!-- <region k|ey="1"/> -->', 'other'],
    ['<region/> | <region/>', 'other'],
    ['<group></gr|oup>', 'other'],
  ])('%s', (text, place) => {
    expect(inside(text)).toBe(place);
  });

  it('is found in any text, inside of it', () => {
    fc.assert(
      fc.property(anyText, fc.nat(), (text, number) => {
        const offset = number % (text.length + 1);
        const place = placeInXml(read(text), offset);
        if (place.kind === 'other') return;
        expect(place.start).toBeLessThanOrEqual(offset);
        expect(place.end).toBeGreaterThanOrEqual(offset);
        expect(place.end).toBeLessThanOrEqual(text.length);
      }),
      { numRuns: 2000 },
    );
  });
});
