import { readFile } from 'node:fs/promises';
import { createServer } from 'node:http';
import { extname, join, normalize } from 'node:path';

const contentTypes = {
  '.css': 'text/css',
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.wasm': 'application/wasm',
};
const pageFile = 'out/vs/code/browser/workbench/workbench.html';
const scriptFile = 'out/vs/code/browser/workbench/workbench.js';
const webViewFolder = 'out/vs/workbench/contrib/webview/browser/pre/';
/** Where this build of the workbench takes it that there is a server behind it, and what has it run without one. */
const serverBehind = 'remoteAuthority:location.host}';
const nothingBehind = 'remoteAuthority:undefined}';

/**
 * Serves the editor's workbench on the loopback address with nothing behind it, so that extensions run in the browser.
 * `memoryFolder` is the folder of an extension that has the files, and beside them the tests in `suite.js`; `folder` is
 * the URI, in parts, of the folder that is opened. Gives `{ url, close }`.
 */
export async function serveWebWorkbench({ editorFolder, extensionFolder, memoryFolder, folder }) {
  const roots = { editor: editorFolder, extension: extensionFolder, memory: memoryFolder };
  const server = createServer(async ({ url = '/', headers }, response) => {
    const path = decodeURIComponent(new URL(url, 'http://127.0.0.1').pathname);
    const content = path === '/' ? await page(editorFolder, headers.host, folder) : await fileAt(roots, path);
    if (content === undefined) {
      response.writeHead(404).end();
      return;
    }
    const type = path === '/' ? 'text/html' : (contentTypes[extname(path)] ?? 'application/octet-stream');
    response.writeHead(200, { 'content-type': type, 'access-control-allow-origin': '*' }).end(content);
  });
  await new Promise((resolve) => server.listen(0, '127.0.0.1', resolve));
  const close = () => {
    server.close();
    server.closeAllConnections();
  };
  return { url: `http://127.0.0.1:${server.address().port}/`, close };
}

async function fileAt(roots, path) {
  const [, root, ...names] = path.split('/');
  if (!Object.hasOwn(roots, root)) return undefined;
  const name = normalize(names.join('/'));
  if (name.startsWith('..')) return undefined;
  const content = await readFile(join(roots[root], name)).catch(() => undefined);
  return root === 'editor' && name === scriptFile ? withoutServer(String(content)) : content;
}

function withoutServer(script) {
  if (!script.includes(serverBehind)) {
    throw new Error('This build of the editor starts in another way than the one that the tests know.');
  }
  return script.replace(serverBehind, nothingBehind);
}

async function page(editorFolder, authority, folder) {
  const at = (path) => ({ scheme: 'http', authority, path });
  const webViews = `http://${authority}/editor/${webViewFolder}`;
  const configuration = {
    folderUri: folder,
    additionalBuiltinExtensions: [at('/memory')],
    developmentOptions: { extensions: [at('/extension')], extensionTestsPath: at('/memory/suite') },
    enableWorkspaceTrust: false,
    webviewEndpoint: webViews,
    // The build asks for these of the server that it has behind it.
    userDataPath: '/user',
    isEnabledFileDownloads: true,
    isEnabledFileUploads: true,
    isEnabledCoderGettingStarted: false,
    productConfiguration: {
      nameShort: 'Editor',
      nameLong: 'Editor',
      version: JSON.parse(await readFile(join(editorFolder, 'package.json'), 'utf8')).version,
      quality: 'stable',
      enableTelemetry: false,
      webviewContentExternalBaseUrlTemplate: webViews,
    },
  };
  const values = {
    WORKBENCH_WEB_CONFIGURATION: JSON.stringify(configuration)
      .replaceAll('&', '&amp;')
      .replaceAll('"', '&quot;'),
    WORKBENCH_WEB_BASE_URL: '/editor',
    WORKBENCH_NLS_FALLBACK_URL: '/editor/out/nls.messages.js',
    WORKBENCH_NLS_URL: '/editor/out/nls.messages.js',
  };
  const html = await readFile(join(editorFolder, pageFile), 'utf8');
  return html.replace(/\{\{(\w+)\}\}/g, (_, name) => values[name] ?? '');
}
