import type { CancellationToken, TextDocument, Uri } from 'vscode';
import { l10n, ProgressLocation, Range, WorkspaceEdit, window } from 'vscode';
import type {
  ConvertTableResult,
  PreviewTableResult,
  PreviewTarget,
  TableDecisions,
} from '../../server/protocol/requests/tableRequests';
import { ConvertTableRequest, PreviewTableRequest } from '../../server/protocol/requests/tableRequests';
import { toProtocol } from '../protocolRange';
import type { ServerClient } from '../serverClient';
import type { RememberedCorrections } from './corrections';

/** Where the regions of a table go: in the place of a stretch of a document, or into a new document. */
export type TablePlace =
  | { kind: 'document'; document: TextDocument; start: number; end: number }
  | { kind: 'new'; format: 'sfz' | 'xml'; folder: Uri | undefined; name: string; isProposed?: boolean };

/** A preview with the decisions that it was made with. */
export interface DecidedPreview {
  preview: PreviewTableResult;
  decisions: TableDecisions;
}

/** Asks the server about copied tables, with the corrections that are remembered for their headings. */
export class TableConversion {
  readonly #client: ServerClient;
  readonly corrections: RememberedCorrections;

  constructor(client: ServerClient, corrections: RememberedCorrections) {
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
      uri: document.uri.toString(),
      range: toProtocol(range),
      text,
    };
    const ask = async (more: TableDecisions) => {
      const whole = { ...parameters, ...more };
      // A paste shows by itself that it is under way, and can be stopped.
      const result = await (token
        ? this.#client.sendRequest(ConvertTableRequest.type, whole, token)
        : this.#withProgress(text, (shown) =>
            this.#client.sendRequest(ConvertTableRequest.type, { ...whole, ...shown.params }, shown.token),
          ));
      if (result?.edits || result?.insertText === undefined) return result;
      return { ...result, edits: [{ range: parameters.range, newText: result.insertText }] };
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
      this.#withProgress(text, ({ params, token }) =>
        this.#client.sendRequest(PreviewTableRequest.type, { target, text, ...more, ...params }, token),
      );
    const first = await ask(decisions);
    if (!first) return undefined;
    const known =
      decisions.columns || decisions.scales || decisions.middleC
        ? undefined
        : this.corrections.find(first.headings);
    if (!known) return { preview: first, decisions };
    const corrected = { ...decisions, ...known };
    const again = await ask(corrected);
    return again ? { preview: again, decisions: corrected } : undefined;
  }

  /** The change that a result makes to a document, as one edit to undo. */
  async workspaceEdit(document: TextDocument, { edits }: ConvertTableResult): Promise<WorkspaceEdit> {
    const change = new WorkspaceEdit();
    change.set(document.uri, await this.#client.asTextEdits(edits ?? []));
    return change;
  }

  /** Shows of a long table how far it is read; `null` where the person ends that. */
  async #withProgress<Answer>(
    text: string,
    ask: (shown: Shown) => Promise<Answer | null>,
  ): Promise<Answer | null> {
    if (text.length < longText) return ask({ params: {}, token: undefined });
    const options = {
      location: ProgressLocation.Notification,
      title: l10n.t('Reading a long table'),
      cancellable: true,
    };
    return window.withProgress(options, async (progress, token) => {
      const workDoneToken = `zonewright-table-${++shownCount}`;
      let before = 0;
      const listener = await this.#client.onWorkDone(workDoneToken, ({ percentage = before }) => {
        progress.report({ increment: percentage - before });
        before = percentage;
      });
      try {
        return await ask({ params: { workDoneToken }, token });
      } catch (error) {
        if (token.isCancellationRequested) return null;
        throw error;
      } finally {
        listener.dispose();
      }
    });
  }

  #target(place: TablePlace): PreviewTarget {
    if (place.kind === 'document') {
      const uri = place.document.uri.toString();
      return { kind: 'document', uri, range: toProtocol(replacedRange(place)) };
    }
    const { format, folder } = place;
    return { kind: 'new', format, ...(folder && { folderUri: folder.toString() }) };
  }
}

/** The stretch of a document that regions take the place of. */
export function replacedRange({ document, start, end }: Extract<TablePlace, { kind: 'document' }>): Range {
  return new Range(document.positionAt(start), document.positionAt(end));
}

/** Texts of this length and more take long enough to say so. */
const longText = 500_000;

/** How a request is shown, and how a person ends it. */
interface Shown {
  params: { workDoneToken?: string };
  token: CancellationToken | undefined;
}

let shownCount = 0;
