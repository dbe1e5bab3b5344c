import type { CancellationToken, WorkDoneProgressParams } from 'vscode-languageserver';
import { folderOf } from '../../../model/paths';
import { Source } from '../../../model/text/source';
import type { ConvertedTable, TableChoices, TableTarget } from '../../../pasting/convertTable';
import { convertTable } from '../../../pasting/convertTable';
import { instrumentHome } from '../../../pasting/instrumentHome';
import { looksLikeZoneTable } from '../../../table/looksLikeZoneTable';
import { notations } from '../../../workspace/notations/notationOf';
import type { AnswerRequest } from '../../answerLater';
import { stopIfCancelled } from '../../cancellation';
import { offsetOf, rangeOf } from '../../conversion/positions';
import { joinedHeadings, tableSheet, writtenMarkup } from '../../conversion/tablePreview';
import { pathOfUri } from '../../conversion/uris';
import type { ConvertTableResult, PreviewTarget, TableDecisions } from '../../requests/tableRequests';
import {
  ConvertTableRequest,
  LooksLikeTableRequest,
  PreviewTableRequest,
} from '../../requests/tableRequests';
import type { ServerContext } from '../../serverContext';
import { workShown } from '../../workShown';

/** Answers the requests about copied tables. */
export function handleTables(answer: AnswerRequest, server: ServerContext): void {
  const { connection, documents } = server;

  const convert = async (
    place: PreviewTarget,
    table: string,
    decisions: TableDecisions & WorkDoneProgressParams,
    token: CancellationToken,
  ) => {
    const target = place.kind === 'new' ? newTarget(place) : await documentTarget(server, place);
    if (!target) return undefined;
    const middleC = decisions.middleC ?? (await server.settings.middleC(target.uri, target.path));
    const choices = { ...choicesOf(decisions), middleC };
    const { files, includes } = documents;
    const converted = await workShown(connection, decisions, token, (afterStep) =>
      convertTable(files, includes, table, target, choices, afterStep),
    );
    return { target, converted };
  };

  answer(LooksLikeTableRequest.type, ({ text }) => looksLikeZoneTable(text));

  answer(ConvertTableRequest.type, async ({ uri, range, text, ...decisions }, token) => {
    const done = await convert({ kind: 'document', uri, range }, text, decisions, token);
    stopIfCancelled(token);
    return done ? resultOf(done.converted, done.target.text) : null;
  });

  answer(PreviewTableRequest.type, async ({ target: place, text, ...decisions }, token) => {
    const done = await convert(place, text, decisions, token);
    stopIfCancelled(token);
    if (!done) return null;
    const { converted, target } = done;
    const { suggestions, questions, middleC } = converted.reading;
    return {
      ...resultOf(converted, target.text),
      ...tableSheet(converted),
      groupings: suggestions.map(({ kind, message }) => ({ kind, message })),
      samples: questions.map(({ name, choices, taken }) => ({
        name,
        choices,
        ...(taken !== undefined && { taken }),
      })),
      ...(middleC && { middleC }),
      ...(place.kind === 'new' && homeOf(converted.reading)),
      markup: writtenMarkup(converted, target.text),
    };
  });
}

/** The home of what a table says, by the samples that were found. */
function homeOf({ grouped }: ConvertedTable['reading']): { home?: string } {
  const paths = [...(grouped?.zones.samplePaths() ?? [])];
  const home = instrumentHome(paths.filter((path) => path.includes('/')));
  return home === undefined ? {} : { home };
}

type Target = TableTarget & { uri: string };

/** A document that is still to be made, in a folder where samples are looked for. */
function newTarget({ format, folderUri }: Extract<PreviewTarget, { kind: 'new' }>): Target | undefined {
  const notation = Object.hasOwn(notations, format) ? notations[format] : undefined;
  const folder = folderUri === undefined ? undefined : pathOfUri(folderUri);
  return notation && { uri: '', text: '', start: 0, end: 0, notation, path: undefined, folder };
}

async function documentTarget(
  server: ServerContext,
  { uri, range }: Extract<PreviewTarget, { kind: 'document' }>,
): Promise<Target | undefined> {
  const reading = await server.documents.reading(uri);
  if (!reading) return undefined;
  const { path } = reading.document;
  const format = await server.settings.format(uri, path);
  const text = reading.document.getText();
  const source = new Source(path ?? '', text);
  return {
    uri,
    text,
    start: offsetOf(source, range.start),
    end: offsetOf(source, range.end),
    notation: reading.notation,
    path,
    folder: path === undefined ? undefined : folderOf(path),
    format,
    ...(reading.vocabulary && { sampleStore: server.documents.samples }),
  };
}

function choicesOf({
  columns,
  scales,
  groupings,
  samples,
  update,
  takeOut,
}: TableDecisions): Omit<TableChoices, 'middleC'> {
  return {
    ...(columns && { columns: new Map(columns) }),
    ...(scales && { scales: new Map(scales) }),
    ...(groupings && { groupings: new Set(groupings) }),
    ...(samples && { samples: new Map(samples) }),
    ...(update && { update }),
    ...(takeOut && { takeOut }),
  };
}

function resultOf(converted: ConvertedTable, text: string): ConvertTableResult {
  const { insertText, problem, edits, notes, table, regionCount } = converted;
  const { matchCount, changedCount, unchangedCount, addedCount, goneCount } = converted;
  const source = new Source('', text);
  return {
    notes: notes.map(({ kind, message, start }) => ({ kind, message, line: table.positionAt(start).line })),
    regionCount,
    matchCount,
    changedCount,
    unchangedCount,
    addedCount,
    goneCount,
    headings: joinedHeadings(converted),
    ...(insertText !== undefined && { insertText }),
    ...(problem === undefined
      ? { edits: edits.map((edit) => ({ range: rangeOf(source, edit), newText: edit.newText })) }
      : { problem }),
  };
}
