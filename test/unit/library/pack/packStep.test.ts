import { existsSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { version as program } from '../../../../package.json';
import type { FileWriter } from '../../../../server/library/build/fileWriter';
import { run } from '../../commandLine/runInFolder';
import { waveBytes } from '../../server/host/waveBytes';
import { build, filesIn, folderOf, libraryFile, put } from '../build/libraryFolder';

const library = (settings: object = {}) => ({
  [libraryFile]: JSON.stringify({
    build: { pack: true },
    facts: { licence: 'CC0 1.0' },
    instruments: [
      { name: 'Bell', source: 'bell.sfz' },
      { name: 'Gong', source: 'gong.sfz' },
    ],
    ...settings,
  }),
});
const small = (settings: object = {}): Record<string, string> => ({
  ...library(settings),
  'bell.sfz': '<region> sample=bell.wav key=60\n',
  'gong.sfz': '<region> sample=gong.wav key=61\n',
  'bell.wav': '',
  'gong.wav': '',
});
const packed = async (folder: string, ...args: string[]) => {
  const { out } = await run(folder, ['library', 'pack', '--format', 'json', ...args]);
  return (JSON.parse(out) as { instruments: { state: string }[] }).instruments.map(({ state }) => state);
};

it('is packed by the build where the library file says so, and again only where that changes the pack', async () => {
  const folder = folderOf(small());
  const outcomes = await build(folder, { program });
  expect(outcomes.map(({ outputs }) => outputs)).toEqual([
    ['built/sfz/Bell.sfz', 'packs/Bell.zip'],
    ['built/sfz/Gong.sfz', 'packs/Gong.zip'],
  ]);
  const first = filesIn(join(folder, 'packs'));
  const time = statSync(join(folder, 'packs/Bell.zip')).mtimeMs;
  expect((await build(folder, { program })).map(({ state }) => state)).toEqual(['unchanged', 'unchanged']);
  expect(await packed(folder)).toEqual(['unchanged', 'unchanged']);
  expect(statSync(join(folder, 'packs/Bell.zip')).mtimeMs).toBe(time);
  // What is packed changes: a fact, a sample, the pack itself, what is asked for.
  put(folder, library({ facts: { licence: 'CC BY 4.0' } }));
  expect((await build(folder, { program })).map(({ state }) => state)).toEqual(['built', 'built']);
  writeFileSync(join(folder, 'gong.wav'), waveBytes(200));
  expect(await packed(folder)).toEqual(['unchanged', 'built']);
  rmSync(join(folder, 'packs/Bell.zip'));
  expect(await packed(folder)).toEqual(['built', 'unchanged']);
  expect(await packed(folder, '--force')).toEqual(['built', 'built']);
  expect(await packed(folder, '--form', 'folder')).toEqual(['built', 'built']);
  expect(await packed(folder, '--form', 'folder')).toEqual(['unchanged', 'unchanged']);
  rmSync(join(folder, 'packs/Bell/bell.wav'), { force: true });
  rmSync(join(folder, 'packs/Bell/Samples/bell.wav'), { force: true });
  expect(await packed(folder, '--form', 'folder')).toEqual(['built', 'unchanged']);
  // As it was, the same bytes.
  put(folder, library());
  put(folder, { 'gong.wav': '' });
  await build(folder, { program });
  expect(filesIn(join(folder, 'packs'))).toMatchObject(first);
});

it('is built although it cannot be packed, and says why', async () => {
  const folder = folderOf(small({ facts: {}, instruments: [{ name: 'Bell', source: 'bell.sfz' }] }));
  const [bell] = await build(folder, { program });
  expect(bell).toMatchObject({ state: 'built', outputs: ['built/sfz/Bell.sfz'] });
  expect(bell?.message).toMatch(/^Not packed: Bell: no licence is known/);
  put(folder, library({ instruments: [{ name: 'Bell', source: 'bell.sfz' }] }));
  writeFileSync(join(folder, 'packs'), 'A file in the way.');
  expect((await build(folder, { program }))[0]?.message).toMatch(/^Not packed: the pack cannot be written/);
  rmSync(join(folder, 'packs'));
  put(folder, { 'packs/Bell.zip': 'My own notes.' });
  expect((await build(folder, { program }))[0]?.message).toBe(
    'Not packed: Bell.zip in packs is no pack; choose another folder, or --force',
  );
  expect(readFileSync(join(folder, 'packs/Bell.zip'), 'utf8')).toBe('My own notes.');
});

it('ends with the same packs when it was ended at any write', async () => {
  const one = { instruments: [{ name: 'Bell', source: 'bell.sfz' }] };
  const undisturbed = folderOf(small(one));
  let writes = 0;
  const counting = (disk: FileWriter): FileWriter => ({
    ...disk,
    write: (path, content) => {
      writes++;
      return disk.write(path, content);
    },
  });
  await build(undisturbed, { writer: counting, program });
  const expected = filesIn(join(undisturbed, 'packs'));
  expect(Object.keys(expected)).toEqual(['Bell.zip']);
  const folder = folderOf(small(one));
  for (let at = writes - 3; at < writes; at++) {
    for (const name of ['built', 'packs', '.zonewright-build'])
      rmSync(join(folder, name), { recursive: true, force: true });
    let left = at;
    await new Promise<void>((ended) => {
      const writer = (disk: FileWriter): FileWriter => ({
        ...disk,
        write: (path, content) => {
          if (left-- > 0) return disk.write(path, content);
          ended();
          return new Promise(() => {});
        },
      });
      void build(folder, { writer, program }).then(() => ended());
    });
    await build(folder, { program });
    expect(filesIn(join(folder, 'packs'))).toEqual(expected);
  }
  expect(existsSync(join(folder, 'packs/.unfinished'))).toBe(false);
});
