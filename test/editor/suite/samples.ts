import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { closeEverything, openFile, writeWorkspaceFile } from './documents';
import { workbenchTest } from './testList';
import { until } from './until';

/** A second of a 441 Hz sine, 16 bits, 44,100 frames a second (Multimedia Programming Interface 1.0). */
function wave(): Uint8Array {
  const frames = 44_100;
  const bytes = new DataView(new ArrayBuffer(44 + 2 * frames));
  const name = (at: number, text: string) => {
    for (let letter = 0; letter < 4; letter++) bytes.setUint8(at + letter, text.charCodeAt(letter));
  };
  name(0, 'RIFF');
  bytes.setUint32(4, 36 + 2 * frames, true);
  name(8, 'WAVE');
  name(12, 'fmt ');
  bytes.setUint32(16, 16, true);
  bytes.setUint16(20, 1, true);
  bytes.setUint16(22, 1, true);
  bytes.setUint32(24, 44_100, true);
  bytes.setUint32(28, 88_200, true);
  bytes.setUint16(32, 2, true);
  bytes.setUint16(34, 16, true);
  name(36, 'data');
  bytes.setUint32(40, 2 * frames, true);
  for (let frame = 0; frame < frames; frame++) {
    bytes.setInt16(44 + 2 * frame, Math.round(16_000 * Math.sin((2 * Math.PI * frame) / 100)), true);
  }
  return new Uint8Array(bytes.buffer);
}

// The second region says that A4 is A5; its loop of 80.31 periods jumps where it closes.
const instrument = `<group> lokey=60 hikey=68
<region> sample=measured/a.wav pitch_keycenter=69
<region> lokey=69 hikey=80 sample=measured/b.wav pitch_keycenter=81
  loop_mode=loop_continuous loop_start=1000 loop_end=9030
`;

workbenchTest('samples are measured behind the text and reported on', async (workbench) => {
  await workbench.useColourTheme('light');
  await vscode.commands.executeCommand('notifications.clearAll');
  const path = 'measured.sfz';
  for (const name of ['a', 'b']) await writeWorkspaceFile(`measured/${name}.wav`, wave());
  const uri = await writeWorkspaceFile(path, instrument);
  await openFile(path);
  const codes = () => vscode.languages.getDiagnostics(uri).map(({ code }) => code);
  await until('the findings of measures', () => {
    return codes().includes('root-mismatch') && codes().includes('loop-seam');
  });
  await vscode.commands.executeCommand('zonewright.sampleReport');
  const view = '.first-list';
  assert.equal(await workbench.text({ view, selector: 'h1' }), 'Samples of measured.sfz');
  // 441 Hz is 3.93 cents above A4 (ISO 16).
  const first = await workbench.text({ view, selector: '.first-list li' });
  assert.match(first, /measured\/b\.wav.*sounds an octave below its root key/);
  assert.match(first, /the loop 1000 to 9030 jumps where it closes/);
  assert.equal(await workbench.count({ view, selector: 'svg[role=img]' }), 4);
  for (const theme of ['light', 'dark', 'highContrast'] as const) {
    await workbench.useColourTheme(theme);
    await workbench.screenshot(`sample-report-${theme}`);
  }
  await openFile(path);
  await vscode.commands.executeCommand('zonewright.sampleReportTable');
  const table = await until('the table', () =>
    vscode.workspace.textDocuments.find((document) => document.getText().startsWith('File,')),
  );
  assert.equal(table.getText().trim().split(/\r?\n/).length, 3);
  await closeEverything();
  for (const name of [path, 'measured']) {
    await vscode.workspace.fs.delete(vscode.Uri.joinPath(uri, '..', name), { recursive: true });
  }
});
