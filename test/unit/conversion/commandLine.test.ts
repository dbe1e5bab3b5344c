import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folderWith, run } from '../commandLine/runInFolder';

const files = {
  'main.sfz':
    '#define $TOP 61\n#include "soft.sfz"\n<region> sample=Samples/a.wav lokey=59 hikey=$TOP // high\n',
  'soft.sfz': '<group> hivel=63\n',
  'loud.xml': '<instrument><group lovel="64"><region sample="Samples/b.wav"/></group></instrument>',
  'both.instrument.xml':
    '<instrument><include path="soft.sfz"/><region key="60"/><include path="loud.xml"/></instrument>',
  'out/keep.txt': '',
};

const convert = (folder: string, ...args: string[]) => run(folder, ['convert', ...args]);

describe('convert', () => {
  it('keeps variables and includes, or writes them out with --inline', async () => {
    const folder = folderWith(files);
    const kept = await convert(folder, 'main.sfz', '--to', 'xml');
    expect(kept).toMatchObject({ status: 0, error: '' });
    expect(kept.out).toBe(`<?xml version="1.0" encoding="UTF-8"?>
<instrument>
  <define name="TOP" value="61"/>
  <include path="soft.sfz"/>
  <region sample="Samples/a.wav" lokey="59" hikey="$TOP"/> <!-- high -->
</instrument>
`);
    const { out, error } = await convert(folder, 'main.sfz', '--to', 'xml', '--inline');
    expect(out).toBe(`<?xml version="1.0" encoding="UTF-8"?>
<instrument>
  <group hivel="63">
    <region sample="Samples/a.wav" lokey="59" hikey="61"/> <!-- high -->
  </group>
</instrument>
`);
    expect(error.trimEnd().split('\n')).toEqual([
      expect.stringMatching(/^main\.sfz:1: approximated: \$TOP is written out/),
      expect.stringMatching(/^main\.sfz:2: approximated: The text of "soft\.sfz" is written/),
    ]);
  });

  it('leads includes and samples to the files from another folder, and writes no included file', async () => {
    const folder = folderWith(files);
    const { status, error } = await convert(
      folder,
      'both.instrument.xml',
      '--to',
      'sfz',
      '--output',
      'out/both.sfz',
    );
    expect(status).toBe(0);
    expect(readFileSync(join(folder, 'out/both.sfz'), 'utf8')).toBe(`#include "../soft.sfz"
<region> key=60

<group>
lovel=64
<region> sample=../Samples/b.wav
`);
    expect(error).toMatch(
      /^both\.instrument\.xml:1: approximated: The text of "loud\.xml" is written [^\n]*\n$/,
    );
    expect(existsSync(join(folder, 'out/loud.sfz'))).toBe(false);
    const regions = async (path: string) =>
      JSON.parse((await run(folder, ['regions', path, '--format', 'json'])).out).regions;
    const before = await regions('both.instrument.xml');
    expect(await regions('out/both.sfz')).toEqual(
      before.map((one: { sample?: string }) => ({
        ...one,
        ...(one.sample && { sample: `../${one.sample}` }),
      })),
    );
  });

  it('tells alike notes in one line, and all of them in JSON', async () => {
    const regions = Array.from({ length: 40 }, (_, at) => `<region> key=${at} 1st=${at}\n`).join('');
    const folder = folderWith({ 'a.sfz': regions });
    const { error } = await convert(folder, 'a.sfz', '--to', 'xml');
    expect(error).toBe(
      'a.sfz:1: dropped: "1st" is left out: it cannot be the name of an attribute. The same holds for 39 more, in all in lines 1–40.\n',
    );
    await convert(folder, 'a.sfz', '--to', 'xml', '--output', 'a.xml', '--notes', 'notes.json');
    const notes = JSON.parse(readFileSync(join(folder, 'notes.json'), 'utf8'));
    expect(notes).toHaveLength(40);
    expect(notes[7]).toEqual({
      kind: 'dropped',
      message: '"1st" is left out: it cannot be the name of an attribute.',
      line: 8,
      parameter: '1st',
      value: '7',
    });
  });
});
