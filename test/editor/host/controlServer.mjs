import { mkdir } from 'node:fs/promises';
import { createServer } from 'node:http';
import { join } from 'node:path';
import { frameFor } from './webViews.mjs';

const defaultSeconds = 15;

/**
 * Starts a server on the loopback address through which the tests, inside the extension host, reach the browser that
 * shows the workbench: `POST /<request>` with a JSON object, answered with `{ value }` or, status 400,
 * `{ error }`. The requests and their fields are those of `Requests` in `suite/workbench.ts`.
 */
export async function startControlServer({ page, problems, screenshotFolder }) {
  await mkdir(screenshotFolder, { recursive: true });
  const requests = requestTable({ page, problems, screenshotFolder });
  const server = createServer(async (request, response) => {
    const reply = (status, body) => {
      response.writeHead(status, { 'content-type': 'application/json' });
      response.end(JSON.stringify(body));
    };
    try {
      const name = (request.url ?? '').slice(1);
      if (request.method !== 'POST' || !Object.hasOwn(requests, name)) {
        throw new Error(`No such request: ${request.method} ${request.url}`);
      }
      const value = await requests[name](await readJson(request));
      reply(200, { value: value ?? null });
    } catch (error) {
      reply(400, { error: String(error?.message ?? error) });
    }
  });
  await new Promise((resolve) => server.listen(0, '127.0.0.1', resolve));
  const close = () => {
    server.close();
    server.closeAllConnections();
  };
  return { url: `http://127.0.0.1:${server.address().port}`, close };
}

function requestTable({ page, problems, screenshotFolder }) {
  const locate = async ({ selector, view, timeoutSeconds = defaultSeconds }) => {
    const frame = await frameFor(page, view, timeoutSeconds);
    const locator = frame.locator(selector).first();
    const timeout = timeoutSeconds * 1000;
    return { locator, timeout };
  };
  /** Page coordinates of a point given from the top left corner of an element. */
  const pagePoint = async (target, point) => {
    const { locator, timeout } = await locate(target);
    await locator.scrollIntoViewIfNeeded({ timeout });
    const box = await locator.boundingBox({ timeout });
    if (box === null) throw new Error(`“${target.selector}” is not visible.`);
    return { x: box.x + (point?.x ?? box.width / 2), y: box.y + (point?.y ?? box.height / 2) };
  };

  return {
    async screenshot({ name, ...target }) {
      const path = join(screenshotFolder, `${name.replace(/[^\w.-]+/g, '-')}.png`);
      if (target.selector === undefined) await page.screenshot({ path });
      else await (await locate(target)).locator.screenshot({ path });
      return path;
    },
    async paste() {
      // Headless Chromium does not turn the keys into a paste by itself; the command that goes with them does.
      const session = await page.context().newCDPSession(page);
      const key = { key: 'v', code: 'KeyV', windowsVirtualKeyCode: 86, modifiers: 2 };
      await session.send('Input.dispatchKeyEvent', { type: 'keyDown', ...key, commands: ['paste'] });
      await session.send('Input.dispatchKeyEvent', { type: 'keyUp', ...key });
      await session.detach();
    },
    async resize({ width, height }) {
      await page.setViewportSize({ width, height });
    },
    async press({ keys }) {
      for (const chord of keys) await page.keyboard.press(chord);
    },
    async type({ text, delay }) {
      await page.keyboard.type(text, { delay });
    },
    async click({ position, button, modifiers, count, ...target }) {
      const { locator, timeout } = await locate(target);
      await locator.click({ timeout, position, button, modifiers, clickCount: count });
    },
    async move({ position, ...target }) {
      const to = await pagePoint(target, position);
      await page.mouse.move(to.x, to.y, { steps: 4 });
    },
    async drag({ from, to, modifiers = [], ...target }) {
      const start = await pagePoint(target, from);
      const end = { x: start.x + to.x - from.x, y: start.y + to.y - from.y };
      await page.mouse.move(start.x, start.y);
      for (const key of modifiers) await page.keyboard.down(key);
      await page.mouse.down();
      await page.mouse.move(end.x, end.y, { steps: 8 });
      await page.mouse.up();
      for (const key of modifiers) await page.keyboard.up(key);
    },
    async wheel({ position, deltaX = 0, deltaY = 0, modifiers = [], ...target }) {
      const at = await pagePoint(target, position);
      await page.mouse.move(at.x, at.y);
      for (const key of modifiers) await page.keyboard.down(key);
      await page.mouse.wheel(deltaX, deltaY);
      for (const key of modifiers) await page.keyboard.up(key);
    },
    async waitFor({ state = 'visible', ...target }) {
      const { locator, timeout } = await locate(target);
      await locator.waitFor({ state, timeout });
    },
    async text(target) {
      const { locator, timeout } = await locate(target);
      // biome-ignore lint/performance/useDomNodeTextContent: what a person sees counts, not what the page holds hidden.
      return locator.innerText({ timeout });
    },
    async count({ selector, view, timeoutSeconds = defaultSeconds }) {
      return (await frameFor(page, view, timeoutSeconds)).locator(selector).count();
    },
    async evaluate({ expression, view, timeoutSeconds = defaultSeconds }) {
      return (await frameFor(page, view, timeoutSeconds)).evaluate(expression);
    },
    async problems() {
      return problems;
    },
  };
}

async function readJson(request) {
  const chunks = [];
  for await (const chunk of request) chunks.push(chunk);
  const text = Buffer.concat(chunks).toString('utf8');
  return text === '' ? {} : JSON.parse(text);
}
