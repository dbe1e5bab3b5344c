import { describe, expect, it } from 'vitest';
import { refactorings } from '../../../../server/features/refactor/refactorings';
import type { Format } from '../anyInstrument';
import { withEdits } from '../appliedEdits';
import { documentWithMark } from '../documentWithMark';

/** Makes a refactoring at `$0`, or on what stands between two of them; `undefined` where it is not offered. */
async function refactored(
  id: string,
  marked: string,
  format: Format = 'sfz',
  files: Record<string, string> = {},
): Promise<string | undefined> {
  const start = marked.indexOf('$0');
  const second = marked.indexOf('$0', start + 2);
  const end = second < 0 ? start : second - 2;
  const { document } = await documentWithMark(marked.replaceAll('$0', ''), files, format);
  const selected = { ...document, start, end };
  const refactoring = refactorings.find((one) => one.id === id);
  if (refactoring?.offer(selected) === undefined) return undefined;
  const made = await refactoring.make(selected);
  if (!made) return undefined;
  const text = withEdits(document.instrument.sources[0]?.text ?? '', made.edits);
  return made.newFile ? `${text}--- ${made.newFile.path}\n${made.newFile.text}` : text;
}

describe('refactorings in SFZ', () => {
  it.each([
    [
      'shareOpcodes',
      '<group>$0 pan=1\n<region> sample=a.wav lovel=1 pan=2\n<region> sample=b.wav lovel=1 pan=2\n',
      '<group> lovel=1 pan=2\n<region> sample=a.wav\n<region> sample=b.wav\n',
    ],
    [
      'pushDown',
      '<group> lovel=1 key=60\n<region>$0 sample=a.wav\n<region> sample=b.wav hikey=70\n',
      '<group>\n<region> sample=a.wav key=60 lovel=1\n<region> sample=b.wav hikey=70 lovel=1 lokey=60 pitch_keycenter=60\n',
    ],
    ['joinKeys', '<region>$0 lokey=60 pan=1 hikey=c4 pitch_keycenter=60', '<region> key=60 pan=1'],
    ['splitKeys', '<region>$0 key=60 pan=1', '<region> lokey=60 pan=1 hikey=60 pitch_keycenter=60'],
    ['keysAsNames', '<region> lokey=6$00 hikey=61', '<region> lokey=C4 hikey=61'],
    [
      'keysAsNames',
      '$0<region> lokey=60 hikey=61\n$0<region> key=62',
      '<region> lokey=C4 hikey=C#4\n<region> key=62',
    ],
    ['allKeysAsNames', '<region> lokey=6$00 hikey=61 pan=3', '<region> lokey=C4 hikey=C#4 pan=3'],
    ['keysAsNumbers', '<region> lokey=c$0#4', '<region> lokey=61'],
    ['allKeysAsNumbers', '<region> lokey=c$0#4\n<region> key=Db-1', '<region> lokey=61\n<region> key=1'],
    ['extractDefine', '// top\n<region> volume=-$06', '// top\n#define $VOLUME -6\n<region> volume=$VOLUME'],
    [
      'inlineInclude',
      '<group>\n#include "p$0art.sfz" // soft\n<region> key=1',
      '<group>\n<region> key=0\n // soft\n<region> key=1',
    ],
    [
      'regionsToGroup',
      '<group> pan=1\n<region> key=1\n$0<region> key=2$0\n<region> key=3\n',
      '<group> pan=1\n<region> key=1\n<group>\npan=1\n<region> key=2\n<group>\npan=1\n<region> key=3\n',
    ],
    [
      'regionsToFile',
      '<region> key=1\n$0<region> key=2 // two\n<region> key=3$0\n',
      '<region> key=1\n#include "main-regions-2.sfz"\n--- /music/main-regions-2.sfz\n<region> key=2 // two\n<region> key=3\n',
    ],
    [
      'sortRegions',
      '<group>$0\n<region> key=62 // high\n// low and loud\n<region> key=60 lovel=64\n<region> key=60 hivel=63\n',
      '<group>\n<region> key=60 hivel=63\n// low and loud\n<region> key=60 lovel=64\n<region> key=62 // high\n',
    ],
    [
      // Common practice: a key plays the sample whose root key is nearest. 65 is as near to 60 as to 70.
      'closeKeyGaps',
      '<region>$0 lokey=58 hikey=61 pitch_keycenter=60\n<region> lokey=68 hikey=73 pitch_keycenter=70\n',
      '<region> lokey=58 hikey=65 pitch_keycenter=60\n<region> lokey=66 hikey=73 pitch_keycenter=70\n',
    ],
    [
      // In the document's own style: note names, and what `key` stood for where it does not suffice any more.
      'closeKeyGaps',
      '<region>$0 key=Bb3 lokey=G3\n<region> lokey=Eb4 hikey=Gb4 pitch_keycenter=E4\n',
      '<region> lokey=G3 hikey=Db4 pitch_keycenter=Bb3\n<region> lokey=D4 hikey=Gb4 pitch_keycenter=E4\n',
    ],
    [
      // The SFZ format counts positions from 1 to the length.
      'roundRobins',
      '<region>$0 sample=a.wav key=60\n<region> sample=b.wav key=60\n<region> sample=c.wav key=61\n',
      '<region> sample=a.wav key=60 seq_length=2 seq_position=1\n<region> sample=b.wav key=60 seq_length=2 seq_position=2\n<region> sample=c.wav key=61\n',
    ],
  ])('%s', async (id, marked, expected) => {
    const files = { '/music/part.sfz': '<region> key=0\n', '/music/main-regions.sfz': '' };
    expect(await refactored(id, marked, 'sfz', files)).toBe(expected);
  });

  it.each([
    ['shareOpcodes', '<group>$0\n<region> pan=1\n<region> pan=2\n'],
    ['shareOpcodes', '<group>$0\n<region> key=1\n<region> key=1 lokey=0\n'],
    ['joinKeys', '<region>$0 lokey=60 hikey=61 pitch_keycenter=60'],
    ['extractDefine', '<region> sample=soft$0 a.wav'],
    ['inlineInclude', '#include "mis$0sing.sfz"'],
    ['sortRegions', '<region>$0 key=1\n<region> key=2\n'],
    ['closeKeyGaps', '<region>$0 key=1\n<region> key=2\n'],
    ['roundRobins', '<region>$0 key=1 seq_length=2\n<region> key=1 seq_length=2 seq_position=2\n'],
    ['regionsToGroup', '<group>\n$0<region> key=1$0\n'],
  ])('does not offer %s in vain', async (id, marked) => {
    expect(await refactored(id, marked)).toBeUndefined();
  });
});

describe('refactorings in instrument XML', () => {
  it.each([
    [
      'shareOpcodes',
      '<instrument><group$0><region pan="1" key="1"/><region pan="1"/></group></instrument>',
      '<instrument><group pan="1"><region key="1"/><region/></group></instrument>',
    ],
    [
      'regionsToGroup',
      '<instrument>\n  <group pan="1">\n    <region/>\n    $0<region key="2"/>$0\n  </group>\n</instrument>',
      '<instrument>\n  <group pan="1">\n    <region/>\n    </group>\n  <group pan="1">\n    <region key="2"/>\n  </group>\n</instrument>',
    ],
    [
      'extractDefine',
      '<instrument>\n  <region volume="-$06"/>\n</instrument>',
      '<instrument>\n  <define name="VOLUME" value="-6"/>\n  <region volume="$VOLUME"/>\n</instrument>',
    ],
    [
      'inlineInclude',
      '<instrument>\n  <include$0 path="part.xml"/>\n</instrument>',
      '<instrument>\n  <region key="0"/>\n</instrument>',
    ],
    [
      'regionsToFile',
      '<instrument>\n  $0<region key="2"/>$0\n</instrument>\n',
      '<instrument>\n  <include path="main-regions.xml"/>\n</instrument>\n--- /music/main-regions.xml\n<?xml version="1.0" encoding="UTF-8"?>\n<instrument>\n  <region key="2"/>\n</instrument>\n',
    ],
    [
      'joinKeys',
      '<instrument><region$0 lokey="60" hikey="60" pitch_keycenter="60"/></instrument>',
      '<instrument><region key="60"/></instrument>',
    ],
  ])('%s', async (id, marked, expected) => {
    const files = {
      '/music/part.xml': '<?xml version="1.0"?>\n<instrument>\n  <region key="0"/>\n</instrument>\n',
    };
    expect(await refactored(id, marked, 'xml', files)).toBe(expected);
  });
});
