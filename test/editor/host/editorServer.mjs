import { createWriteStream } from 'node:fs';
import { mkdir, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { startGroup, stopGroup } from './processes.mjs';

/** Settings of the person who runs the tests: nothing pops up, nothing asks, nothing moves. */
const userSettings = {
  'security.workspace.trust.enabled': false,
  'workbench.startupEditor': 'none',
  'workbench.tips.enabled': false,
  'workbench.reduceMotion': 'on',
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'workbench.colorTheme': 'Default Dark Modern',
  'window.autoDetectColorScheme': false,
  'window.autoDetectHighContrast': false,
  'telemetry.telemetryLevel': 'off',
  'extensions.autoUpdate': false,
  'extensions.autoCheckUpdates': false,
  'extensions.ignoreRecommendations': true,
  'update.mode': 'none',
  'files.simpleDialog.enable': true,
  'files.hotExit': 'off',
  // An editor in the browser saves a second after each change where nothing else is said.
  'files.autoSave': 'off',
  'git.enabled': false,
  'chat.commandCenter.enabled': false,
  'editor.cursorBlinking': 'solid',
};

/** Writes `userSettings` where an editor started with this user-data folder reads them. */
export async function writeUserSettings(userDataFolder) {
  await mkdir(join(userDataFolder, 'User'), { recursive: true });
  await writeFile(join(userDataFolder, 'User/settings.json'), JSON.stringify(userSettings, null, 2));
}

/** A TCP port of the loopback address that was free a moment ago. */
function freePort() {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address();
      probe.close(() => resolve(port));
    });
  });
}

/**
 * Starts the editor server on a free port of the loopback address and waits until it answers.
 * Gives `{ port, exited, stop }`: `exited` is a promise that settles when the server ends by itself.
 */
export async function startEditorServer({ serverFolder, dataFolder, logFile, environment }) {
  const userDataFolder = join(dataFolder, 'user');
  const extensionsFolder = join(dataFolder, 'extensions');
  await mkdir(extensionsFolder, { recursive: true });
  await writeUserSettings(userDataFolder);
  const port = await freePort();
  const parameters = [
    join(serverFolder, 'out/server-main.js'),
    ...['--host', '127.0.0.1', '--port', String(port)],
    ...['--without-connection-token', '--accept-server-license-terms', '--disable-telemetry'],
    ...['--extensions-dir', extensionsFolder, '--user-data-dir', userDataFolder],
  ];
  const child = startGroup(process.execPath, parameters, {
    cwd: serverFolder,
    // Without a gallery the editor looks nothing up outside.
    env: { ...process.env, EXTENSIONS_GALLERY: '{}', ...environment },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const log = createWriteStream(logFile);
  child.stdout.pipe(log, { end: false });
  child.stderr.pipe(log, { end: false });
  let ended = false;
  const exited = new Promise((resolve) => {
    child.once('error', resolve);
    child.once('exit', resolve);
  }).then(() => {
    ended = true;
  });
  const stop = async () => {
    await stopGroup(child);
    log.end();
  };

  const deadline = Date.now() + 60_000;
  while (!(await answers(port))) {
    if (ended || Date.now() > deadline) {
      await stop();
      throw new Error(`The editor server did not start; see ${logFile}`);
    }
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  return { port, exited, stop };
}

async function answers(port) {
  try {
    const response = await fetch(`http://127.0.0.1:${port}/version`);
    return response.ok;
  } catch {
    return false;
  }
}
