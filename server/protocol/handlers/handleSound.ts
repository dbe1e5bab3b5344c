import { usedControllers } from '../../features/usedControllers';
import type { Files } from '../../model/files';
import { playableInstrument } from '../../playing/playable/makePlayable';
import { sfzNotation } from '../../sfz/notation';
import { soundOf } from '../../sound/program/soundOf';
import { SampleSource } from '../../sound/samples/sampleSource';
import type { DocumentReading } from '../../workspace/openDocument';
import { foundSample } from '../../workspace/samples/foundSample';
import type { SampleStore } from '../../workspace/samples/sampleStore';
import type { AnswerRequest } from '../answerLater';
import { stopIfCancelled } from '../cancellation';
import { packed } from '../conversion/packedData';
import { noPreset, presetAtUri } from '../requestedPreset';
import type { InstrumentPlace } from '../requests/requests';
import type { AudibleInstrument, SampleAudioResult } from '../requests/soundRequests';
import { SampleAudioRequest, SoundRequest } from '../requests/soundRequests';
import type { ServerContext } from '../serverContext';

/** Rounds of asking: for folders, for files. */
const mostRounds = 70;
/** Frames of audio that are answered at once. */
const mostFrames = 1 << 18;

/** Nothing of the file's own moves what is heard: no loop, no root key, no velocity. */
const aloneOpcodes = 'pitch_keycenter=60 loop_mode=one_shot amp_veltrack=0';

const nothing: SampleAudioResult = { rate: 44100, totalFrames: 0, channels: [] };

/** Answers the requests for what is needed to play an instrument. */
export function handleSound(answer: AnswerRequest, server: ServerContext): void {
  const { documents } = server;
  const source = new SampleSource(documents.files);
  const states = new FileStates(documents.files, documents.samples);
  /** Where the samples of an instrument are, by what the text calls them. */
  const pathsOf = new Map<string, ReadonlyMap<string, string>>();

  answer(SoundRequest.type, async (place, token) => {
    const { uri, preset } = place;
    const reading = preset
      ? await presetAtUri(server, uri, preset)
      : (await documents.readingInContext(uri))?.whole;
    stopIfCancelled(token);
    if (!reading)
      return { instrument: null, reason: preset ? noPreset : 'This document holds no instrument.' };
    const { sampleOf } = place;
    const { instrument, paths } = await audible(
      documents.samples,
      sampleOf === undefined ? reading : aloneIn(reading, sampleOf),
    );
    stopIfCancelled(token);
    pathsOf.set(nameOf(place), new Map([...(pathsOf.get(nameOf(place)) ?? []), ...paths]));
    const sampleStates = await states.of(instrument.program.samples.map((sample) => paths.get(sample)));
    return { instrument: packed({ ...instrument, sampleStates }) };
  });

  answer(SampleAudioRequest.type, async ({ sample, startFrame, frames, ...place }, token) => {
    const path = pathsOf.get(nameOf(place))?.get(sample);
    const shape = path === undefined ? undefined : await source.shape(path);
    stopIfCancelled(token);
    if (path === undefined || !shape) return nothing;
    const count = Math.max(0, Math.min(frames, mostFrames));
    const channels = count === 0 ? [] : await source.read(path, Math.max(0, startFrame), count);
    return {
      rate: shape.rate,
      totalFrames: shape.frames,
      channels: channels.map((values) => (packed(values) as { bytes: string }).bytes),
    };
  });
}

/** Sizes and times of files; looked at again as soon as something was told to have changed. */
class FileStates {
  readonly #files: Files;
  readonly #store: SampleStore;
  readonly #known = new Map<string, string>();
  #changes = -1;

  constructor(files: Files, store: SampleStore) {
    this.#files = files;
    this.#store = store;
  }

  /** A word for each file that is another one when the file is; empty for none. */
  async of(paths: readonly (string | undefined)[]): Promise<string[]> {
    if (this.#changes !== this.#store.changes) this.#known.clear();
    this.#changes = this.#store.changes;
    const files = this.#files;
    const wanted = paths.filter((path) => path !== undefined && !this.#known.has(path)) as string[];
    const stats = await (files.stats?.(wanted) ?? Promise.all(wanted.map((path) => files.stat(path))));
    for (const [at, path] of wanted.entries()) {
      const stat = stats[at];
      this.#known.set(path, stat ? `${stat.size} ${stat.modified}` : '');
    }
    return paths.map((path) => (path === undefined ? '' : (this.#known.get(path) ?? '')));
  }
}

/** The sample of a region as an instrument of its own: as it was recorded, to its end, as loud as it is. */
function aloneIn(
  { instrument, folder }: Pick<DocumentReading, 'instrument' | 'folder'>,
  region: number,
): Pick<DocumentReading, 'instrument' | 'folder'> {
  const isRegion = instrument.regions.includes(region);
  const sample = isRegion ? instrument.samplePath(region) : undefined;
  const text = sample === undefined ? '' : `<region> ${aloneOpcodes} sample=${sample}`;
  return { instrument: sfzNotation.read(text, { path: instrument.sources[0].path }), folder };
}

function nameOf({ uri, preset }: InstrumentPlace): string {
  return preset ? `${uri}#${preset.bank}:${preset.program}` : uri;
}

/** What is needed to play an instrument but its samples, and where these are, by what the text calls them. */
export async function audible(
  store: SampleStore,
  { instrument, folder }: Pick<DocumentReading, 'instrument' | 'folder'>,
): Promise<{ instrument: Omit<AudibleInstrument, 'sampleStates'>; paths: ReadonlyMap<string, string> }> {
  const samples = folder === undefined ? undefined : store.lookup(folder);
  const make = () => {
    const known = samples && { samples };
    const playable = playableInstrument(instrument, known);
    const program = soundOf(instrument, known);
    return { playable, program, controllers: usedControllers(instrument, playable) };
  };
  let made = make();
  for (let round = 0; store.wants && round < mostRounds; round++) {
    await store.loadWanted();
    made = make();
  }
  const paths = new Map<string, string>();
  for (const sample of made.program.samples) {
    const path = samples && folder !== undefined ? foundSample(samples, folder, sample) : undefined;
    if (path !== undefined) paths.set(sample, path);
  }
  return { instrument: made, paths };
}
