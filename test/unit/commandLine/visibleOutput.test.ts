import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { folderWith, run } from './runInFolder';

/** Clears the screen and writes a title, then goes on in red: what a name could do to a terminal (ECMA-48, 8.3). */
const attack = '\u001b[2J\u001b]0;title\u0007\u009b31m';
const acting = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e]/;

const text = `<region> sample=Samples/${attack}a\u202ewav.exe key=60
<region> opcode${attack}=3 lokey=${attack}
${attack} stray
#include "missing${attack}.sfz"
`;

describe('names and values with control signs', () => {
  it('act on no terminal: every finding is one line', async () => {
    const folder = folderWith({ 'a.sfz': text, 'b\u001b[2J.sfz': '<region> sample=none.wav\n' });
    const { out, error } = await run(folder, ['check', '.']);
    expect(out).toContain('␛[2J');
    expect(out + error).not.toMatch(acting);
    const lines = out.trimEnd().split('\n');
    for (const line of lines.slice(0, -1)) expect(line).toMatch(/^\S.*:\d+:\d+: .* \[[a-z-]+\]$/);
    for (const format of ['json', 'sarif']) {
      const answer = await run(folder, ['check', '.', '--format', format]);
      expect(answer.out).not.toMatch(acting);
      JSON.parse(answer.out);
    }
  });

  it('act on none from other commands', async () => {
    const folder = folderWith({ 'a.sfz': text });
    const answers = [
      await run(folder, ['regions', 'a.sfz']),
      await run(folder, ['regions', 'a.sfz', '--format', 'json']),
      await run(folder, ['report', 'a.sfz']),
      await run(folder, ['check', `${attack}.sfz`]),
      await run(folder, ['sample', `${attack}.wav`]),
      await run(folder, [attack]),
    ];
    for (const { out, error } of answers) expect(out + error).not.toMatch(acting);
    for (const { error } of answers.slice(3)) expect(error).toMatch(/^zonewright: .*\n$/);
  });

  it('act on none from what tells how regions sound', async () => {
    const sample = `${attack}a.wav`;
    const sounding = `<region> sample=${sample} key=60 region_label=${attack}\n<region> sample=*sine key=61\n`;
    const folder = folderWith({ 'a.sfz': sounding, 'b.sfz': sounding.replace('*sine', '*saw') });
    copyFileSync('samples-demo/millrace-chimes/Samples/bowed-B4.wav', join(folder, sample));
    const note = ['--key', '60', '--velocity', '100'];
    const played = ['render', 'a.sfz', ...note, '--output', 'o.wav', '--force'];
    const answers = [
      await run(folder, played),
      await run(folder, [...played, '--format', 'json']),
      await run(folder, ['explain', 'a.sfz', ...note]),
      await run(folder, ['compare', 'a.sfz', 'b.sfz']),
      await run(folder, ['compare', 'a.sfz', 'b.sfz', '--format', 'html']),
      await run(folder, ['sweep', 'a.sfz', '--output', 's.mid']),
    ];
    for (const { out, error } of answers) {
      expect(error).not.toMatch(acting);
      expect(out).not.toMatch(acting);
    }
    expect(answers[0]?.out).toContain('␛[2J');
  });

  it('act on none from the notes of a conversion', async () => {
    const folder = folderWith({ 'a.sfz': text });
    const { error } = await run(folder, ['convert', 'a.sfz', '--to', 'xml', '--output', 'a.xml']);
    expect(error).not.toBe('');
    expect(error).not.toMatch(acting);
  });
});
