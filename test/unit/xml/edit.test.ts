import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { effectiveValues } from '../../../server/model/effectiveValues';
import type { Change } from '../../../server/model/notation';
import { readSfz } from '../../../server/sfz/read';
import { editXml } from '../../../server/xml/edit';
import { readXml } from '../../../server/xml/read';
import { problemsOf } from './events';

const read = (text: string) => readXml(text, { path: 'a.instrument.xml' });

/** The text after a change. */
function changed(text: string, change: Change): string {
  const { edits } = editXml(read(text), change);
  return [...edits]
    .sort((a, b) => b.start - a.start)
    .reduce((now, { start, end, newText }) => now.slice(0, start) + newText + now.slice(end), text);
}

describe('setting a value', () => {
  it.each([
    ['<region key="60" tune="1"/>', 'tune', '5', '<region key="60" tune="5"/>'],
    [`<region tune=' 1 '/>`, 'tune', `a'b"`, `<region tune=' a&apos;b&quot; '/>`],
    ['<region/>', 'key', '60', '<region key="60"/>'],
    ['<region></region>', 'key', '60', '<region key="60"></region>'],
    ['<region key="60" />', 'sample', 'a & b.wav', '<region key="60" sample="a &amp; b.wav" />'],
    [
      '<region\n    key="60"\n    tune="1"/>',
      'pan',
      '3',
      '<region\n    key="60"\n    tune="1"\n    pan="3"/>',
    ],
    ['<region loopmode="one_shot"/>', 'loop_mode', 'no_loop', '<region loopmode="no_loop"/>'],
  ])('%j: %s=%s', (text, name, value, result) => {
    expect(changed(text, { kind: 'set', header: 0, name, value })).toBe(result);
  });

  it('refuses a name that cannot be an attribute, with a note', () => {
    const { edits, notes } = editXml(read('<region/>'), { kind: 'set', header: 0, name: '1st', value: '1' });
    expect(edits).toEqual([]);
    expect(notes.map(({ kind }) => kind)).toEqual(['dropped']);
  });

  it('reads back as it was set', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(
          '<region/>',
          `<region\n label=' x'\n/>`,
          '<region label="$A" key="1">',
          `<region label = '' key='1'/>`,
        ),
        fc.string().filter((text) => !/[\u0000-\u0008\u000b\u000c\u000e-\u001f$]/.test(text)),
        (text, value) => {
          const after = read(changed(text, { kind: 'set', header: 0, name: 'label', value }));
          expect(after.valueText(after.own(0, after.names.canonical(after.names.idOf('label'))))).toBe(value);
        },
      ),
    );
  });
});

describe('taking out and renaming', () => {
  it.each([
    ['<region key="60" tune="1"/>', 0, '<region tune="1"/>'],
    ['<region key="60"\n  tune=" 1 "\n  pan="2"/>', 1, '<region key="60"\n  pan="2"/>'],
    [`<region key='60'/>`, 0, '<region/>'],
    ['<region key=60 tune="1"/>', 0, '<region tune="1"/>'],
  ])('%j without its parameter %d', (text, parameter, result) => {
    expect(changed(text, { kind: 'remove', parameter })).toBe(result);
  });

  it('writes a parameter under another name', () => {
    expect(changed('<region loopmode="x"/>', { kind: 'rename', parameter: 0, name: 'loop_mode' })).toBe(
      '<region loop_mode="x"/>',
    );
  });

  it.each([
    [
      '<instrument>\n  <region key="1"/>\n  <region key="2"/>\n</instrument>',
      '<instrument>\n  <region key="2"/>\n</instrument>',
    ],
    ['<instrument><region a=">"></region><region/></instrument>', '<instrument><region/></instrument>'],
    [
      '<instrument>\n  <group key=">">\n    <region/>\n  </group>\n</instrument>',
      '<instrument>\n    <region/>\n</instrument>',
    ],
  ])('takes a header out of %j and leaves what stands inside', (text, result) => {
    expect(changed(text, { kind: 'removeHeader', header: 0 })).toBe(result);
  });

  it('takes out a group with its last element, though its end tag touches the next one', () => {
    const text = '<instrument><group lovel="9"><region/></group></instrument>';
    expect(changed(text, { kind: 'removeHeader', header: 1 })).toBe('<instrument></instrument>');
  });
});

describe('inserting', () => {
  const regions = readSfz('<region> sample=a.wav key=60 <region> sample=b.wav key=61', { path: 'b.sfz' });
  const groups = readSfz('<group> lovel=1 <region> key=60', { path: 'b.sfz' });
  const insert = (marked: string, instrument = regions) => {
    const offset = marked.indexOf('|');
    return changed(marked.slice(0, offset) + marked.slice(offset + 1), {
      kind: 'insert',
      offset,
      instrument,
    });
  };
  const a = '<region sample="a.wav" key="60"/>';
  const b = '<region sample="b.wav" key="61"/>';

  it.each([
    ['on an empty line', '<instrument>\n|\n</instrument>', `<instrument>\n  ${a}\n  ${b}\n</instrument>`],
    [
      'on a line with blanks',
      '<instrument>\n  |\n</instrument>',
      `<instrument>\n  ${a}\n  ${b}\n</instrument>`,
    ],
    [
      'behind an element',
      '<instrument>\n  <region/>|\n</instrument>',
      `<instrument>\n  <region/>\n  ${a}\n  ${b}\n</instrument>`,
    ],
    [
      'before an element',
      '<instrument>\n  |<region/>\n</instrument>',
      `<instrument>\n  ${a}\n  ${b}\n  <region/>\n</instrument>`,
    ],
    ['on one line', '<instrument>|</instrument>', `<instrument>\n  ${a}\n  ${b}\n</instrument>`],
    [
      'in a tag, behind it',
      '<instrument>\n\t<group>\n\t\t<region k|ey="1"/>\n\t</group>\n</instrument>',
      `<instrument>\n\t<group>\n\t\t<region key="1"/>\n\t\t${a}\n\t\t${b}\n\t</group>\n</instrument>`,
    ],
    [
      'behind the end',
      '<instrument>\n  <region/>\n</instrument>\n|',
      `<instrument>\n  <region/>\n  ${a}\n  ${b}\n</instrument>\n`,
    ],
    [
      'before the start',
      '|<?xml version="1.0"?>\n<instrument>\n  <region/>\n</instrument>',
      `<?xml version="1.0"?>\n<instrument>\n  ${a}\n  ${b}\n  <region/>\n</instrument>`,
    ],
  ])('%s', (_, marked, result) => {
    expect(insert(marked)).toBe(result);
  });

  it('puts a group behind the group that it cannot stand in', () => {
    expect(insert('<instrument>\n  <group>\n    |<region/>\n  </group>\n</instrument>', groups)).toBe(
      '<instrument>\n  <group>\n    <region/>\n  </group>\n  <group lovel="1">\n    <region key="60"/>\n  </group>\n</instrument>',
    );
  });

  it('makes a whole document of an empty file', () => {
    expect(insert('|\n')).toBe(
      `<?xml version="1.0" encoding="UTF-8"?>\n<instrument>\n  ${a}\n  ${b}\n</instrument>\n`,
    );
  });

  it('keeps any well-formed text well formed and adds the regions', () => {
    const part = fc.constantFrom(
      '<region tune="1"/>',
      '<group>\n<region/>\n</group>',
      '\n',
      '  ',
      '<!-- > -->',
      '<group lovel="5"/>',
      '<control/>',
    );
    fc.assert(
      fc.property(
        fc.array(part, { maxLength: 6 }),
        fc.nat(),
        fc.constantFrom(regions, groups),
        (parts, number, instrument) => {
          const text = `<instrument>${parts.join('')}</instrument>`;
          const offset = number % (text.length + 1);
          const after = changed(text, { kind: 'insert', offset, instrument });
          expect(problemsOf(after)).toEqual([]);
          const before = read(text);
          const now = read(after);
          expect(now.findings).toEqual([]);
          expect(now.regions.length).toBe(before.regions.length + instrument.regions.length);
          const keys = [...now.regions].map((region) => effectiveValues(now, region).lokey);
          expect(keys.filter((key) => key !== undefined)).toEqual(
            [...instrument.regions].map((region) => effectiveValues(instrument, region).lokey),
          );
        },
      ),
      { numRuns: 1000 },
    );
  });
});
