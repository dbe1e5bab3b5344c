// Has a bundle for Node in chunks that are loaded when they are needed: esbuild parts modules alone, so its output is made CommonJS
// afterwards, which starts quicker and needs no other kind of file.

import { mkdir, writeFile } from 'node:fs/promises';
import { basename, dirname, relative } from 'node:path';
import { transform } from 'esbuild';

/** The plugin for a bundle of modules with `splitting`; the entry `program`, if there is one, can be started by itself. */
export function commonJsChunks({ program, minify }) {
  return {
    name: 'common-js-chunks',
    setup(plugin) {
      const writes = plugin.initialOptions.write !== false;
      plugin.initialOptions.write = false;
      plugin.onEnd(async ({ outputFiles = [], errors, metafile }) => {
        if (!writes || errors.length > 0) return;
        const root = plugin.initialOptions.absWorkingDir;
        for (const { path, text } of outputFiles) {
          const { code } = await transform(text, {
            format: 'cjs',
            sourcefile: basename(path),
            platform: 'node',
            target: 'node20',
            supported: { 'dynamic-import': false },
            legalComments: 'none',
            minify,
            // A map of modules in the text becomes one of what is written.
            sourcemap: plugin.initialOptions.sourcemap,
          });
          const { entryPoint } = metafile.outputs[relative(root, path).replaceAll('\\', '/')] ?? {};
          await mkdir(dirname(path), { recursive: true });
          await writeFile(
            path,
            (program !== undefined && entryPoint === program ? '#!/usr/bin/env node\n' : '') + code,
          );
        }
      });
    },
  };
}
