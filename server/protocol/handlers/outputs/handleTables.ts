import type { CancellationToken, Position, Range, WorkDoneProgressParams } from 'vscode-languageserver';
import { folderOf } from '../../../model/paths';
import type { Steps } from '../../../model/steps';
import { piecesInStep } from '../../../model/steps';
import { Source } from '../../../model/text/source';
import type { ConvertedTable, TableChoices, TableTarget } from '../../../pasting/convertTable';
import { convertTable } from '../../../pasting/convertTable';
import { instrumentHome } from '../../../pasting/instrumentHome';
import { looksLikeZoneTable } from '../../../table/looksLikeZoneTable';
import { notations } from '../../../workspace/notations/notationOf';
import { takeSteps } from '../../../workspace/takeSteps';
import type { AnswerRequest } from '../../answerLater';
import { stopIfCancelled } from '../../cancellation';
import { offsetOf, rangeOf } from '../../conversion/positions';
import { joinedHeadings, shownMarkup, tableSheet, writtenMarkup } from '../../conversion/tablePreview';
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
    return done ? toldOnce(resultOf(done.converted, done.target.text), range) : null;
  });

  answer(PreviewTableRequest.type, async ({ target: place, text, ...decisions }, token) => {
    const done = await convert(place, text, decisions, token);
    stopIfCancelled(token);
    if (!done) return null;
    const { converted, target } = done;
    const { suggestions, questions, middleC } = converted.reading;
    const stop = () => stopIfCancelled(token);
    const sheet = await takeSteps(tableSheet(converted), stop);
    const home = place.kind === 'new' ? await takeSteps(homeOf(converted.reading), stop) : {};
    const { insertText: _, ...result } = resultOf(converted, target.text);
    return {
      ...result,
      ...sheet,
      groupings: suggestions.map(({ kind, message }) => ({ kind, message })),
      samples: questions.map(({ name, choices, taken }) => ({
        name,
        choices,
        ...(taken !== undefined && { taken }),
      })),
      ...(middleC && { middleC }),
      ...home,
      ...shownMarkup(writtenMarkup(converted, target.text)),
    };
  });
}

/** The home of what a table says, by the samples that were found. */
function* homeOf({ grouped }: ConvertedTable['reading']): Steps<{ home?: string }> {
  const folders = new Set<string>();
  const { zones } = grouped ?? {};
  for (let zone = 0; zones && zone < zones.count; zone++) {
    if (zone % piecesInStep === 0) yield zone / zones.count;
    const path = zones.sample(zone);
    const end = Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\'));
    if (end >= 0) folders.add(path.slice(0, end + 1).replaceAll('\\', '/'));
  }
  const home = instrumentHome([...folders]);
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

/** A result without its edits where they put its text in the place of a range and do nothing else: that text can be long. */
function toldOnce({ edits, ...rest }: ConvertTableResult, range: Range): ConvertTableResult {
  const [edit, ...more] = edits ?? [];
  const isTwin = edit?.newText === rest.insertText && more.length === 0 && isSameRange(edit?.range, range);
  return isTwin ? rest : { ...rest, ...(edits && { edits }) };
}

function isSameRange(one: Range | undefined, { start, end }: Range): boolean {
  const isSame = (a: Position | undefined, b: Position) => a?.line === b.line && a.character === b.character;
  return isSame(one?.start, start) && isSame(one?.end, end);
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
