import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { describe, expect, it } from 'vitest';
import * as commands from '../../../server/protocol/handlers/actions/handleCommands';

const root = fileURLToPath(new URL('../../..', import.meta.url));
const page = readFileSync(join(root, 'OTHER-EDITORS.md'), 'utf8');

/** The first cells of the table under a heading, without their marks. */
function firstCells(heading: string): string[] {
  const section = page.split(/^## /m).find((one) => one.startsWith(`${heading}\n`)) ?? '';
  return [...section.matchAll(/^\| `([^`]+)`/gm)].map(([, cell]) => cell ?? '');
}

/** What a module exports as the types of its messages. */
async function messagesOf(file: string): Promise<{ method: string; isNotification: boolean }[]> {
  const exported = (await import(pathToFileURL(file).href)) as Record<string, unknown>;
  return Object.values(exported).flatMap((one) => {
    const type = (one as { type?: { method?: unknown; constructor: { name: string } } } | null)?.type;
    return typeof type?.method === 'string'
      ? [{ method: type.method, isNotification: type.constructor.name.startsWith('NotificationType') }]
      : [];
  });
}

describe('the page for other editors', () => {
  it('lists every request and notification of our own, and no other', async () => {
    const folder = join(root, 'server/protocol/requests');
    const all = await Promise.all(readdirSync(folder).map((name) => messagesOf(join(folder, name))));
    // One is a request of the protocol itself.
    const methods = all.flat().flatMap(({ method }) => (method.startsWith('workspace/') ? [] : [method]));
    expect(methods.length).toBeGreaterThan(10);
    expect(firstCells('Requests and notifications of our own').sort()).toEqual(methods.sort());
  });

  it('lists every option that the server looks for when it starts', () => {
    const sources = ['languageServer.ts', 'trust.ts'].map((name) =>
      readFileSync(join(root, 'server/protocol', name), 'utf8'),
    );
    const asked = [
      ...sources.join('\n').matchAll(/(?:option|words)In\(initializationOptions, '(\w+)'\)/g),
    ].map(([, name]) => name ?? '');
    expect(firstCells('Initialization options').sort()).toEqual([...asked, 'trusted'].sort());
  });

  it('lists the commands that the server carries out, and the settings', () => {
    for (const command of Object.values(commands).filter((one) => typeof one === 'string'))
      expect(page).toContain(`\`${command}\``);
    const { contributes } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
      contributes: { configuration: { properties: Record<string, unknown> } };
    };
    const names = Object.keys(contributes.configuration.properties).map((name) => name.split('.')[1]);
    const settings = page.split(/^## /m).find((one) => one.startsWith('Settings\n')) ?? '';
    for (const name of new Set(names)) expect(settings).toContain(`\`${name}\``);
  });

  it('is linked from the README, and packed beside it', () => {
    expect(readFileSync(join(root, 'README.md'), 'utf8')).toContain('(OTHER-EDITORS.md)');
    expect(readFileSync(join(root, '.vscodeignore'), 'utf8')).toContain('!OTHER-EDITORS.md');
  });
});
