import { describe, expect, it, vi } from 'vitest';
import { InstrumentDocuments } from '../../../server/workspace/documents';
import type { OpenDocument } from '../../../server/workspace/openDocument';
import { MemoryFiles } from '../workspace/memoryFiles';
import { waveBytes } from './host/waveBytes';

/** A document whose text a test can change. */
class Edited implements OpenDocument {
  readonly uri: string;
  readonly path: string;
  readonly languageId = 'sfz';
  version = 1;
  text: string;

  constructor(path: string, text: string) {
    this.uri = `file://${path}`;
    this.path = path;
    this.text = text;
  }

  getText(): string {
    return this.text;
  }
}

function setUp(contents: Record<string, string | Uint8Array> = {}) {
  const files = new MemoryFiles(contents);
  const dropped: string[][] = [];
  const documents = new InstrumentDocuments(
    files,
    async () => ({}),
    (uris) => dropped.push([...uris]),
  );
  documents.setFolders(['/music']);
  const codes = async ({ uri }: Edited) => {
    const judgement = await documents.judgement(uri);
    return judgement?.findings.filter(({ source }) => source === judgement.source).map(({ code }) => code);
  };
  const edit = (document: Edited, text: string) => {
    document.text = text;
    document.version++;
    documents.changed(document);
  };
  const open = (path: string, text: string) => {
    const document = new Edited(path, text);
    documents.changed(document);
    return document;
  };
  return { files, documents, dropped, codes, edit, open };
}

describe('open documents', () => {
  it('let a small one be judged between the slices of a large one', async () => {
    const { documents, open } = setUp();
    const many = Array.from(
      { length: 8000 },
      (_, at) => `<region> sample=*sine key=${at % 128} lovel=${at % 90} hivel=${at % 90} odd${at}=1\n`,
    );
    const large = open('/music/large.sfz', many.join(''));
    const small = open('/music/small.sfz', '<region> sample=*sine lokey=x');
    await documents.reading(large.uri);
    const slices = vi.spyOn(globalThis, 'setTimeout');
    const order: string[] = [];
    const judging = documents.judgement(large.uri).then(() => order.push('large'));
    const judgement = await documents.judgement(small.uri);
    order.push('small');
    const slicesBefore = slices.mock.calls.length;
    await judging;
    expect(order).toEqual(['small', 'large']);
    expect(slices.mock.calls.length).toBeGreaterThan(slicesBefore);
    slices.mockRestore();
    expect(judgement?.findings.map(({ code }) => code)).toEqual(['opcode-value']);
  });

  it('are read and judged once for a version, however many ask', async () => {
    const { documents, open, edit } = setUp();
    const document = open('/music/a.sfz', '<region> sample=*sine');
    const [first, second] = await Promise.all([
      documents.reading(document.uri),
      documents.reading(document.uri),
    ]);
    expect(first).toBe(second);
    const judgement = await documents.judgement(document.uri);
    expect(judgement?.instrument).toBe(first?.instrument);
    expect(await documents.judgement(document.uri)).toBe(judgement);
    edit(document, '<regoin>');
    expect((await documents.judgement(document.uri))?.serial).not.toBe(judgement?.serial);
    expect((await documents.reading(document.uri))?.version).toBe(2);
  });

  it('answer for the latest text where it changed while they were judged', async () => {
    const { files, documents, open, edit } = setUp({ '/music/a.wav': waveBytes(5) });
    const document = open('/music/a.sfz', '<region> sample=a.wav lokey=9 hikey=1');
    let edited = false;
    files.beforeAnswer = async () => {
      if (edited) return;
      edited = true;
      edit(document, '<region> sample=a.wav');
    };
    expect((await documents.judgement(document.uri))?.findings).toEqual([]);
    expect(edited).toBe(true);
  });

  it('are judged anew when a sample comes or goes, without being read anew', async () => {
    const { files, documents, codes, open, dropped } = setUp();
    const document = open('/music/a.sfz', '<region> sample=x/a.wav');
    expect(await codes(document)).toEqual(['sample-missing']);
    const reading = await documents.reading(document.uri);
    files.put('/music/x/a.wav', waveBytes(5));
    expect(await codes(document)).toEqual(['sample-missing']);
    documents.filesChanged(['/music/x/a.wav']);
    expect(dropped).toEqual([[document.uri]]);
    expect(await codes(document)).toEqual([]);
    expect(await documents.reading(document.uri)).toBe(reading);
  });

  it('are read anew when what they include changes, open or on the disk', async () => {
    const { files, documents, codes, open, edit } = setUp({ '/music/b.sfz': '#define $X 60' });
    const document = open('/music/a.sfz', '#include "b.sfz"\n<region> sample=*sine key=$X');
    expect(await codes(document)).toEqual([]);
    files.put('/music/b.sfz', '');
    documents.filesChanged(['/music/b.sfz']);
    expect(await codes(document)).toEqual(['define-unknown']);
    const included = open('/music/b.sfz', '#define $X 61');
    expect(await codes(document)).toEqual([]);
    edit(included, '#define $Y 61');
    expect(await codes(document)).toEqual(['define-unknown']);
    documents.closed(included.uri);
    files.put('/music/b.sfz', '#define $X 62');
    documents.filesChanged(['/music/b.sfz']);
    expect(await codes(document)).toEqual([]);
  });

  it('are forgotten when they close', async () => {
    const { documents, open } = setUp();
    const document = open('/music/a.sfz', '');
    documents.closed(document.uri);
    expect(await documents.judgement(document.uri)).toBeUndefined();
    expect(documents.openDocument('/music/a.sfz')).toBeUndefined();
  });
});

describe('a file that others include', () => {
  const part = '<region> sample=$S.wav';
  const main = '#define $S a\n#include "parts/b.sfz"';

  it('is judged in the context of an instrument found in the folder', async () => {
    const { codes, open } = setUp({
      '/music/a.wav': waveBytes(5),
      '/music/main.sfz': main,
      '/music/parts/b.sfz': part,
    });
    expect(await codes(open('/music/parts/b.sfz', part))).toEqual([]);
  });

  it('is judged by itself where nothing includes it', async () => {
    const { codes, open } = setUp({ '/music/parts/b.sfz': part });
    expect(await codes(open('/music/parts/b.sfz', part))).toEqual(['define-unknown']);
  });

  it('follows what an open instrument includes at the time', async () => {
    const { documents, codes, open, edit } = setUp({
      '/music/a.wav': waveBytes(5),
      '/music/parts/b.sfz': part,
    });
    const whole = open('/music/main.sfz', main);
    const included = open('/music/parts/b.sfz', part);
    await documents.judgement(whole.uri);
    expect(await codes(included)).toEqual([]);
    edit(whole, '#define $S missing\n#include "parts/b.sfz"');
    expect(await codes(included)).toEqual(['sample-missing']);
    edit(whole, '// nothing');
    await documents.judgement(whole.uri);
    expect(await codes(included)).toEqual(['define-unknown']);
  });

  it('is judged by itself where it includes its includer', async () => {
    const { codes, open } = setUp({ '/music/a.sfz': '#include "b.sfz"', '/music/b.sfz': '#include "a.sfz"' });
    expect(await codes(open('/music/b.sfz', '#include "a.sfz"\n<regoin>'))).toContain('header-unknown');
  });

  it('is found through instrument XML too', async () => {
    const { codes, open } = setUp({
      '/music/a.wav': waveBytes(5),
      '/music/main.instrument.xml':
        '<instrument><define name="$S" value="a"/><include path="parts/b.sfz"/></instrument>',
      '/music/parts/b.sfz': part,
    });
    expect(await codes(open('/music/parts/b.sfz', part))).toEqual([]);
  });
});
