import { copyFileSync, cpSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parseVocabulary } from '../../../server/vocabulary/parseVocabulary';
import { folderWith, run } from '../commandLine/runInFolder';

const demo = join(__dirname, '../../../samples-demo');

describe('convert --prove', () => {
  it.each([['zones.tsv', 'sfz', 'millrace-chimes/fromTable.sfz']])(
    'finds that %s sounds the same in the other notation (%s)',
    async (name, to, output) => {
      const folder = folderWith({});
      cpSync(join(demo, 'millrace-chimes'), join(folder, 'millrace-chimes'), { recursive: true });
      const { status, error } = await run(folder, [
        'convert',
        `millrace-chimes/${name}`,
        '--to',
        to,
        '--output',
        output,
        '--prove',
      ]);
      expect(error).toContain('No difference above -90 dB');
      expect(status).toBe(0);
    },
  );

  it('lets a difference be that a note owns up to', async () => {
    const file = 'chime-rack.vocabulary.json';
    expect(parseVocabulary(readFileSync(join(demo, file), 'utf8')).vocabulary).toBeDefined();
    const folder = folderWith({
      'a.sfz': '<region> sample=*sine key=60 cutoff=500\n<region> sample=*saw key=62\n',
    });
    copyFileSync(join(demo, file), join(folder, file));
    const { status, error } = await run(folder, [
      'convert',
      'a.sfz',
      '--to',
      file,
      '--output',
      'b.xml',
      '--prove',
    ]);
    // Each line is one of its own.
    expect(error).toMatch(/\nNo difference above -90 dB/);
    expect(error).toContain('1 of 2 notes differs, and notes of the conversion say why');
    expect(error).toContain('No difference above -90 dB');
    expect(status).toBe(0);
  });

  it.each([
    ['a.sfz', 'sf2', 'b.sf2'],
    ['a.sfz', 'sf2', undefined],
  ])('says what to do in place of it for a SoundFont (%s to %s)', async (name, to, output) => {
    const folder = folderWith({ 'a.sfz': '<region> sample=*sine' });
    const written = output === undefined ? [] : ['--output', output];
    const { status, error } = await run(folder, ['convert', name, '--to', to, '--prove', ...written]);
    expect(status).toBe(2);
    expect(error).toContain('compare A FILE.sf2#bank:preset');
  });

  it('needs a file to play', async () => {
    const folder = folderWith({ 'a.sfz': '<region> sample=*sine' });
    expect(await run(folder, ['convert', 'a.sfz', '--to', 'xml', '--prove'])).toMatchObject({
      status: 2,
      error: expect.stringContaining('--output'),
    });
  });
});
