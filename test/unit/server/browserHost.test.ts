import { existsSync, readFileSync, rmSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type {
  Diagnostic,
  DocumentDiagnosticReport,
  DocumentLink,
  Hover,
  MarkupContent,
} from 'vscode-languageserver-protocol';
import wavefile from 'wavefile';
import { temporaryFolder } from '../../temporaryFolder';
import { block, flac, streamInfo, verbatimFrame } from '../audio/flacFiles';
import { hasBrowser, sharedBrowser } from '../webview/browser';
import { bundleForBrowser } from './host/browserBundles';
import { fullCapabilities } from './host/editorClient';

const folder = 'memory-files://band/instruments';
const uri = `${folder}/a.sfz`;
/** Milliseconds that a result may take that comes behind the answers. */
const patience = 20_000;

/** Half a second of a sine with a period of 100 frames: 441 Hz at 44,100 frames a second. */
const sine = Float64Array.from({ length: 22050 }, (_, at) => 0.5 * Math.sin((2 * Math.PI * at) / 100));

function waveFile(): Uint8Array {
  const wav = new wavefile.WaveFile();
  wav.fromScratch(1, 44100, '32f', sine);
  return wav.toBuffer();
}

/** The same as FLAC (RFC 9639), which a decoder in WebAssembly reads. */
function flacFile(): Uint8Array {
  const values = [...sine].map((value) => Math.round(value * 32768));
  const frames = [0, 1, 2, 3, 4].map((part) =>
    verbatimFrame(part, [values.slice(4410 * part, 4410 * (part + 1))]),
  );
  return flac(block(0, streamInfo(44100, 1, 16, 22050, 0, 4410), true), ...frames);
}

// The first loop of 80.31 periods jumps where it closes; the last frame of the file is 22049.
const text =
  '<region> sample=Samples/a.wav key=69 loop_mode=loop_continuous loop_start=1000 loop_end=9030\n' +
  '<region> sample=Samples/a.wav key=70 loop_mode=loop_continuous loop_start=1000 loop_end=22050\n' +
  '<region> sample=Samples/gone.wav key=71\n' +
  '<region> sample=Samples/b.flac key=72\n';

if (!hasBrowser) {
  console.log('Skipped: there is no Chromium. Install it or name it in ZONEWRIGHT_CHROMIUM.');
}

describe.skipIf(!hasBrowser)('the language server in a web worker', () => {
  let bundles: string;
  let http: Server;
  const asked: string[] = [];
  const troubles: string[] = [];

  beforeAll(async () => {
    bundles = temporaryFolder('browser-host');
    await bundleForBrowser(bundles, {
      server: 'server/browserMain.ts',
      measureWorker: 'server/browserMeasureWorker.ts',
      page: 'test/unit/server/host/browserEditorPage.ts',
    });
    http = createServer(({ url = '/' }, response) => {
      asked.push(url);
      const isScript = /^\/\w+\.js$/.test(url) && existsSync(join(bundles, url));
      response.setHeader('Content-Type', isScript ? 'text/javascript' : 'text/html');
      response.end(
        isScript ? readFileSync(join(bundles, url)) : '<!DOCTYPE html><link rel="icon" href="data:,">',
      );
    });
    await new Promise<void>((resolve) => http.listen(0, '127.0.0.1', resolve));
  });

  afterAll(() => {
    http?.close();
  });

  /** An editor in a page whose server has read the instrument. */
  async function open({ measures }: { measures: boolean }) {
    asked.length = 0;
    const page = await (await sharedBrowser()).newPage();
    page.on('console', (message) => {
      if (message.type() === 'error') troubles.push(message.text());
    });
    page.on('pageerror', (error) => troubles.push(String(error)));
    const origin = `http://127.0.0.1:${(http.address() as AddressInfo).port}`;
    await page.goto(`${origin}/`);
    const given = {
      files: {
        [uri]: Buffer.from(text).toString('base64'),
        [`${folder}/Samples/a.wav`]: Buffer.from(waveFile()).toString('base64'),
        [`${folder}/Samples/b.flac`]: Buffer.from(flacFile()).toString('base64'),
      },
      ...(measures && { measureScript: `${origin}/measureWorker.js` }),
    };
    await page.evaluate(`window.given = ${JSON.stringify(given)}`);
    await page.addScriptTag({ url: '/page.js' });
    const ask = askIn(page);
    await ask('sendRequest', 'initialize', {
      processId: null,
      rootUri: folder,
      workspaceFolders: [{ uri: folder, name: 'test' }],
      capabilities: fullCapabilities,
      initializationOptions: { filesOf: folder },
    });
    await ask('sendNotification', 'initialized', {});
    await ask('sendNotification', 'textDocument/didOpen', {
      textDocument: { uri, languageId: 'sfz', version: 1, text },
    });
    const findings = async () => {
      const report = (await ask('sendRequest', 'textDocument/diagnostic', {
        textDocument: { uri },
      })) as DocumentDiagnosticReport;
      return report.kind === 'full' ? report.items.map(placeOf) : [];
    };
    const hover = async (line: number) => {
      const answer = (await ask('sendRequest', 'textDocument/hover', {
        textDocument: { uri },
        position: { line, character: 20 },
      })) as Hover;
      return (answer.contents as MarkupContent).value;
    };
    return { page, ask, findings, hover };
  }

  it('gives findings from the facts of samples that the editor has in files of its own', async () => {
    const { page, findings } = await open({ measures: true });
    // Key words and meaning: the SFZ format's `sample` and `loop_end`, which counts frames from 0 and is played itself.
    expect(await findings()).toEqual(
      expect.arrayContaining(['loop-past-end, line 1', 'sample-missing, line 2']),
    );
    expect(await findings()).not.toContain('loop-past-end, line 0');
    await page.close();
  });

  it('names files as the editor does', async () => {
    const { page, ask } = await open({ measures: true });
    const links = (await ask('sendRequest', 'textDocument/documentLink', {
      textDocument: { uri },
    })) as DocumentLink[];
    const resolved = (await ask('sendRequest', 'documentLink/resolve', links[0])) as DocumentLink;
    expect(resolved.target).toBe(`${folder}/Samples/a.wav`);
    await page.close();
  });

  it.each([
    { where: 'workers of its own', measures: true, loads: 1 },
    { where: 'its own thread where the editor has no script for workers', measures: false, loads: 0 },
  ])('measures in $where', async ({ measures, loads }) => {
    const { page, findings, hover } = await open({ measures });
    expect(await findings()).not.toContain('loop-seam, line 0');
    await expect.poll(findings, { timeout: patience }).toContain('loop-seam, line 0');
    // 44,100 / 100 = 441 Hz; 1200 · log2(441 / 440) = 3.93 cents above A4 (ISO 16); 0.5 of full scale is −6.02 dB.
    for (const line of [0, 3]) {
      await expect
        .poll(() => hover(line), { timeout: patience })
        .toMatch(/Sounds at 69 \(A4\), \+4 cents \(441\.0 Hz\), loudness -\d+\.\d LUFS, peak -6\.0 dB/);
    }
    expect(Math.min(1, asked.filter((url) => url === '/measureWorker.js').length)).toBe(loads);
    await page.close();
  });

  it('measures in its own thread where a worker cannot load its script', async () => {
    const { page, findings } = await open({ measures: true });
    rmSync(join(bundles, 'measureWorker.js'));
    await findings();
    await expect.poll(findings, { timeout: patience }).toContain('loop-seam, line 0');
    expect(asked).toContain('/measureWorker.js');
    await page.close();
  });

  it('ran without an error', () => {
    expect(troubles).toEqual([]);
  });
});

function askIn(page: Page) {
  return (call: 'sendRequest' | 'sendNotification', method: string, params: unknown): Promise<unknown> =>
    page.evaluate(`window.editor.connection.${call}(${JSON.stringify(method)}, ${JSON.stringify(params)})`);
}

function placeOf({ code, range: { start } }: Diagnostic): string {
  return `${code}, line ${start.line}`;
}
