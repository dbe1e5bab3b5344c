import { version } from '../../../package.json';
import type { LibraryPart } from '../../library/build/buildLibrary';
import type { BuildOutcome } from '../../library/build/buildOutcome';
import { runBuild } from '../../library/build/runBuild';
import { jsonText, visibleText } from '../../model/text/visibleText';
import { counted } from '../../model/wording/counted';
import { buildHost, mostThreads } from '../buildHost';
import { CommandError } from '../commandError';
import { wholeWord } from '../output/noteWords';
import type { Terminal } from '../terminal';
import { readWords } from '../words';
import { libraryInput } from './libraryInput';
import { buildProgress } from './libraryProgress';

/** `zonewright library build`: everything in a library file, what is unchanged left as it is. Status 1 where one, or a target of one, failed. */
export async function libraryBuild(args: readonly string[], terminal: Terminal): Promise<number> {
  const { paths, options, switches } = readWords(args, {
    format: ['text', 'json'],
    part: 'text',
    threads: 'text',
    measure: 'switch',
    prove: 'switch',
    pack: 'switch',
    force: 'switch',
    'no-cache': 'switch',
  });
  const part = partOf(options.part);
  const threads = wholeWord('threads', options.threads, [1, mostThreads]);
  const { library } = await libraryInput(terminal, paths);
  if (library.instruments.length === 0)
    throw new CommandError(
      'the library lists no instrument; "zonewright library new" finds those of a folder',
    );
  const progress = buildProgress((line) => terminal.error(`zonewright: ${line}\n`));
  const outcomes = await runBuild(buildHost(terminal, threads), library, {
    program: version,
    steps: {
      measures: switches.has('measure'),
      proves: switches.has('prove'),
      packs: switches.has('pack'),
    },
    force: switches.has('force'),
    keeps: !switches.has('no-cache'),
    part,
    onBuilt: progress,
    onRemoved: (name) =>
      terminal.error(`zonewright: ${name} is no longer in the library; what was built from it is removed\n`),
  });
  await terminal.out(options.format === 'json' ? jsonText({ instruments: outcomes }) : textOf(outcomes));
  return outcomes.some(({ message }) => message !== null) ? 1 : 0;
}

function partOf(text: string | undefined): LibraryPart | undefined {
  if (text === undefined) return undefined;
  const [, part, of] = /^(\d{1,6})\/(\d{1,6})$/.exec(text) ?? [];
  if (part === undefined || Number(part) < 1 || Number(part) > Number(of))
    throw new CommandError(`--part takes a share such as 2/8, the second of eight, not "${text}"`);
  return { part: Number(part), of: Number(of) };
}

function textOf(outcomes: readonly BuildOutcome[]): string {
  const count = (state: BuildOutcome['state']) => outcomes.filter((one) => one.state === state).length;
  const lines = outcomes.flatMap(({ name, message }) => (message === null ? [] : [`${name}: ${message}`]));
  const faults = outcomes.filter(({ totals }) => totals.error > 0);
  if (faults.length > 0)
    lines.push(
      `${counted(faults.length, 'instrument has', 'instruments have')} errors; "zonewright library report" lists them`,
    );
  lines.push(
    `${counted(outcomes.length, 'instrument')}: ${count('built')} built, ${count('unchanged')} unchanged, ${count('failed')} failed`,
  );
  return `${lines.map(visibleText).join('\n')}\n`;
}
