import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, readdir, rename, rm, stat, symlink, writeFile } from 'node:fs/promises';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { runProgram } from './processes.mjs';

const version = '4.100.3';
const markerName = 'complete';
const unfinishedPrefix = 'unfinished-';
const quiet = ['--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'];

/** The folder that keeps the editor between runs. */
function cacheFolder(environment = process.env) {
  return (
    environment.ZONEWRIGHT_EDITOR_CACHE ||
    join(environment.XDG_CACHE_HOME || join(homedir(), '.cache'), 'zonewright-editor')
  );
}

/**
 * Gives the folder of an editor server (the package `code-server`, which carries the editor with its web
 * workbench), installed from the npm registry the first time and reused afterwards. Throws when a step fails.
 *
 * The install is made beside its place and moved in when whole, so a run that was cut short, or two
 * at once, never leave half an editor.
 */
export async function installedEditor(log) {
  const root = cacheFolder();
  const place = join(root, `code-server-${version}`);
  const serverFolder = join(place, 'node_modules/code-server/lib/vscode');
  if (existsSync(join(place, markerName))) return serverFolder;

  log(`Setting up the editor (code-server ${version}, about 300 MB) in ${root}; this is done once.`);
  await mkdir(root, { recursive: true });
  await removeAbandoned(root);
  const unfinished = await mkdtemp(join(root, unfinishedPrefix));
  try {
    await installInto(unfinished, log);
    await rm(place, { recursive: true, force: true });
    await rename(unfinished, place);
  } catch (error) {
    await rm(unfinished, { recursive: true, force: true });
    if (!existsSync(join(place, markerName))) throw error;
  }
  return serverFolder;
}

/** Removes what installs that were cut short more than an hour ago left behind. */
async function removeAbandoned(root) {
  for (const name of await readdir(root)) {
    const path = join(root, name);
    if (!name.startsWith(unfinishedPrefix) || Date.now() - (await stat(path)).mtimeMs < 3_600_000) continue;
    await rm(path, { recursive: true, force: true });
  }
}

async function installInto(folder, log) {
  await writeFile(join(folder, 'package.json'), '{ "private": true }\n');
  log('  1/3 the editor');
  // Its own install script fetches from outside the registry, so scripts stay off and the steps it does are made here.
  await runProgram('npm', ['install', `code-server@${version}`, ...quiet], { cwd: folder });
  const serverFolder = join(folder, 'node_modules/code-server/lib/vscode');
  log('  2/3 what the editor needs');
  await runProgram('npm', ['install', '--omit=dev', ...quiet], { cwd: serverFolder });
  log('  3/3 its native parts');
  await runProgram('npm', ['rebuild', '@vscode/spdlog', 'native-watchdog'], { cwd: serverFolder });
  const archiveLink = join(serverFolder, 'node_modules.asar');
  if (!existsSync(archiveLink)) await symlink('node_modules', archiveLink);
  await writeFile(join(folder, markerName), `${version}\n`);
}
