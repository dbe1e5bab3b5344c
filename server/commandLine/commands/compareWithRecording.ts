import { compareRecording } from '../../comparison/recording/compareRecording';
import { usualTolerances } from '../../comparison/recording/judgeNote';
import type { Recording } from '../../comparison/recording/recordingSound';
import type { PlayableInstrument } from '../../playing/playable/playableInstrument';
import type { TimedMessage } from '../../playing/player/playMessage';
import { sweepOf, usualSweep } from '../../playing/sweep/sweep';
import { SampleSource } from '../../sound/samples/sampleSource';
import { CommandError } from '../commandError';
import { folderOfInput, readInputOrFolder } from '../input/input';
import { readAny } from '../input/readAny';
import { soundInput } from '../input/soundInput';
import { recordingHtml, recordingJson, recordingText } from '../output/recordingOutput';
import { midiParts } from '../output/renderWords';
import type { Terminal } from '../terminal';
import { absolutePath } from '../terminalPaths';

const progressEvery = 5000;
/** A level that counts as silence, as a factor: −90 dB. */
const silentPeak = 10 ** (-90 / 20);

type Options = Readonly<Record<string, string | undefined>>;

/** `zonewright compare A --recording FILE.wav`: what a recording of the original says of an instrument; status 1 where they differ. */
export async function compareWithRecording(
  terminal: Terminal,
  name: string,
  options: Options & { recording: string },
): Promise<number> {
  const levelDb = options.tolerance === undefined ? usualTolerances.levelDb : Number(options.tolerance);
  if (!(levelDb >= 0) || options.tolerance?.trim() === '')
    throw new CommandError(
      `--tolerance takes dB of 0 or more between notes of a recording, not "${options.tolerance}"`,
    );
  const input = await readInputOrFolder(terminal, name, options);
  const { instrument } = await readAny(terminal, input, options, folderOfInput(input));
  const source = await soundInput(terminal, input, instrument);
  const samples = new SampleSource(terminal.files);
  try {
    const recording = await openRecording(terminal, samples, options.recording);
    const part = await pieceOf(terminal, source.playable, options.notes);
    const tolerances = { ...usualTolerances, levelDb };
    const compared = await compareRecording(source, part, recording, {
      tolerances,
      progress: progressTo(terminal),
    });
    if (compared.notes === 0)
      throw new CommandError(`${input.name}: no note of the piece lets a region sound`);
    if (compared.peak < silentPeak) throw new CommandError(`${options.recording}: it is silent throughout`);
    const told = {
      terminal,
      name: input.name,
      recording: options.recording,
      instrument,
      compared,
      tolerances,
    };
    const { format } = options;
    const answer =
      format === 'json'
        ? recordingJson(told)
        : format === 'html'
          ? recordingHtml(told)
          : recordingText(told, format === 'markdown');
    await terminal.out(answer);
    return compared.fits && compared.differing.length === 0 ? 0 : 1;
  } finally {
    await samples.close();
    await source.samples.close();
  }
}

async function openRecording(terminal: Terminal, samples: SampleSource, name: string): Promise<Recording> {
  const path = absolutePath(terminal, name);
  const stat = await terminal.files.stat(path);
  if (stat?.kind !== 'file') throw new CommandError(`${name}: there is no such file`);
  const shape = await samples.shape(path);
  if (!shape || shape.frames === 0) throw new CommandError(`${name}: this is no audio that can be read`);
  if (shape.rate < leastRate || shape.rate > mostRate)
    throw new CommandError(`${name}: a sample rate of ${shape.rate} Hz cannot be compared`);
  return { samples, path, sampleRate: shape.rate, frames: shape.frames, channels: shape.channels };
}

/** Rates at which the voice renders. */
const leastRate = 4000;
const mostRate = 768000;

/** What was played: a MIDI file, else the sweep that the instrument's own command writes. */
async function pieceOf(
  terminal: Terminal,
  playable: PlayableInstrument,
  name: string | undefined,
): Promise<readonly TimedMessage[]> {
  if (name === undefined)
    return sweepOf(playable, usualSweep).messages.flatMap(({ seconds, message }) =>
      message.kind === 'tempo' ? [] : [{ seconds, message }],
    );
  const { parts } = await midiParts(terminal, name);
  return parts.flat();
}

function progressTo(terminal: Terminal): (seconds: number) => void {
  let told = Date.now();
  return (seconds) => {
    if (Date.now() - told < progressEvery) return;
    told = Date.now();
    terminal.error(`zonewright: ${seconds.toFixed(0)} s played\n`);
  };
}
