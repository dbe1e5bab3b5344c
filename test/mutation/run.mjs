// npm run mutation -- [--named] FILE[:LINE-LINE]…   puts faults into the files one by one and lists those that no test notices.
// A mutant that changes nothing is marked above its line: `// Stryker disable next-line NAME: why it changes nothing`.
// A file is judged by the tests of its room that are named after it; what these leave, by all tests of the room.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import { basename, join, relative, resolve } from 'node:path';

const root = resolve(import.meta.dirname, '../..');
const arguments_ = process.argv.slice(2);
const wanted = arguments_
  .filter((one) => !one.startsWith('--'))
  .map((one) => /^(.+?)(:\d+-\d+)?$/.exec(one) ?? [])
  .map(([, file = '', lines = '']) => ({ file: relative(root, resolve(file)), lines }));
/** What the tests of the file's name notice, and no more: seconds instead of minutes. */
const onlyNamed = arguments_.includes('--named');
const missing = wanted.map(({ file }) => file).filter((file) => !existsSync(join(root, file)));
if (wanted.length === 0 || missing.length > 0) {
  console.error(
    missing.length > 0 ? `no such file: ${missing[0]}` : 'npm run mutation -- [--named] FILE[:LINE-LINE]…',
  );
  process.exit(2);
}

/** For what the runs are told, and tell; it goes at the end. */
const temporary = mkdtempSync(join(tmpdir(), 'mutation-'));
process.once('exit', () => rmSync(temporary, { recursive: true, force: true, maxRetries: 5 }));

/** What spawns processes or browsers takes seconds a mutant and judges wiring, not values. */
const slow = /spawn|playwright|openPage|commandLine/;

/** Rooms whose files are judged by other rooms' tests too. */
const judgedBy = {
  trade: ['trade', 'table', 'vocabulary'],
  model: ['model', 'sfz', 'xml', 'conversion', 'opcodes', 'edits'],
  table: ['table', 'trade', 'pasting'],
  pasting: ['pasting', 'table'],
};

for (const { file, lines } of wanted) {
  const started = Date.now();
  const named = testsNamedAfter(file);
  let mutants = named.length > 0 ? mutantsOf(file, [file + lines], named) : undefined;
  // The whole room takes long at each mutant, and so judges only those that the tests of the file's name leave.
  const left = mutants?.filter(isAlive).map((mutant) => placeOf(file, mutant));
  if (!onlyNamed && left?.length !== 0) {
    const judged = mutantsOf(file, left ?? [file + lines], testsOfRoom(file));
    mutants = mutants ? withVerdicts(mutants, judged ?? []) : judged;
  }
  if (mutants) tell(file, mutants, (Date.now() - started) / 1000);
}

/** The mutants at the places (a file, or a span of it) with their fate in the tests; none where the run failed. */
function mutantsOf(file, places, tests) {
  const name = join(temporary, 'run');
  const reportFile = `${name}-report.json`;
  writeFileSync(
    `${name}.json`,
    JSON.stringify({
      mutate: places,
      testRunner: 'vitest',
      vitest: { configFile: 'test/mutation/vitest.config.mts', related: false },
      coverageAnalysis: 'perTest',
      concurrency: Number(process.env.ZONEWRIGHT_MUTATION_WORKERS ?? cpus().length),
      reporters: ['json'],
      jsonReporter: { fileName: reportFile },
      tempDirName: name,
      ignorePatterns: ['dist', 'samples-demo/out', '.git', '*.vsix'],
      disableTypeChecks: false,
      // It would be read by a programming interface that the compiler no longer has.
      tsconfigFile: 'none.json',
      timeoutMS: 20_000,
      allowEmpty: true,
    }),
  );
  const { status, stderr, stdout } = spawnSync(
    'npx',
    ['stryker', 'run', `${name}.json`, '--logLevel', 'error'],
    {
      cwd: root,
      encoding: 'utf8',
      env: { ...process.env, ZONEWRIGHT_MUTATION_TESTS: tests.join('\n') },
    },
  );
  if (status === 0)
    return Object.values(JSON.parse(readFileSync(reportFile, 'utf8')).files)[0]?.mutants ?? [];
  console.error(`${file}: the run failed\n${stderr || stdout}`);
  process.exitCode = 1;
  return undefined;
}

function isAlive({ status }) {
  return status === 'Survived' || status === 'NoCoverage';
}

/** Where a mutant stands, as Stryker takes it: columns are counted from 0 there and from 1 in its report. */
function placeOf(file, { location: { start, end } }) {
  return `${file}:${start.line}:${start.column - 1}-${end.line}:${end.column - 1}`;
}

function keyOf({ location: { start, end }, mutatorName, replacement }) {
  return [start.line, start.column, end.line, end.column, mutatorName, replacement].join(' ');
}

function withVerdicts(mutants, judged) {
  const verdicts = new Map(judged.map((mutant) => [keyOf(mutant), mutant]));
  return mutants.map((mutant) => (isAlive(mutant) ? (verdicts.get(keyOf(mutant)) ?? mutant) : mutant));
}

function allTests() {
  return readdirSync(join(root, 'test'), { recursive: true })
    .map((name) => `test/${name.replaceAll('\\', '/')}`)
    .filter((name) => /^test\/(unit|standards)\/.*\.test\.ts$/.test(name))
    .filter((test) => !slow.test(readFileSync(join(root, test), 'utf8')))
    .sort();
}

function isOfRoom(file, test) {
  const room = file.split('/')[1];
  return (judgedBy[room] ?? [room]).some((one) => test.startsWith(`test/unit/${one}/`));
}

/** Those of its room, and those against sources outside. */
function testsNamedAfter(file) {
  const named = new RegExp(`/${basename(file, '.ts')}\\.(?:\\w+\\.)?test\\.ts$`);
  return allTests().filter(
    (test) => named.test(test) && (isOfRoom(file, test) || test.startsWith('test/standards/')),
  );
}

function testsOfRoom(file) {
  return allTests().filter((test) => isOfRoom(file, test));
}

function tell(file, mutants, seconds) {
  const lines = readFileSync(join(root, file), 'utf8').split('\n');
  const count = (...states) => mutants.filter(({ status }) => states.includes(status)).length;
  const alive = mutants.filter(isAlive);
  const killed = count('Killed', 'Timeout');
  const all = killed + alive.length;
  const share = all === 0 ? 100 : Math.round((100 * killed) / all);
  console.log(
    `${file}: ${share} % of ${all} (${killed} noticed, ${count('Ignored')} equivalent; ${Math.round(seconds)} s)`,
  );
  for (const { location, mutatorName, replacement, status } of alive) {
    const { line, column } = location.start;
    const was = lines[line - 1].trim();
    console.log(
      `  ${line}:${column} ${status === 'NoCoverage' ? 'not run' : 'unnoticed'} ${mutatorName}: ${was}  →  ${replacement?.replace(/\s+/g, ' ').slice(0, 80)}`,
    );
  }
}
