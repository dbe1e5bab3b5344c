import { describe, expect, it } from 'vitest';
import { checkInSteps } from '../../../server/checks/checkInstrument';
import { rules } from '../../../server/checks/rules';
import { summaryText } from '../../../server/map/describe';
import { mapSceneInSteps } from '../../../server/map/scene';
import type { SampleLookup } from '../../../server/model/samples';
import type { Steps } from '../../../server/model/steps';
import { finish, piecesInStep } from '../../../server/model/steps';
import type { TableTarget } from '../../../server/pasting/convertTable';
import { convertTable } from '../../../server/pasting/convertTable';
import { shownMarkup, tableSheet, writtenMarkup } from '../../../server/protocol/conversion/tablePreview';
import { tableCellsInSteps } from '../../../server/table/cells/tableCells';
import { openZoneTableInSteps } from '../../../server/table/readTable';
import { inferVocabularyInSteps } from '../../../server/vocabulary/infer/inferVocabulary';
import { unreadValuesInSteps } from '../../../server/vocabulary/read/unreadValues';
import { vocabularyNotation } from '../../../server/vocabulary/vocabularyNotation';
import { IncludeStore } from '../../../server/workspace/files/includeStore';
import { notations } from '../../../server/workspace/notations/notationOf';
import { notationOutput } from '../../../server/workspace/notations/notationOutput';
import { SampleStore } from '../../../server/workspace/samples/sampleStore';
import { MemoryFiles } from './memoryFiles';

const regionCount = 3 * piecesInStep;
const shownCount = regionCount - 1000;
const text = Array.from({ length: regionCount }, (_, at) => {
  const group = at % 60 === 0 ? `<group> ampeg_release=0.4 pan=${at % 40}\n` : '';
  const [key, velocity] = [at % 119, at % 64];
  return `${group}<region> sample=Samples/note ${at}.wav lokey=${key} hikey=${key + 1} lovel=${velocity} hivel=${velocity + 10} tune=3`;
}).join('\n');
const read = () => notations.sfz.read(text, { path: 'a.sfz' });
const readSome = (lines: number) =>
  notations.sfz.read(text.split('\n').slice(0, lines).join('\n'), { path: 'a.sfz' });
/** Passes over all regions that the work has at the least are this many steps each. */
const aPass = Math.floor(regionCount / piecesInStep);

function countSteps(steps: Steps<unknown>): number {
  let count = 0;
  while (!steps.next().done) count++;
  return count;
}

/** The steps that one rule alone takes. */
function stepsOf(code: string, samples: SampleLookup): number {
  const others = Object.fromEntries(rules.map((rule) => [rule.code, 'off' as const]));
  const { [code]: _own, ...severities } = others;
  return countSteps(checkInSteps({ instrument: read(), notation: notations.sfz, samples }, severities));
}

describe('work on a large instrument', () => {
  it('is reading in steps, of which each reads a part of the text', () => {
    expect(countSteps(notations.sfz.readInSteps(text, { path: 'a.sfz' }))).toBeGreaterThan(
      text.length / 150_000,
    );
    const xml = notations.xml.write(read()).text;
    expect(countSteps(notations.xml.readInSteps(xml, { path: 'a.xml' }))).toBeGreaterThan(
      xml.length / 150_000,
    );
  });

  it('goes on in steps in a file that is included', () => {
    const include = () => ({ kind: 'text' as const, text });
    const main = '#include "all.sfz"\n<region> key=60';
    const inMain = countSteps(notations.sfz.readInSteps(main, { path: 'a.sfz', include }));
    expect(inMain).toBeGreaterThan(text.length / 150_000);
    const xml = '<instrument><include path="all.sfz"/><region key="60"/></instrument>';
    const inXml = countSteps(notations.xml.readInSteps(xml, { path: 'a.xml', include }));
    expect(inXml).toBeGreaterThan(text.length / 150_000);
  });

  it('is checking in steps, of which each asks for few samples', () => {
    let asked = 0;
    const samples: SampleLookup = {
      state: () => {
        asked++;
        return { kind: 'missing' };
      },
      nearest: () => [],
    };
    let most = 0;
    const steps = checkInSteps({ instrument: read(), notation: notations.sfz, samples });
    for (let isDone = false; !isDone; ) {
      const before = asked;
      isDone = steps.next().done === true;
      most = Math.max(most, asked - before);
    }
    expect(asked).toBeGreaterThanOrEqual(regionCount);
    expect(most).toBeLessThanOrEqual(piecesInStep + 1);
  });

  it('is checking in several steps for each rule that takes long', () => {
    const samples: SampleLookup = { state: () => ({ kind: 'missing' }), nearest: () => [] };
    // Passes over all samples, over those that are not there, and over those that are told with their folder.
    expect(stepsOf('sample-missing', samples)).toBeGreaterThanOrEqual(3 * aPass);
    // Conditions, rectangles, the sweep and the scopes.
    expect(stepsOf('range-overlap', samples)).toBeGreaterThanOrEqual(4 * aPass);
    expect(stepsOf('region-duplicate', samples)).toBeGreaterThanOrEqual(3 * aPass);
  });

  it('is drawing in steps a map that shows what fits and says so', () => {
    const instrument = read();
    expect(countSteps(mapSceneInSteps(instrument))).toBeGreaterThanOrEqual(6 * aPass);
    const scene = finish(mapSceneInSteps(instrument, { most: shownCount }));
    const shown = scene.shapes.reduce((sum, { regions }) => sum + regions.length, 0);
    expect(shown + scene.unplaced.length).toBe(shownCount);
    expect(scene.leftOut).toBe(1000);
    expect(scene.regionCount).toBe(regionCount);
    expect(scene.layers.reduce((sum, layer) => sum + layer.regionCount, 0)).toBe(regionCount);
    expect(summaryText(scene)).toContain('the last 1,000 regions not shown');
  });

  it('is working out in steps in which vocabulary XML of other names is, and reading its lists once', () => {
    const files = Array.from(
      { length: 4000 },
      (_, at) => `<File Id="f${at}" Path="Samples/note ${at}.wav"/>`,
    );
    const zones = Array.from(
      { length: regionCount },
      (_, at) =>
        `<Zone FileRef="f${at % 4000}" LowNote="${at % 119}" HighNote="${(at % 119) + 1}" RootNote="${at % 119}"/>`,
    );
    const xml = `<Instrument><Files>${files.join('\n')}</Files>${zones.join('\n')}</Instrument>`;
    const inference = inferVocabularyInSteps(xml, { path: '/a.xml' });
    let count = 0;
    let step = inference.next();
    for (; !step.done; step = inference.next()) count++;
    // Types of elements, the list of files, the regions.
    expect(count).toBeGreaterThan((3 * xml.length) / 150_000);
    const { vocabulary } = step.value ?? {};
    if (!vocabulary) throw new Error('no vocabulary was found');
    const reading = countSteps(vocabularyNotation(vocabulary).readInSteps(xml, { path: '/a.xml' }));
    expect(reading).toBeGreaterThan((2 * xml.length) / 150_000);
    expect(reading).toBeLessThan(count);
  });

  it('is reading a table in steps, of which each looks few samples up', () => {
    const rows = 50_000;
    const row = (at: number) =>
      [`note ${at}.wav`, at % 119, (at % 119) + 1, at % 100, 100 + (at % 100), 'on'].join('\t');
    const table = `Sample\tLow key\tHigh key\tLoop start\tLoop end\tLoop\n${Array.from({ length: rows }, (_, at) => row(at)).join('\n')}`;
    const opening = openZoneTableInSteps(table);
    let opened = opening.next();
    let openingSteps = 0;
    for (; !opened.done; opened = opening.next()) openingSteps++;
    // What parts the cells, cutting them, how they are arranged, which rows are which.
    expect(openingSteps).toBeGreaterThanOrEqual(6);
    expect(countSteps(opened.value.sampleNamesInSteps())).toBeGreaterThanOrEqual(rows / 10_000);
    let looked = 0;
    let most = 0;
    let steps = 0;
    const reading = opened.value.readInSteps({ resolveSample: (name) => (++looked > 0 ? name : undefined) });
    for (let isDone = false; !isDone; steps++) {
      const before = looked;
      isDone = reading.next().done === true;
      most = Math.max(most, looked - before);
    }
    expect(looked).toBe(rows);
    expect(most).toBeLessThanOrEqual(10_000);
    // Adding zones, their samples and making regions of them takes a step for 10,000 each.
    expect(steps).toBeGreaterThanOrEqual((3 * rows) / 10_000 + 10);
  });

  it('is writing in steps, a whole text or into another', () => {
    const instrument = read();
    for (const notation of [notations.sfz, notations.xml]) {
      expect(countSteps(notation.writeInSteps(instrument))).toBeGreaterThanOrEqual(aPass);
      const document = notation.read(notation.write(readSome(2)).text, { path: 'a.sfz' });
      expect(countSteps(notation.insertInSteps(document, 0, instrument))).toBeGreaterThanOrEqual(aPass);
    }
  });

  it('is converting a table in steps, to its text, to what changes in a document, and to what a preview shows', async () => {
    const rows = Array.from({ length: regionCount }, (_, at) => {
      const [key, velocity] = [at % 119, at % 64];
      return `Samples/note ${at}.wav\t${key}\t${key + 1}\t${velocity}\t${velocity + 10}\t5`;
    });
    const table = `Sample\tLow key\tHigh key\tLow vel\tHigh vel\tTune\n${rows.join('\n')}`;
    const files = new MemoryFiles({});
    const convert = async (target: Partial<TableTarget>, update: boolean) => {
      const place = { text: '', start: 0, end: 0, path: undefined, folder: undefined };
      let steps = 0;
      // What comes before is reading the table, whose steps are counted above.
      const count = (share: number) => {
        if (share > 0.8) steps++;
      };
      const converted = await convertTable(
        files,
        new IncludeStore(files),
        table,
        { ...place, notation: notations.sfz, ...target },
        { middleC: 'auto', update },
        count,
      );
      return { converted, steps };
    };
    // Making regions of zones, and writing them.
    const fresh = await convert({}, false);
    expect(fresh.converted.addedCount).toBe(regionCount);
    expect(fresh.steps).toBeGreaterThanOrEqual(2 * aPass);
    // Finding what the document has of each zone, and what differs.
    const updating = await convert({ text }, true);
    expect(updating.converted.changedCount).toBe(regionCount);
    expect(updating.steps).toBeGreaterThanOrEqual(9 * aPass);
    // Cells are cut in steps of their own.
    const cutting = countSteps(tableCellsInSteps(table));
    expect(countSteps(tableSheet(fresh.converted)) - cutting).toBeGreaterThanOrEqual(2 * aPass);
    const { markup, moreLines } = shownMarkup(writtenMarkup(fresh.converted, ''));
    expect(markup.split('\n').length + moreLines).toBe(regionCount + 1);
    expect(markup.length).toBeLessThan(200_000);
  });

  it('is looking for two values in a cell in steps', () => {
    const rows = Array.from({ length: regionCount }, (_, at) => `note ${at}.wav\ttake ${at}.wav\t60`);
    const stepsOfRows = (count: number) =>
      countSteps(openZoneTableInSteps(`Sample\tOther\tRoot\n${rows.slice(0, count).join('\n')}`));
    // Each column is a pass.
    expect(stepsOfRows(regionCount) - stepsOfRows(10)).toBeGreaterThanOrEqual(3 * (aPass - 1));
  });

  it('is converting XML of other names in steps, to a text in pieces', async () => {
    const zones = Array.from(
      { length: regionCount },
      (_, at) => `<Zone File="Samples/note ${at}.wav" LowNote="${at % 119}" Colour="c${at}"/>`,
    );
    const xml = `<Instrument>${zones.join('\n')}</Instrument>`;
    const { vocabulary } = finish(inferVocabularyInSteps(xml, { path: '/a.xml' })) ?? {};
    if (!vocabulary) throw new Error('no vocabulary was found');
    const instrument = vocabularyNotation(vocabulary).read(xml, { path: '/a.xml' });
    expect(countSteps(unreadValuesInSteps(instrument, vocabulary))).toBeGreaterThan(xml.length / 150_000);
    const output = notationOutput(notations.sfz, new SampleStore(new MemoryFiles({})));
    const source = { name: 'a', instrument, vocabulary, folder: '/' };
    const written = async (inPieces: boolean) => {
      const { files } = await output.write([source], { inPieces }, new MemoryFiles({}));
      return [...files.values()][0];
    };
    const whole = await written(false);
    const content = await written(true);
    if (typeof content !== 'object' || !('chunks' in content)) throw new Error('no pieces were given');
    const pieces: Uint8Array[] = [];
    for await (const piece of content.chunks()) pieces.push(piece);
    expect(Buffer.concat(pieces).toString()).toBe(whole);
  });
});
