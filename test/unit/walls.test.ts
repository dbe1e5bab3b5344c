import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { temporaryFolder } from '../temporaryFolder';
import type { Import } from './imports';
import { cycleOf, exportedTwice, exportsIn, handedOnIn, importsBelow, importsIn, roomOf } from './imports';
import { bundleForBrowser } from './server/host/browserBundles';

const root = fileURLToPath(new URL('../..', import.meta.url));
const imports = importsBelow(root, 'server', 'client');

/** The folders of the server, as they are on the disk. */
const rooms = readdirSync(join(root, 'server'), { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => name);
/** The rooms that speak to a host; all others run unchanged on a desktop, in a browser and on the command line. */
const besideHost = ['workspace', 'protocol', 'commandLine'];
/** The rooms that know what instruments and samples look like in files. */
const readers = ['sfz', 'xml', 'table', 'vocabulary', 'soundfont', 'audio'];
/** The rooms that see an instrument through the model alone. */
const looking = ['checks', 'features', 'gestures', 'map', 'playing'];

function broken(holds: (one: Import) => boolean): string[] {
  return imports.filter((one) => !holds(one)).map(({ file, imports }) => `${file} imports ${imports}`);
}

const isIn = (some: readonly string[], file: string) => some.includes(roomOf(file) ?? '');

describe('the walls between rooms', () => {
  it('stand where rooms are', () => {
    expect(rooms).toEqual(expect.arrayContaining([...besideHost, ...readers, ...looking]));
  });

  it('keep the host out of all rooms but those beside it', () => {
    const core = rooms.filter((room) => !besideHost.includes(room));
    expect(core).toContain('model');
    const host = /^(node:|vscode)/;
    expect(broken(({ file, imports }) => !(isIn(core, file) && host.test(imports)))).toEqual([]);
  });

  it('let checks, the map and language features see an instrument through the model only', () => {
    expect(broken(({ file, imports }) => !(isIn(looking, file) && isIn(readers, imports)))).toEqual([]);
  });

  it('keep tables and vocabularies apart: what both use is of the trade', () => {
    const both = ['table', 'vocabulary'];
    expect(
      broken(
        ({ file, imports }) => !(isIn(both, file) && isIn(both, imports) && roomOf(file) !== roomOf(imports)),
      ),
    ).toEqual([]);
  });

  it('keep entry points and the editor side out of everything else', () => {
    const entry =
      /^server\/(main|cli|measureWorker|buildWorker|compareWorker|browserMain|browserMeasureWorker)(\.ts)?$/;
    expect(
      broken(
        ({ file, imports }) =>
          !entry.test(imports) && !(file.startsWith('server/') && imports.startsWith('client/')),
      ),
    ).toEqual([]);
  });

  it('keep the host out of the page that a web view runs', () => {
    expect(
      broken(({ file, imports }) => !(/^client\/\w+\/page\//.test(file) && /^(node:|vscode)/.test(imports))),
    ).toEqual([]);
  });

  it('keep Node out of what an editor that a browser hosts runs', async () => {
    const entries = {
      client: 'client/browser/main.ts',
      server: 'server/browserMain.ts',
      measureWorker: 'server/browserMeasureWorker.ts',
    };
    const folder = temporaryFolder('walls');
    const { outputs, inputs } = await bundleForBrowser(folder, entries);
    const outside = Object.values(outputs).flatMap((one) => one.imports.filter(({ external }) => external));
    expect([...new Set(outside.map(({ path }) => path))]).toEqual(['vscode']);
    const asking = imports.filter(({ file, imports }) => file in inputs && imports.startsWith('node:'));
    expect(asking).toEqual([]);
    expect(Object.keys(inputs)).toEqual(expect.arrayContaining(Object.values(entries)));
  });

  it("let no room hand on what is another one's", () => {
    expect(
      broken(
        ({ file, imports, own, isHandedOn }) => !(isHandedOn && own && roomOf(file) !== roomOf(imports)),
      ),
    ).toEqual([]);
  });

  it('leave no cycle of files, types counted', () => {
    const edges = imports.filter(({ own }) => own).map(({ file, imports }) => [file, imports] as const);
    expect(edges).toContainEqual(['server/sfz/notation.ts', 'server/model/notation.ts']);
    expect(cycleOf(edges)).toBeUndefined();
  });

  it('leave no cycle of rooms', () => {
    const edges = imports.flatMap(({ file, imports, own }) => {
      const [from, to] = [roomOf(file), own ? roomOf(imports) : undefined];
      return from && to ? [[from, to] as const] : [];
    });
    expect(edges).toContainEqual(['sfz', 'model']);
    const cycle = cycleOf(edges);
    const by = broken(({ file, imports }) => {
      const [from, to] = [roomOf(file), roomOf(imports)];
      return !(from !== to && cycle?.includes(`${from} → ${to}`));
    });
    expect(cycle && [cycle, ...by]).toBeUndefined();
  });
});

describe('names', () => {
  /** What an editor calls an entry by: its documentation of extensions asks for that name. */
  const asked = ['activate'];

  it('mean one thing each: no two files give out the same', () => {
    const twice = exportedTwice(root, 'server', 'client');
    expect([...twice.keys()]).toEqual(expect.arrayContaining(asked));
    for (const name of asked) twice.delete(name);
    expect([...twice]).toEqual([]);
  });
});

describe('reading imports', () => {
  it('finds what a module gives out', () => {
    const text = `export function a() {}
export async function b() {}
export function* c() {}
export const D = {};
export type D = typeof D;
  export const inner = 1;
/*
export class Out {}
*/
export abstract class E {}
export interface F {}`;
    expect(exportsIn(text)).toEqual(['a', 'b', 'c', 'D', 'E', 'F']);
  });

  it('finds every form of import and passes over comments', () => {
    const text = `import { a } from './a';
import type {
  B,
} from '../b';
import './c';
export { d } from "./d";
export * from './e';
// import { x } from './x';
/* import { y } from './y'; */
export const from = 'z';
const f = await import('./f');
const g = require('node:fs');`;
    expect(importsIn(text)).toEqual(['./a', '../b', './c', './d', './e', './f', 'node:fs']);
    expect(handedOnIn(text)).toEqual(['./d', './e']);
  });

  it('finds a way round', () => {
    expect(
      cycleOf([
        ['a', 'b'],
        ['b', 'c'],
        ['a', 'c'],
        ['c', 'c'],
      ]),
    ).toBeUndefined();
    expect(
      cycleOf([
        ['x', 'a'],
        ['a', 'b'],
        ['b', 'c'],
        ['c', 'a'],
      ]),
    ).toBe('a → b → c → a');
  });
});
