import type { MessagePart } from '../../sound/render/messages';
import type { RenderReport } from '../../sound/render/renderParts';
import { renderParts } from '../../sound/render/renderParts';
import { WaveFile } from '../../sound/render/waveFile';
import { CommandError } from '../commandError';
import { fontOptions } from '../input/fontInput';
import { folderOfInput, readInputOrFolder } from '../input/input';
import { readAny, tableOptions } from '../input/readAny';
import { soundInput } from '../input/soundInput';
import { controllerWords, wholeWord } from '../output/noteWords';
import { firstBytes, outputFile, refuseOverwriting } from '../output/overwriting';
import { renderJson, renderText, renderWarnings } from '../output/renderOutput';
import { playedParts } from '../output/renderWords';
import { write } from '../output/writeOutput';
import type { Terminal } from '../terminal';
import { readWords } from '../words';

const usualRate = 44100;
const highestSeed = 0xffffffff;
/** Milliseconds between two lines that say how far it is. */
const progressEvery = 5000;

/** `zonewright render`: what notes sound like, as a WAV file. */
export async function render(args: readonly string[], terminal: Terminal): Promise<number> {
  const { paths, options, lists, switches } = readWords(args, {
    key: 'text',
    keys: 'text',
    midi: 'text',
    velocity: 'text',
    hold: 'text',
    controller: 'texts',
    rate: 'text',
    seed: 'text',
    quality: ['live', 'reference'],
    output: 'text',
    format: ['text', 'json'],
    float: 'switch',
    force: 'switch',
    ...tableOptions,
    ...fontOptions,
  });
  const [name, ...more] = paths;
  if (name === undefined || more.length > 0) throw new CommandError('render takes one file');
  if (options.output === undefined) throw new CommandError('render needs --output FILE.wav');
  const sampleRate = wholeWord('rate', options.rate, [4000, 768000]) ?? usualRate;
  const seed = wholeWord('seed', options.seed, [0, highestSeed]) ?? 0;
  const controllers = controllerWords(lists.controller);
  const { parts, midiPath } = await playedParts(terminal, options);
  const input = await readInputOrFolder(terminal, name, options);
  const { instrument } = await readAny(terminal, input, options, folderOfInput(input));
  const source = await soundInput(terminal, input, instrument);
  const read = [input.path, midiPath, ...source.paths, ...instrument.sources.map((one) => one.path)];
  const file = outputFile(terminal, options.output, switches.has('force'), read);
  const format = switches.has('float') ? 'float32' : 'pcm24';
  // It takes long until there is something to write, so what is there is looked at before.
  await refuseOverwriting(terminal, file, await firstBytes(new WaveFile(sampleRate, format).finish(0)));
  const wave = new WaveFile(sampleRate, format);
  refuseTooLong(parts, wave);
  let report: RenderReport;
  try {
    const quality = options.quality === 'live' ? 'live' : 'reference';
    const progress = progressTo(terminal);
    report = await renderParts(
      source,
      parts,
      { sampleRate, quality, seed, controllers, progress },
      (left, right, count) => {
        if (wave.isFull)
          throw new CommandError('this lasts longer than a WAV file can hold; render it in parts');
        wave.add(left, right, count);
      },
    );
  } finally {
    await source.samples.close();
  }
  await write(terminal, file, wave.finish(report.frames));
  const told = { terminal, instrument, program: source.program, report, sampleRate };
  for (const warning of renderWarnings(told)) terminal.error(`zonewright: ${warning}\n`);
  await terminal.out(options.format === 'json' ? renderJson(told) : renderText(told, options.output));
  return 0;
}

/** A file of a few bytes can ask for days of sound; that is said before any of it is rendered. */
function refuseTooLong(parts: readonly MessagePart[], wave: WaveFile): void {
  const last = parts.reduce((sum, part) => sum + (part.at(-1)?.seconds ?? 0), 0);
  if (last <= wave.mostSeconds) return;
  const hours = (seconds: number) => (seconds / 3600).toFixed(1);
  throw new CommandError(
    `this lasts ${hours(last)} hours, and a WAV file at this rate holds at most ${hours(wave.mostSeconds)}; render it in parts`,
  );
}

function progressTo(terminal: Terminal): (seconds: number) => void {
  let told = Date.now();
  return (seconds) => {
    if (Date.now() - told < progressEvery) return;
    told = Date.now();
    terminal.error(`zonewright: ${seconds.toFixed(1)} s rendered\n`);
  };
}
