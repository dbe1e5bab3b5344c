import { execFileSync } from 'node:child_process';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { expect, it } from 'vitest';
import { joinedBytes } from '../../../server/model/joinedBytes';
import { base64Bytes } from '../../../server/protocol/conversion/base64';
import { ConvertRequest } from '../../../server/protocol/requests/conversionRequests';
import { MakePackRequest, PackPartRequest } from '../../../server/protocol/requests/packRequests';
import { EditorClient } from './host/editorClient';
import { bundle, folder, useServerPlaces } from './host/serverPlaces';
import { waveBytes } from './host/waveBytes';

useServerPlaces();

async function start(files: Record<string, string | Uint8Array>) {
  const place = `${folder}/templates-${Math.random().toString(36).slice(2)}`;
  await mkdir(`${place}/Samples`, { recursive: true });
  for (const [name, content] of Object.entries(files)) await writeFile(`${place}/${name}`, content);
  const client = await EditorClient.start(bundle, { folder: place });
  const uri = (name: string) => new URL(`file://${place}/${name}`).toString();
  return { client, uri, place };
}

const template =
  '// (title goes here) by (maker goes here)\n<group> ampeg_release=2\n<region> sample=x.wav key=60\n';

it('puts a document, or a copied table, into a template, and tells what it has a place for and does not know', async () => {
  const { client, uri } = await start({ 'house.sfz': template, 'Samples/a.wav': waveBytes(50) });
  const document = await client.open('a.sfz', '<region> sample=Samples/a.wav key=61\n');
  const convert = (facts: Record<string, string>, table?: string) =>
    client.connection.sendRequest(ConvertRequest.type, {
      uri: document,
      to: { templateUri: uri('house.sfz'), facts },
      ...(table !== undefined && { table }),
    });
  const first = await convert({ title: 'Harp' });
  expect(first).toMatchObject({
    text: '// Harp by (maker goes here)\n<group> ampeg_release=2\n<region> sample=Samples/a.wav key=61\n',
    format: 'sfz',
    missingFacts: ['maker'],
  });
  const table = 'Sample,Low,High,Root\na.wav,60,62,61\n';
  expect(await convert({ title: 'Harp', maker: 'Ines' }, table)).toMatchObject({
    text: '// Harp by Ines\n<group> ampeg_release=2\n<region> sample=Samples/a.wav lokey=60 hikey=62 pitch_keycenter=61\n',
    missingFacts: [],
  });
  // A table has no name that could be its title.
  expect(await convert({}, table)).toMatchObject({
    text: expect.stringMatching(/^\/\/ \(title goes here\) by \(maker goes here\)\n/),
    missingFacts: ['title', 'maker'],
  });
  expect(await convert({}, 'no table')).toHaveProperty('problem');
  const empty = client.connection.sendRequest(ConvertRequest.type, {
    uri: document,
    to: { templateUri: uri('Samples/a.wav'), facts: {} },
  });
  expect(await empty).toHaveProperty('problem');
});

it('packs a document, in parts, and not without a licence', async () => {
  const { client, place } = await start({ 'Samples/a.wav': waveBytes(50) });
  const text = '<region> sample=Samples\\a.wav key=61\n';
  await writeFile(`${place}/Bell.sfz`, text);
  const uri = await client.open('Bell.sfz', text);
  const refused = await client.connection.sendRequest(MakePackRequest.type, { uri });
  expect(refused).toMatchObject({ problem: expect.stringContaining('no licence is known') });
  const made = await client.connection.sendRequest(MakePackRequest.type, { uri, licence: 'CC0 1.0' });
  if ('problem' in made) throw new Error(made.problem);
  expect(made.contents).toEqual([
    'Bell/Bell.sfz',
    'Bell/LICENCE.txt',
    'Bell/CREDITS.txt',
    'Bell/Samples/a.wav',
  ]);
  const parts: Uint8Array[] = [];
  for (;;) {
    const { data } = await client.connection.sendRequest(PackPartRequest.type, { pack: made.pack });
    if (data === undefined) break;
    parts.push(base64Bytes(data));
  }
  await writeFile(`${place}/${made.name}`, joinedBytes(parts));
  const listed = execFileSync('python3', ['-m', 'zipfile', '-l', `${place}/${made.name}`]).toString();
  for (const name of made.contents) expect(listed).toContain(name);
  execFileSync('python3', ['-m', 'zipfile', '-e', `${place}/${made.name}`, `${place}/out`]);
  expect(await readFile(`${place}/out/Bell/Bell.sfz`, 'utf8')).toBe('<region> sample=Samples/a.wav key=61\n');
  const flac = { uri, licence: 'CC0 1.0', audio: 'flac' } as const;
  expect(await client.connection.sendRequest(MakePackRequest.type, flac)).toMatchObject({
    contents: ['Bell/Bell.sfz', 'Bell/LICENCE.txt', 'Bell/CREDITS.txt', 'Bell/Samples/a.flac'],
    notFlac: 0,
  });
});
