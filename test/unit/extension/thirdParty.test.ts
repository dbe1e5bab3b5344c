import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { BuildOptions, Metafile } from 'esbuild';
import { build } from 'esbuild';
import { beforeAll, describe, expect, it } from 'vitest';
import { temporaryFolder } from '../../temporaryFolder';

const root = fileURLToPath(new URL('../../..', import.meta.url));
const scriptAt = (path: string): Promise<unknown> => import(pathToFileURL(join(root, path)).href);

interface Notice {
  thirdPartyNotice(repository: string, inputs: readonly string[]): string;
  packageFolders(inputs: readonly string[]): string[];
}

interface PackageFile {
  name: string;
  version: string;
  license?: string;
  devDependencies?: Record<string, string>;
}

function packageAt(folder: string): PackageFile {
  return JSON.parse(readFileSync(join(root, folder, 'package.json'), 'utf8')) as PackageFile;
}

let metafiles: Metafile[];
let notice: string;

beforeAll(async () => {
  const { bundlesFor } = (await scriptAt('bundles.mjs')) as { bundlesFor(): BuildOptions[] };
  const results = await Promise.all(
    bundlesFor().map((options) => build({ ...options, write: false, sourcemap: false })),
  );
  metafiles = results.flatMap(({ metafile }) => metafile ?? []);
  const inputs = metafiles.flatMap((metafile) => Object.keys(metafile.inputs));
  notice = ((await scriptAt('third-party/notice.mjs')) as Notice).thirdPartyNotice(root, inputs);
});

/** The packages that bytes of the bundles come from, as the bundler itself says, by name and version. */
function bundled(): string[] {
  const found = new Set<string>();
  for (const { outputs } of metafiles) {
    for (const { inputs } of Object.values(outputs)) {
      for (const [path, { bytesInOutput }] of Object.entries(inputs)) {
        const parts = path.split('/');
        const at = parts.lastIndexOf('node_modules');
        if (at < 0 || bytesInOutput === 0) continue;
        const folder = parts.slice(0, at + (parts[at + 1]?.startsWith('@') ? 3 : 2)).join('/');
        const { name, version } = packageAt(folder);
        found.add(`${name} ${version}`);
      }
    }
  }
  return [...found].sort();
}

const sections = () =>
  notice
    .split(`\n${'-'.repeat(78)}\n\n`)
    .slice(1)
    .map((section) => ({
      heading: section.split('\n')[0] ?? '',
      text: section.split('\n').slice(2).join('\n'),
    }));

describe('the notice of third parties', () => {
  it('holds every package that is bundled, and no other', () => {
    const named = sections().flatMap(({ heading }) => /^(\S+ \d\S*) \(/.exec(heading)?.[1] ?? []);
    expect(bundled().length).toBeGreaterThan(10);
    expect(named.filter((name) => !bundled().includes(name) && !isEmptyInput(name))).toEqual([]);
    expect(bundled().filter((name) => !named.includes(name))).toEqual([]);
  });

  it('holds the whole licence of each: who has the rights, what is granted, and that there is no warranty', () => {
    for (const { heading, text } of sections()) {
      expect(text, heading).toMatch(/copyright|contributors/i);
      expect(text, heading).toMatch(/permission|redistribution and use|licen[cs]e/i);
      expect(text, heading).toMatch(/warrant/i);
      expect(text.length, heading).toBeGreaterThan(400);
    }
  });

  it('holds the codec libraries inside the decoders, by what the decoders say that they are made of', () => {
    const headings = sections().map(({ heading }) => heading);
    for (const [decoder, readme] of [
      ['@wasm-audio-decoders/flac', /libFLAC/i],
      ['@wasm-audio-decoders/ogg-vorbis', /libvorbis/i],
      ['opus-decoder', /libopus/i],
    ] as const) {
      const text = readFileSync(join(root, 'node_modules', decoder, 'README.md'), 'utf8');
      const library = readme.exec(text)?.[0] ?? '';
      expect(library).not.toBe('');
      const entry = headings.find((heading) => heading.toLowerCase().startsWith(`${library.toLowerCase()},`));
      expect(entry, decoder).toContain(decoder);
    }
  });

  it('names the compiled libraries of every package that carries compiled code', () => {
    const compiled = new Set<string>();
    for (const { inputs } of metafiles) {
      for (const path of Object.keys(inputs)) {
        const name = /node_modules\/((?:@[^/]+\/)?[^/]+)\/.*emscripten/i.exec(path)?.[1];
        if (name) compiled.add(name);
      }
    }
    expect(compiled.size).toBeGreaterThan(2);
    for (const name of compiled) expect(notice).toMatch(new RegExp(`compiled into .*${name}`));
  });

  it('fails for a package without a licence text', async () => {
    const { thirdPartyNotice } = (await scriptAt('third-party/notice.mjs')) as Notice;
    const folder = temporaryFolder('zonewright');
    mkdirSync(join(folder, 'node_modules/bare'), { recursive: true });
    writeFileSync(join(folder, 'node_modules/bare/package.json'), '{"name": "bare", "version": "1.0.0"}');
    const inputs = ['server/main.ts', 'node_modules/bare/index.js'];
    expect(() => thirdPartyNotice(folder, inputs)).toThrow(/bare carries no licence text/);
  });
});

/** A package of which only types or nothing at all is left in the bundles. */
function isEmptyInput(named: string): boolean {
  const name = named.replace(/ [^ ]*$/, '');
  return metafiles.some(({ inputs }) => Object.keys(inputs).some((path) => path.includes(`/${name}/`)));
}

describe('the table of dependencies', () => {
  it('has a row for each, with its licence and a reason', () => {
    const text = readFileSync(join(root, 'third-party/README.md'), 'utf8');
    const rows = [...text.matchAll(/^\| `([^`]+)` \| ([^|]+) \| ([^|]+) \|$/gm)].map(
      ([, name, licence, reason]) => ({
        name: name ?? '',
        licence: licence?.trim() ?? '',
        reason: reason?.trim() ?? '',
      }),
    );
    const expected = Object.keys(packageAt('.').devDependencies ?? {});
    const listed = rows.filter(({ name }) => expected.includes(name));
    expect(listed.map(({ name }) => name).sort()).toEqual(expected.sort());
    for (const { name, licence, reason } of listed) {
      expect(licence, name).toBe(packageAt(`node_modules/${name}`).license);
      expect(reason.length, name).toBeGreaterThan(10);
    }
  });
});
