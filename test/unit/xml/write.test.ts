import { describe, expect, it } from 'vitest';
import { readSfz } from '../../../server/sfz/read';
import { writeXml } from '../../../server/xml/write';

function written(sfz: string, options = {}) {
  const included = { kind: 'text', text: '<region> sample=inner.wav' } as const;
  const { text, notes } = writeXml(readSfz(sfz, { path: 'a.sfz', include: () => included }), options);
  return { text, notes: notes.map(({ kind, message }) => `${kind}: ${message}`) };
}

/** The elements inside the outermost one. */
const inside = (sfz: string) => written(sfz).text.split('\n').slice(2, -2);

describe('writing XML', () => {
  it('nests the headers and keeps their order', () => {
    expect(
      written(`<control> default_path=S/
        <global> tune=1 <region> key=1 <master> pan=2 <group> volume=3 <region> key=2 <region> key=3 <group> volume=4 <region> key=4
        <curve> curve_index=7 v000=0
        <global> tune=2 <region> key=5`).text,
    ).toBe(`<?xml version="1.0" encoding="UTF-8"?>
<instrument>
  <control default_path="S/"/>
  <global tune="1">
    <region key="1"/>
    <master pan="2">
      <group volume="3">
        <region key="2"/>
        <region key="3"/>
      </group>
      <group volume="4">
        <region key="4"/>
      </group>
    </master>
  </global>
  <curve curve_index="7" v000="0"/>
  <global tune="2">
    <region key="5"/>
  </global>
</instrument>
`);
  });

  it('escapes what XML would read otherwise', () => {
    expect(inside('<region> sample=a & b > "x".wav region_label=$9')).toEqual([
      '  <region sample="a &amp; b &gt; &quot;x&quot;.wav" region_label="&#36;9"/>',
    ]);
  });

  it('keeps comments with what they belong to', () => {
    expect(
      inside(
        '// first\n<group> tune=1 // soft\n// ---- next ----\n<region> key=1 // why\n/* last\nof all */',
      ),
    ).toEqual([
      '  <!-- first -->',
      '  <group tune="1">',
      '    <!-- soft -->',
      '    <!-- –––– next –––– -->',
      '    <region key="1"/> <!-- why -->',
      '  </group>',
      '  <!-- last',
      'of all -->',
    ]);
  });

  it('says what it left out or wrote out', () => {
    const { text, notes } = written(
      'tune=1\n#define $A 5\n<region> key=1 key=$A 1st=2\n#include "x.sfz"\n<include> path=y',
    );
    expect(text.split('\n').slice(1, -2)).toEqual([
      '<instrument tune="1">',
      '  <region key="5"/>',
      '  <region sample="inner.wav"/>',
    ]);
    expect(notes).toEqual([
      'approximated: $A is written out: its value 5 stands where it was used.',
      'ignored: This key is left out: key is set again later in the same place, and an element has each attribute once.',
      'dropped: "1st" is left out: it cannot be the name of an attribute.',
      'approximated: The text of "x.sfz" is written in the place of its include.',
      'dropped: <include> is left out: it has no effect, and an element of that name cannot stand here.',
    ]);
  });

  it('uses the line end that is asked for', () => {
    expect(written('<region> key=1', { lineEnd: '\r\n' }).text).toBe(
      '<?xml version="1.0" encoding="UTF-8"?>\r\n<instrument>\r\n  <region key="1"/>\r\n</instrument>\r\n',
    );
  });

  it('leads sample paths back to the folder of the instrument', () => {
    const move = { from: '/music/in', to: '/music/out' };
    expect(written('<region> sample=a.wav', { move }).text).toContain('sample="../in/a.wav"');
  });
});
