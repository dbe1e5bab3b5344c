import { join, relative } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { BuildOptions, Metafile } from 'esbuild';
import { build } from 'esbuild';

/** A bundle as it is released. */
export interface Released {
  /** Absolute paths of the files that are loaded at the start, the entry first. */
  atStart: readonly string[];
  /** Those that are loaded when something is asked for. */
  later: readonly string[];
  /** The files of the project and of libraries that are loaded at the start, from the project's folder. */
  sourcesAtStart: readonly string[];
}

/** Builds an entry for Node of the repository `root` into a folder, as it is released. */
export async function buildReleased(
  root: string,
  entry: 'server/main.ts' | 'client/main.ts',
  outdir: string,
): Promise<Released> {
  const script = pathToFileURL(join(root, 'bundles.mjs')).href;
  const { bundlesFor } = (await import(script)) as {
    bundlesFor(how: { production: boolean }): BuildOptions[];
  };
  const options = bundlesFor({ production: true }).find(({ entryPoints }) =>
    JSON.stringify(entryPoints).includes(`"${entry}"`),
  );
  const { metafile } = await build({ ...options, absWorkingDir: root, outdir, metafile: true });
  return released(root, entry, metafile);
}

function released(root: string, entry: string, { outputs }: Metafile): Released {
  const first = Object.keys(outputs).find((path) => outputs[path]?.entryPoint === entry) ?? '';
  const loaded = new Set([first]);
  for (const path of loaded)
    for (const { path: imported, kind, external } of outputs[path]?.imports ?? [])
      if (kind !== 'dynamic-import' && !external) loaded.add(imported);
  const scripts = Object.keys(outputs).filter((path) => path.endsWith('.js'));
  return {
    atStart: [...loaded].map((path) => join(root, path)),
    later: scripts.filter((path) => !loaded.has(path)).map((path) => join(root, path)),
    sourcesAtStart: [...loaded].flatMap((path) =>
      Object.entries(outputs[path]?.inputs ?? {}).flatMap(([input, { bytesInOutput }]) =>
        bytesInOutput > 0 ? relative(root, join(root, input)).replaceAll('\\', '/') : [],
      ),
    ),
  };
}
