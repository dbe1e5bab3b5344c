// Carries out ten tasks of every day in the real editor, as quickly as a practised person, and prints what they took beside an
// estimate for an editor of plain text: npm run tasks [-- --only TEXT]. Pictures of their ends go to out/screenshots/task-*.png.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const folder = dirname(fileURLToPath(import.meta.url));
const temporary = mkdtempSync(join(tmpdir(), 'zonewright-tasks-'));
const results = join(temporary, 'tasks.jsonl');
writeFileSync(results, '');

const options = ['--suite', join(folder, 'tasks/index.ts'), '--minutes', '20', ...process.argv.slice(2)];
const { status } = spawnSync(process.execPath, [join(folder, 'run.mjs'), ...options], {
  stdio: 'inherit',
  env: { ...process.env, ZONEWRIGHT_EDITOR_TASKS: results },
});
const lines = readFileSync(results, 'utf8').split('\n').filter(Boolean).map(JSON.parse);
rmSync(temporary, { recursive: true });

const told = lines.find(({ activation }) => activation !== undefined);
if (told) console.log(`\nThe extension, by the editor's own list: ${told.activation}`);
const tasks = lines.filter(({ title }) => title !== undefined);
const number = ({ title }) => Number(title.split(' ')[0]);
const rows = tasks
  .sort((a, b) => number(a) - number(b))
  .map(({ title, actions, seconds, byHand }) => [
    title.replace(/^(\d+) /, '$1. '),
    `${actions.keys} + ${actions.clicks}`,
    seconds.toFixed(0),
    `${byHand.keys} + ${byHand.clicks}`,
    byHand.seconds.toFixed(0),
    byHand.how,
  ]);
console.log(
  [
    '',
    '| Task | keys + clicks | seconds | by hand, estimated | seconds | how by hand |',
    '|---|---:|---:|---:|---:|---|',
    ...rows.map((cells) => `| ${cells.join(' | ')} |`),
  ].join('\n'),
);
process.exit(status ?? 1);
