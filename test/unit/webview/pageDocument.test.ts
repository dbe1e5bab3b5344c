import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { pageDocument } from '../../../client/webview/pageDocument';
import { hasBrowser } from './browser';
import { PageBrowser } from './pageBrowser';

const parts = {
  title: 'A page',
  id: 'a-page',
  scriptUri: '/a.js',
  styleUri: '/a.css',
  cspSource: 'https://page.test',
  nonce: 'n0nce',
  language: 'en',
};

describe('the document of a page', () => {
  it('holds translations that cannot end the element they are in', () => {
    const strings = { One: '</script><script>alert(1)</script>' };
    const [, data = ''] = /id="page-strings">(.*?)<\/script>/.exec(pageDocument({ ...parts, strings })) ?? [];
    expect(JSON.parse(data)).toEqual(strings);
  });
});

describe.skipIf(!hasBrowser)('the policy of a page in a browser', () => {
  const pages = new PageBrowser('keyboardMap', 'keyboard-map');

  /** What a page can do that plays sound: a worklet that compiles and a worker, of its own text, a file of its own place. */
  const trySound = (page: Page) =>
    page.evaluate(`(async () => {
      const address = (text) => URL.createObjectURL(new Blob([text], { type: 'text/javascript' }));
      const worked = async (what) => { try { await what(); return true; } catch { return false; } };
      return {
        worklet: await worked(() => new OfflineAudioContext(1, 128, 44100).audioWorklet.addModule(address(''))),
        compiled: await worked(async () => {
          const context = new OfflineAudioContext(1, 128, 44100);
          // The smallest module that there is (WebAssembly Core Specification 2.0, section 5.5.16); a node needs what it was asked for.
          await context.audioWorklet.addModule(address(
            "new WebAssembly.Module(Uint8Array.of(0, 97, 115, 109, 1, 0, 0, 0)); registerProcessor('compiled', class extends AudioWorkletProcessor {})"));
          new AudioWorkletNode(context, 'compiled');
        }),
        worker: await worked(() => new Promise((done, failed) => {
          const worker = new Worker(address('postMessage(1)'));
          worker.onmessage = done;
          worker.onerror = failed;
        })),
        file: await worked(() => fetch('/theme.css')),
        elsewhere: await worked(() => fetch('https://elsewhere.test/')),
        text: await worked(() => new Function('return 1')()),
      };
    })()`);

  // AudioWorklet is for secure contexts alone (Web Audio API, section 1.32), which the place of the tests is made to be.
  it('lets the page that plays sound have worklet, worker and files of its own, and nothing else', async () => {
    const page = await pages.open({ playsSound: true });
    expect(await trySound(page)).toEqual({
      worklet: true,
      compiled: true,
      worker: true,
      file: true,
      elsewhere: false,
      text: false,
    });
  });

  it('lets other pages make no elements of text', async () => {
    const page = await pages.open();
    expect(
      await page.evaluate(
        `(() => { try { document.querySelector('main').innerHTML = '<b>x</b>'; return 'made'; } catch (error) { return error.name; } })()`,
      ),
    ).toBe('TypeError');
  });

  it('lets other pages have none of them', async () => {
    const page = await pages.open();
    expect(await trySound(page)).toEqual({
      worklet: false,
      compiled: false,
      worker: false,
      file: false,
      elsewhere: false,
      text: false,
    });
  });

  it('says texts in the language that the host gives', async () => {
    const page = await pages.open({
      strings: { 'Waiting for a document.': '<b>Warte</b> auf ein Dokument.' },
    });
    expect(await page.getByText('<b>Warte</b> auf ein Dokument.').isVisible()).toBe(true);
  });
});
