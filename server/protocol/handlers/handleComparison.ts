import type { CancellationToken } from 'vscode-languageserver';
import type { NoteDifference } from '../../comparison/compareInstruments';
import { compareInstruments } from '../../comparison/compareInstruments';
import { measureNotes } from '../../comparison/measureNotes';
import type { WordedComparison } from '../../comparison/page/comparisonWords';
import { cellsOf, summaryOf } from '../../comparison/page/comparisonWords';
import { pageOfComparison } from '../../comparison/page/pageOfComparison';
import type { AnswerRequest } from '../answerLater';
import { stopIfCancelled } from '../cancellation';
import { base64Of } from '../conversion/base64';
import { rangeOf } from '../conversion/positions';
import type { ComparedPlace, CompareResult } from '../requests/comparisonRequests';
import { CompareRequest } from '../requests/comparisonRequests';
import type { ServerContext } from '../serverContext';
import type { ReadSide } from './comparedSide';
import { mostPlaces, regionSpan, shownLineOf, sideOf } from './comparedSide';

const options = { toleranceDb: -90, sampleRate: 44100, seed: 0 };
/** Answers the request that compares how two documents sound. */
export function handleComparison(answer: AnswerRequest, server: ServerContext): void {
  const { documents } = server;
  answer(CompareRequest.type, async ({ uri, otherUri }, token) => {
    const readings = [
      (await documents.readingInContext(uri))?.whole,
      (await documents.readingInContext(otherUri))?.whole,
    ];
    stopIfCancelled(token);
    const [first, second] = readings;
    if (!first || !second)
      return { reason: `The ${first ? 'other file' : 'document'} holds no instrument that can be read.` };
    const a = await sideOf(server, first);
    const b = await sideOf(server, second);
    try {
      return await compared(server, [a, b], token);
    } finally {
      await a.samples.close();
      await b.samples.close();
    }
  });
}

async function compared(
  server: ServerContext,
  sides: readonly [ReadSide, ReadSide],
  token: CancellationToken,
): Promise<CompareResult> {
  const [a, b] = sides;
  const stop = new AbortController();
  const listening = token.onCancellationRequested(() => stop.abort());
  try {
    const comparison = await compareInstruments(
      a,
      b,
      {
        ...options,
        signal: stop.signal,
        measure: {
          atOnce: 1,
          // Between two notes others of the server's work goes on.
          measure: async (notes) => {
            await new Promise((resolve) => setTimeout(resolve));
            return measureNotes(a, b, notes, options);
          },
        },
      },
      server.documents.files,
    );
    const worded: WordedComparison = {
      comparison,
      toleranceDb: options.toleranceDb,
      regionPlace: (side, region) => shownLineOf(sides[side], regionSpan(sides[side], region)),
      parameterPlace: (side, parameter) =>
        shownLineOf(sides[side], sides[side].instrument.nameSpan(parameter)),
    };
    return {
      html: await pageOfComparison({
        worded,
        names: [a.name, b.name],
        sides,
        sampleRate: options.sampleRate,
        base64: base64Of,
      }),
      summary: summaryOf(worded).at(-1) ?? '',
      places: [...comparison.differences.map((one) => heardText(worded, one)), ...comparison.unheard]
        .flatMap((one) => [placeOf(server, sides, 0, one), placeOf(server, sides, 1, one)])
        .filter((place) => place !== undefined)
        .slice(0, mostPlaces),
    };
  } finally {
    stopIfCancelled(token);
    listening.dispose();
  }
}

/** A difference between regions, with what is said of it beside its cause. */
type ToldDifference = Pick<NoteDifference, 'a' | 'b' | 'cause'> & { heard?: string };

function heardText(worded: WordedComparison, one: NoteDifference): ToldDifference {
  const [note, , , peak] = cellsOf(worded, one);
  return { ...one, heard: `by ${peak} at ${note}` };
}

/** What one side says in a difference: the parameter that makes it, else the region. */
function placeOf(
  server: ServerContext,
  sides: readonly [ReadSide, ReadSide],
  side: 0 | 1,
  { a, b, cause, heard }: ToldDifference,
): ComparedPlace | undefined {
  const read = sides[side];
  const [parameter, region] = side === 0 ? [cause.a, a] : [cause.b, b];
  if (parameter === undefined && region === undefined) return undefined;
  const span =
    parameter === undefined ? regionSpan(read, region as number) : read.instrument.parameterSpan(parameter);
  const file = read.instrument.sources[span.source];
  const { name } = sides[1 - side];
  return {
    uri: span.source === 0 ? read.uri : server.diagnosticOptions(read.uri).uriOf(file.path),
    range: rangeOf(file, span),
    message: heard
      ? `Sounds different from ${name}, ${heard}. ${cause.message}`
      : `Differs from ${name}, but no played note makes it audible. ${cause.message}`,
  };
}
