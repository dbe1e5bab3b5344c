import { open } from 'node:fs/promises';

/** Seconds beyond a test's own time limit after which the host is taken for dead. */
const secondsOfGrace = 30;

/**
 * Follows the file into which the tests write one JSON object a line, prints each result as it comes and gives
 * `{ passed, failed, skipped, finished }`. It ends when the tests say so, when `stopped()` gives a
 * reason, or when nothing has come for longer than a test may take; `finished` is then false and `reason` says why.
 * `explain` rewrites the message of a failure; `secondsToStart` is how long the extension host may take to run its first line of ours.
 */
export async function followResults(file, { print, stopped, explain, secondsToStart = 90 }) {
  const totals = { passed: 0, failed: 0, skipped: 0, finished: false, reason: undefined };
  const handle = await open(file, 'a+');
  let position = 0;
  let running;
  let deadline = Date.now() + secondsToStart * 1000;
  try {
    while (!totals.finished) {
      const text = await readFrom(handle, position);
      position += text.bytes;
      const lines = text.value.split('\n').filter(Boolean);
      for (const line of lines) {
        const entry = JSON.parse(line);
        running = entry.kind === 'begin' ? entry.name : undefined;
        deadline = Date.now() + ((entry.timeoutSeconds ?? 0) + secondsOfGrace) * 1000;
        take(entry, totals, print, explain);
      }
      if (totals.finished || lines.length > 0) continue;
      totals.reason = stopped() ?? overdue(deadline, running);
      if (totals.reason !== undefined) break;
      await new Promise((resolve) => setTimeout(resolve, 100));
    }
  } finally {
    await handle.close();
  }
  return totals;
}

function overdue(deadline, running) {
  if (Date.now() < deadline) return undefined;
  return running === undefined
    ? 'nothing came from the extension host'
    : `nothing more came from the extension host during “${running}”`;
}

function take(entry, totals, print, explain) {
  if (entry.kind === 'end') {
    totals.finished = true;
  } else if (entry.kind === 'passed') {
    totals.passed++;
    print(`  ok    ${entry.name} (${(entry.milliseconds / 1000).toFixed(1)} s)`);
  } else if (entry.kind === 'failed') {
    totals.failed++;
    print(`  FAIL  ${entry.name}`);
    print(explain(entry.message).trimEnd().replace(/^/gm, '        '));
  } else if (entry.kind === 'skipped') {
    totals.skipped++;
    print(`  skip  ${entry.name}: ${entry.message}`);
  } else if (entry.kind === 'note') {
    print(`        ${entry.message}`);
  }
}

async function readFrom(handle, position) {
  const chunks = [];
  let bytes = 0;
  while (true) {
    const { bytesRead, buffer } = await handle.read(Buffer.alloc(65_536), 0, 65_536, position + bytes);
    if (bytesRead === 0) break;
    chunks.push(buffer.subarray(0, bytesRead));
    bytes += bytesRead;
  }
  // A read may stop in the middle of a line, even of a character: only whole lines are taken.
  const whole = Buffer.concat(chunks);
  const end = whole.lastIndexOf(10) + 1;
  return { value: whole.toString('utf8', 0, end), bytes: end };
}

/** Prints what the run came to, as the last line, and gives the exit status. */
export function conclude(totals, print) {
  if (!totals.finished) print(`The tests did not reach their end: ${totals.reason}`);
  if (totals.skipped > 0) print(`${totals.skipped} skipped`);
  const failed = totals.failed + (totals.finished ? 0 : 1);
  print(`${totals.passed} passed, ${failed} failed`);
  return failed > 0 || totals.passed === 0 ? 1 : 0;
}
