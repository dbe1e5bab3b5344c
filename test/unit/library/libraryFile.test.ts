import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseLibraryFile } from '../../../server/library/libraryFile';
import { besideShape, libraryShape } from '../../../server/library/libraryShape';
import { resolveLibrary } from '../../../server/library/resolveLibrary';
import { schemaOfFile } from '../../../server/library/shapeSchema';
import { writeLibraryFile } from '../../../server/library/writeLibraryFile';
import { MemoryFiles } from '../workspace/memoryFiles';

const schemaAt = (name: string) =>
  JSON.parse(readFileSync(new URL(`../../../server/library/${name}`, import.meta.url), 'utf8')) as unknown;

const harbour = `{
  "$schema": "anything",
  "title": "Harbour collection",
  "targets": ["sfz", { "notation": "words/pier.vocabulary.json", "folder": "pier" }],
  "template": "looks/plain.sfz",
  "facts": { "maker": "Ilse Brandt", "licence": "CC BY 4.0", "credits": "Ola Nyman" },
  "instruments": [
    { "name": "Fog horn", "source": "tables/fog.tsv", "samples": "audio/Fog", "facts": { "licence": "CC0 1.0" } },
    { "name": "Bell: buoy?", "source": "old/bell.sf2#0:12", "targets": ["xml"] },
    { "name": "BELL- BUOY-", "source": "old/bell.sfz", "leaveOut": false },
    { "name": "Not this", "source": "x.sfz", "leaveOut": true }
  ]
}`;

/** Messages with the text that they stand at. */
function faultsIn(text: string): [string, string][] {
  return parseLibraryFile(text).problems.map(({ message, start, end }) => [text.slice(start, end), message]);
}

describe('reading a library file', () => {
  it('gives what stands in it, one text as a list of one', () => {
    const { library, problems } = parseLibraryFile(harbour);
    expect(problems).toEqual([]);
    expect(library?.facts?.credits).toEqual(['Ola Nyman']);
    expect(library?.instruments?.map(({ name }) => name)).toEqual([
      'Fog horn',
      'Bell: buoy?',
      'BELL- BUOY-',
      'Not this',
    ]);
  });

  it('names the place of each fault, and keeps the rest', () => {
    expect(faultsIn('{ "instrments": [] }')).toEqual([
      ['"instrments"', 'A library has no "instrments". Did you mean "instruments"?'],
    ]);
    expect(faultsIn('{ "instruments": [{ "name": "a" }] }')).toEqual([
      ['{', 'An instrument needs "source".'],
    ]);
    expect(faultsIn('{ "middleC": "C2" }')).toEqual([['"C2"', 'Write C3, C4 or C5 here, not "C2".']]);
    expect(faultsIn('{ "title": "" }')).toEqual([['""', 'Write a text that is not empty here.']]);
    expect(faultsIn('{ "title": "a", "title": "b" }')).toEqual([
      ['"title"', '"title" stands here twice; the last one counts.'],
    ]);
    expect(faultsIn('{ "pack": { "withoutLicence": 1 } }')).toEqual([['1', 'Write true or false here.']]);
    expect(faultsIn('[]')).toEqual([['[]', 'A library is an object: { … }.']]);
    expect(faultsIn('{')[0]?.[1]).toBe('A name in double quotes is missing here.');
    expect(parseLibraryFile('{ "pack": 3, "title": "kept" }').library).toEqual({ title: 'kept' });
  });

  it('never throws', () => {
    fc.assert(fc.property(fc.string(), (text) => void parseLibraryFile(text)));
    fc.assert(fc.property(fc.json(), (text) => void parseLibraryFile(text)));
  });

  it('reads what it writes', () => {
    const { library } = parseLibraryFile(harbour);
    expect(library && parseLibraryFile(writeLibraryFile(library)).library).toEqual(library);
  });

  it('is published as a schema, with that of settings beside a source', () => {
    expect(schemaAt('library.schema.json')).toEqual(schemaOfFile('Library', libraryShape));
    expect(schemaAt('settings.schema.json')).toEqual(schemaOfFile('Settings of an instrument', besideShape));
  });
});

describe('what a library file says for each instrument', () => {
  const resolve = async (text: string, contents: Record<string, string> = {}) => {
    const { library = {} } = parseLibraryFile(text);
    return resolveLibrary(library, '/lib', new MemoryFiles(contents));
  };

  it('takes the nearest setting, and facts one by one', async () => {
    const { instruments, problems, output, title } = await resolve(harbour);
    expect([title, output, problems]).toEqual(['Harbour collection', '/lib/built', []]);
    expect(instruments.map(({ fileName }) => fileName)).toEqual(['Fog horn', 'Bell- buoy-', 'BELL- BUOY- 2']);
    expect(instruments[0]).toEqual({
      name: 'Fog horn',
      fileName: 'Fog horn',
      source: '/lib/tables/fog.tsv',
      samples: '/lib/audio/Fog',
      targets: [
        { notation: 'sfz', template: '/lib/looks/plain.sfz', folder: 'sfz' },
        { notation: 'vocabulary', vocabulary: '/lib/words/pier.vocabulary.json', folder: 'pier' },
      ],
      facts: { maker: 'Ilse Brandt', licence: 'CC0 1.0', credits: ['Ola Nyman'] },
      pack: {},
    });
    expect(instruments[1]).toMatchObject({ source: '/lib/old/bell.sf2', preset: '0:12' });
    expect(instruments[1]?.targets).toEqual([
      { notation: 'xml', template: '/lib/looks/plain.sfz', folder: 'xml' },
    ]);
  });

  it('finds files by patterns, those already named and those built aside, with settings beside them', async () => {
    const { instruments, problems } = await resolve(
      `{ "sources": [{ "files": ["in/**/*.sfz", "none/*.tsv"], "except": ["in/parts/*"], "middleC": "C3" }],
         "output": "in/out", "instruments": [{ "name": "Known", "source": "in/a.sfz" }] }`,
      {
        '/lib/in/a.sfz': '',
        '/lib/in/deep/er/b.sfz': '',
        '/lib/in/deep/er/b.zonewright.json': '{ "name": "Bee", "middleC": "C5", "targts": [] }',
        '/lib/in/c.sfz': '',
        '/lib/in/parts/d.sfz': '',
        '/lib/in/out/sfz/c.sfz': '',
        '/lib/in/c.txt': '',
      },
    );
    expect(instruments.map(({ name, middleC }) => [name, middleC])).toEqual([
      ['Known', undefined],
      ['c', 'C3'],
      ['Bee', 'C5'],
    ]);
    expect(problems).toEqual([
      'No file fits "none/*.tsv".',
      'b.zonewright.json, line 1: A file of settings has no "targts". Did you mean "targets"?',
    ]);
  });

  it('tells targets that are none, and two that would write the same files', async () => {
    const { instruments, problems } = await resolve(
      '{ "targets": ["sfz", "SFZ", "sfz"], "instruments": [{ "name": "a", "source": "a.sfz" }] }',
    );
    expect(instruments[0]?.targets.map(({ folder }) => folder)).toEqual(['sfz']);
    expect(problems).toEqual([
      'a: "SFZ" is no target: write sfz, xml, sf2 or the path of a file named *.vocabulary.json.',
      'a: two targets go to the folder "sfz": give one of them a "folder".',
    ]);
  });
});
