// npm run mutation -- FILE…   puts faults into the files one by one and lists those that no test notices.
// A mutant that changes nothing is marked above its line: `// Stryker disable next-line NAME: why it changes nothing`.
// A file is judged by the tests of its room and by those that are named after it, wherever they stand.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { basename, join, relative, resolve } from 'node:path';

const root = resolve(import.meta.dirname, '../..');
const arguments_ = process.argv.slice(2);
const files = arguments_.filter((one) => !one.startsWith('--')).map((file) => relative(root, resolve(file)));
const missing = files.filter((file) => !existsSync(join(root, file)));
if (files.length === 0 || missing.length > 0) {
  console.error(missing.length > 0 ? `no such file: ${missing[0]}` : 'npm run mutation -- FILE…');
  process.exit(2);
}

/** What spawns processes or browsers takes seconds a mutant and judges wiring, not values. */
const slow = /spawn|playwright|openPage|commandLine/;

/** Rooms whose files are judged by other rooms' tests too. */
const judgedBy = {
  trade: ['trade', 'table', 'vocabulary'],
  model: ['model', 'sfz', 'xml', 'conversion', 'opcodes', 'edits'],
  table: ['table', 'trade', 'pasting'],
  pasting: ['pasting', 'table'],
};

for (const file of files) {
  const started = Date.now();
  const tests = testsOf(file);
  const config = join(tmpdir(), `mutation-${process.pid}.json`);
  const reportFile = join(tmpdir(), `mutation-${process.pid}-report.json`);
  writeFileSync(
    config,
    JSON.stringify({
      mutate: [file],
      testRunner: 'vitest',
      vitest: { configFile: 'test/mutation/vitest.config.mts', related: false },
      coverageAnalysis: 'perTest',
      concurrency: Number(process.env.ZONEWRIGHT_MUTATION_WORKERS ?? cpus().length),
      reporters: ['json'],
      jsonReporter: { fileName: reportFile },
      tempDirName: join(tmpdir(), `mutation-${process.pid}`),
      ignorePatterns: ['dist', 'samples-demo/out', '.git', '*.vsix'],
      disableTypeChecks: false,
      // It would be read by a programming interface that the compiler no longer has.
      tsconfigFile: 'none.json',
      timeoutMS: 20_000,
      allowEmpty: true,
    }),
  );
  const { status, stderr, stdout } = spawnSync('npx', ['stryker', 'run', config, '--logLevel', 'error'], {
    cwd: root,
    encoding: 'utf8',
    env: { ...process.env, ZONEWRIGHT_MUTATION_TESTS: tests.join('\n') },
  });
  if (status !== 0) {
    console.error(`${file}: the run failed\n${stderr || stdout}`);
    process.exitCode = 1;
    continue;
  }
  tell(file, JSON.parse(readFileSync(reportFile, 'utf8')), (Date.now() - started) / 1000, tests.length);
}

function testsOf(file) {
  const room = file.split('/')[1];
  const rooms = judgedBy[room] ?? [room];
  const named = new RegExp(`/${basename(file, '.ts')}\\b[^/]*$`);
  const isOfRoom = (test) => rooms.some((one) => test.startsWith(`test/unit/${one}/`));
  return readdirSync(join(root, 'test'), { recursive: true })
    .map((name) => `test/${name.replaceAll('\\', '/')}`)
    .filter((name) => /^test\/(unit|standards)\/.*\.test\.ts$/.test(name))
    .filter((test) => isOfRoom(test) || named.test(test))
    .filter((test) => !slow.test(readFileSync(join(root, test), 'utf8')))
    .sort();
}

function tell(file, report, seconds, tests) {
  const [{ source, mutants }] = Object.values(report.files);
  const lines = source.split('\n');
  const count = (...states) => mutants.filter(({ status }) => states.includes(status)).length;
  const alive = mutants.filter(({ status }) => ['Survived', 'NoCoverage'].includes(status));
  const killed = count('Killed', 'Timeout');
  const all = killed + alive.length;
  const share = all === 0 ? 100 : Math.round((100 * killed) / all);
  console.log(
    `${file}: ${share} % of ${all} (${killed} noticed, ${count('Ignored')} equivalent; ${tests} test files, ${Math.round(seconds)} s)`,
  );
  for (const { location, mutatorName, replacement, status } of alive) {
    const { line, column } = location.start;
    const was = lines[line - 1].trim();
    console.log(
      `  ${line}:${column} ${status === 'NoCoverage' ? 'not run' : 'unnoticed'} ${mutatorName}: ${was}  →  ${replacement?.replace(/\s+/g, ' ').slice(0, 80)}`,
    );
  }
}
