import { recordingPage } from '../../comparison/page/recordingPage';
import type { WordedRecording } from '../../comparison/page/recordingWords';
import { compareRecording } from '../../comparison/recording/compareRecording';
import { usualTolerances } from '../../comparison/recording/judgeNote';
import type { RecordedSound } from '../../comparison/recording/recordingSound';
import { openRecordingAt, silentPeak } from '../../comparison/recording/recordingSound';
import { usualPiece } from '../../comparison/recording/usualPiece';
import type { PlayableInstrument } from '../../playing/playable/playableInstrument';
import type { TimedMessage } from '../../playing/player/playMessage';
import { SampleSource } from '../../sound/samples/sampleSource';
import { CommandError } from '../commandError';
import { folderOfInput, readInputOrFolder } from '../input/input';
import { readAny } from '../input/readAny';
import { parameterPlace, regionPlace } from '../input/regionPlaces';
import { soundInput } from '../input/soundInput';
import { recordingJson, recordingText } from '../output/recordingOutput';
import { midiParts } from '../output/renderWords';
import type { Terminal } from '../terminal';
import { absolutePath } from '../terminalPaths';

const progressEvery = 5000;

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
      `with --recording, --tolerance takes a number of dB from 0 up, such as 3, not "${options.tolerance}"`,
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
      throw new CommandError(`${input.name}: no note of the MIDI file makes a region sound`);
    if (compared.peak < silentPeak) throw new CommandError(`${options.recording}: it is silent throughout`);
    const told: WordedRecording = {
      name: input.name,
      recording: options.recording,
      instrument,
      compared,
      tolerances,
      regionPlace: (region) => regionPlace(terminal, instrument, region),
      parameterPlace: (parameter) => parameterPlace(terminal, instrument, parameter),
    };
    const { format } = options;
    const answer =
      format === 'json'
        ? recordingJson(told)
        : format === 'html'
          ? recordingPage(told)
          : recordingText(told, format === 'markdown');
    await terminal.out(answer);
    return compared.fits && compared.differing.length === 0 ? 0 : 1;
  } finally {
    await samples.close();
    await source.samples.close();
  }
}

async function openRecording(
  terminal: Terminal,
  samples: SampleSource,
  name: string,
): Promise<RecordedSound> {
  const path = absolutePath(terminal, name);
  const stat = await terminal.files.stat(path);
  if (stat?.kind !== 'file') throw new CommandError(`${name}: there is no such file`);
  const opened = await openRecordingAt(samples, path);
  if ('reason' in opened) throw new CommandError(`${name}: ${opened.reason}`);
  return opened;
}

/** What was played: a MIDI file, else the sweep that the instrument's own command writes. */
async function pieceOf(
  terminal: Terminal,
  playable: PlayableInstrument,
  name: string | undefined,
): Promise<readonly TimedMessage[]> {
  if (name === undefined) return usualPiece(playable);
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
