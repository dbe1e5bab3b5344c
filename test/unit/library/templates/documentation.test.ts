import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { folderWith, run } from '../../commandLine/runInFolder';

const page = readFileSync(new URL('../../../../docs/templates.md', import.meta.url), 'utf8');

function block(name: string): string {
  return new RegExp(`\`\`\`\\w+ ${name}\\n([\\s\\S]*?)\`\`\``).exec(page)?.[1] ?? '';
}

it('does in the worked example what the page on templates says', async () => {
  const folder = folderWith({ 'house.sfz': block('template'), 'harp.txt': block('source') });
  const args = /`zonewright (convert harp\.txt .*)` gives/.exec(page)?.[1].match(/"[^"]*"|\S+/g) ?? [];
  const { status, out } = await run(
    folder,
    args.map((one) => one.replaceAll('"', '')),
  );
  expect(status).toBe(0);
  expect(out).toBe(block('result'));
});
