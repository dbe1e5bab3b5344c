import type { CancellationToken, TextDocument, Uri } from 'vscode';
import { l10n, ProgressLocation, Range, WorkspaceEdit, window } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type {
  ConvertTableResult,
  PreviewTableResult,
  PreviewTarget,
  TableDecisions,
} from '../../server/protocol/tableRequests';
import { ConvertTableRequest, PreviewTableRequest } from '../../server/protocol/tableRequests';
import type { RememberedCorrections } from './corrections';

/** Where the regions of a table go: in the place of a stretch of a document, or into a new document. */
export type TablePlace =
  | { kind: 'document'; document: TextDocument; start: number; end: number }
  | { kind: 'new'; format: 'sfz' | 'xml'; folder: Uri | undefined; name: string };

/** A preview with the decisions that it was made with. */
export interface DecidedPreview {
  preview: PreviewTableResult;
  decisions: TableDecisions;
}

/** Asks the server about copied tables, with the corrections that are remembered for their headings. */
export class TableConversion {
  readonly #client: BaseLanguageClient;
  readonly corrections: RememberedCorrections;

  constructor(client: BaseLanguageClient, corrections: RememberedCorrections) {
    this.#client = client;
    this.corrections = corrections;
  }

  /** The regions of a table, for a stretch of a document; `undefined` where the document holds no instrument. */
  async convert(
    document: TextDocument,
    range: Range,
    text: string,
    decisions: TableDecisions = {},
    token?: CancellationToken,
  ): Promise<ConvertTableResult | undefined> {
    const parameters = {
      uri: this.#client.code2ProtocolConverter.asUri(document.uri),
      range: this.#client.code2ProtocolConverter.asRange(range),
      text,
    };
    const ask = (more: TableDecisions) => {
      const answer = this.#client.sendRequest(ConvertTableRequest.type, { ...parameters, ...more }, token);
      // A paste shows by itself that it is under way, and can be stopped.
      return token ? answer : withProgress(text, answer);
    };
    const first = await ask(decisions);
    const known = first ? this.corrections.find(first.headings) : undefined;
    return (known ? await ask({ ...decisions, ...known }) : first) ?? undefined;
  }

  /** How a table is understood; decisions that are given count over what is remembered. */
  async preview(
    place: TablePlace,
    text: string,
    decisions: TableDecisions,
  ): Promise<DecidedPreview | undefined> {
    const target = this.#target(place);
    const ask = (more: TableDecisions) =>
      withProgress(text, this.#client.sendRequest(PreviewTableRequest.type, { target, text, ...more }));
    const first = await ask(decisions);
    if (!first) return undefined;
    const known = decisions.columns || decisions.middleC ? undefined : this.corrections.find(first.headings);
    if (!known) return { preview: first, decisions };
    const corrected = { ...decisions, ...known };
    const again = await ask(corrected);
    return again ? { preview: again, decisions: corrected } : undefined;
  }

  /** The change that a result makes to a document, as one edit to undo. */
  async workspaceEdit(document: TextDocument, { edits }: ConvertTableResult): Promise<WorkspaceEdit> {
    const change = new WorkspaceEdit();
    change.set(document.uri, await this.#client.protocol2CodeConverter.asTextEdits(edits ?? []));
    return change;
  }

  #target(place: TablePlace): PreviewTarget {
    const { code2ProtocolConverter: converter } = this.#client;
    if (place.kind === 'document') {
      const uri = converter.asUri(place.document.uri);
      return { kind: 'document', uri, range: converter.asRange(rangeOf(place)) };
    }
    const { format, folder } = place;
    return { kind: 'new', format, ...(folder && { folderUri: converter.asUri(folder) }) };
  }
}

/** The stretch of a document that regions take the place of. */
export function rangeOf({ document, start, end }: Extract<TablePlace, { kind: 'document' }>): Range {
  return new Range(document.positionAt(start), document.positionAt(end));
}

/** Texts of this length and more take long enough to say so. */
const longText = 500_000;

async function withProgress<Answer>(text: string, answer: Promise<Answer>): Promise<Answer> {
  if (text.length < longText) return answer;
  const title = l10n.t('Reading a long table');
  return window.withProgress({ location: ProgressLocation.Notification, title }, () => answer);
}
