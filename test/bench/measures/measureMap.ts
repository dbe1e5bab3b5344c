import { buildMapScene } from '../../../server/map/scene';
import { readSfz } from '../../../server/sfz/read';
import { hasBrowser, sharedBrowser } from '../../unit/webview/browser';
import { PageBrowser } from '../../unit/webview/pageBrowser';
import { quantile } from '../compare';
import type { AddRow } from '../table';
import { quantilesRow, ratioRow } from '../table';

const rounds = 7;
const steps = 40;
/** As many shapes as are seen of the map. */
const plainBoxes = 1000;

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
    // Each frame is followed by one in which a canvas of the same size gets as many plain boxes, so that what slows the
    // machine down slows both.
    const frames = (step: string): Promise<[map: number, plain: number][]> =>
      page.evaluate(`(async () => {
        const scroller = document.querySelector('.scroller');
        const zoom = (deltaY) => scroller.dispatchEvent(new WheelEvent('wheel', { ctrlKey: true, deltaY, clientX: 600, bubbles: true, cancelable: true }));
        const canvas = document.body.appendChild(document.createElement('canvas'));
        [canvas.width, canvas.height] = [1200, 500];
        const context = canvas.getContext('2d');
        const timed = async (work) => {
          const start = performance.now();
          work();
          await frame();
          return performance.now() - start;
        };
        const plain = () => {
          context.clearRect(0, 0, 1200, 500);
          for (let box = 0; box < ${plainBoxes}; box++) {
            context.fillStyle = box % 2 === 0 ? '#225' : '#252';
            context.fillRect((box % 100) * 12, Math.floor(box / 100) * 50, 11, 48);
            context.strokeRect((box % 100) * 12, Math.floor(box / 100) * 50, 11, 48);
          }
        };
        const times = [];
        await frame();
        for (let step = 0; step < ${steps}; step++)
          times.push([await timed(() => { ${step}; }), await timed(plain)]);
        canvas.remove();
        return times;
      })()`);
    addFrames(add, 'zoomed', await frames(`zoom(step < ${steps / 2} ? -1 : 1)`));
    await frames('zoom(-1)');
    addFrames(add, 'moved', await frames('scroller.scrollLeft += 20'));
  } finally {
    await (await sharedBrowser()).close();
  }
}

/** Rows for frames of a map, and for how many times as long they take as frames of plain boxes. */
function addFrames(add: AddRow, done: string, pairs: readonly [map: number, plain: number][]): void {
  const [map, plain] = [pairs.map(([first]) => first), pairs.map(([, second]) => second)];
  add(quantilesRow(`A frame of it while it is ${done}`, map, '≤ 18 ms'));
  const ratio = quantile(pairs.map(([first, second]) => first / second));
  const medians = { ratio, firstMs: quantile(map), secondMs: quantile(plain) };
  add(ratioRow(`The same, to a frame of ${plainBoxes} plain boxes`, medians, '≤ 1.5'));
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
