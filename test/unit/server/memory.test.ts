import { once } from 'node:events';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { EditorClient } from './host/editorClient';
import { bundle, folder, useServerPlaces } from './host/serverPlaces';

useServerPlaces();

const regions = 300;
const text = Array.from(
  { length: regions },
  (_, at) => `<region> sample=note ${at % 40}.wav lokey=${at % 120} hikey=${(at % 120) + 2} tune=10`,
).join('\n');
/** A text of 20 kB has no use for more, and what is kept of each of two hundred versions of it takes more (our choice). */
const mostMegabytes = 8;

// Windows has no signals.
it.skipIf(process.platform === 'win32')(
  'two hundred edits with four times as many requests leave little behind',
  async () => {
    const hook = join(__dirname, 'host/tellMemory.cjs');
    const client = await EditorClient.start(bundle, {
      folder,
      nodeOptions: ['--expose-gc', '--require', hook],
    });
    const uri = await client.open('played.sfz', text);
    let version = 1;
    const edit = async (count: number) => {
      for (let at = 0; at < count; at++) {
        const line = (at * 37) % regions;
        const character =
          `<region> sample=note ${line % 40}.wav lokey=${line % 120} hikey=${(line % 120) + 2} tune=`.length;
        const range = { start: { line, character }, end: { line, character: character + 2 } };
        await client.change(uri, ++version, { range, text: String(10 + (at % 90)) });
        const position = { line, character: 12 };
        await Promise.all([
          client.pull(uri),
          client.ask('textDocument/hover', uri, { position }),
          client.ask('textDocument/completion', uri, { position: { line, character: 8 } }),
          client.ask('textDocument/documentSymbol', uri),
        ]);
      }
    };
    const held = async () => {
      const told = once(client.process.stderr, 'data');
      client.process.kill('SIGUSR2');
      const [said] = (await told) as [Buffer];
      return Number(/holds (\d+) MB/.exec(said.toString())?.[1]);
    };
    // What is learned once, and how much of each kind is remembered at the most, is there by then.
    await edit(60);
    const before = await held();
    await edit(200);
    const after = await held();
    expect(before).toBeGreaterThan(0);
    expect(after - before).toBeLessThan(mostMegabytes);
  },
  240_000,
);
