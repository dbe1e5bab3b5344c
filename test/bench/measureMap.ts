import { buildMapScene } from '../../server/map/scene';
import { readSfz } from '../../server/sfz/read';
import { hasBrowser, sharedBrowser } from '../unit/webview/browser';
import { PageBrowser } from '../unit/webview/pageBrowser';
import type { AddRow } from './table';
import { quantilesRow } from './table';

const rounds = 7;
const steps = 40;

/** The keyboard map of 10,000 shapes in Chromium: its first picture, and its frames while it is zoomed and moved. */
export async function measureMap(add: AddRow): Promise<void> {
  const what = 'Keyboard map of 10,000 regions in Chromium';
  if (!hasBrowser) {
    add({ what, result: 'not measured', aim: '', remark: 'there is no Chromium' });
    return;
  }
  const instrument = readSfz(denseInstrument(), { path: '/a.sfz' });
  const pages = new PageBrowser('keyboardMap', 'keyboard-map');
  try {
    const page = await pages.open({ theme: 'dark', width: 1200, height: 800 });
    const message = { type: 'scene', scene: buildMapScene(instrument), document: 'a.sfz' };
    await page.evaluate(
      `window.scene = ${JSON.stringify(message)}; window.frame = () => new Promise(requestAnimationFrame)`,
    );
    const first: number[] = [];
    for (let round = 0; round < rounds; round++) {
      first.push(
        await page.evaluate(`(async () => {
          const data = structuredClone(window.scene);
          const start = performance.now();
          window.dispatchEvent(new MessageEvent('message', { data }));
          await frame();
          await frame();
          return performance.now() - start;
        })()`),
      );
      // The options for screen readers are made in between.
      await page.waitForTimeout(1500);
    }
    add(quantilesRow(`${what}, to its first picture`, first, '≤ 100 ms'));
    const frames = (step: string): Promise<number[]> =>
      page.evaluate(`(async () => {
        const scroller = document.querySelector('.scroller');
        const zoom = (deltaY) => scroller.dispatchEvent(new WheelEvent('wheel', { ctrlKey: true, deltaY, clientX: 600, bubbles: true, cancelable: true }));
        const times = [];
        await frame();
        for (let step = 0; step < ${steps}; step++) {
          const start = performance.now();
          ${step};
          await frame();
          times.push(performance.now() - start);
        }
        return times;
      })()`);
    add(
      quantilesRow(
        'A frame of it while it is zoomed',
        await frames(`zoom(step < ${steps / 2} ? -1 : 1)`),
        '≤ 18 ms',
      ),
    );
    await frames('zoom(-1)');
    add(
      quantilesRow('A frame of it while it is moved', await frames('scroller.scrollLeft += 20'), '≤ 18 ms'),
    );
  } finally {
    await (await sharedBrowser()).close();
  }
}

/** Ten articulations one over the other, each of a hundred keys with ten velocity layers. */
function denseInstrument(): string {
  let text = '';
  for (let articulation = 0; articulation < 10; articulation++) {
    text += `<group> group_label=articulation ${articulation + 1} sw_lokey=0 sw_hikey=9 sw_last=${articulation}\n`;
    for (let key = 20; key < 120; key++) {
      for (let layer = 0; layer < 10; layer++)
        text += `<region> sample=a${articulation}_${key}_${layer}.wav key=${key} lovel=${layer * 12 + 1} hivel=${layer * 12 + 12}\n`;
    }
  }
  return text;
}
