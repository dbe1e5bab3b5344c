import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { waveOf } from '../../../server/comparison/page/soundClips';
import { usualPiece } from '../../../server/comparison/recording/usualPiece';
import { playableInstrument } from '../../../server/playing/playable/makePlayable';
import { readSfz } from '../../../server/sfz/read';
import { soundOf } from '../../../server/sound/program/soundOf';
import { renderParts } from '../../../server/sound/render/renderParts';
import { SampleSource } from '../../../server/sound/samples/sampleSource';
import { closeEverything, openFile, writeWorkspaceFile } from './documents';
import { workbenchTest } from './host/testList';
import { until } from './host/until';

const first = '<group> sample=*saw ampeg_release=0.2\n<region> key=60\n<region> key=64\n';
const second = first.replace('key=64', 'key=64 tune=20');

workbenchTest('two instruments are compared by how they sound', async (workbench) => {
  await workbench.useColourTheme('light');
  await vscode.commands.executeCommand('notifications.clearAll');
  const uri = await writeWorkspaceFile('compared-first.sfz', first);
  const other = await writeWorkspaceFile('compared-second.sfz', second);
  await openFile('compared-first.sfz');
  const found = (one: vscode.Uri) =>
    vscode.languages.getDiagnostics(one).filter(({ source }) => source === 'zonewright comparison');
  await vscode.commands.executeCommand('zonewright.compareWith', other);
  await until('the findings of the comparison', () => found(uri).length > 0 && found(other).length > 0);
  assert.equal(found(uri)[0].range.start.line, 2);
  assert.match(found(uri)[0].message, /Tunings in cents differ: 0 and 20/);
  const [place] = found(other);
  assert.equal(place.range.start.line, 2);
  assert.equal(place.range.start.character, second.split('\n')[2].indexOf('tune'));
  const heading = await workbench.text({ view: 'audio', selector: 'h1' });
  assert.equal(heading, 'compared-first.sfz and compared-second.sfz');
  // The view runs no script, so that no event of it is heard.
  const state = `(() => { const one = document.querySelector('audio'); one.preload = 'metadata'; return one.error ? -1 : one.readyState; })()`;
  await until(
    'the first sound to be there',
    async () => (await workbench.evaluate<number>(state, 'audio')) > 0,
  );
  await workbench.screenshot('comparison-light');
  await workbench.click({ view: 'audio', selector: 'a.mark' });
  const top = `document.querySelector('#difference-1').getBoundingClientRect().top`;
  await until('the sounds of the place', async () => (await workbench.evaluate<number>(top, 'audio')) < 60);
  await workbench.useColourTheme('dark');
  await workbench.screenshot('comparison-dark');
  const edit = new vscode.WorkspaceEdit();
  edit.insert(uri, new vscode.Position(0, 0), '// changed\n');
  await vscode.workspace.applyEdit(edit);
  await until('the findings to go with the edit', () => found(uri).length === 0);
  assert.equal(found(other).length, 1);
  await vscode.commands.executeCommand('zonewright.clearComparison');
  assert.equal(found(other).length, 0);
  await closeEverything();
  for (const one of [uri, other]) await vscode.workspace.fs.delete(one);
});

/** A recording of an instrument that plays its sweep. */
async function recordingOf(text: string): Promise<Uint8Array> {
  const rate = 44100;
  const instrument = readSfz(text, { path: 'a.sfz' });
  const playable = playableInstrument(instrument);
  const samples = new SampleSource({
    open: async () => undefined,
    stat: async () => undefined,
    list: async () => [],
  });
  const [left, right]: [number[], number[]] = [[], []];
  await renderParts(
    { program: soundOf(instrument), playable, paths: [], samples },
    [usualPiece(playable)],
    { sampleRate: rate, seed: 0, quality: 'live' },
    (ofLeft, ofRight, count) => {
      left.push(...ofLeft.subarray(0, count));
      right.push(...ofRight.subarray(0, count));
    },
  );
  return waveOf({ left: Float32Array.from(left), right: Float32Array.from(right) }, rate);
}

workbenchTest('an instrument is compared with a recording of the original', async (workbench) => {
  await workbench.useColourTheme('light');
  // Two notes would not tell which of them is in tune with the whole.
  const third = '<region> key=67\n';
  const uri = await writeWorkspaceFile('ported.sfz', second + third);
  const recording = await writeWorkspaceFile('original.wav', await recordingOf(first + third));
  await openFile('ported.sfz');
  const found = () =>
    vscode.languages.getDiagnostics(uri).filter(({ source }) => source === 'zonewright comparison');
  await vscode.commands.executeCommand('zonewright.compareWith', recording);
  await until('the findings of the recording', () => found().length > 0);
  assert.match(found()[0].message, /In the recording key 64.*pitch −20 cents: The tuning differs/);
  assert.equal(found()[0].range.start.character, second.split('\n')[2].indexOf('tune'));
  const heading = await workbench.text({ view: 'main > table, main .wide', selector: 'h1' });
  assert.equal(heading, 'ported.sfz and the recording original.wav');
  await workbench.screenshot('comparison-recording');
  await closeEverything();
  for (const one of [uri, recording]) await vscode.workspace.fs.delete(one);
});
