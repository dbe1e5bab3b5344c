import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { examples } from '../../vocabulary/examples';
import { folderWith, run } from '../runInFolder';

const smithy = `<smithy>
  <bar recording="low.wav" lowest-key="48" highest-key="62" root-key="57" loudness="1"/>
  <bar recording="high.wav" lowest-key="63" highest-key="84" root-key="69" loudness="1"/>
</smithy>
`;

describe('zonewright vocabulary', () => {
  it('works one out, says what is in doubt, and writes a file that settles how the instrument is read', async () => {
    const folder = folderWith({ 'a.xml': smithy });
    const answer = await run(folder, ['vocabulary', 'infer', 'a.xml', '--output', 'smithy.vocabulary.json']);
    expect(answer).toMatchObject({ status: 0, out: '' });
    expect(answer.error).toMatch(/a\.xml:2: in doubt: .*loudness/);
    const file = join(folder, 'smithy.vocabulary.json');
    const saved = JSON.parse(readFileSync(file, 'utf8'));
    expect(saved.unsettled).toHaveLength(1);
    const doubts = await run(folder, ['check', 'a.xml', '--format', 'json']);
    expect(doubts.out).toContain('"vocabulary-doubt"');
    const printed = await run(folder, ['vocabulary', 'print', 'a.xml', '--format', 'json']);
    expect(JSON.parse(printed.out)).toEqual(saved);
    const told = await run(folder, ['vocabulary', 'print', 'smithy.vocabulary.json']);
    expect(told.out).toContain('lowest-key');
  });

  it('gives decisions with their places as data', async () => {
    const folder = folderWith({ 'a.xml': smithy });
    const { out } = await run(folder, ['vocabulary', 'infer', 'a.xml', '--format', 'json']);
    const { vocabulary, decisions } = JSON.parse(out);
    expect(vocabulary.levels.at(-1).element).toBe('bar');
    const low = decisions.find(({ id }: { id: string }) => id === 'lokey');
    expect(low).toMatchObject({ line: 2 });
  });

  it('checks files and says each fault with its place', async () => {
    const sound = JSON.stringify(examples.foundry?.vocabulary);
    const folder = folderWith({
      'good.vocabulary.json': sound,
      'bad.vocabulary.json': '{\n  "name": "Bad",\n  "levels": [],\n  "colour": "red"\n}\n',
      'bells.xml': examples.foundry?.text ?? '',
      'smithy.xml': smithy,
    });
    const good = await run(folder, ['vocabulary', 'check', 'good.vocabulary.json', '--with', 'bells.xml']);
    expect(good).toMatchObject({ status: 0, error: '' });
    expect(good.out).toContain('reads 200 regions of bells.xml');
    const bad = await run(folder, ['vocabulary', 'check', 'bad.vocabulary.json']);
    expect(bad.status).toBe(1);
    expect(bad.out).toMatch(/^bad\.vocabulary\.json:4:\d+: .*colour/m);
    const other = await run(folder, ['vocabulary', 'check', 'good.vocabulary.json', '--with', 'smithy.xml']);
    expect(other.status).toBe(1);
  });

  it.each([
    [['vocabulary'], 'print, infer or check'],
    [['vocabulary', 'infer'], 'takes one file'],
    [['vocabulary', 'infer', 'none.xml'], 'none.xml'],
    [['vocabulary', 'infer', 'page.xml'], 'no instrument'],
    [['vocabulary', 'print', 'a.sfz'], 'a.sfz'],
    [['vocabulary', 'check'], 'at least one'],
    [['convert', 'a.xml', '--to', 'mp3'], '--to'],
    [['convert', 'a.xml', '--to', 'broken.vocabulary.json'], 'broken.vocabulary.json'],
  ])('%j fails in one line', async (args, said) => {
    const folder = folderWith({
      'a.xml': smithy,
      'a.sfz': '<region> sample=a.wav\n',
      'page.xml': '<page><p>text</p></page>',
      'broken.vocabulary.json': '[]',
    });
    const { status, error } = await run(folder, args);
    expect(status).toBe(2);
    expect(error).toMatch(/^zonewright: [^\n]+\n$/);
    expect(error).toContain(said);
  });
});

describe('instruments in another vocabulary on the command line', () => {
  it('have regions with the values of the open SFZ format', async () => {
    const folder = folderWith({ 'a.xml': smithy });
    const { out } = await run(folder, ['regions', 'a.xml', '--format', 'json']);
    const { format, regions } = JSON.parse(out);
    expect(format).toBe('xml');
    expect(regions).toMatchObject([
      { sample: 'low.wav', lokey: 48, hikey: 62, pitch_keycenter: 57 },
      { sample: 'high.wav', lokey: 63, hikey: 84, pitch_keycenter: 69 },
    ]);
  });

  it('are listed with a note on each value that cannot be read', async () => {
    const pads = [41, 45, 49, 'H', 57, 61].map(
      (root, at) => `<pad wav="x${at}.wav" low="${40 + 4 * at}" high="${43 + 4 * at}" root="${root}"/>`,
    );
    const folder = folderWith({ 'a.xml': `<kit>${pads.join('\n')}</kit>` });
    const { out } = await run(folder, ['regions', 'a.xml', '--format', 'json']);
    const { regions, notes } = JSON.parse(out);
    expect(regions).toHaveLength(6);
    expect(notes).toContainEqual(
      expect.objectContaining({
        kind: 'dropped',
        line: 4,
        message: expect.stringContaining('"H" sets no pitch_keycenter'),
      }),
    );
  });

  it('are written from SFZ by a vocabulary file, with notes that count what was kept and left out', async () => {
    const folder = folderWith({
      'a.sfz': '<region> sample=a.wav lokey=48 hikey=50 volume=-6 cutoff=900\n',
      'bells.vocabulary.json': JSON.stringify(examples.foundry?.vocabulary),
    });
    const to = ['convert', 'a.sfz', '--to', 'bells.vocabulary.json'];
    const { status, error } = await run(folder, [...to, '--output', 'a.xml', '--notes', 'notes.md']);
    expect({ status, error }).toEqual({ status: 0, error: '' });
    const text = readFileSync(join(folder, 'a.xml'), 'utf8');
    expect(text).toContain('<bell ');
    expect(text).toContain('loudness="-6 dB"');
    const notes = readFileSync(join(folder, 'notes.md'), 'utf8');
    expect(notes).toMatch(/Carried over exactly: 4/);
    expect(notes).toMatch(/Left out: 1/);
    expect(notes).toContain('cutoff');
    const { out } = await run(folder, ['regions', 'a.xml', '--format', 'json']);
    expect(JSON.parse(out).regions).toEqual([{ sample: 'a.wav', lokey: 48, hikey: 50, volume: -6 }]);
  });

  it('and nothing is written where the input cannot be read', async () => {
    const folder = folderWith({ 'page.xml': '<page><p>text</p></page>' });
    const { status } = await run(folder, ['convert', 'page.xml', '--to', 'sfz', '--output', 'a.sfz']);
    expect(status).toBe(2);
    expect(existsSync(join(folder, 'a.sfz'))).toBe(false);
  });
});
