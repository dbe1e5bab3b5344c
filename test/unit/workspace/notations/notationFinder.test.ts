import { beforeEach, describe, expect, it } from 'vitest';
import { readInstrument } from '../../../../server/workspace/analyse';
import { IncludeStore } from '../../../../server/workspace/files/includeStore';
import { NotationFinder } from '../../../../server/workspace/notations/notationFinder';
import { notations } from '../../../../server/workspace/notations/notationOf';
import { vocabularyFindings } from '../../../../server/workspace/notations/vocabularyFindings';
import { SampleStore } from '../../../../server/workspace/samples/sampleStore';
import { examples } from '../../vocabulary/examples';
import { MemoryFiles } from '../memoryFiles';

const smithy = `<smithy>
  <bar recording="low.wav" lowest-key="48" highest-key="62" root-key="57" loudness="1"/>
  <bar recording="high.wav" lowest-key="63" highest-key="84" root-key="69" loudness="1"/>
</smithy>
`;
const smithyVocabulary = JSON.stringify({
  name: 'Smithy',
  levels: [
    { element: 'smithy', is: 'instrument', parameters: [] },
    {
      element: 'bar',
      is: 'region',
      parameters: [
        { parameter: 'sample', at: '@recording', form: { kind: 'path' } },
        { parameter: 'lokey', at: '@lowest-key', form: { kind: 'key', written: 'number' } },
        { parameter: 'volume', at: '@loudness', form: { kind: 'level', unit: 'dB' } },
      ],
    },
  ],
});

let files: MemoryFiles;
let warnings: string[];
let finder: NotationFinder;

beforeEach(() => {
  files = new MemoryFiles({ '/w/a/smithy.xml': smithy });
  warnings = [];
  finder = new NotationFinder(files, new SampleStore(files), (message) => warnings.push(message));
});

/** The values in force in the first region of a text, by opcode. */
async function firstRegion(path: string, text: string): Promise<Record<string, string>> {
  const found = await finder.find({ path, text });
  if (!found) throw new Error('The text was taken for no instrument.');
  const source = { path, text, notation: found.notation, ...finder.readingOf(found) };
  const instrument = await readInstrument(source, new IncludeStore(files));
  return Object.fromEntries(
    instrument
      .effectiveParameters(instrument.regions[0])
      .map(({ name, parameter }) => [instrument.names.text(name), instrument.valueText(parameter)]),
  );
}

describe('how a text is read', () => {
  it('follows its language or content where these say it', async () => {
    expect((await finder.find({ path: '/w/a.sfz', text: '<region>' }))?.notation).toBe(notations.sfz);
    const own = '<instrument><region/></instrument>';
    expect((await finder.find({ path: '/w/a.xml', text: own }))?.notation).toBe(notations.xml);
    expect((await finder.find({ path: '/w/a.xml', text: own, languageId: 'xml' }))?.notation).toBe(
      notations.xml,
    );
  });

  it.each([
    ['a page', '<html><body><audio src="a.wav"/><audio src="b.wav"/></body></html>'],
    ['no XML', 'Sample\tKey\na.wav\t60\n'],
    ['nothing', ''],
    ['a picture', '<svg><rect x="1" y="2"/><rect x="3" y="4"/></svg>'],
  ])('is open for %s', async (_what, text) => {
    expect(await finder.find({ path: '/w/a.xml', text, languageId: 'xml' })).toBeUndefined();
  });

  it('is worked out where no file says it', async () => {
    expect(await firstRegion('/w/a/smithy.xml', smithy)).toMatchObject({
      sample: 'low.wav',
      lokey: '48',
      hikey: '62',
      pitch_keycenter: '57',
    });
  });

  it('is what the nearest file says that fits', async () => {
    files.put('/w/smithy.vocabulary.json', smithyVocabulary);
    files.put('/w/other.vocabulary.json', smithyVocabulary.replaceAll('smithy', 'forge'));
    expect(await firstRegion('/w/a/smithy.xml', smithy)).toEqual({
      sample: 'low.wav',
      lokey: '48',
      volume: '1',
    });
    files.put('/w/a/near.vocabulary.json', smithyVocabulary.replace('lokey', 'hikey'));
    finder.forget('/w/a/near.vocabulary.json');
    expect(await firstRegion('/w/a/smithy.xml', smithy)).toEqual({
      sample: 'low.wav',
      hikey: '48',
      volume: '1',
    });
    expect(warnings).toEqual([]);
  });

  it('leaves a file that makes no sense out and says so', async () => {
    files.put('/w/a/broken.vocabulary.json', '{"name": ');
    files.put('/w/a/picture.vocabulary.json', new Uint8Array([0, 1, 2, 3]));
    expect(await firstRegion('/w/a/smithy.xml', smithy)).toMatchObject({ lokey: '48' });
    expect(warnings.map((warning) => warning.split(':')[0])).toEqual([
      '/w/a/broken.vocabulary.json',
      '/w/a/picture.vocabulary.json',
    ]);
  });

  it('stays the same object while a person types what changes nothing of it', async () => {
    const first = await finder.find({ path: '/w/a/smithy.xml', text: smithy, languageId: 'xml' });
    const longer = smithy.replace('</smithy>', '  <bar recording="mid.wav" lowest-key="4"/>\n</smithy>');
    const second = await finder.find({ path: '/w/a/smithy.xml', text: longer, languageId: 'xml' });
    expect(first?.vocabulary).toBeDefined();
    expect(second?.notation).toBe(first?.notation);
  });
});

describe('the points that are open', () => {
  it('are findings, each settled by writing the vocabulary to a file', async () => {
    const found = await finder.find({ path: '/w/a/smithy.xml', text: smithy });
    const findings = vocabularyFindings(found?.vocabulary as never, '/w', {});
    expect(findings.map(({ code, start, end }) => [code, smithy.slice(start, end)])).toEqual([
      ['vocabulary-doubt', expect.stringContaining('1')],
    ]);
    const fixes = findings[0]?.fixes?.() ?? [];
    expect(fixes.length).toBeGreaterThan(1);
    const [keep, ...others] = fixes;
    expect(keep?.saves?.path).toBe('/w/smithy.vocabulary.json');
    // Written and read back, nothing is open any more, and another choice reads another level.
    const levels = [];
    for (const fix of [keep, ...others]) {
      files.put(fix?.saves?.path as string, fix?.saves?.text as string);
      finder.forget(fix?.saves?.path as string);
      const again = await finder.find({ path: '/w/a/smithy.xml', text: smithy });
      expect(vocabularyFindings(again?.vocabulary as never, '/w', {})).toEqual([]);
      levels.push((await firstRegion('/w/a/smithy.xml', smithy)).volume);
    }
    expect(new Set(levels).size).toBe(levels.length);
    expect(levels).toContain('1');
  });

  it('can be switched off or raised', async () => {
    const found = await finder.find({ path: '/w/a/smithy.xml', text: smithy });
    const inForce = found?.vocabulary as never;
    expect(vocabularyFindings(inForce, '/w', { 'vocabulary-doubt': 'off' })).toEqual([]);
    expect(vocabularyFindings(inForce, '/w', { 'vocabulary-doubt': 'warning' })[0]?.severity).toBe('warning');
  });
});

describe('instruments in invented vocabularies', () => {
  it.each(Object.entries(examples))('%s is taken for one', async (name, { text }) => {
    const found = await finder.find({ path: `/w/${name}.xml`, text, languageId: 'xml' });
    expect(found?.vocabulary?.inferred?.confidence).toBeGreaterThan(0.5);
  });
});
