import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { HeldFinders } from '../../../../server/library/build/heldFinders';
import type { InstrumentRecord } from '../../../../server/library/build/instrumentRecord';
import { proveTargets } from '../../../../server/library/build/proveTargets';
import { readSource } from '../../../../server/library/build/readSource';
import { writeTargets } from '../../../../server/library/build/writeTargets';
import { proofIn } from '../../../../server/library/report/proofIn';
import { IncludeStore } from '../../../../server/workspace/files/includeStore';
import { nodeFiles } from '../../../../server/workspace/files/nodeFiles';
import { SampleStore } from '../../../../server/workspace/samples/sampleStore';
import { build, folderOf, libraryFile, opened, put } from './libraryFolder';

const tones = '<region> sample=*sine key=60 cutoff=500\n<region> sample=*saw key=62\n';
const words = readFileSync(join(__dirname, '../../../../samples-demo/chime-rack.vocabulary.json'), 'utf8');
const library = (settings: object) => ({
  [libraryFile]: JSON.stringify({ build: { prove: true }, sources: [{ files: ['*.sfz'] }], ...settings }),
});
const recordOf = (folder: string, name: string) =>
  JSON.parse(readFileSync(join(folder, `built/records/${name}.json`), 'utf8')) as InstrumentRecord;

describe('a build that proves', () => {
  it('plays each text against its source, and tells what a note owns up to from what none does', async () => {
    const targets = ['sfz', 'rack.vocabulary.json'];
    const folder = folderOf({ ...library({ targets }), 'tones.sfz': tones, 'rack.vocabulary.json': words });
    const [outcome] = await build(folder);
    expect(outcome).toMatchObject({ state: 'built', message: null });
    const record = recordOf(folder, 'tones');
    expect(record.proofs).toMatchObject([
      { target: 'sfz', verdict: 'alike', notes: 2, worstDb: null },
      { target: 'rack', verdict: 'noted', differing: 0, explained: 1, worst: { key: 60 } },
    ]);
    expect(proofIn(record)).toMatchObject({
      verdict: 'noted',
      where: expect.stringMatching(/^rack, key 60 \(C4\), velocity \d+: /),
    });
    const note = readFileSync(join(folder, 'built/notes/tones.md'), 'utf8');
    expect(note).toContain('They sound alike.');
    expect(note).toContain('1 note differs, only where this page says why.');
    // Proofs are asked for by the library file: without, they are not made.
    put(folder, library({ targets, build: {} }));
    await build(folder);
    expect(recordOf(folder, 'tones').proofs).toBeUndefined();
  });

  it('tells of a text that sounds different, by how much and where', async () => {
    const folder = folderOf({ ...library({}), 'tones.sfz': tones });
    const { instruments, output } = await opened(folder);
    const tools = {
      files: nodeFiles,
      samples: new SampleStore(nodeFiles),
      includes: new IncludeStore(nodeFiles),
      finders: new HeldFinders(),
    };
    const [one] = instruments;
    if (!one) throw new Error('no instrument');
    const source = await readSource(one, join(output, 'sfz'), tools);
    const { texts } = await writeTargets(one, source, output, tools);
    const wrong = texts.map((text) => ({ ...text, text: text.text.replace('key=62', 'key=62 tune=50') }));
    const [proof] = await proveTargets(source, wrong, tools);
    expect(proof).toMatchObject({ verdict: 'differs', notes: 2, differing: 1, explained: 0 });
    expect(proof?.worst).toMatchObject({ key: 62, cause: 'Tunings in cents differ: 0 and 50.' });
    // A saw at velocity 64 and in the middle swings by 0.18 to either side; a quarter tone off both are soon at opposite ends.
    expect(proof?.worstDb).toBeGreaterThan(20 * Math.log10(2 * 0.17));
    expect(
      await proveTargets(
        source,
        wrong.map((text) => ({ ...text, isInTemplate: true })),
        tools,
      ),
    ).toEqual([]);
  });
});

describe('a target that cannot be written', () => {
  it('keeps no other from being written, and is named', async () => {
    const folder = folderOf({
      ...library({ targets: ['sfz', { notation: 'xml', template: 'lost.xml' }] }),
      'tones.sfz': tones,
    });
    const [outcome] = await build(folder);
    expect(outcome).toMatchObject({
      state: 'built',
      outputs: ['built/sfz/tones.sfz'],
      message: 'Not written: xml: The template lost.xml is not there, or no text.',
    });
    const [again] = await build(folder);
    expect(again).toMatchObject({ state: 'unchanged', message: outcome?.message });
    put(folder, { 'lost.xml': '<instrument><region sample="*sine" key="1"/></instrument>' });
    const [mended] = await build(folder);
    expect(mended).toMatchObject({ state: 'built', message: null });
    expect(mended?.outputs).toEqual(['built/sfz/tones.sfz', 'built/xml/tones.xml']);
  });

  it('fails the instrument where there is no other', async () => {
    const folder = folderOf({ ...library({ template: 'lost.sfz' }), 'tones.sfz': tones });
    const [outcome] = await build(folder);
    expect(outcome).toMatchObject({
      state: 'failed',
      message: 'The template lost.sfz is not there, or no text.',
    });
  });
});

it('takes the samples of a SoundFont for there before they are written beside the text', async () => {
  const folder = folderOf({
    'a.wav': '',
    'a.sfz': '<region> sample=a.wav lokey=40 hikey=60 pitch_keycenter=50\n',
  });
  put(folder, library({ targets: ['sf2'], build: {} }));
  await build(folder);
  const font = { name: 'Font', source: 'built/sf2/a.sf2#0:0' };
  put(folder, library({ sources: [], output: 'again', targets: ['sfz', 'sf2'], instruments: [font] }));
  const [outcome] = await build(folder);
  expect(outcome).toMatchObject({ state: 'built', message: null, totals: { error: 0 } });
  const record = JSON.parse(
    readFileSync(join(folder, 'again/records/Font.json'), 'utf8'),
  ) as InstrumentRecord;
  expect(record.figures).toMatchObject({ samples: 1, missing: 0 });
  expect(record.proofs).toMatchObject([{ target: 'sfz', verdict: 'alike', notes: 1 }]);
  // The same bytes where the samples are in their place already.
  await build(folder, { force: true });
  expect(JSON.parse(readFileSync(join(folder, 'again/records/Font.json'), 'utf8'))).toEqual(record);
});
