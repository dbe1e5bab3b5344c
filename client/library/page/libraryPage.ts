import type { TemplateResult } from 'lit';
import { html, nothing, svg } from 'lit';
import type { LibraryRow } from '../../../server/library/report/libraryRow';
import { button } from '../../webview/page/controls/button';
import { l10n } from '../../webview/page/l10n';
import { PageElement } from '../../webview/page/pageElement';
import type { LibraryFromPage, LibraryPlace, LibraryToPage, ShownLibrary } from '../messages';
import type { LibraryColumn } from './columns';
import { columnsFor, isFoundIn, sorted, stateText } from './columns';

/** What is remembered: the order of the rows, and what they are narrowed down to. */
interface Kept {
  by: string;
  falls: boolean;
  filter: string;
}

const nameColumn: Pick<LibraryColumn, 'id' | 'title'> = { id: 'name', title: () => l10n.t('Instrument') };

/** Shows libraries: each instrument with its state and what is known of it; names lead to text, map and sound. */
export class LibraryPage extends PageElement<LibraryToPage, LibraryFromPage, Kept> {
  #libraries: ShownLibrary[] | undefined;
  #progress: Extract<LibraryToPage, { type: 'progress' }> | undefined;

  constructor() {
    super({ by: '', falls: false, filter: '' });
  }

  protected override receive(message: LibraryToPage): void {
    if (message.type === 'libraries') this.#libraries = message.libraries;
    else this.#progress = message.all > 0 ? message : undefined;
    this.requestUpdate();
  }

  protected override render(): TemplateResult {
    const libraries = this.#libraries;
    if (libraries && libraries.length > 0) return html`${libraries.map((one) => this.#library(one))}`;
    return html`<section class="empty">
      <h1>${l10n.t('Library')}</h1>
      <p role="status">
        ${
          libraries
            ? l10n.t(
                'No open folder has a file zonewright.library.json. "zonewright library new FOLDER" writes one.',
              )
            : l10n.t('The library is being read.')
        }
      </p>
    </section>`;
  }

  #library(library: ShownLibrary): TemplateResult {
    const { uri, title, rows, problems } = library;
    const { by, falls, filter } = this.state;
    const found = rows.filter((row) => isFoundIn(row, filter));
    const ordered = by === '' ? found : sorted(found, by, falls);
    const columns = columnsFor(rows);
    const isBuilding = this.#progress !== undefined;
    return html`<header class="head">
        <h1>${title}</h1>
        ${problems.length > 0 ? html`<ul>${problems.map((one) => html`<li>${one}</li>`)}</ul>` : nothing}
      </header>
      <div class="actions">
        ${button({
          id: 'build',
          label: l10n.t('Build Library'),
          isDisabled: isBuilding || rows.length === 0,
          press: () => this.tell({ type: 'build', uri }),
        })}
        ${button({
          id: 'file',
          label: l10n.t('Open Library File'),
          isSecondary: true,
          press: () => this.tell({ type: 'file', uri }),
        })}
        <label
          >${l10n.t('Show those with')}
          <input
            type="search"
            id="filter"
            .value=${filter}
            @input=${(event: Event) => this.#narrow(event)}
          />
        </label>
        <span class="quiet" role="status">${this.#status(uri, found.length, rows.length)}</span>
      </div>
      <div class="wide" tabindex="0" role="region" aria-label=${l10n.t('Instruments')}>
        <table>
          <thead>
            <tr>
              ${this.#head(nameColumn)}
              <th scope="col">${l10n.t('Map')}</th>
              ${columns.map((column) => this.#head(column))}
            </tr>
          </thead>
          <tbody>
            ${ordered.map((row) => this.#row(uri, row, columns))}
          </tbody>
        </table>
      </div>`;
  }

  #status(uri: string, found: number, all: number): string {
    const progress = this.#progress;
    if (progress?.uri === uri) return l10n.t('{0} of {1} built', progress.done, progress.all);
    if (found === all) return all === 1 ? l10n.t('1 instrument') : l10n.t('{0} instruments', all);
    return l10n.t('{0} of {1} instruments', found, all);
  }

  #head({ id, title }: Pick<LibraryColumn, 'id' | 'title'>): TemplateResult {
    const isBy = this.state.by === id;
    const order = !isBy ? 'none' : this.state.falls ? 'descending' : 'ascending';
    return html`<th scope="col" aria-sort=${order}>
      <button type="button" class="sort" id=${`sort-${id}`} @click=${() => this.#sort(id)}>
        ${title()}${isBy ? html`<span aria-hidden="true">${this.state.falls ? ' ↓' : ' ↑'}</span>` : nothing}
      </button>
    </th>`;
  }

  #row(uri: string, row: LibraryRow, columns: readonly LibraryColumn[]): TemplateResult {
    const { name, fileName, state } = row;
    const open = (place: LibraryPlace, label: string) =>
      html`<button
        type="button"
        class="place"
        aria-label=${`${name}: ${label}`}
        @click=${() => this.tell({ type: 'open', uri, fileName, place })}
      >
        ${label}
      </button>`;
    return html`<tr class=${state}>
      <th scope="row">
        ${
          row.text === undefined
            ? html`<button
                type="button"
                class="name"
                @click=${() => this.tell({ type: 'open', uri, fileName, place: 'source' })}
              >
                ${name}
              </button>`
            : html`<button
                type="button"
                class="name"
                @click=${() => this.tell({ type: 'open', uri, fileName, place: 'text' })}
              >
                ${name}
              </button>`
        }
        ${
          row.text === undefined
            ? nothing
            : html`<div class="places">
                ${open('map', l10n.t('Map'))}${open('sound', l10n.t('Sound'))}${open('notes', l10n.t('Notes'))}
                ${open('source', l10n.t('Source'))}
              </div>`
        }
        ${row.message === undefined ? nothing : html`<p class="message">${row.message}</p>`}
        ${row.proof?.verdict === 'differs' ? html`<p class="message">${row.proof.where}</p>` : nothing}
      </th>
      <td>${smallMap(row)}</td>
      ${columns.map((column) => cell(column, row))}
    </tr>`;
  }

  #narrow(event: Event): void {
    this.remember({ filter: (event.target as HTMLInputElement).value });
    this.requestUpdate();
  }

  /** The same column again turns the order round. */
  #sort(id: string): void {
    this.remember({ by: id, falls: this.state.by === id && !this.state.falls });
    this.requestUpdate();
  }
}

function cell({ id, value, shown, hint }: LibraryColumn, row: LibraryRow): TemplateResult {
  if (id === 'state') return html`<td class="state">${stateText(row.state)}</td>`;
  const one = value(row);
  const isNumber = typeof one === 'number' && (!shown || id === 'worst');
  const more = hint?.(row) || nothing;
  return html`<td class=${isNumber ? 'number' : nothing} title=${more}>${shown?.(row) ?? one ?? ''}</td>`;
}

/** Which keys and velocities answer: 128 keys across, 127 velocities up. */
function smallMap({ name, shapes }: LibraryRow): TemplateResult | typeof nothing {
  if (shapes.length === 0) return nothing;
  return html`<svg class="map" viewBox="0 0 128 127" preserveAspectRatio="none" role="img" aria-label=${l10n.t('Map of {0}', name)}>
    ${shapes.map(
      ([low, high, soft, loud]) =>
        svg`<rect x=${low} y=${127 - loud} width=${Math.max(1, high - low + 1)} height=${Math.max(1, loud - soft + 1)} />`,
    )}
  </svg>`;
}
