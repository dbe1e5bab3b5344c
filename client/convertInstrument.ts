import type { DiagnosticCollection, TextDocument } from 'vscode';
import {
  commands,
  Diagnostic,
  DiagnosticSeverity,
  type Disposable,
  l10n,
  languages,
  Range,
  Uri,
  WorkspaceEdit,
  window,
  workspace,
} from 'vscode';
import type {
  ConversionMark,
  ConvertParams,
  ConvertResult,
} from '../server/protocol/requests/conversionRequests';
import { ConvertRequest, VocabulariesRequest } from '../server/protocol/requests/conversionRequests';
import { instrumentIntoTemplate, tableIntoTemplate } from './convertIntoTemplate';
import { mayHoldInstrument } from './languages';
import { showPage } from './markdownPage';
import type { ServerClient } from './serverClient';
import { showBeside } from './sideGroup';
import { openNewInstrument } from './tablePreview/newInstrument';

/** A text that was made by conversion and is not saved yet. */
interface Converted {
  params: ConvertParams;
  text: string;
  /** The folder that its paths start from. */
  folder: Uri;
}

/** Converted texts that are remembered until they are saved. */
const mostUnsaved = 16;

/** Commands that open the instrument in another notation beside its text, unsaved, with what is to be said of it. */
export function registerConversion(client: ServerClient): Disposable[] {
  const conversion = new Conversion(client);
  return [
    conversion,
    commands.registerCommand('zonewright.convertToSfz', () => conversion.convert('sfz')),
    commands.registerCommand('zonewright.convertToXml', () => conversion.convert('xml')),
    commands.registerCommand('zonewright.convertToVocabulary', () => conversion.convertByVocabulary()),
    commands.registerCommand('zonewright.convertIntoTemplate', () => conversion.convertIntoTemplate()),
    commands.registerCommand('zonewright.tableIntoTemplate', (table?: unknown) =>
      conversion.convertTableIntoTemplate(typeof table === 'string' ? table : undefined),
    ),
  ];
}

class Conversion implements Disposable {
  readonly #client: ServerClient;
  readonly #marks: DiagnosticCollection = languages.createDiagnosticCollection('zonewright-conversion');
  #unsaved: Converted[] = [];
  readonly #registrations: Disposable[];

  constructor(client: ServerClient) {
    this.#client = client;
    this.#registrations = [
      this.#marks,
      workspace.onDidCloseTextDocument(({ uri }) => this.#marks.delete(uri)),
      workspace.onDidSaveTextDocument((document) => this.#saved(document)),
    ];
  }

  async convertByVocabulary(): Promise<void> {
    const document = await this.#instrument();
    if (!document) return;
    const uri = document.uri.toString();
    const files = await this.#client.sendRequest(VocabulariesRequest.type, { uri });
    if (files.length === 0) {
      await window.showWarningMessage(
        l10n.t(
          'There is no vocabulary in the open folders. A vocabulary is kept in a file *.vocabulary.json.',
        ),
      );
      return;
    }
    const picked = await window.showQuickPick(
      files.map((file) => ({ label: nameOf(file), description: file.path, uri: file.uri })),
      { placeHolder: l10n.t('Vocabulary to write the instrument in'), matchOnDescription: true },
    );
    if (picked) await this.#convert(document, { vocabularyUri: picked.uri });
  }

  async convert(to: 'sfz' | 'xml'): Promise<void> {
    const document = await this.#instrument();
    if (document) await this.#convert(document, to);
  }

  async convertIntoTemplate(): Promise<void> {
    const document = await this.#instrument();
    const done = document && (await instrumentIntoTemplate(document, (params) => this.#ask(params)));
    if (!done) return;
    const folder = document.isUntitled ? undefined : Uri.joinPath(document.uri, '..');
    await this.#open(done.params, done.result, folder, plainName(document.uri));
  }

  /** Converts a table, or that in the clipboard where none is given. */
  async convertTableIntoTemplate(table?: string): Promise<void> {
    const done = await tableIntoTemplate((params) => this.#ask(params), table);
    if (done) await this.#open(done.params, done.result, done.folder, l10n.t('pasted'));
  }

  async #instrument(): Promise<TextDocument | undefined> {
    const document = window.activeTextEditor?.document;
    if (mayHoldInstrument(document)) return document;
    await window.showWarningMessage(l10n.t('Open the instrument to convert first.'));
    return undefined;
  }

  async #convert(document: TextDocument, to: ConvertParams['to']): Promise<void> {
    const params: ConvertParams = { uri: document.uri.toString(), to };
    const result = await this.#ask(params);
    if (!result) return;
    const folder = document.isUntitled ? undefined : Uri.joinPath(document.uri, '..');
    await this.#open(params, result, folder, plainName(document.uri));
  }

  /** Opens what was made beside its source, unsaved, and tells of it. */
  async #open(
    params: ConvertParams,
    result: ConvertResult,
    folder: Uri | undefined,
    name: string,
  ): Promise<void> {
    const converted = await openNewInstrument(result.text, result.format, folder, name, (document) =>
      showBeside(document, { preview: false }),
    );
    this.#mark(converted, result.marks);
    if (folder && result.hasRelativePaths) this.#remember({ params, text: result.text, folder });
    void this.#tell(result);
  }

  #remember(converted: Converted): void {
    this.#unsaved = [...this.#unsaved, converted].slice(-mostUnsaved);
  }

  async #ask(params: ConvertParams): Promise<ConvertResult | undefined> {
    const result = await this.#client.sendRequest(ConvertRequest.type, params);
    if (!('problem' in result)) return result;
    await window.showWarningMessage(result.problem);
    return undefined;
  }

  #mark(document: TextDocument, marks: readonly ConversionMark[]): void {
    this.#marks.set(
      document.uri,
      marks.map(({ range: { start, end }, kind, message }) => {
        const range = new Range(start.line, start.character, end.line, end.character);
        const isLoss = kind === 'dropped';
        const severity = isLoss ? DiagnosticSeverity.Warning : DiagnosticSeverity.Information;
        const mark = new Diagnostic(range.isEmpty ? lineFrom(document, range) : range, message, severity);
        mark.source = 'zonewright';
        mark.code = kind;
        return mark;
      }),
    );
  }

  async #tell({ notes, kept, page }: ConvertResult): Promise<void> {
    const told =
      notes.length === 0
        ? l10n.t('The instrument was converted. All {0} values were carried over exactly.', kept)
        : l10n.t(
            'The instrument was converted. {0} values were carried over exactly. The notes list the rest: {1}.',
            kept,
            notes.length,
          );
    const show = l10n.t('Show notes');
    if ((await window.showInformationMessage(told, show)) !== show) return;
    await showPage('markdown', page);
  }

  /** A converted text that was saved in another folder than it was made for can have its paths led from there. */
  async #saved(document: TextDocument): Promise<void> {
    const text = document.getText();
    const one = this.#unsaved.find((converted) => converted.text === text);
    if (!one) return;
    this.#unsaved = this.#unsaved.filter((converted) => converted !== one);
    const folder = Uri.joinPath(document.uri, '..');
    if (folder.path === one.folder.path) return;
    const lead = l10n.t('Change the paths');
    const answer = await window.showInformationMessage(
      l10n.t(
        '{0} is in another folder than the instrument that it was made from, so its sample paths do not lead to the files.',
        nameOf(document.uri),
      ),
      lead,
    );
    if (answer !== lead || document.getText() !== text) return;
    const result = await this.#ask({ ...one.params, folderUri: folder.toString() });
    if (!result) return;
    const change = new WorkspaceEdit();
    change.replace(document.uri, new Range(0, 0, document.lineCount, 0), result.text);
    await workspace.applyEdit(change);
  }

  dispose(): void {
    for (const one of this.#registrations) one.dispose();
  }
}

function lineFrom(document: TextDocument, { start }: Range): Range {
  const line = document.lineAt(Math.min(start.line, document.lineCount - 1));
  return new Range(start, line.range.end);
}

function plainName(uri: Uri): string {
  return nameOf(uri).replace(/(\.instrument)?\.\w+$/, '');
}

function nameOf({ path }: { path: string }): string {
  return path.slice(path.lastIndexOf('/') + 1);
}
