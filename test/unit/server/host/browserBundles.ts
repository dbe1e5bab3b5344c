import { fileURLToPath } from 'node:url';
import type { Metafile } from 'esbuild';
import { build } from 'esbuild';

/** Bundles what runs in an editor that a browser hosts, as it is released; fails where a part of it needs Node. */
export async function bundleForBrowser(outdir: string, entries: Record<string, string>): Promise<Metafile> {
  const { metafile } = await build({
    absWorkingDir: fileURLToPath(new URL('../../../..', import.meta.url)),
    entryPoints: entries,
    outdir,
    bundle: true,
    platform: 'browser',
    target: 'es2022',
    format: 'iife',
    external: ['vscode'],
    alias: { 'codec-parser': './server/audio/decode/streamParser.ts' },
    metafile: true,
    logLevel: 'silent',
  });
  return metafile;
}
