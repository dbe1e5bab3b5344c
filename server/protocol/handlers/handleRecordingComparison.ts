import type { CancellationToken } from 'vscode-languageserver';
import { recordingPage } from '../../comparison/page/recordingPage';
import type { WordedRecording } from '../../comparison/page/recordingWords';
import { alignmentText, recordedText, saidParameter } from '../../comparison/page/recordingWords';
import { compareRecording } from '../../comparison/recording/compareRecording';
import { usualTolerances } from '../../comparison/recording/judgeNote';
import { openRecordingAt, silentPeak } from '../../comparison/recording/recordingSound';
import { usualPiece } from '../../comparison/recording/usualPiece';
import type { Files } from '../../model/files';
import { nameOf } from '../../model/paths';
import type { TimedMessage } from '../../playing/player/playMessage';
import { readMidiPart } from '../../sound/render/midiPart';
import { SampleSource } from '../../sound/samples/sampleSource';
import type { AnswerRequest } from '../answerLater';
import { stopIfCancelled } from '../cancellation';
import { rangeOf } from '../conversion/positions';
import { pathOfUri } from '../conversion/uris';
import type { ComparedPlace, CompareResult } from '../requests/comparisonRequests';
import { CompareRecordingRequest } from '../requests/comparisonRequests';
import type { ServerContext } from '../serverContext';
import type { ReadSide } from './comparedSide';
import { mostPlaces, regionSpan, shownLineOf, sideOf } from './comparedSide';

const mostMidiBytes = 64 << 20;

/** Answers the request that compares a document with a recording of the original. */
export function handleRecordingComparison(answer: AnswerRequest, server: ServerContext): void {
  const { documents } = server;
  answer(CompareRecordingRequest.type, async ({ uri, recordingUri }, token) => {
    const reading = (await documents.readingInContext(uri))?.whole;
    const path = pathOfUri(recordingUri);
    stopIfCancelled(token);
    if (!reading) return { reason: 'The document holds no instrument that can be read.' };
    if (path === undefined) return { reason: 'The recording is no file that can be read from here.' };
    const side = await sideOf(server, reading);
    const samples = new SampleSource(documents.files);
    try {
      return await compared(server, side, samples, path, token);
    } finally {
      await samples.close();
      await side.samples.close();
    }
  });
}

async function compared(
  server: ServerContext,
  side: ReadSide,
  samples: SampleSource,
  path: string,
  token: CancellationToken,
): Promise<CompareResult> {
  const { files } = server.documents;
  const recording = await openRecordingAt(samples, path);
  if ('reason' in recording) return { reason: `${nameOf(path)}: ${recording.reason}.` };
  const midi = await midiBeside(files, path);
  if (typeof midi === 'string') return { reason: midi };
  const stop = new AbortController();
  const listening = token.onCancellationRequested(() => stop.abort());
  try {
    const tolerances = usualTolerances;
    const options = { tolerances, signal: stop.signal, progress: letOthersWork() };
    const found = await compareRecording(side, midi ?? usualPiece(side.playable), recording, options);
    if (found.notes === 0) return { reason: 'No note that was played makes a region sound.' };
    if (found.peak < silentPeak) return { reason: `${nameOf(path)} is silent throughout.` };
    const worded: WordedRecording = {
      name: side.name,
      recording: nameOf(path),
      instrument: side.instrument,
      compared: found,
      tolerances,
      regionPlace: (region) => ({
        ...shownLineOf(side, regionSpan(side, region)),
        sample: side.instrument.samplePath(side.instrument.regions[region]) ?? null,
      }),
      parameterPlace: (parameter) => shownLineOf(side, side.instrument.nameSpan(parameter)),
    };
    return {
      html: recordingPage(worded),
      summary: alignmentText(worded),
      places: placesOf(server, side, worded),
    };
  } finally {
    stopIfCancelled(token);
    listening.dispose();
  }
}

/** Milliseconds for which others wait at the most. */
const longestStretch = 30;

/** To be waited for now and then: what else there is to do is done in between. */
function letOthersWork(): () => Promise<void> {
  let since = performance.now();
  return async () => {
    if (performance.now() - since < longestStretch) return;
    await new Promise((resolve) => setTimeout(resolve));
    since = performance.now();
  };
}

/** What the MIDI file of the same name plays; `undefined` where there is none, a sentence where it cannot be read. */
async function midiBeside(files: Files, recording: string): Promise<TimedMessage[] | string | undefined> {
  const path = recording.replace(/\.[^./]*$/, '.mid');
  const reader = path === recording ? undefined : await files.open(path);
  if (!reader) return undefined;
  try {
    if (reader.size > mostMidiBytes) return `${nameOf(path)} is too large for a MIDI file.`;
    const reading = readMidiPart(await reader.read(0, reader.size));
    return reading.kind === 'part' ? [...reading.part] : `${nameOf(path)}: ${reading.reason}.`;
  } finally {
    await reader.close();
  }
}

/** Where the text says what a recording does otherwise: each difference of a note at its parameter, else at the region. */
function placesOf(
  server: ServerContext,
  side: ReadSide,
  { compared: found }: WordedRecording,
): ComparedPlace[] {
  const { instrument } = side;
  const places = found.differing.flatMap((one) =>
    one.differences.map((difference): ComparedPlace => {
      const said = saidParameter(instrument, one, difference);
      const span = said ? instrument.parameterSpan(said.parameter) : regionSpan(side, one.note.regions[0]);
      const file = instrument.sources[span.source];
      const { key, velocity } = one.note;
      return {
        uri: span.source === 0 ? side.uri : server.diagnosticOptions(side.uri).uriOf(file.path),
        range: rangeOf(file, span),
        message: `In the recording key ${key}, velocity ${velocity} sounds different, at ${one.seconds.toFixed(1)} s: ${recordedText(difference)}`,
      };
    }),
  );
  return places.slice(0, mostPlaces);
}
