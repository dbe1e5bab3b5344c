import type { VscodeButton } from '@vscode-elements/elements/dist/vscode-button/index.js';
import type { TemplateResult } from 'lit';
import { html, nothing } from 'lit';
import { counted } from '../../../server/model/wording/counted';
import { button } from '../../webview/page/controls/button';
import { choiceList } from '../../webview/page/controls/choice';
import { l10n } from '../../webview/page/l10n';
import { PageElement } from '../../webview/page/pageElement';
import type { RecordingsFromPage, RecordingsToPage, ShownRecordings } from '../messages';
import { recordingTable } from './recordingTable';

/** Lines of the text that are shown. */
const mostLines = 1500;

/** Shows what becomes of each recording of a folder and why, and tells what a person decides. */
export class RecordingsPage extends PageElement<RecordingsToPage, RecordingsFromPage, object> {
  #shown: ShownRecordings | undefined;
  #wasFocused = false;

  constructor() {
    super({});
    document.addEventListener('keydown', (event) => {
      if (event.key !== 'Enter' || !(event.ctrlKey || event.metaKey)) return;
      event.preventDefault();
      if (this.#canWrite) this.tell({ type: 'write' });
    });
  }

  protected override receive({ shown }: RecordingsToPage): void {
    this.#shown = shown;
    this.requestUpdate();
  }

  protected override render(): TemplateResult {
    if (this.#shown) return this.#sheet(this.#shown);
    return html`<section class="empty">
      <h1>${l10n.t('Folder of recordings')}</h1>
      <p role="status">${l10n.t('Listening to the recordings.')}</p>
    </section>`;
  }

  #sheet(shown: ShownRecordings): TemplateResult {
    const { folder, text, notes, unreadable, format } = shown;
    return html`<header>
        <h1>${l10n.t('Recordings in {0}, for a new instrument', folder)}</h1>
        <p role="status" aria-live="polite">${summaryOf(shown)}</p>
        <p class="quiet">
          ${l10n.t('Listen to each key before you believe it. Start quietly. Recordings belong to their makers.')}
        </p>
      </header>
      <div>
        <h2 id="decisions-title">${l10n.t('What becomes of each recording, and why')}</h2>
        <div class="scroller" id="decisions" tabindex="0" role="region" aria-labelledby="decisions-title">
          ${recordingTable(shown, (path, isTaken) => this.tell({ type: 'take', path, isTaken }))}
        </div>
      </div>
      <div class="sides">
        <section class="side" aria-labelledby="notes-title">
          <h2 id="notes-title">${l10n.t('What holds for all of them')}</h2>
          <ul class="notes">
            ${notes.map(({ kind, message }) => html`<li class="note"><span class="kind">${kind}</span> ${message}</li>`)}
            ${unreadable.map((path) => html`<li class="note">${l10n.t('{0} cannot be read as audio.', path)}</li>`)}
          </ul>
        </section>
        <section class="side" aria-labelledby="markup-title">
          <h2 id="markup-title">${l10n.t('What is written')}</h2>
          <pre class="markup" id="markup" tabindex="0" aria-labelledby="markup-title">${shownText(text)}</pre>
        </section>
      </div>
      <footer>
        ${button({
          id: 'write',
          label: l10n.t('New instrument'),
          isDisabled: !this.#canWrite,
          press: () => this.tell({ type: 'write' }),
        })}
        ${button({
          id: 'notes',
          label: l10n.t('Show notes'),
          isSecondary: true,
          press: () => this.tell({ type: 'notes' }),
        })}
        ${choiceList({
          id: 'format',
          label: l10n.t('Notation'),
          options: [
            { value: 'sfz', label: 'SFZ' },
            { value: 'xml', label: l10n.t('instrument XML') },
          ],
          value: format,
          choose: (value) => this.tell({ type: 'format', format: value === 'xml' ? 'xml' : 'sfz' }),
        })}
        <span class="quiet">${l10n.t('Control or Command with Enter writes.')}</span>
      </footer>`;
  }

  get #canWrite(): boolean {
    return (this.#shown?.regionCount ?? 0) > 0;
  }

  protected override updated(): void {
    if (!this.#shown || this.#wasFocused) return;
    this.#wasFocused = true;
    const write = this.querySelector<VscodeButton>('#write');
    // Before its first drawing a control takes no focus.
    void write?.updateComplete.then(() => write.focus({ preventScroll: true }));
  }
}

function summaryOf({ regionCount, decisions, leftOut }: ShownRecordings): string {
  const out = decisions.filter(({ place }) => !place).length + leftOut.length;
  if (regionCount === 0)
    return l10n.t('Nothing can be written, because no chosen recording says which note it is.');
  return out === 0
    ? `${counted(regionCount, 'region')}.`
    : `${counted(regionCount, 'region')}; ${counted(out, 'recording is', 'recordings are')} left out.`;
}

/** Text to be written, as much of it as a person looks through. */
function shownText(text: string): string | typeof nothing {
  if (text === '') return nothing;
  const lines = text.split('\n');
  if (lines.length <= mostLines) return text;
  return `${lines.slice(0, mostLines).join('\n')}\n${l10n.t('… and {0} more lines', lines.length - mostLines)}`;
}
