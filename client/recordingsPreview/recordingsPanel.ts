import type { Disposable, ExtensionContext, Uri, WebviewPanel } from 'vscode';
import { l10n, ViewColumn, window } from 'vscode';
import type { RecordingsResult } from '../../server/protocol/requests/recordingsRequest';
import { showPage } from '../markdownPage';
import { openNewInstrument } from '../tablePreview/newInstrument';
import { PageHost } from '../webview/pageHost';
import type { RecordingsFromPage, RecordingsToPage } from './messages';

const recordingsPage = {
  name: 'recordingsPreview',
  id: 'recordings-preview',
  title: l10n.t('Folder of recordings'),
};

/** What a person has decided on a folder. */
export interface RecordingsChoice {
  format: 'sfz' | 'xml';
  /** Recordings that are left out, by their paths from the folder. */
  leftOut: readonly string[];
}

/** Asks what is made of a folder as a person has decided; `undefined` where there is nothing, which was told. */
type Ask = (folder: Uri, choice: RecordingsChoice) => Promise<RecordingsResult | undefined>;

interface Subject extends RecordingsChoice {
  folder: Uri;
  result: RecordingsResult;
}

/** The preview of an instrument of recordings alone: each decision with its reason. There is one at a time. */
export class RecordingsPanel implements Disposable {
  readonly #context: ExtensionContext;
  readonly #ask: Ask;
  #panel: WebviewPanel | undefined;
  #page: PageHost<RecordingsToPage, RecordingsFromPage> | undefined;
  #subject: Subject | undefined;

  constructor(context: ExtensionContext, ask: Ask) {
    this.#context = context;
    this.#ask = ask;
  }

  /** Shows what was made of a folder. */
  open(folder: Uri, result: RecordingsResult): void {
    this.#subject = { folder, result, format: 'sfz', leftOut: [] };
    if (this.#panel) this.#panel.reveal();
    else this.#create();
    this.#show();
  }

  #create(): void {
    const title = l10n.t('Recordings');
    const panel = window.createWebviewPanel('zonewright.recordingsPreview', title, ViewColumn.Active);
    const page = new PageHost<RecordingsToPage, RecordingsFromPage>(
      this.#context,
      panel.webview,
      recordingsPage,
      { ready: () => this.#show(), receive: (message) => void this.#receive(message) },
    );
    this.#panel = panel;
    this.#page = page;
    panel.onDidDispose(() => {
      page.dispose();
      this.#panel = undefined;
      this.#page = undefined;
      this.#subject = undefined;
    });
  }

  #show(): void {
    if (!this.#subject) return;
    const { folder, format, leftOut, result } = this.#subject;
    const { page, ...made } = result;
    const shown = { ...made, folder: nameOf(folder), format, leftOut: [...leftOut] };
    this.#page?.send({ type: 'recordings', shown });
  }

  async #receive(message: RecordingsFromPage): Promise<void> {
    const subject = this.#subject;
    if (!subject) return;
    switch (message.type) {
      case 'notes':
        return showPage('markdown', subject.result.page);
      case 'write':
        return write(subject);
      case 'format':
        return this.#change(subject, { ...subject, format: message.format });
      case 'take': {
        const others = subject.leftOut.filter((path) => path !== message.path);
        const leftOut = message.isTaken ? others : [...others, message.path];
        return this.#change(subject, { ...subject, leftOut });
      }
    }
  }

  async #change(subject: Subject, { format, leftOut }: RecordingsChoice): Promise<void> {
    // What is decided next counts at once; a slower answer of before is out of date then.
    subject.format = format;
    subject.leftOut = leftOut;
    const result = await this.#ask(subject.folder, { format, leftOut });
    const isOutOfDate = subject.leftOut !== leftOut || subject.format !== format;
    if (!result || this.#subject !== subject || isOutOfDate) return;
    subject.result = result;
    this.#show();
  }

  dispose(): void {
    this.#panel?.dispose();
  }
}

async function write({ folder, result, format }: Subject): Promise<void> {
  await openNewInstrument(result.text, format, folder, nameOf(folder), (document) =>
    window.showTextDocument(document, { preview: false }),
  );
}

function nameOf({ path }: Uri): string {
  return path.slice(path.lastIndexOf('/') + 1);
}
