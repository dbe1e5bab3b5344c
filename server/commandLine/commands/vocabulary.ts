import { folderOf } from '../../model/paths';
import { Source } from '../../model/text/source';
import { jsonText, visibleLines, visibleText } from '../../model/text/visibleText';
import { describeVocabulary } from '../../vocabulary/infer/describeVocabulary';
import type { InferredVocabulary, VocabularyDecision } from '../../vocabulary/infer/inferredVocabulary';
import { doubtfulBelow } from '../../vocabulary/infer/inferredVocabulary';
import { inferVocabulary } from '../../vocabulary/infer/inferVocabulary';
import { matchesVocabulary } from '../../vocabulary/infer/matchesVocabulary';
import { otherReadings } from '../../vocabulary/infer/otherReadings';
import { parseVocabulary } from '../../vocabulary/parseVocabulary';
import type { Vocabulary } from '../../vocabulary/vocabulary';
import { vocabularyEnding } from '../../vocabulary/vocabulary';
import { vocabularyNotation } from '../../vocabulary/vocabularyNotation';
import { writeVocabulary } from '../../vocabulary/writeVocabulary';
import { sampleFactsIn } from '../../workspace/samples/sampleFactsIn';
import { SampleStore } from '../../workspace/samples/sampleStore';
import { CommandError } from '../commandError';
import type { Input } from '../input/input';
import { notationFinder, readInput } from '../input/input';
import { outputFile } from '../output/overwriting';
import { write } from '../output/writeOutput';
import type { Terminal } from '../terminal';
import type { Words } from '../words';
import { readWords } from '../words';

const mostRounds = 20;

/** `zonewright vocabulary`: prints, works out and checks how an XML dialect writes instruments. */
export async function vocabulary(args: readonly string[], terminal: Terminal): Promise<number> {
  const [task, ...rest] = args;
  switch (task) {
    case 'print':
      return print(readWords(rest, { format: ['text', 'json'] }), terminal);
    case 'infer':
      return infer(readWords(rest, { format: ['text', 'json'], output: 'text', force: 'switch' }), terminal);
    case 'check':
      return check(readWords(rest, { with: 'text' }), terminal);
    default:
      throw new CommandError('vocabulary takes print, infer or check, and then a file');
  }
}

function onlyPath({ paths }: Words, task: string): string {
  const [name, ...more] = paths;
  if (name === undefined || more.length > 0) throw new CommandError(`vocabulary ${task} takes one file`);
  return name;
}

/** The vocabulary of a file that holds one, or by which an instrument is read. */
async function print(words: Words, terminal: Terminal): Promise<number> {
  const input = await readInput(terminal, onlyPath(words, 'print'));
  const found = input.path.endsWith(vocabularyEnding)
    ? soundVocabulary(input)
    : (await notationFinder(terminal, new SampleStore(terminal.files)).find(input))?.vocabulary?.vocabulary;
  if (!found)
    throw new CommandError(
      `${input.name}: this needs no vocabulary: it is not instrument XML with names of its own`,
    );
  await terminal.out(
    words.options.format === 'json' ? writeVocabulary(found) : visibleLines(describeVocabulary(found)),
  );
  return 0;
}

function soundVocabulary(input: Input): Vocabulary {
  const { vocabulary: found, problems } = parseVocabulary(input.text);
  if (found) return found;
  throw new CommandError(`${input.name}: ${problems[0]?.message ?? 'this is no vocabulary'}`);
}

/** Works a vocabulary out from an instrument, whatever is saved. */
async function infer(words: Words, terminal: Terminal): Promise<number> {
  const input = await readInput(terminal, onlyPath(words, 'infer'));
  const inferred = await inferKnowingSamples(terminal, input);
  if (!inferred) throw new CommandError(`${input.name}: no instrument was found in this text`);
  const doubts = inferred.decisions.filter(({ confidence }) => confidence < doubtfulBelow);
  const unsettled = doubts.map(({ id }) => id);
  const found = { ...inferred.vocabulary, ...(unsettled.length > 0 && { unsettled }) };
  const source = new Source(input.path, input.text);
  const { output } = words.options;
  if (output !== undefined)
    await write(
      terminal,
      outputFile(terminal, output, words.switches.has('force'), [input.path]),
      writeVocabulary(found),
    );
  if (words.options.format === 'json') {
    const decisions = inferred.decisions.map((decision) => decisionAsData(decision, source));
    const all = {
      vocabulary: JSON.parse(writeVocabulary(found)) as unknown,
      confidence: inferred.confidence,
      decisions,
    };
    await terminal.out(jsonText(all));
    return 0;
  }
  if (output === undefined) await terminal.out(writeVocabulary(found));
  for (const decision of inferred.decisions) terminal.error(decisionText(decision, source, input.name));
  return 0;
}

async function inferKnowingSamples(
  terminal: Terminal,
  input: Input,
): Promise<InferredVocabulary | undefined> {
  const samples = new SampleStore(terminal.files);
  const options = { path: input.path, sampleFacts: sampleFactsIn(samples, folderOf(input.path)) };
  let inferred = inferVocabulary(input.text, options);
  for (let round = 0; samples.wants && round < mostRounds; round++) {
    await samples.loadWanted();
    inferred = inferVocabulary(input.text, options);
  }
  return inferred;
}

function decisionAsData(
  { id, message, confidence, evidence, span, choices }: VocabularyDecision,
  source: Source,
) {
  const { line, column } = source.positionAt(span.start);
  return { id, message, confidence, evidence, line, column, choices: choices.map(({ label }) => label) };
}

function decisionText(
  { message, confidence, evidence, span, choices }: VocabularyDecision,
  source: Source,
  name: string,
): string {
  const { line } = source.positionAt(span.start);
  const doubt = confidence < doubtfulBelow ? 'in doubt' : 'clear';
  const others = confidence < doubtfulBelow ? otherReadings(choices.map(({ label }) => label)) : '';
  const advice = others === '' ? '' : ' Choose in the vocabulary.';
  return `${name}:${line}: ${doubt}: ${[message, ...evidence].join(' ')}${others}${advice}\n`;
}

/** Checks files that hold vocabularies; with `--with`, also that an instrument can be read by them. */
async function check(words: Words, terminal: Terminal): Promise<number> {
  if (words.paths.length === 0) throw new CommandError('vocabulary check takes at least one vocabulary file');
  const instrument =
    words.options.with === undefined ? undefined : await readInput(terminal, words.options.with);
  let isSound = true;
  for (const name of words.paths) {
    const input = await readInput(terminal, name);
    const { vocabulary: found, problems } = parseVocabulary(input.text);
    const source = new Source(input.path, input.text);
    for (const { message, start } of problems) {
      const { line, column } = source.positionAt(start);
      await terminal.out(`${visibleText(`${name}:${line}:${column}: ${message}`)}\n`);
      isSound = false;
    }
    if (!found) {
      isSound = false;
      continue;
    }
    if (problems.length === 0) await terminal.out(`${visibleText(`${name}: sound, "${found.name}"`)}\n`);
    if (instrument && !(await reads(terminal, name, found, instrument))) isSound = false;
  }
  return isSound ? 0 : 1;
}

async function reads(
  terminal: Terminal,
  name: string,
  found: Vocabulary,
  { name: shown, text, path }: Input,
): Promise<boolean> {
  if (!matchesVocabulary(found, text)) {
    await terminal.out(visibleLines(`${name}: ${shown} does not have the elements of this vocabulary\n`));
    return false;
  }
  const read = vocabularyNotation(found).read(text, { path });
  const errors = read.findings.filter(({ severity }) => severity === 'error');
  for (const { start, message } of errors) {
    const place = read.sources[0]?.positionAt(start);
    await terminal.out(`${visibleText(`${shown}:${place?.line ?? 1}:${place?.column ?? 1}: ${message}`)}\n`);
  }
  await terminal.out(visibleLines(`${name}: reads ${read.regions.length} regions of ${shown}\n`));
  return errors.length === 0 && read.regions.length > 0;
}
