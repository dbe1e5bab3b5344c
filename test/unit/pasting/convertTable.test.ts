import { describe, expect, it } from 'vitest';
import type { TextEdit } from '../../../server/model/finding';
import { convertTable } from '../../../server/pasting/convertTable';
import { IncludeStore } from '../../../server/workspace/files/includeStore';
import { notations } from '../../../server/workspace/notations/notationOf';
import { waveBytes } from '../server/host/waveBytes';
import { MemoryFiles } from '../workspace/memoryFiles';

const table = 'Sample;Low;High;Root\nlow.wav;36;47;40\nhigh.wav;48;59;52\n';
const files = new MemoryFiles({
  '/music/Samples/low.wav': waveBytes(10),
  '/music/Samples/high.wav': waveBytes(10),
});

function apply(text: string, edits: readonly TextEdit[]): string {
  let result = text;
  for (const { start, end, newText } of [...edits].sort((a, b) => b.start - a.start))
    result = result.slice(0, start) + newText + result.slice(end);
  return result;
}

/** Converts the table into a text, over what stands between two `|`, or at one. */
async function convert(marked: string, format: 'sfz' | 'xml' = 'sfz', path: string | null = '/music/a.sfz') {
  const [before = '', second = '', third] = marked.split('|');
  const text = before + second + (third ?? '');
  const end = third === undefined ? before.length : before.length + second.length;
  const target = {
    text,
    start: before.length,
    end,
    notation: notations[format],
    path: path ?? undefined,
    folder: path === null ? undefined : '/music',
  };
  const converted = await convertTable(files, new IncludeStore(files), table, target, { middleC: 'auto' });
  const { insertText, edits } = converted;
  return {
    ...converted,
    byEdits: apply(text, edits),
    byInsert: insertText === undefined ? undefined : before + insertText + text.slice(end),
  };
}

function samplesIn(text: string, format: 'sfz' | 'xml'): (string | undefined)[] {
  const instrument = notations[format].read(text, { path: '/music/a' });
  return [...instrument.regions].map((region) => instrument.samplePath(region));
}

describe('a table into a document', () => {
  it('is written at the cursor, its samples led to the files that are there', async () => {
    const { byEdits, byInsert, regionCount } = await convert('<group> volume=-3\n|\n<region> sample=*sine\n');
    expect(regionCount).toBe(2);
    expect(byInsert).toBe(byEdits);
    expect(samplesIn(byEdits, 'sfz')).toEqual(['Samples/low.wav', 'Samples/high.wav', '*sine']);
  });

  it('takes the place of a selection', async () => {
    const { byEdits, byInsert } = await convert(
      '<region> sample=*saw\n|<region> sample=*sine\n|<region> sample=*tri\n',
    );
    expect(byInsert).toBe(byEdits);
    expect(samplesIn(byEdits, 'sfz')).toEqual(['*saw', 'Samples/low.wav', 'Samples/high.wav', '*tri']);
  });

  it('is written where XML can take it, whatever the cursor is on', async () => {
    for (const marked of [
      '<instrument>\n  |\n</instrument>\n',
      '<instrument>|</instrument>',
      '<instrument>\n  <region sample="*si|ne"/>\n</instrument>\n',
      '<instrument>\n  <region sample="*saw"/>\n  |<region sample="*sine"/>|\n</instrument>\n',
      '|',
    ]) {
      const { byEdits, byInsert } = await convert(marked, 'xml');
      const found = samplesIn(byEdits, 'xml').filter((one) => !one?.startsWith('*'));
      expect(found, marked).toEqual(['Samples/low.wav', 'Samples/high.wav']);
      expect(notations.xml.read(byEdits, { path: 'a' }).findings, byEdits).toEqual([]);
      if (byInsert !== undefined) expect(samplesIn(byInsert, 'xml')).toEqual(samplesIn(byEdits, 'xml'));
    }
  });

  it('keeps the names of the table where the document is no file', async () => {
    const { byEdits } = await convert('|', 'sfz', null);
    expect(samplesIn(byEdits, 'sfz')).toEqual(['low.wav', 'high.wav']);
  });
});
