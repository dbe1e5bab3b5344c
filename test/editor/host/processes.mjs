import { spawn } from 'node:child_process';

/**
 * Runs a program to its end. Gives nothing when it succeeds; throws an Error that carries the last lines of
 * its output when it does not.
 */
export function runProgram(command, parameters, options = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(command, parameters, { ...options, stdio: ['ignore', 'pipe', 'pipe'] });
    let output = '';
    const keep = (chunk) => {
      output = (output + chunk).slice(-8000);
    };
    child.stdout.on('data', keep);
    child.stderr.on('data', keep);
    child.once('error', reject);
    child.once('close', (code) => {
      if (code === 0) resolve();
      else
        reject(new Error(`${command} ${parameters.join(' ')} ended with ${code}:\n${lastLines(output, 25)}`));
    });
  });
}

/**
 * Starts a program in a process group of its own, so that `stopGroup` ends it with everything it started. Should this
 * process end first, the group is ended too.
 */
export function startGroup(command, parameters, options) {
  const child = spawn(command, parameters, { ...options, detached: true });
  if (child.pid !== undefined) {
    const { pid } = child;
    const end = () => signalGroup(pid, 'SIGKILL');
    process.once('exit', end);
    forget.set(child, () => process.off('exit', end));
  }
  return child;
}

const forget = new WeakMap();

/** Ends a program from `startGroup` and all that it started: asks first, forces after two seconds. */
export async function stopGroup(child) {
  const { pid } = child;
  if (pid === undefined) return;
  const deadline = Date.now() + 2000;
  let alive = signalGroup(pid, 'SIGTERM');
  while (alive && Date.now() < deadline) {
    await new Promise((resolve) => setTimeout(resolve, 50));
    alive = signalGroup(pid, 0);
  }
  if (alive) signalGroup(pid, 'SIGKILL');
  forget.get(child)?.();
}

function signalGroup(pid, signal) {
  try {
    process.kill(-pid, signal);
    return true;
  } catch {
    return false;
  }
}

/** The last `count` lines of a text. */
export function lastLines(text, count) {
  return text.trimEnd().split('\n').slice(-count).join('\n');
}
