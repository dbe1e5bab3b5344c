import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { limit } from './target';
import { targets } from './targets';

/** Milliseconds that one target has before the next has its turn. */
const turn = 5000;
/** Milliseconds that one input may take; what takes longer is kept as slow (our choice). */
const mostTime = 3000;
/** Failures of one kind that are kept. */
const mostAlike = 3;

/**
 * Tries targets in turn until the time is over: `node main.mjs MINUTES FOLDER [SEED] [NAME]`. What fails is shrunk and kept in the
 * folder as JSON with its seed. Ends with status 1 where something failed.
 */
async function main([minutes, folder, firstSeed, only]: string[]): Promise<void> {
  const until = Date.now() + Number(minutes) * 60_000;
  const counts = new Map<string, number>();
  const failures = new Map<string, number>();
  limit.milliseconds = mostTime;
  let seed = Number(firstSeed) || Date.now() % 0x7fffffff;
  process.stdout.write(`first seed ${seed}\n`);
  let told = Date.now();
  const chosen = targets.filter(({ name }) => !only || name.includes(only));
  while (Date.now() < until) {
    for (const { name, property } of chosen) {
      const options = { seed: ++seed, numRuns: 1e6 };
      const result = await fc.check(property, { ...options, interruptAfterTimeLimit: turn });
      counts.set(name, (counts.get(name) ?? 0) + result.numRuns);
      if (!result.failed || result.counterexample === null) continue;
      const message = String(result.errorInstance ?? 'interrupted');
      const kind = `${name}: ${message.split('\n')[0].replace(/\d+/g, '0').slice(0, 100)}`;
      const alike = failures.get(kind) ?? 0;
      failures.set(kind, alike + 1);
      if (alike >= mostAlike) continue;
      process.stdout.write(
        `FAILED ${name}, seed ${options.seed}, path ${result.counterexamplePath}: ${message}\n`,
      );
      const stack = result.errorInstance instanceof Error ? result.errorInstance.stack : undefined;
      mkdirSync(folder, { recursive: true });
      writeFileSync(
        join(folder, `${name.replace(/\W+/g, '-')}-${options.seed}.json`),
        JSON.stringify(
          { name, seed: options.seed, message, stack, input: result.counterexample[0] },
          null,
          1,
        ),
      );
    }
    if (Date.now() - told < 60_000 && Date.now() < until) continue;
    told = Date.now();
    process.stdout.write(
      `seed ${seed}: ${[...counts].map(([name, count]) => `${name} ${count}`).join(', ')}\n`,
    );
  }
  for (const unit of ['texts', 'audio files'] as const) {
    const names = targets.filter((one) => one.unit === unit).map(({ name }) => name);
    process.stdout.write(`${names.reduce((sum, name) => sum + (counts.get(name) ?? 0), 0)} ${unit}\n`);
  }
  for (const [kind, count] of failures) process.stdout.write(`failed ${count} times: ${kind}\n`);
  process.exitCode = failures.size > 0 ? 1 : 0;
}

await main(process.argv.slice(2));
