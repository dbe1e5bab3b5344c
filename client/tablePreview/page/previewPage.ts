import type { VscodeButton } from '@vscode-elements/elements/dist/vscode-button/index.js';
import type { TemplateResult } from 'lit';
import { html, nothing } from 'lit';
import { counted } from '../../../server/model/wording/counted';
import type { PreviewTableResult, TableDecisions } from '../../../server/protocol/requests/tableRequests';
import { button } from '../../webview/page/controls/button';
import { l10n } from '../../webview/page/l10n';
import { PageElement } from '../../webview/page/pageElement';
import type { PreviewFromPage, PreviewToPage } from '../messages';
import { tableChoices } from './choices';
import { columnTable } from './columns';
import { otherNotes, previewRows, shownText } from './rows';

type Shown = Extract<PreviewToPage, { type: 'preview' }>;

/** Shows how a table is understood, and tells what a person decides. */
export class PreviewPage extends PageElement<PreviewToPage, PreviewFromPage, object> {
  #shown: Shown | undefined;
  #reason = l10n.t('Waiting for a table.');
  #wasFocused = false;

  constructor() {
    super({});
    document.addEventListener('keydown', (event) => {
      if (event.key !== 'Enter' || !(event.ctrlKey || event.metaKey)) return;
      event.preventDefault();
      if (this.#canWrite) this.tell({ type: 'write' });
    });
  }

  protected override receive(message: PreviewToPage): void {
    if (message.type === 'preview') this.#shown = message;
    else {
      this.#shown = undefined;
      this.#reason = message.reason;
    }
    this.requestUpdate();
  }

  protected override render(): TemplateResult {
    if (this.#shown) return this.#sheet(this.#shown);
    return html`<section class="empty">
      <h1>${l10n.t('Copied table')}</h1>
      <p role="status">${this.#reason}</p>
    </section>`;
  }

  #sheet({ preview, decisions, place }: Shown): TemplateResult {
    const byHand = new Set((decisions.columns ?? []).map(([column]) => column));
    const scalesByHand = new Set((decisions.scales ?? []).map(([column]) => column));
    const title =
      place.kind === 'new'
        ? place.path === undefined
          ? l10n.t('Copied table, for a new instrument')
          : l10n.t('Copied table, for {0}, which is new', place.path)
        : l10n.t('Copied table, for {0}', place.name);
    const { problem } = preview;
    return html`<header>
        <h1>${title}</h1>
        <p role="status" aria-live="polite">${summaryOf(preview, decisions)}</p>
        ${problem === undefined ? nothing : html`<p class="problem" role="alert">${problem}</p>`}
      </header>
      <div class="sides">
        <div class="side">
          <section aria-labelledby="columns-title">
            <h2 id="columns-title">${l10n.t('Columns as understood')}</h2>
            ${columnTable(
              preview.columns,
              { meanings: byHand, scales: scalesByHand },
              (column, meaning) => this.tell({ type: 'column', column, meaning }),
              (column, scale) => this.tell({ type: 'scale', column, scale }),
            )}
          </section>
          ${tableChoices(preview, decisions, place, (message) => this.tell(message))}
        </div>
        <section class="side" aria-labelledby="markup-title">
          <h2 id="markup-title">${l10n.t('What is written')}</h2>
          <pre class="markup" id="markup" tabindex="0" aria-labelledby="markup-title">${shownText(preview)}</pre>
        </section>
      </div>
      <div>
        <h2 id="rows-title">${l10n.t('Rows and notes')}</h2>
        ${otherNotes(preview)}
        <div class="scroller" id="rows" tabindex="0" role="region" aria-labelledby="rows-title">
          ${previewRows(preview)}
        </div>
      </div>
      ${this.#actions(preview, decisions, place)}`;
  }

  #actions(preview: PreviewTableResult, decisions: TableDecisions, place: Shown['place']): TemplateResult {
    const isUpdate = decisions.update === true && preview.matchCount > 0 && place.kind === 'document';
    const isCorrected =
      (decisions.columns ?? []).length + (decisions.scales ?? []).length > 0 ||
      decisions.middleC !== undefined;
    return html`<footer>
      ${button({
        id: 'write',
        label: isUpdate ? l10n.t('Show the difference') : l10n.t('Write'),
        isDisabled: !this.#canWrite,
        press: () => this.tell({ type: 'write' }),
      })}
      ${
        place.kind === 'new'
          ? nothing
          : button({
              id: 'write-text',
              label: l10n.t('Write as text'),
              isSecondary: true,
              press: () => this.tell({ type: 'writeText' }),
            })
      }
      ${button({
        id: 'template',
        label: l10n.t('Into a template…'),
        isSecondary: true,
        isDisabled: !this.#canWrite,
        press: () => this.tell({ type: 'template' }),
      })}
      ${
        isCorrected
          ? button({
              id: 'forget',
              label: l10n.t('Forget corrections for these headings'),
              isSecondary: true,
              press: () => this.tell({ type: 'forget' }),
            })
          : nothing
      }
      <span class="quiet">${l10n.t('Control or Command with Enter writes.')}</span>
    </footer>`;
  }

  get #canWrite(): boolean {
    const preview = this.#shown?.preview;
    return preview !== undefined && preview.problem === undefined && preview.regionCount > 0;
  }

  protected override updated(): void {
    if (!this.#shown || this.#wasFocused) return;
    this.#wasFocused = true;
    const write = this.querySelector<VscodeButton>('#write');
    // Before its first drawing a control takes no focus.
    void write?.updateComplete.then(() => write.focus({ preventScroll: true }));
  }
}

function summaryOf(result: PreviewTableResult, { update }: TableDecisions): string {
  const { regionCount, notes, matchCount, changedCount, unchangedCount, addedCount, goneCount, problem } =
    result;
  if (problem !== undefined) return l10n.t('Nothing can be written yet.');
  const noted = notes.length === 0 ? l10n.t('no notes') : counted(notes.length, 'note');
  if (update && matchCount > 0)
    return `${counted(changedCount, 'region')} to change, ${unchangedCount} the same already, ${addedCount} to add${goneCount > 0 ? `, ${goneCount} without a row in the table` : ''}; ${noted}.`;
  return `${counted(regionCount, 'region')}; ${noted}.`;
}
