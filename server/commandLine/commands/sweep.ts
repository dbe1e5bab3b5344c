import { nameOf } from '../../model/paths';
import { visibleText } from '../../model/text/visibleText';
import { counted } from '../../model/wording/counted';
import type { Sweep } from '../../playing/sweep/sweep';
import { sweepOf, usualSweep } from '../../playing/sweep/sweep';
import { sweepMidi } from '../../playing/sweep/sweepMidi';
import { CommandError } from '../commandError';
import { fontOptions } from '../input/fontInput';
import { folderOfInput, readInputOrFolder } from '../input/input';
import { playableInput } from '../input/playableInput';
import { readAny, tableOptions } from '../input/readAny';
import type { RegionPlace } from '../input/regionPlaces';
import { regionPlace } from '../input/regionPlaces';
import { silentLines } from '../output/explanationText';
import { secondsWord, wholeWord } from '../output/noteWords';
import { outputFile } from '../output/overwriting';
import { write } from '../output/writeOutput';
import type { Terminal } from '../terminal';
import { readWords } from '../words';

const mostSeconds = 600;
const highestSeed = 0xffffffff;

/** `zonewright sweep`: a MIDI file that lets every region of an instrument sound, to record or to compare. */
export async function sweep(args: readonly string[], terminal: Terminal): Promise<number> {
  const { paths, options, switches } = readWords(args, {
    output: 'text',
    hold: 'text',
    gap: 'text',
    seed: 'text',
    force: 'switch',
    ...tableOptions,
    ...fontOptions,
  });
  const [name, ...more] = paths;
  if (name === undefined || more.length > 0) throw new CommandError('sweep takes one file');
  if (options.output === undefined) throw new CommandError('sweep needs --output FILE.mid');
  const seed = wholeWord('seed', options.seed, [0, highestSeed]) ?? 0;
  const holdSeconds = secondsWord('hold', options.hold, mostSeconds) ?? usualSweep.holdSeconds;
  const gapSeconds = secondsWord('gap', options.gap, mostSeconds) ?? usualSweep.gapSeconds;
  const input = await readInputOrFolder(terminal, name, options);
  const { instrument } = await readAny(terminal, input, options, folderOfInput(input));
  const inputs = [input.path, ...instrument.sources.map((source) => source.path)];
  const file = outputFile(terminal, options.output, switches.has('force'), inputs);
  const playable = await playableInput(terminal, input, instrument);
  const made = sweepOf(playable, { holdSeconds, gapSeconds, seed });
  if (made.strikes.length === 0)
    throw new CommandError(`${input.name}: no region of it can sound, so there is nothing to play`);
  await write(terminal, file, sweepMidi(made, `Sweep of ${nameOf(input.path)}`));
  await terminal.out(
    sweepText(made, playable.regionCount, (region) => regionPlace(terminal, instrument, region)),
  );
  return 0;
}

/** What a sweep plays, and the regions that it does not, for a person to read. */
function sweepText(made: Sweep, all: number, placeOf: (region: number) => RegionPlace): string {
  const sounding = all - made.never.length - made.missed.length;
  const strikes = counted(made.strikes.length, 'strike');
  const lines = [`${strikes} in ${durationText(made.lengthSeconds)}: ${sounding} of ${all} regions sound.`];
  const missed = 'It needs a state that MIDI cannot reach, or that this order of notes does not reach.';
  const silent = [
    ...made.never.map(({ region, reason, message }) => ({ ...placeOf(region), reason, message })),
    ...made.missed.map((region) => ({ ...placeOf(region), reason: 'missed', message: missed })),
  ];
  if (silent.length > 0) lines.push('', 'Silent', ...silentLines(silent));
  return `${lines.map(visibleText).join('\n')}\n`;
}

function durationText(seconds: number): string {
  const whole = Math.round(seconds);
  const minutes = Math.floor(whole / 60);
  return minutes === 0 ? `${whole} s` : `${minutes} min ${whole % 60} s`;
}
