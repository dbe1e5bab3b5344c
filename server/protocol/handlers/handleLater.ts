import type { BuildHost } from '../../library/build/runBuild';
import { answerLater } from '../answerLater';
import { CompareRecordingRequest, CompareRequest } from '../requests/comparisonRequests';
import { ConvertRequest, VocabulariesRequest } from '../requests/conversionRequests';
import {
  FontPartRequest,
  FontRequest,
  FontSampleRequest,
  FontTextRequest,
  WriteFontRequest,
} from '../requests/fontRequests';
import { BuildLibraryRequest, LibrariesRequest } from '../requests/libraryRequests';
import { MakePackRequest, PackPartRequest } from '../requests/packRequests';
import { RecordingsRequest } from '../requests/recordingsRequest';
import {
  AddSamplesRequest,
  ArrangeMapRequest,
  KeyboardMapRequest,
  MapFindingsRequest,
  MapMeasuresRequest,
} from '../requests/requests';
import { SampleReportRequest } from '../requests/sampleRequests';
import { SampleAudioRequest, SoundRequest } from '../requests/soundRequests';
import { ConvertTableRequest, LooksLikeTableRequest, PreviewTableRequest } from '../requests/tableRequests';
import type { ServerContext } from '../serverContext';

/** What a machine with a disk is to a build, loaded when something is built. */
export type OpenBuildHost = () => Promise<BuildHost>;

/** Answers the requests that come when a person asks for something, by what is loaded only then. */
export function handleLater(
  server: ServerContext,
  builds: OpenBuildHost | undefined,
  isTrusted: () => boolean,
): void {
  handleLaterMaps(server);
  handleLaterSound(server);
  handleLaterTexts(server);
  handleLaterPackages(server, builds, isTrusted);
}

function handleLaterMaps(server: ServerContext): void {
  const { connection } = server;
  const mapRequests = [KeyboardMapRequest, MapMeasuresRequest, MapFindingsRequest, ArrangeMapRequest];
  answerLater(connection, mapRequests, async () => {
    const { handleInstrumentRequests } = await import('./handleInstrumentRequests');
    return (answer) => handleInstrumentRequests(answer, server);
  });
  answerLater(connection, [AddSamplesRequest], async () => {
    const { handleAddSamples } = await import('./handleAddSamples');
    return (answer) => handleAddSamples(answer, server);
  });
  answerLater(connection, [SampleReportRequest], async () => {
    const { handleSamples } = await import('./handleSamples');
    return (answer) => handleSamples(answer, server);
  });
}

function handleLaterSound(server: ServerContext): void {
  const { connection } = server;
  answerLater(connection, [SoundRequest, SampleAudioRequest], async () => {
    const { handleSound } = await import('./handleSound');
    return (answer) => handleSound(answer, server);
  });
  answerLater(connection, [CompareRequest], async () => {
    const { handleComparison } = await import('./handleComparison');
    return (answer) => handleComparison(answer, server);
  });
  answerLater(connection, [CompareRecordingRequest], async () => {
    const { handleRecordingComparison } = await import('./handleRecordingComparison');
    return (answer) => handleRecordingComparison(answer, server);
  });
}

function handleLaterTexts(server: ServerContext): void {
  const { connection } = server;
  answerLater(connection, [LooksLikeTableRequest, ConvertTableRequest, PreviewTableRequest], async () => {
    const { handleTables } = await import('./outputs/handleTables');
    return (answer) => handleTables(answer, server);
  });
  answerLater(connection, [ConvertRequest, VocabulariesRequest], async () => {
    const { handleConversion } = await import('./outputs/handleConversion');
    return (answer) => handleConversion(answer, server);
  });
  answerLater(connection, [RecordingsRequest], async () => {
    const { handleRecordings } = await import('./outputs/handleRecordings');
    return (answer) => handleRecordings(answer, server);
  });
}

function handleLaterPackages(
  server: ServerContext,
  builds: OpenBuildHost | undefined,
  isTrusted: () => boolean,
): void {
  const { connection } = server;
  const fontRequests = [FontRequest, FontTextRequest, FontSampleRequest, WriteFontRequest, FontPartRequest];
  answerLater(connection, fontRequests, async () => {
    const { handleFonts } = await import('./outputs/handleFonts');
    return (answer) => handleFonts(answer, server);
  });
  answerLater(connection, [LibrariesRequest, BuildLibraryRequest], async () => {
    const { handleLibrary } = await import('./outputs/handleLibrary');
    const host = await builds?.();
    return (answer) => handleLibrary(answer, server, host, isTrusted);
  });
  answerLater(connection, [MakePackRequest, PackPartRequest], async () => {
    const { handlePacks } = await import('./outputs/handlePacks');
    const host = await builds?.();
    return (answer) => handlePacks(answer, server, host?.flacLibrary);
  });
}
