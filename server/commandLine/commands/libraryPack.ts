import { version } from '../../../package.json';
import type { BuildOutcome } from '../../library/build/buildOutcome';
import { noFindings } from '../../library/build/instrumentRecord';
import { runPacks } from '../../library/build/runBuild';
import type { InstrumentFacts, PackSettings } from '../../library/libraryFile';
import { libraryFileName } from '../../library/libraryFile';
import { sharingCaution } from '../../library/pack/licenceTexts';
import type { PackOrder } from '../../library/pack/packBuilt';
import type { PackSource } from '../../library/pack/packSource';
import type { PackTools } from '../../library/pack/putPack';
import { findingsOf, putPack } from '../../library/pack/putPack';
import { portableName } from '../../library/portableNames';
import { OutputError } from '../../model/output';
import { folderOf, relativePath, titleOf } from '../../model/paths';
import { jsonText, visibleText } from '../../model/text/visibleText';
import { counted } from '../../model/wording/counted';
import { buildHost, mostThreads } from '../buildHost';
import { CommandError } from '../commandError';
import { packTextOf } from '../input/packInput';
import { wholeWord } from '../output/noteWords';
import { systemReason } from '../systemReason';
import type { Terminal } from '../terminal';
import { absolutePath } from '../terminalPaths';
import { readWords } from '../words';
import { libraryInput } from './libraryInput';
import { buildProgress } from './libraryProgress';

const options = {
  output: 'text',
  form: ['zip', 'folder'],
  audio: ['keep', 'flac'],
  fact: 'texts',
  'without-licence': 'switch',
  threads: 'text',
  force: 'switch',
  format: ['text', 'json'],
} as const;

/**
 * `zonewright library pack`: each instrument of a library, as it was built, where its pack is not current, or one instrument's
 * text, as an archive or a folder to be shared.
 */
export async function libraryPack(args: readonly string[], terminal: Terminal): Promise<number> {
  const { paths, options: said, lists, switches } = readWords(args, options);
  const [name = '.', ...more] = paths;
  if (more.length > 0) throw new CommandError('library pack takes one library, or one instrument');
  const order: PackOrder = {
    ...(said.output !== undefined && { output: absolutePath(terminal, said.output) }),
    settings: {
      ...(said.form !== undefined && { form: said.form as PackSettings['form'] }),
      ...(said.audio !== undefined && { audio: said.audio as PackSettings['audio'] }),
      ...(switches.has('without-licence') && { withoutLicence: true }),
    },
    facts: factsOf(lists.fact ?? []),
  };
  const force = switches.has('force');
  const threads = wholeWord('threads', said.threads, [1, mostThreads]);
  const path = absolutePath(terminal, name);
  const isLibrary = (await terminal.files.stat(path))?.kind === 'folder' || path.endsWith('library.json');
  const outcomes = isLibrary
    ? await packAll(terminal, name, order, { force, threads })
    : [await packOne(terminal, name, order, force)];
  const told = outcomes.map(({ notFlac, ...outcome }) => outcome);
  if (said.format === 'json') await terminal.out(jsonText({ instruments: told }));
  else await terminal.out(textOf(told));
  for (const { name: of, notFlac = 0 } of outcomes)
    if (notFlac > 0)
      terminal.error(
        `zonewright: ${of}: ${counted(notFlac, 'sample stays', 'samples stay')} as they are, since FLAC would change them\n`,
      );
  if (outcomes.some(({ state }) => state === 'built')) terminal.error(`zonewright: ${sharingCaution}\n`);
  return outcomes.some(({ state }) => state === 'failed') ? 1 : 0;
}

async function packAll(
  terminal: Terminal,
  name: string,
  pack: PackOrder,
  { force, threads }: { force: boolean; threads: number | undefined },
): Promise<BuildOutcome[]> {
  const { library } = await libraryInput(terminal, [name]);
  return runPacks(buildHost(terminal, threads), library, {
    ...{ pack, force, program: version },
    onBuilt: buildProgress((line) => terminal.error(`zonewright: ${line}\n`)),
  });
}

async function packOne(
  terminal: Terminal,
  name: string,
  { facts, settings, output = terminal.folder }: PackOrder,
  force: boolean,
): Promise<BuildOutcome> {
  const title = titleOf(absolutePath(terminal, name));
  const outcome: BuildOutcome = {
    ...{ name: facts.title ?? title, source: name, state: 'built', message: null, outputs: [] },
    totals: noFindings(),
    notes: { assumed: 0, approximated: 0, dropped: 0 },
  };
  try {
    const { text, files } = await packTextOf(terminal, name);
    const source: PackSource = {
      name: portableName(outcome.name),
      texts: [text],
      files,
      facts: { title, ...facts },
      ...(facts.picture !== undefined && { picture: absolutePath(terminal, facts.picture) }),
    };
    outcome.totals = await findingsOf(source, terminal.files);
    const written = await putPack(source, settings, output, packTools(terminal, force));
    outcome.outputs = [relativePath(terminal.folder, written.path)];
    if (written.notFlac > 0) outcome.notFlac = written.notFlac;
  } catch (error) {
    if (!(error instanceof OutputError || error instanceof CommandError)) throw error;
    outcome.state = 'failed';
    outcome.message = error.message;
  }
  return outcome;
}

/** Writes packs as this terminal writes files, its faults told in one line. */
function packTools(terminal: Terminal, force: boolean): PackTools {
  const { packing } = terminal;
  if (!packing) throw new OutputError('nothing can be packed here');
  const told = async (path: string, work: Promise<void>) => {
    try {
      await work;
    } catch (error) {
      if (error instanceof OutputError) throw error;
      throw new CommandError(`${path}: cannot be written: ${systemReason(error)}`);
    }
  };
  return {
    ...{ files: terminal.files, force, flacLibrary: packing.flacLibrary },
    writer: {
      write: (path, content) =>
        told(
          path,
          terminal.makeFolder(folderOf(path)).then(() => terminal.writeFile(path, content)),
        ),
      writeFolder: (path, inner) => told(path, packing.writeFolder(path, inner)),
    },
  };
}

const single = ['title', 'maker', 'licence', 'source', 'picture'] as const;

function factsOf(words: readonly string[]): InstrumentFacts {
  const facts: InstrumentFacts = {};
  for (const word of words) {
    const [, name = '', value = ''] = /^\s*([a-z]+)\s*=\s*(.+)$/is.exec(word) ?? [];
    const one = single.find((known) => known === name.toLowerCase());
    if (one) facts[one] = value.trim();
    else if (name.toLowerCase() === 'credit') facts.credits = [...(facts.credits ?? []), value.trim()];
    else if (name.toLowerCase() === 'tag') facts.tags = [...(facts.tags ?? []), value.trim()];
    else throw new CommandError(`--fact takes ${single.join('=…, ')}=…, credit=… or tag=…, not "${word}"`);
  }
  return facts;
}

function textOf(outcomes: readonly BuildOutcome[]): string {
  if (outcomes.length === 0) return `The library has no instrument; ${libraryFileName} lists none.\n`;
  const lines = outcomes.map(({ name, state, message, outputs }) =>
    state === 'failed'
      ? `${name}: failed: ${message}`
      : `${name}: ${outputs.join(', ')}${state === 'unchanged' ? ' (unchanged)' : ''}`,
  );
  return `${lines.map(visibleText).join('\n')}\n`;
}
