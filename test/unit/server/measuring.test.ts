import { mkdir, readdir, writeFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import type { Connection } from 'vscode-languageserver';
import type { Hover, MarkupContent } from 'vscode-languageserver-protocol';
import wavefile from 'wavefile';
import { Measuring } from '../../../server/protocol/measuring';
import type { MeasureOutcome } from '../../../server/workspace/measuring/measureFile';
import { MemoryFiles } from '../workspace/memoryFiles';
import { EditorClient } from './host/editorClient';
import { bundle, folder, home, useServerPlaces } from './host/serverPlaces';

useServerPlaces();

/** Half a second of a sine with a period of 100 frames: 441 Hz at 44,100 frames a second. */
function sine(): Uint8Array {
  const wav = new wavefile.WaveFile();
  const frames = Float64Array.from({ length: 22050 }, (_, at) => 0.5 * Math.sin((2 * Math.PI * at) / 100));
  wav.fromScratch(1, 44100, '32f', frames);
  return wav.toBuffer();
}

// A loop of 80.31 periods jumps where it closes.
const text =
  '<region> sample=Samples/a.wav key=69 loop_mode=loop_continuous loop_start=1000 loop_end=9030\n' +
  '<region> sample=Samples/gone.wav key=70\n';

const codesIn = (findings: readonly string[]) => findings.map((one) => one.split(' ')[0]).sort();

describe('the language server', () => {
  beforeAll(async () => {
    await build({
      absWorkingDir: fileURLToPath(new URL('../../..', import.meta.url)),
      entryPoints: ['server/measureWorker.ts'],
      outfile: `${home}/measureWorker.js`,
      bundle: true,
      platform: 'node',
      target: 'node20',
      format: 'cjs',
      logLevel: 'silent',
    });
  });

  beforeEach(async () => {
    await mkdir(`${folder}/Samples`);
    await writeFile(`${folder}/Samples/a.wav`, sine());
  });

  const start = (more = {}) => EditorClient.start(bundle, { folder, ...more });
  const seamsIn = async (client: EditorClient, uri: string) =>
    codesIn(await client.findings(uri)).filter((code) => code === 'loop-seam').length;

  it('gives findings from facts at once, and those from measures when they arrive', async () => {
    const client = await start();
    const uri = await client.open('a.sfz', text);
    const first = codesIn(await client.findings(uri));
    expect(first).toContain('sample-missing');
    expect(first).not.toContain('loop-seam');
    await client.until(() => client.refreshes > 0);
    expect(codesIn(await client.findings(uri))).toEqual(
      expect.arrayContaining(['loop-seam', 'sample-missing']),
    );
  });

  it('keeps what was measured while a person types', async () => {
    const client = await start();
    const uri = await client.open('a.sfz', text);
    await client.pull(uri);
    await client.until(() => client.refreshes > 0);
    for (let version = 2; version < 5; version++) {
      await client.change(uri, version, {
        range: { start: { line: 2, character: 0 }, end: { line: 2, character: 0 } },
        text: '// more\n',
      });
      expect(await seamsIn(client, uri)).toBe(1);
    }
  });

  it('sends findings anew to a client that does not ask for them', async () => {
    const client = await start({ capabilities: {} });
    const uri = await client.open('a.sfz', text);
    const sent = () => (client.sent.get(uri)?.diagnostics ?? []).map(({ code }) => code);
    await client.until(() => sent().includes('sample-missing'));
    await client.until(() => sent().includes('loop-seam'));
  });

  it('measures nothing where that is switched off, and begins when it is switched on', async () => {
    const client = await start({ configuration: { measureSamples: false } });
    const uri = await client.open('a.sfz', text);
    await client.pull(uri);
    client.configuration = { measureSamples: true };
    await client.connection.sendNotification('workspace/didChangeConfiguration', { settings: null });
    await client.until(() => client.refreshes > 0);
    expect(await seamsIn(client, uri)).toBe(0);
    const before = client.refreshes;
    await client.until(() => client.refreshes > before);
    expect(await seamsIn(client, uri)).toBe(1);
    client.configuration = { measureSamples: false };
    await client.connection.sendNotification('workspace/didChangeConfiguration', { settings: null });
    await client.until(() => client.refreshes > before + 1);
    expect(await seamsIn(client, uri)).toBe(0);
  });

  it('remembers what was measured over a restart', async () => {
    const options = { cacheFolder: `${home}/kept` };
    const first = await start({ options });
    const uri = await first.open('a.sfz', text);
    await first.pull(uri);
    await first.until(() => first.refreshes > 0);
    expect(await first.stop()).toBe(0);
    expect(await readdir(options.cacheFolder)).toHaveLength(1);
    const second = await start({ options });
    expect(await seamsIn(second, await second.open('a.sfz', text))).toBe(1);
  });

  it('measures a sample again when its file changes', async () => {
    const client = await start();
    const uri = await client.open('a.sfz', text);
    await client.pull(uri);
    await client.until(() => client.refreshes > 0);
    expect(await seamsIn(client, uri)).toBe(1);
    // Silence jumps nowhere.
    const silent = new wavefile.WaveFile();
    silent.fromScratch(1, 44100, '16', new Float64Array(22050));
    await writeFile(`${folder}/Samples/a.wav`, silent.toBuffer());
    await client.connection.sendNotification('workspace/didChangeWatchedFiles', {
      changes: [{ uri: client.uri('Samples/a.wav'), type: 2 }],
    });
    const before = client.refreshes;
    await client.until(() => client.refreshes > before);
    expect(await seamsIn(client, uri)).toBe(0);
  });

  it('says in a hover what was measured by then', async () => {
    const client = await start();
    const uri = await client.open('a.sfz', text);
    const hover = async () => {
      const answer = await client.ask<Hover>('textDocument/hover', uri, {
        position: { line: 0, character: 20 },
      });
      return (answer.contents as MarkupContent).value;
    };
    expect(await hover()).toContain('44100 Hz');
    await client.pull(uri);
    await client.until(() => client.refreshes > 0);
    // 44,100 / 100 = 441 Hz; 1200 · log2(441 / 440) = 3.93 cents above A4 (ISO 16); 0.5 of full scale is −6.02 dB.
    expect(await hover()).toMatch(
      /Sounds at 69 \(A4\), \+4 cents \(441\.0 Hz\), loudness -\d+\.\d LUFS, peak -6\.0 dB/,
    );
  });

  it('reports on the samples of an instrument when all are measured, even where findings do not tell', async () => {
    const client = await start({ configuration: { measureSamples: false } });
    const uri = await client.open('a.sfz', text);
    const { html, csv } = await client.connection.sendRequest<{ html: string; csv: string }>(
      'zonewright/sampleReport',
      { uri },
    );
    expect(html).toContain('Samples of a.sfz</h1>');
    // 441 Hz is 3.93 cents above A4 (ISO 16).
    expect(html).toMatch(/69 \(A4\) \+4 cents/);
    expect(html).toContain('the loop 1000 to 9030 jumps where it closes');
    expect(html).toContain('there is no such file');
    expect(csv).toMatch(/^File,Regions,/);
    expect(csv).toContain('69 (A4) +4 cents');
  });

  it('says why there is no report', async () => {
    const client = await start();
    const ask = (uri: string) =>
      client.connection.sendRequest<{ reason: string }>('zonewright/sampleReport', { uri });
    expect((await ask(client.uri('never-opened.sfz'))).reason).toBe('This document holds no instrument.');
    await client.connection.sendNotification('textDocument/didOpen', {
      textDocument: { uri: 'untitled:Untitled-1', languageId: 'sfz', version: 1, text },
    });
    expect((await ask('untitled:Untitled-1')).reason).toMatch(/^Save the document/);
  });
});

describe('what is shown of measuring', () => {
  afterEach(() => {
    vi.useRealTimers();
  });

  function shown() {
    vi.useFakeTimers();
    const steps: string[] = [];
    let cancel = () => {};
    const progress = {
      begin: (title: string) => void steps.push(`begin ${title}`),
      report: (percent: number, message: string) => void steps.push(`${percent}% ${message}`),
      done: () => void steps.push('done'),
      token: {
        onCancellationRequested(listener: () => void) {
          cancel = listener;
        },
      },
    };
    const connection = { window: { createWorkDoneProgress: async () => progress } } as unknown as Connection;
    const answers: ((outcome: MeasureOutcome) => void)[] = [];
    const stopped: string[] = [];
    const files = new MemoryFiles({ '/a': 'a', '/b': 'b', '/c': 'c', '/d': 'd' });
    const measurer = {
      width: 1,
      measure: (path: string, _requests: unknown, signal: AbortSignal) =>
        new Promise<MeasureOutcome>((resolve) => {
          answers.push(resolve);
          signal.addEventListener('abort', () => {
            stopped.push(path);
            resolve({ kind: 'failed', reason: 'stopped' });
          });
        }),
      close: async () => {},
    };
    const told: unknown[][] = [];
    const host = {
      measurer: () => measurer,
      storage: () => ({ read: async () => undefined, write: async () => {} }),
    };
    const measuring = new Measuring(connection, files, host, (owners) => told.push([...owners]));
    const { measurements } = measuring;
    const ask = (owner: string, ...paths: string[]) =>
      measurements.collect(owner, () => paths.map((path) => measurements.pitch(measurements.file(path))));
    const answer = async () => {
      answers.at(-1)?.({ kind: 'measured', results: [null] });
      await vi.advanceTimersByTimeAsync(0);
    };
    return { measuring, steps, told, stopped, ask, answer, cancel: () => cancel() };
  }

  const canShow = { window: { workDoneProgress: true } };

  it('is how far it is, once it takes longer than a moment', async () => {
    const { measuring, steps, ask, answer } = shown();
    measuring.start(canShow);
    ask('one', '/a', '/b', '/c', '/d');
    await vi.advanceTimersByTimeAsync(400);
    expect(steps).toEqual([]);
    await answer();
    await vi.advanceTimersByTimeAsync(400);
    expect(steps).toEqual(['begin Measuring samples', '25% 1 of 4']);
    await answer();
    await answer();
    expect(steps.at(-1)).toBe('50% 2 of 4');
    await answer();
    expect(steps.at(-1)).toBe('done');
    ask('one', '/a');
    await vi.advanceTimersByTimeAsync(2000);
    expect(steps.filter((one) => one === 'done')).toHaveLength(1);
  });

  it('is nothing where it is over soon, or the client cannot show it', async () => {
    const quick = shown();
    quick.measuring.start(canShow);
    quick.ask('one', '/a');
    await vi.advanceTimersByTimeAsync(0);
    await quick.answer();
    await vi.advanceTimersByTimeAsync(5000);
    expect(quick.steps).toEqual([]);
    const plain = shown();
    plain.measuring.start({});
    plain.ask('one', '/a');
    await vi.advanceTimersByTimeAsync(5000);
    expect(plain.steps).toEqual([]);
  });

  it('ends the measuring when the person says so', async () => {
    const { measuring, steps, stopped, ask, cancel } = shown();
    measuring.start(canShow);
    ask('one', '/a', '/b');
    await vi.advanceTimersByTimeAsync(1000);
    cancel();
    await vi.advanceTimersByTimeAsync(0);
    expect(stopped).toEqual(['/a']);
    expect(steps.at(-1)).toBe('done');
    ask('one', '/a', '/b');
    expect(measuring.measurements.isWorking).toBe(false);
  });

  it('comes with news now and then, and at the end', async () => {
    const { measuring, told, ask, answer } = shown();
    measuring.start({});
    ask('one', '/a', '/b', '/c');
    ask('two', '/c', '/d');
    await vi.advanceTimersByTimeAsync(0);
    await answer();
    await answer();
    expect(told).toEqual([]);
    await vi.advanceTimersByTimeAsync(1000);
    expect(told).toEqual([['one', 'two']]);
    await answer();
    await answer();
    expect(told).toEqual([
      ['one', 'two'],
      ['two', 'one'],
    ]);
  });
});
