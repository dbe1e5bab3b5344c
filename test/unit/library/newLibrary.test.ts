import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { InstrumentEntry } from '../../../server/library/libraryFile';
import { parseLibraryFile } from '../../../server/library/libraryFile';
import { newLibrary } from '../../../server/library/pairing/newLibrary';
import { writeLibraryFile } from '../../../server/library/writeLibraryFile';
import { MemoryFiles } from '../workspace/memoryFiles';

const corpus = new URL('../../corpus/libraries/', import.meta.url);

interface Truth {
  source: string;
  samples: string[];
  name: string;
  sure: boolean;
}

/** A tree of files with its truth, as the corpus's README says. */
function treeOf(text: string): { files: Record<string, string>; truth: Truth[]; out: string[] } {
  const [tree = '', told = ''] = text.split('== truth\n');
  const files: Record<string, string> = {};
  let last = '';
  for (const line of tree.split('\n').slice(1)) {
    if (line === '') continue;
    if (line.startsWith('| ')) files[last] += `${line.slice(2)}\n`;
    else
      for (const path of unfolded(line)) {
        last = `/lib/${path}`;
        files[last] = '';
      }
  }
  const lines = told.split('\n').filter((line) => line !== '');
  const out = lines.flatMap((line) => (line.startsWith('out: ') ? [line.slice(5)] : []));
  const truth = lines
    .filter((line) => !line.startsWith('out: '))
    .map((line): Truth => {
      const [source = '', samples = '', name = '', sure] = line.split(' | ');
      return { source, samples: samples.split(' or '), name, sure: sure === 'sure' };
    });
  return { files, truth, out };
}

function unfolded(path: string): string[] {
  const [, before = '', choices, behind = ''] = /^([^{]*)\{([^}]*)\}(.*)$/.exec(path) ?? [];
  if (choices === undefined) return [path];
  return choices.split(',').flatMap((one) => unfolded(before + one + behind));
}

const shownOf = ({ name, source, samples = '-' }: InstrumentEntry) =>
  `${source} | ${samples} | ${name.toLowerCase()}`;

describe('a library file for what a folder holds', () => {
  const trees = readdirSync(corpus).filter((name) => name.endsWith('.txt'));

  it('is tried on ten folders', () => expect(trees).toHaveLength(10));

  it.each(trees)('pairs what belongs together in %s, and says where it is not sure', async (name) => {
    const { files, truth, out } = treeOf(readFileSync(new URL(name, corpus), 'utf8'));
    const library = await newLibrary(new MemoryFiles(files), '/lib');
    const { instruments = [], leftOut = [] } = library;
    const expected = truth.map((one) => {
      const found = instruments.find(({ source }) => source === one.source);
      const samples = one.samples.includes(found?.samples ?? '-') ? (found?.samples ?? '-') : one.samples[0];
      return `${one.source} | ${samples} | ${one.name.toLowerCase()}`;
    });
    expect(instruments.map(shownOf).sort()).toEqual(expected.sort());
    const told = leftOut.map(({ path }) => path);
    expect(told).toEqual(expect.arrayContaining(out));
    const doubted = instruments.filter(({ pairing }) => (pairing?.doubts.length ?? 0) > 0);
    expect(doubted.map(({ source }) => source).sort()).toEqual(
      truth.flatMap(({ source, sure }) => (sure ? [] : [source])).sort(),
    );
    for (const { pairing } of doubted) expect(pairing?.confidence).toBeLessThan(0.8);
    expect(parseLibraryFile(writeLibraryFile(library))).toEqual({ library, problems: [] });
  });
});
