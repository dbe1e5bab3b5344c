import { describe, expect, it } from 'vitest';
import { notations } from '../../../server/workspace/notations/notationOf';
import type { Format } from '../features/anyInstrument';
import { effective, readText } from '../features/anyInstrument';
import { files } from './anyDirectives';

/** What is written, and the notes with the text that each is about and the text that shows it. */
function converted(from: Format, to: Format, text: string, options = {}) {
  const instrument = readText(from, text, files);
  const written = notations[to].write(instrument, { directives: 'keep', ...options });
  const again = notations[to].read(written.text, {
    path: '/music/again',
    include: (path) => (path in files ? { kind: 'text', text: files[path] } : { kind: 'missing' }),
  });
  return {
    text: written.text,
    kept: written.kept,
    before: effective(instrument),
    after: effective(again),
    messages: written.notes.map(({ message }) => message),
    notes: written.notes.map(({ kind, source, start, end, written: place }) => [
      kind,
      instrument.sources[source]?.text.slice(start, end).trim(),
      place && written.text.slice(place.start, place.end).trim(),
    ]),
  };
}

const inside = (xml: string) =>
  xml
    .split('\n')
    .slice(2, -2)
    .map((line) => line.trim());

describe('variables and includes', () => {
  it('stay where they stood, from SFZ to XML', () => {
    const { text, notes, before, after, kept } = converted(
      'sfz',
      'xml',
      `#define $KEY 50
#define $KEYS $KEY
#include "names.sfz"
<group> tune=-$KEY
#include "layers.sfz"
<region> sample=$FOLDER/a & b.wav key=$KEYS label_cc1=$`,
    );
    expect(inside(text)).toEqual([
      '<define name="KEY" value="50"/>',
      '<define name="KEYS" value="$KEY"/>',
      '<include path="names.sfz"/>',
      '<group tune="-$KEY"/>',
      '<include path="layers.sfz"/>',
      '<region sample="$FOLDER/a &amp; b.wav" key="$KEYS" label_cc1="$"/>',
    ]);
    expect(notes).toEqual([]);
    expect(kept).toBe(7);
    expect(after).toEqual(before);
  });

  it('stay where they stood, from XML to SFZ', () => {
    const { text, notes, before, after } = converted(
      'xml',
      'sfz',
      `<instrument>
        <define name="KEY" value="50"/>
        <define name="KEYS" value="$KEY"/>
        <!-- soft -->
        <group tune="-$KEY">
          <include path="layers.sfz"/>
          <region sample="a &amp; b.wav" key="$KEYS"/>
        </group>
      </instrument>`,
    );
    expect(text).toBe(`#define $KEY 50
#define $KEYS $KEY
// soft

<group>
tune=-$KEY
#include "layers.sfz"
<region> sample=a & b.wav key=$KEYS
`);
    expect(notes).toEqual([]);
    expect(after).toEqual(before);
  });

  it.each([
    [
      'a file of instrument XML in SFZ',
      'xml',
      'sfz',
      '<instrument><include path="layers.xml"/></instrument>',
    ],
    ['a file in which a header goes on', 'sfz', 'xml', '<region> key=1\n#include "tail.sfz"'],
    ['a file in which a header begins that goes on', 'sfz', 'xml', '#include "tail.sfz"\nkey=1'],
  ] as const)('cannot be kept for %s, which is written in its place with a note', (_, from, to, text) => {
    const { text: written, notes, before, after } = converted(from, to, text);
    expect(written).not.toMatch(/include/);
    expect(after).toEqual(before);
    expect(after.length).toBeGreaterThan(0);
    expect(notes).toEqual([['approximated', expect.stringMatching(/include/), expect.any(String)]]);
  });

  it('are written out where the other notation has no way to say them', () => {
    const { text, notes, messages, before, after } = converted(
      'xml',
      'sfz',
      `<instrument><define name="TWO" value="two words"/><define name="KEY" value="60"/>
        <region region_label="$TWO" key="$KEY"/><region region_label="&#36;KEY is $KEY" key="1"/></instrument>`,
    );
    expect(text).toBe('<region> region_label=two words key=60\n<region> region_label=$KEY is 60 key=1\n');
    expect(notes).toEqual([
      ['approximated', '<define name="TWO" value="two words"/>', ''],
      ['approximated', '<define name="TWO" value="two words"/>', ''],
      ['approximated', '<define name="KEY" value="60"/>', ''],
    ]);
    expect(messages[0]).toBe(
      'No variables are kept: with them, region 2 would have no region_label in place of $KEY is 60.',
    );
    expect(after).toEqual(before);
  });

  it('are written out alone where others can be kept', () => {
    const { text, notes, before, after } = converted(
      'xml',
      'sfz',
      `<instrument><define name="TWO" value="two words"/><define name="KEY" value="60"/>
        <region region_label="$TWO" key="$KEY"/></instrument>`,
    );
    expect(text).toBe('#define $KEY 60\n<region> region_label=two words key=$KEY\n');
    expect(notes).toEqual([['approximated', '<define name="TWO" value="two words"/>', '']]);
    expect(after).toEqual(before);
  });

  it('are written out, with the reason, where an included file would reach the header before it', () => {
    const { text, messages, notes, before, after } = converted(
      'xml',
      'sfz',
      '<instrument><define name="KEY" value="60"/><region key="$KEY"/><include path="tail.sfz"/></instrument>',
    );
    expect(text).toBe('#define $KEY 60\n<region> key=$KEY\n<region> sample=tail.wav\n');
    const about = ['approximated', '<include path="tail.sfz"/>', ''];
    expect(notes).toEqual([about, about, ['dropped', 'pan=7', '']]);
    expect(messages.slice(0, 2)).toEqual([
      'No includes are kept: with them, region 1 would have pan 7 in place of none.',
      'The text of "tail.sfz" is written in the place of its include.',
    ]);
    expect(after).toEqual(before);
  });

  it('in names are written out in XML', () => {
    const { text, notes, before, after } = converted(
      'sfz',
      'xml',
      '#define $PART vel\n#define $ALL hivel=64\n<region> lo$PART=3 key=$PART\n$ALL',
    );
    expect(inside(text)).toEqual([
      '<define name="PART" value="vel"/>',
      '<define name="ALL" value="hivel=64"/>',
      '<region lovel="3" key="$PART" hivel="64"/>',
    ]);
    expect(notes).toEqual([
      ['approximated', 'lo$PART=3', 'lovel="3"'],
      ['approximated', '$ALL', 'hivel="64"'],
    ]);
    expect(after).toEqual(before);
  });

  it('defined among the opcodes of a header come before it, or behind it where that would change a value', () => {
    expect(inside(converted('sfz', 'xml', '<region> key=1\n#define $A 2\ntune=$A').text)).toEqual([
      '<define name="A" value="2"/>',
      '<region key="1" tune="$A"/>',
    ]);
    const changed = converted(
      'sfz',
      'xml',
      '#define $A 1\n<region> key=$A\n#define $A 2\ntune=$A\n<region> key=$A',
    );
    expect(inside(changed.text)).toEqual([
      '<define name="A" value="1"/>',
      '<region key="$A" tune="2"/>',
      '<define name="A" value="2"/>',
      '<region key="$A"/>',
    ]);
    expect(changed.notes).toEqual([['approximated', 'tune=$A', 'tune="2"']]);
    expect(changed.after).toEqual(changed.before);
  });

  it('that lead to files are led there from another folder, the files themselves only where no path is in them', () => {
    const move = { from: '/music', to: '/music/new/place' };
    const { text, notes } = converted(
      'sfz',
      'xml',
      '#include "names.sfz"\n#define $DIR wav\n#include "layers.sfz"\n<region> sample=$DIR/a.wav\n<region> sample=..\\b.wav\n<region> sample=/c.wav\n<region> sample=C:\\d.wav\n<region> sample=*sine',
      { move },
    );
    expect(inside(text)).toEqual([
      '<include path="../../names.sfz"/>',
      '<define name="DIR" value="wav"/>',
      '<group hivel="$KEY">',
      '<region sample="../../$FOLDER/soft.wav"/>',
      '</group>',
      '<group lovel="64">',
      '<region sample="../../$DIR/a.wav"/>',
      '<region sample="../../../b.wav"/>',
      '<region sample="/c.wav"/>',
      '<region sample="C:\\d.wav"/>',
      '<region sample="*sine"/>',
      '</group>',
    ]);
    expect(notes).toEqual([['approximated', '#include "layers.sfz"', '']]);
  });

  it('of files that are not there are kept, or said to be left out', () => {
    const text = '<instrument><include path="no such.sfz"/><region key="1"/></instrument>';
    expect(converted('xml', 'sfz', text)).toMatchObject({
      text: '#include "no such.sfz"\n<region> key=1\n',
      notes: [],
    });
    expect(converted('xml', 'sfz', text, { directives: 'inline' })).toMatchObject({
      text: '<region> key=1\n',
      notes: [['dropped', '<include path="no such.sfz"/>', '']],
    });
  });
});
