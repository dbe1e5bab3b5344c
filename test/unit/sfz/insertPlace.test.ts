import { describe, expect, it } from 'vitest';
import type { Included } from '../../../server/model/notation';
import { insertPlace } from '../../../server/sfz/insertPlace';
import { readSfz } from '../../../server/sfz/read';

/** The text with `^` where headers would be put that are wanted at `|`. */
function placed(marked: string, inserted: string, included: Record<string, string> = {}): string {
  const wanted = marked.indexOf('|');
  const text = marked.replace('|', '');
  const include = (path: string): Included =>
    path in included ? { kind: 'text', text: included[path] } : { kind: 'missing' };
  const instrument = readSfz(text, { path: 'a.sfz', include });
  const { source, start, end } = insertPlace(instrument, wanted, readSfz(inserted, { path: 'b.sfz' }));
  expect([source, end]).toEqual([0, start]);
  return `${text.slice(0, start)}^${text.slice(start)}`;
}

/** sfzformat.com: an opcode belongs to the header before it, and a region inherits from the group, master and global before it. */
describe('a place for regions', () => {
  it.each([
    ['in an empty text', '|', '^'],
    ['at the end', '<region> a=1|', '<region> a=1^'],
    ['before a header', '<region> a=1 |<region> b=2', '<region> a=1 ^<region> b=2'],
    ['behind the tag that it is within', '<re|gion>', '<region>^'],
    ['behind all opcodes of the header', '<region>| a=1 b=2\n<region>', '<region> a=1 b=2^\n<region>'],
    ['behind the opcode that it is within', '<region> a=1 b=|2\n<region>', '<region> a=1 b=2^\n<region>'],
    ['behind the tag and its opcodes', '<reg|ion> a=1\n<region>', '<region> a=1^\n<region>'],
    ['between a group and its region', '<group> a=1\n|<region>', '<group> a=1\n^<region>'],
    ['behind a directive', '#define $a 1| <region>', '#define $a 1^ <region>'],
    ['behind a directive that it is within', '#def|ine $a 1\n<region>', '#define $a 1^\n<region>'],
    ['before a directive', '|#define $a 1\n<region>', '^#define $a 1\n<region>'],
    ['behind a remark that it is within', '// re|mark\n<region>', '// remark^\n<region>'],
    ['behind all opcodes without a header', '|a=1 b=2\n<region>', 'a=1 b=2^\n<region>'],
    ['behind opcodes without a header', 'a=1 |b=2\n<region>', 'a=1 b=2^\n<region>'],
  ])('is %s', (_, marked, expected) => {
    expect(placed(marked, '<region>')).toBe(expected);
  });

  it('is behind what an included file adds to the header before', () => {
    const text = '<region>|\n#include "part.sfz"\n<region>';
    expect(placed(text, '<region>', { 'part.sfz': 'a=1' })).toBe('<region>\n#include "part.sfz"^\n<region>');
    expect(placed(text, '<region>', { 'part.sfz': '<region> a=1' })).toBe(
      '<region>^\n#include "part.sfz"\n<region>',
    );
  });
});

describe('a place for regions beside included files', () => {
  it('does not go by what stands within them', () => {
    const text = '#include "part.sfz"\n|<region>';
    expect(placed(text, '<region>', { 'part.sfz': `// ${'x'.repeat(60)}` })).toBe(text.replace('|', '^'));
  });

  it('is behind the one that adds to the header before, not behind others', () => {
    const files = { 'one.sfz': '<region>', 'part.sfz': 'a=1', 'two.sfz': '<region>' };
    expect(
      placed('#include "one.sfz"\n<region>|\n#include "part.sfz"\n#include "two.sfz"', '<region>', files),
    ).toBe('#include "one.sfz"\n<region>\n#include "part.sfz"^\n#include "two.sfz"');
    expect(placed('<region>\n|#include "part.sfz"\n<region>', '<region>', files)).toBe(
      '<region>\n#include "part.sfz"^\n<region>',
    );
  });
});

describe('a place for groups', () => {
  it.each([
    [
      'where the regions of the group before end',
      '<group> a=1\n|<region>\n<group>',
      '<group> a=1\n<region>\n^<group>',
    ],
    [
      'at the end where they go on to it',
      '<group> a=1\n|<region>\n<region>',
      '<group> a=1\n<region>\n<region>^',
    ],
    ['at once where no regions follow', '<region>\n|<group>\n<region>', '<region>\n^<group>\n<region>'],
    [
      'at once before a header of its kind',
      '<group>\n<region>\n|<group>\n<region>',
      '<group>\n<region>\n^<group>\n<region>',
    ],
    [
      'at once before one further out',
      '<group>\n<region>\n|<master>\n<region>',
      '<group>\n<region>\n^<master>\n<region>',
    ],
    [
      'past what no region inherits from',
      '<group>\n|<curve>\n<region>\n<group>',
      '<group>\n<curve>\n<region>\n^<group>',
    ],
    [
      'past a control header',
      '<group>\n|<region>\n<control>\n<region>\n<group>',
      '<group>\n<region>\n<control>\n<region>\n^<group>',
    ],
    ['at once before a curve alone', '<group>\n<region>\n|<curve>', '<group>\n<region>\n^<curve>'],
  ])('is %s', (_, marked, expected) => {
    expect(placed(marked, '<group> <region>')).toBe(expected);
  });

  it('goes by the outermost of those that are put in', () => {
    const text = '<master>\n|<group>\n<region>\n<group>\n<region>\n<master>\n<region>';
    expect(placed(text, '<group> <region>')).toBe(text.replace('|', '^'));
    expect(placed(text, '<master> <group> <region>')).toBe(
      '<master>\n<group>\n<region>\n<group>\n<region>\n^<master>\n<region>',
    );
    expect(placed(text, '<region> <master>')).toBe(placed(text, '<master>'));
    expect(placed(text, '<global>')).toBe(
      '<master>\n<group>\n<region>\n<group>\n<region>\n<master>\n<region>^',
    );
    expect(placed('<global>\n|<region>\n<global>\n<region>', '<global>')).toBe(
      '<global>\n<region>\n^<global>\n<region>',
    );
    // A control header takes nothing from anybody.
    expect(placed('<group>\n|<region>', '<control>')).toBe('<group>\n^<region>');
  });

  it('is behind the included file that the regions before end in', () => {
    const text = '<group>\n|<region>\n#include "part.sfz"\n<region>';
    expect(placed(text, '<group>', { 'part.sfz': '<region> <group> <region>' })).toBe(
      '<group>\n<region>\n#include "part.sfz"\n<region>^',
    );
    const ending = '<group>\n|<region>\n#include "part.sfz"\n<group>\n<region>';
    expect(placed(ending, '<group>', { 'part.sfz': '<region> <group>' })).toBe(
      '<group>\n<region>\n#include "part.sfz"^\n<group>\n<region>',
    );
    expect(
      placed(`#include "one.sfz"\n${ending}`, '<group>', {
        'one.sfz': '<region>',
        'part.sfz': '<region> <group>',
      }),
    ).toBe('#include "one.sfz"\n<group>\n<region>\n#include "part.sfz"^\n<group>\n<region>');
  });
});
