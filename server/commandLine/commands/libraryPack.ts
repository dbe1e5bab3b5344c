import type { InstrumentFacts, PackSettings } from '../../library/libraryFile';
import { defaultPacks, libraryFileName } from '../../library/libraryFile';
import type { LibraryInstrument, ResolvedLibrary } from '../../library/libraryInstrument';
import { openLibrary } from '../../library/openLibrary';
import { sharingCaution } from '../../library/pack/licenceTexts';
import type { PackSource } from '../../library/pack/packSource';
import { portableName } from '../../library/portableNames';
import { joinPath, relativePath, titleOf } from '../../model/paths';
import { jsonText, visibleText } from '../../model/text/visibleText';
import { counted } from '../../model/wording/counted';
import { CommandError } from '../commandError';
import type { NoteCounts } from '../input/packInput';
import { builtTexts, packTextOf } from '../input/packInput';
import type { PackOutcome, PackWords } from '../output/writePack';
import { writePack } from '../output/writePack';
import type { Terminal } from '../terminal';
import { absolutePath } from '../terminalPaths';
import { readWords } from '../words';

const options = {
  output: 'text',
  form: ['zip', 'folder'],
  audio: ['keep', 'flac'],
  fact: 'texts',
  'without-licence': 'switch',
  force: 'switch',
  format: ['text', 'json'],
} as const;

/**
 * `zonewright library pack`: each instrument of a library, as it was built, or one instrument's text, as an archive or a
 * folder to be shared.
 */
export async function libraryPack(args: readonly string[], terminal: Terminal): Promise<number> {
  const { paths, options: said, lists, switches } = readWords(args, options);
  const [name = '.', ...more] = paths;
  if (more.length > 0) throw new CommandError('library pack takes one library, or one instrument');
  const words: PackWords = {
    name,
    ...(said.output !== undefined && { output: absolutePath(terminal, said.output) }),
    settings: {
      ...(said.form !== undefined && { form: said.form as PackSettings['form'] }),
      ...(said.audio !== undefined && { audio: said.audio as PackSettings['audio'] }),
      ...(switches.has('without-licence') && { withoutLicence: true }),
    },
    facts: factsOf(lists.fact ?? []),
    force: switches.has('force'),
  };
  const path = absolutePath(terminal, name);
  const isLibrary = (await terminal.files.stat(path))?.kind === 'folder' || path.endsWith('library.json');
  const outcomes = isLibrary
    ? await packLibrary(terminal, path, words)
    : [await packOne(terminal, name, words)];
  if (said.format === 'json') await terminal.out(jsonText({ instruments: outcomes }));
  else await terminal.out(textOf(outcomes));
  if (outcomes.some(({ state }) => state === 'built')) terminal.error(`zonewright: ${sharingCaution}\n`);
  return outcomes.some(({ state }) => state === 'failed') ? 1 : 0;
}

async function packLibrary(terminal: Terminal, path: string, words: PackWords): Promise<PackOutcome[]> {
  const opened = await openLibrary(terminal.files, path);
  if (opened.kind === 'refused') throw new CommandError(`${words.name}: ${opened.reason}`);
  const { library } = opened;
  for (const problem of library.problems) terminal.error(`zonewright: ${problem}\n`);
  const outcomes: PackOutcome[] = [];
  for (const instrument of library.instruments) {
    const about = {
      name: instrument.name,
      source:
        relativePath(library.folder, instrument.source) + (instrument.preset ? `#${instrument.preset}` : ''),
      folder: library.folder,
      output: words.output ?? joinPath(library.folder, instrument.pack.output ?? defaultPacks),
      settings: { ...instrument.pack, ...words.settings },
    };
    outcomes.push(
      await writePack(terminal, words, about, () => builtSource(terminal, library, instrument, words.facts)),
    );
    terminal.error(`${outcomes.length} of ${counted(library.instruments.length, 'instrument')} packed\n`);
  }
  return outcomes;
}

async function builtSource(
  terminal: Terminal,
  library: ResolvedLibrary,
  instrument: LibraryInstrument,
  said: InstrumentFacts,
): Promise<PackSource & { noteCounts?: NoteCounts }> {
  const facts = { title: instrument.name, ...instrument.facts, ...said };
  const built = await builtTexts(terminal, library, instrument);
  return {
    name: instrument.fileName,
    ...built,
    facts,
    ...(facts.picture !== undefined && { picture: joinPath(library.folder, facts.picture) }),
  };
}

async function packOne(terminal: Terminal, name: string, words: PackWords): Promise<PackOutcome> {
  const { facts, settings } = words;
  const title = titleOf(absolutePath(terminal, name));
  const about = {
    name: facts.title ?? title,
    source: name,
    folder: terminal.folder,
    output: words.output ?? terminal.folder,
    settings,
  };
  return writePack(terminal, words, about, async () => {
    const { text, files } = await packTextOf(terminal, name);
    return {
      name: portableName(facts.title ?? title),
      texts: [text],
      files,
      facts: { title, ...facts },
      ...(facts.picture !== undefined && { picture: absolutePath(terminal, facts.picture) }),
    };
  });
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

function textOf(outcomes: readonly PackOutcome[]): string {
  if (outcomes.length === 0) return `The library has no instrument; ${libraryFileName} lists none.\n`;
  const lines = outcomes.map(({ name, state, message, outputs }) =>
    state === 'failed' ? `${name}: failed: ${message}` : `${name}: ${outputs.join(', ')}`,
  );
  return `${lines.map(visibleText).join('\n')}\n`;
}
