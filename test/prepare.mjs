// Makes a checkout ready: installs the libraries, builds the bundles and the demo instrument where they are
// missing or older than what they are made from. Needs nothing but Node.
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const onWindows = process.platform === 'win32';

function newest(path) {
  const found = statSync(path);
  if (!found.isDirectory()) return found.mtimeMs;
  return Math.max(0, ...readdirSync(path).map((name) => newest(join(path, name))));
}

function isOlder(made, ...sources) {
  return (
    !existsSync(made) ||
    statSync(made).mtimeMs < Math.max(...sources.map((source) => newest(join(root, source))))
  );
}

/** Installs and builds what is missing. */
export function prepare() {
  const installed = join(root, 'node_modules/.package-lock.json');
  if (isOlder(installed, 'package-lock.json')) {
    console.log('Installing libraries …');
    execFileSync(onWindows ? 'npm.cmd' : 'npm', ['ci', '--no-audit', '--no-fund'], {
      cwd: root,
      stdio: 'inherit',
      shell: onWindows,
    });
  }
  if (
    isOlder(
      join(root, 'dist/cli.js'),
      'server',
      'client',
      'esbuild.mjs',
      'bundles.mjs',
      'third-party',
      'package.json',
    )
  ) {
    execFileSync(process.execPath, ['esbuild.mjs'], { cwd: root, stdio: 'inherit' });
  }
  execFileSync(process.execPath, ['samples-demo/make.mjs'], { cwd: root, stdio: 'inherit' });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) prepare();
