import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Renamed } from '../../../../server/features/rename/rename';
import {
  changingTogether,
  renameLabel,
  renameVariable,
  renamingAt,
} from '../../../../server/features/rename/rename';
import { editedText, readEdited } from '../../../../server/model/editing/changedInstrument';
import type { TextEdit } from '../../../../server/model/finding';
import type { Instrument } from '../../../../server/model/instrument';
import { standingIn } from '../../../../server/model/text/span';
import { sfzNotation } from '../../../../server/sfz/notation';
import { notationOfParts } from '../../../../server/workspace/instrumentsAround';
import { documentWithMark, inOwnContext } from '../documentWithMark';

const part = { '/music/part.sfz': '#define $LOW 36\n<region> key=$KEY lokey=$LOW\n' };

async function instrumentOf(
  text: string,
  format: 'sfz' | 'xml' = 'sfz',
  files: Record<string, string> = part,
) {
  const { document, offset } = await documentWithMark(text, files, format);
  const { instrument, notation } = document;
  const path = instrument.sources[0]?.path ?? '';
  const own = { instrument, notation, path };
  return { document, offset, own: { ...own, notationOf: notationOfParts(own) } };
}

/** What stands at the mark and could be renamed: its kind, its text in the document and its name. */
async function renaming(marked: string, format: 'sfz' | 'xml' = 'sfz') {
  const { document, offset } = await instrumentOf(marked, format);
  const found = renamingAt(inOwnContext(document), offset);
  return found && [found.kind, marked.replace('$0', '').slice(found.start, found.end), found.name];
}

/** The main file with the name at the mark changed, or why it was not; other files are added with their name. */
async function renamed(marked: string, newName: string, format: 'sfz' | 'xml' = 'sfz') {
  const { document, offset, own } = await instrumentOf(marked, format);
  const found = renamingAt(inOwnContext(document), offset);
  if (!found) return 'nothing';
  const result =
    found.kind === 'variable'
      ? renameVariable([own], found.name, newName)
      : found.kind === 'label'
        ? renameLabel([own], found, newName)
        : undefined;
  return result && textsOf(result);
}

function textsOf({ files, refusal }: Renamed) {
  if (!files) return refusal;
  const texts = files.map(({ source, edits }) => editedText(source.text, edits));
  return texts.length === 1 ? texts[0] : texts;
}

describe('what can be renamed', () => {
  it('is a variable without its $, where it is defined and used', async () => {
    expect(await renaming('#define $K$0EY 60\n')).toEqual(['variable', 'KEY', 'KEY']);
    expect(await renaming('#define $KEY 6\n<region> key=$$0KEY0')).toEqual(['variable', 'KEY', 'KEY']);
    expect(await renaming('<instrument><define name="K$0EY" value="1"/></instrument>', 'xml')).toEqual([
      'variable',
      'KEY',
      'KEY',
    ]);
  });

  it('is the text of a label', async () => {
    expect(await renaming('<group> group_label=Soft ha$0mmers')).toEqual([
      'label',
      'Soft hammers',
      'Soft hammers',
    ]);
    expect(await renaming('<control> label_cc74=Bri$0ght')).toEqual(['label', 'Bright', 'Bright']);
    expect(await renaming('<instrument><region sw_label="A $0&amp; B"/></instrument>', 'xml')).toEqual([
      'label',
      'A &amp; B',
      'A & B',
    ]);
  });

  it('is the file name of a sample', async () => {
    expect(await renaming('<region> sample=Piano\\low/a $0b.wav key=1')).toEqual([
      'sample',
      'a b.wav',
      'a b.wav',
    ]);
    expect(await renaming('<region> sample=*si$0ne')).toBeUndefined();
  });

  it('is nothing else', async () => {
    for (const text of [
      '<region> ke$0y=60',
      '<region> key=6$00',
      '<reg$0ion>',
      '// a$0b',
      '<region> sample=$0',
    ])
      expect(await renaming(text)).toBeUndefined();
  });
});

describe('renaming a variable', () => {
  it('changes its definitions and uses, also those written together with more letters', async () => {
    const text = '#define $K$0EY 6\n#define $TOP $KEY9\n<region> lokey=$KEY0 hikey=$TOP locc$KEY=1 // $KEY\n';
    expect(await renamed(text, 'LOW')).toBe(
      '#define $LOW 6\n#define $TOP $LOW9\n<region> lokey=$LOW0 hikey=$TOP locc$LOW=1 // $KEY\n',
    );
    expect(await renamed(text, '$LOW')).toContain('#define $LOW 6');
  });

  it('leaves a longer variable that begins with the same letters alone', async () => {
    const text = '#define $K$0EY 60\n#define $KEYS 72\n<region> lokey=$KEY hikey=$KEYS\n';
    expect(await renamed(text, 'LOW')).toBe(
      '#define $LOW 60\n#define $KEYS 72\n<region> lokey=$LOW hikey=$KEYS\n',
    );
  });

  it('changes included files too', async () => {
    expect(await renamed('#define $K$0EY 60\n#include "part.sfz"\n<region> key=$LOW', 'ROOT')).toEqual([
      '#define $ROOT 60\n#include "part.sfz"\n<region> key=$LOW',
      '#define $LOW 36\n<region> key=$ROOT lokey=$LOW\n',
    ]);
  });

  it('is the same in XML, where a definition has no $', async () => {
    const text = `<instrument><define name="K$0EY" value="6"/><region key='$KEY0' sample="&#36;KEY"/></instrument>`;
    expect(await renamed(text, 'LOW', 'xml')).toBe(
      `<instrument><define name="LOW" value="6"/><region key='$LOW0' sample="&#36;KEY"/></instrument>`,
    );
  });

  it('changes a variable in XML that is defined twice, with and without $', async () => {
    const text =
      '<instrument><define name="A$0" value="1"/><define name="$A" value="2"/><region key="$A"/></instrument>';
    expect(await renamed(text, 'B', 'xml')).toBe(
      '<instrument><define name="B" value="1"/><define name="$B" value="2"/><region key="$B"/></instrument>',
    );
  });

  it('refuses a name that is none or is taken', async () => {
    expect(await renamed('#define $A$0 1\n', 'a b')).toMatch(/letters, digits/);
    expect(await renamed('#define $A$0 1\n', '')).toMatch(/letters, digits/);
    expect(await renamed('#define $A$0 1\n\n#define $B 1\n', 'B')).toBe(
      '$B is defined already in line 3. Choose another name.',
    );
    expect(await renamed('#define $A$0 1\n<region> key=$B', 'B')).toMatch(/^\$B is used already/);
  });

  it('refuses a name that would change what another use means', async () => {
    // $AB would begin $ABC, which stands for $A and "BC".
    expect(await renamed('#define $A 1\n#define $X$0 2\n<region> sample=$ABC.wav', 'AB')).toBe(
      'The name $AB would change what is meant in line 3. Choose another name.',
    );
    // $XY, the variable $X with a "Y", would become $BY, which is another variable.
    expect(await renamed('#define $BY 1\n#define $X$0 2\n<region> key=$XY', 'B')).toMatch(/line 3/);
    // A use of a longer variable, which is not defined yet, begins with it: the name must not be shortened there.
    expect(await renamed('#define $X$0 2\n<region> key=$KEYS', 'KEY')).toMatch(/line 2/);
  });

  it('changes the instruments that share a file with it, and refuses what does not fit one of them', async () => {
    const shared = '#define $KEY 60\n';
    const [first, second, third] = [
      '#include "shared.sfz"\n<region> key=$KEY',
      '#include "shared.sfz"\n<region> lokey=$KEY hikey=$HIGH',
      '#define $KEY 1\n<region> key=$KEY',
    ].map((text, at) => {
      const path = `/music/${at}.sfz`;
      const instrument = sfzNotation.read(text, { path, include: () => ({ kind: 'text', text: shared }) });
      const own = { path, notation: sfzNotation, instrument };
      return { ...own, notationOf: notationOfParts(own) };
    });
    const together = changingTogether(first, [third, second], {
      kind: 'variable',
      name: 'KEY',
      start: 0,
      end: 0,
    });
    expect(together.map(({ path }) => path)).toEqual(['/music/0.sfz', '/music/1.sfz']);
    expect(renameVariable(together, 'KEY', 'HIGH').refusal).toMatch(/used already/);
    expect(renameVariable([first], 'KEY', 'HIGH').refusal).toBeUndefined();
  });

  const name = fc.constantFrom('A', 'AB', 'ABC', 'B', 'BA', 'KEY', 'KEYS', 'K', 'A1');
  const text = fc.array(
    fc.oneof(
      fc
        .tuple(name, fc.constantFrom('1', '2', '36', '$A', '$KEY', 'x'))
        .map(([n, v]) => `#define $${n} ${v}\n`),
      fc
        .tuple(
          fc.constantFrom('key', 'lokey', 'locc$A', 'sample', 'region_label'),
          name,
          fc.constantFrom('', 'S', '1', '$B'),
        )
        .map(([opcode, n, rest]) => `<region> ${opcode}=$${n}${rest}\n`),
      fc.constantFrom('<group> $A\n', '// $KEY\n', '#include "$A.sfz"\n'),
    ),
    { maxLength: 12 },
  );

  it('keeps every value, or refuses', async () => {
    let done = 0;
    await fc.assert(
      fc.asyncProperty(text, name, name, async (lines, from, to) => {
        const { own } = await instrumentOf(lines.join(''), 'sfz', {});
        const { files } = renameVariable([own], from, to);
        if (!files) return;
        const edits = files.flatMap((file) => file.edits.map((edit) => standingIn<TextEdit>(0, edit)));
        const after = readEdited(own.notation, own.instrument, edits);
        expect(valuesOf(after)).toEqual(valuesOf(own.instrument));
        // And back again.
        const back = renameVariable([{ ...own, instrument: after }], to, from);
        expect(back.refusal).toBeUndefined();
        if (edits.length > 0) done++;
      }),
    );
    expect(done).toBeGreaterThan(0);
  });
});

function valuesOf(instrument: Instrument): string[] {
  return Array.from(
    { length: instrument.parameters.count },
    (_, parameter) =>
      `${instrument.names.text(instrument.name(parameter))}=${instrument.valueText(parameter)}`,
  );
}

describe('renaming a label', () => {
  it('changes all labels of that opcode with that text', async () => {
    const text =
      '<group> sw_label=Sus$0tain\n<group> sw_label=Sustain\n<group> sw_label=Short group_label=Sustain\n';
    expect(await renamed(text, 'Long tones')).toBe(
      '<group> sw_label=Long tones\n<group> sw_label=Long tones\n<group> sw_label=Short group_label=Sustain\n',
    );
  });

  it('writes it as the notation needs it', async () => {
    const text = `<instrument><group group_label="A$0"/><group group_label='A'/></instrument>`;
    expect(await renamed(text, `5" & 6'`, 'xml')).toBe(
      `<instrument><group group_label="5&quot; &amp; 6'"/><group group_label='5&quot; &amp; 6&apos;'/></instrument>`,
    );
  });

  it('writes an included SFZ file of an XML instrument in SFZ', async () => {
    const files = { '/music/part.sfz': '<region> region_label=A\n' };
    const { own } = await instrumentOf(
      '<instrument><include path="part.sfz"/><region region_label="A"/></instrument>',
      'xml',
      files,
    );
    expect(textsOf(renameLabel([own], { opcode: 'region_label', name: 'A' }, 'B & C'))).toEqual([
      '<region> region_label=B & C\n',
      '<instrument><include path="part.sfz"/><region region_label="B &amp; C"/></instrument>',
    ]);
  });

  it('refuses a text that would be read as something else', async () => {
    for (const text of ['a key=60', 'a // b', '', '<region>', 'two\nlines', '#include "x"'])
      expect(await renamed('<region> region_label=A$0 volume=3', text)).toMatch(/label/);
    expect(await renamed('<region> region_label=A$0 volume=3', '')).toMatch(/needs a text/);
  });
});
