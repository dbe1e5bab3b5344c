import { posix } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { MergedPaths, movedPaths } from '../../../../server/features/rename/renameFiles';
import { editedText } from '../../../../server/model/editing/changedInstrument';
import { FileMoves } from '../../../../server/model/fileMoves';
import type { Notation } from '../../../../server/model/notation';
import { includedPaths } from '../../../../server/workspace/files/includeIndex';
import { instrumentsAround, mainsOf, notationOfParts } from '../../../../server/workspace/instrumentsAround';
import { NotationFinder } from '../../../../server/workspace/notations/notationFinder';
import { notations } from '../../../../server/workspace/notations/notationOf';
import { actualPaths } from '../../../../server/workspace/samples/actualPaths';
import { SampleStore } from '../../../../server/workspace/samples/sampleStore';
import { MemoryFiles } from '../../workspace/memoryFiles';

/** What the files of a folder `/w` hold after moves, by the paths from before; only those that change. */
async function moved(files: Record<string, string>, ...moves: [from: string, to: string][]) {
  const memory = new MemoryFiles(
    Object.fromEntries(Object.entries(files).map(([path, text]) => [`/w/${path}`, text])),
  );
  const fileMoves = new FileMoves(moves.map(([from, to]) => ({ from: `/w/${from}`, to: `/w/${to}` })));
  const actual = actualPaths(memory, fileMoves);
  const all = [];
  const finder = new NotationFinder(memory, new SampleStore(memory), () => {});
  for await (const one of instrumentsAround(memory, finder, ['/w'], [])) {
    all.push({
      ...one,
      included: includedPaths(one.instrument),
      moved: movedPaths({
        ...one,
        notationOf: notationOfParts(one),
        moves: fileMoves,
        actual: await actual(one.instrument),
      }),
    });
  }
  const merged = new MergedPaths();
  for (const one of mainsOf(all)) merged.add(one.instrument, one.moved);
  const texts = Object.fromEntries(
    merged.files.map(({ source, edits }) => [source.path.slice(3), editedText(source.text, edits)]),
  );
  return { texts, problems: merged.problems };
}

describe('moving a sample', () => {
  it('changes all instruments that use it, wherever they are', async () => {
    const files = {
      'a.sfz': '<region> sample=Samples/kick.wav key=36\n<region> sample=Samples/kick2.wav\n',
      'sub/b.sfz': '<group> sample=../Samples/kick.wav\n<region>\n<region>\n',
      'c.instrument.xml': '<instrument><region sample="Samples/kick.wav"/></instrument>',
      'd.sfz': '<region> sample=other.wav\n',
      'Samples/kick.wav': '',
    };
    const { texts, problems } = await moved(files, ['Samples/kick.wav', 'Samples/bass & drum.wav']);
    expect(texts).toEqual({
      'a.sfz': '<region> sample=Samples/bass & drum.wav key=36\n<region> sample=Samples/kick2.wav\n',
      'sub/b.sfz': '<group> sample=../Samples/bass & drum.wav\n<region>\n<region>\n',
      'c.instrument.xml': '<instrument><region sample="Samples/bass &amp; drum.wav"/></instrument>',
    });
    expect(problems).toEqual([]);
  });

  it('writes the way from the default path, also out of its folder, with the separators in use', async () => {
    const files = {
      'a.sfz': '<control> default_path=Samples/\n<region> sample=low/a.wav\n<region> sample=low/b.wav\n',
      'b.sfz': '<region> sample=Samples\\low\\a.wav\n',
      'c.sfz': '<control> default_path=Samples/low/a\n<region> sample=.wav\n',
    };
    const { texts, problems } = await moved(files, ['Samples/low/a.wav', 'Other/a.wav']);
    expect(texts).toEqual({
      'a.sfz': '<control> default_path=Samples/\n<region> sample=../Other/a.wav\n<region> sample=low/b.wav\n',
      'b.sfz': '<region> sample=Other\\a.wav\n',
    });
    expect(problems).toEqual([
      'c.sfz, line 2: "Other/a.wav" cannot be written after the default path "Samples/low/a".',
    ]);
    expect((await moved(files, ['Samples/low/a.wav', 'Samples/low/again.wav'])).texts['c.sfz']).toContain(
      'sample=gain.wav',
    );
  });

  it('keeps variables in the part of a path that stays', async () => {
    const head = '#define $DIR Samples\n#define $N a\n';
    const files = { 'a.sfz': `${head}<region> sample=$DIR/a.wav\n<region> sample=Samples/$N.wav\n` };
    expect((await moved(files, ['Samples/a.wav', 'Samples/b.wav'])).texts).toEqual({
      'a.sfz': `${head}<region> sample=$DIR/b.wav\n<region> sample=Samples/b.wav\n`,
    });
    expect((await moved(files, ['Samples', 'Audio'])).texts).toEqual({
      'a.sfz': `${head}<region> sample=Audio/a.wav\n<region> sample=Audio/$N.wav\n`,
    });
  });

  it('finds it in another letter case, but not another file of nearly the same name', async () => {
    const files = { 'a.sfz': '<region> sample=samples/A.WAV\n', 'Samples/a.wav': '' };
    expect((await moved(files, ['Samples/a.wav', 'Samples/b.wav'])).texts).toEqual({
      'a.sfz': '<region> sample=Samples/b.wav\n',
    });
    const two = { 'a.sfz': '<region> sample=A.wav\n', 'a.wav': '', 'A.wav': '' };
    expect((await moved(two, ['a.wav', 'b.wav'])).texts).toEqual({});
  });

  it('leaves a path alone that would be read as something else', async () => {
    const { texts, problems } = await moved({ 'a.sfz': '<region> sample=a.wav\n' }, ['a.wav', 'a key=1.wav']);
    expect(texts).toEqual({});
    expect(problems).toHaveLength(1);
  });

  it('leaves generators and embedded samples alone', async () => {
    const files = {
      'a.sfz':
        '<sample> name=tick data=00\n<region> sample=tick\n<region> sample=*sine\n<region> sample=x.wav\n',
    };
    const { texts } = await moved(files, ['a.sfz', 'sub/a.sfz']);
    expect(texts['a.sfz']).toContain('sample=tick\n<region> sample=*sine\n<region> sample=../x.wav\n');
  });
});

describe('moving a folder', () => {
  it('changes the default path and nothing behind it', async () => {
    const files = {
      'a.sfz': '<control> default_path=Samples/Piano/\n<region> sample=a.wav\n<region> sample=sub/b.wav\n',
      'b.sfz': '<control> default_path=Samples\\Piano\\soft_\n<region> sample=c.wav\n',
      'c.instrument.xml':
        '<instrument><control default_path="Samples/"/><region sample="Piano/a.wav"/></instrument>',
    };
    const { texts, problems } = await moved(files, ['Samples/Piano', 'Audio/Grand']);
    expect(texts).toEqual({
      'a.sfz': '<control> default_path=Audio/Grand/\n<region> sample=a.wav\n<region> sample=sub/b.wav\n',
      'b.sfz': '<control> default_path=Audio\\Grand\\soft_\n<region> sample=c.wav\n',
      'c.instrument.xml':
        '<instrument><control default_path="Samples/"/><region sample="../Audio/Grand/a.wav"/></instrument>',
    });
    expect(problems).toEqual([]);
  });

  it('changes nothing where instrument and samples move together', async () => {
    const files = { 'one/a.sfz': '#include "p.sfz"\n<region> sample=S/a.wav\n', 'one/p.sfz': '<region>\n' };
    expect(await moved(files, ['one', 'two/three'])).toEqual({ texts: {}, problems: [] });
  });
});

describe('moving an instrument', () => {
  it('leads its own paths and those of its includes back from where it goes', async () => {
    const files = {
      'a.sfz':
        '<control> default_path=Samples/ image=pic.png\n#include "parts/p.sfz"\n<region> sample=a.wav\n<control> default_path=\n<region> sample=b.wav\n',
      'parts/p.sfz': '<region> sample=c.wav\n',
    };
    const { texts, problems } = await moved(files, ['a.sfz', 'deep/er/a.sfz']);
    expect(texts).toEqual({
      'a.sfz':
        '<control> default_path=../../Samples/ image=../../pic.png\n#include "../../parts/p.sfz"\n<region> sample=a.wav\n<control> default_path=\n<region> sample=../../b.wav\n',
    });
    expect(problems).toEqual([]);
  });

  it('changes the samples in its includes, which lead from its folder', async () => {
    const files = { 'a.sfz': '#include "p.sfz"\n', 'p.sfz': '<region> sample=c.wav\n' };
    expect((await moved(files, ['a.sfz', 'sub/a.sfz'])).texts).toEqual({
      'a.sfz': '#include "../p.sfz"\n',
      'p.sfz': '<region> sample=../c.wav\n',
    });
  });

  it('leaves an included file alone that another instrument still needs as it is', async () => {
    const files = {
      'a.sfz': '#include "p.sfz"\n',
      'b.sfz': '#include "p.sfz"\n',
      'p.sfz': '<region> sample=c.wav\n',
    };
    const { texts, problems } = await moved(files, ['a.sfz', 'sub/a.sfz']);
    expect(texts).toEqual({ 'a.sfz': '#include "../p.sfz"\n' });
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatch(/^p\.sfz, line 1:/);
  });
});

describe('moving an included file', () => {
  it('changes the includes alone, at any depth, since samples lead from the main file', async () => {
    const files = {
      'a.sfz': '#define $P parts\n#include "$P/p.sfz"\n',
      'parts/p.sfz': '#include "parts/q.sfz"\n<region> sample=c.wav\n',
      'parts/q.sfz': '<region> sample=d.wav\n',
      'x.instrument.xml': '<instrument><include path="parts/q.sfz"/></instrument>',
    };
    expect((await moved(files, ['parts/q.sfz', 'other/q.sfz'])).texts).toEqual({
      'parts/p.sfz': '#include "other/q.sfz"\n<region> sample=c.wav\n',
      'x.instrument.xml': '<instrument><include path="other/q.sfz"/></instrument>',
    });
    expect((await moved(files, ['parts/p.sfz', 'parts/r.sfz'])).texts).toEqual({
      'a.sfz': '#define $P parts\n#include "$P/r.sfz"\n',
    });
  });
});

const folder = fc.constantFrom('', 'S/', 'S/low/', 'S/low/x/', 'T/', '../', '../S/');
const file = fc.constantFrom('a.wav', 'b c.wav', 'pf_d.wav');
const prefix = fc.constantFrom('', 'S/', 'S\\low\\', 'S/low/pf_', '../S/', './S/');
const line = fc.oneof(
  fc.tuple(folder, file).map(([inner, name]): [string, string] => ['region', inner + name]),
  fc.tuple(folder, file).map(([inner, name]): [string, string] => ['group', inner + name]),
  prefix.map((path): [string, string] => ['control', path]),
);
const move = fc.constantFrom<[string, string]>(
  ['home/S', 'home/U'],
  ['home/S', 'S2/S'],
  ['home/S/low', 'home/low'],
  ['home', 'house'],
  ['home/S/a.wav', 'home/S/low/z.wav'],
  ['home/S/low/pf_d.wav', 'home/S/low/pf_e.wav'],
  ['home/main', 'home/other'],
  ['home/main', 'main'],
  ['home/main', 'home/deep/main'],
  ['S', 'home/T'],
);

function textOf(lines: readonly [string, string][], { format }: Notation): string {
  const write = ([header, path]: [string, string]) => {
    const name = header === 'control' ? 'default_path' : 'sample';
    const region = header === 'group' ? (format === 'sfz' ? '\n<region>' : '<region/>') : '';
    return format === 'sfz'
      ? `<${header}> ${name}=${path}${region}\n`
      : `<${header} ${name}="${path}"/>${region}`;
  };
  const text = lines.map(write).join('');
  return format === 'sfz' ? text : `<instrument>${text}</instrument>`;
}

/** Where the samples of an instrument lie, by the path resolution of Node (POSIX), an implementation of its own. */
function resolved(notation: Notation, path: string, text: string): string[] {
  const instrument = notation.read(text, { path });
  return [...instrument.regions].map((region) =>
    posix.resolve(posix.dirname(path), instrument.samplePath(region) ?? ''),
  );
}

describe('after any move', () => {
  it('every sample is the file that it was, or a problem is told', async () => {
    let changed = 0;
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom<Notation>(notations.sfz, notations.xml),
        fc.array(line, { minLength: 1, maxLength: 8 }),
        move,
        async (notation, lines, [from, to]) => {
          const ending = notation.format === 'sfz' ? '.sfz' : '.instrument.xml';
          const end = (path: string) =>
            path.endsWith('main') || path.endsWith('other') ? path + ending : path;
          const name = `home/main${ending}`;
          const text = textOf(lines, notation);
          const { texts, problems } = await moved({ [name]: text }, [end(from), end(to)]);
          const rebase = (path: string) => {
            const [old, now] = [`/w/${end(from)}`, `/w/${end(to)}`];
            if (path === old) return now;
            return path.startsWith(`${old}/`) ? now + path.slice(old.length) : path;
          };
          const before = resolved(notation, `/w/${name}`, text).map(rebase);
          const after = resolved(notation, rebase(`/w/${name}`), texts[name] ?? text);
          // Only behind the beginning of a file name can a path be impossible to write.
          if (!lines.some(([, path]) => path.endsWith('/pf_'))) expect(problems).toEqual([]);
          if (problems.length === 0) expect(after).toEqual(before);
          if (texts[name] !== undefined) changed++;
        },
      ),
      { numRuns: 300 },
    );
    expect(changed).toBeGreaterThan(0);
  });
});
