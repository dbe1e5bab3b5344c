import type {
  MiddleCChoice,
  PreviewTableResult,
  TableDecisions,
} from '../../../server/protocol/requests/tableRequests';
import type { ColumnMeaning } from '../../../server/trade/meaning';
import type { HostMessage, PageMessage, ShownPlace } from '../messages';
import { choicesMarkup } from './choicesMarkup';
import { columnsMarkup } from './columnsMarkup';
import { otherNotesMarkup, rowsMarkup, shownText } from './rowsMarkup';
import { skeleton } from './skeleton';

/** Shows how a table is understood, and tells what a person decides. */
export class PreviewView {
  readonly #root: HTMLElement;
  readonly #tell: (message: PageMessage) => void;

  constructor(root: HTMLElement, tell: (message: PageMessage) => void) {
    this.#root = root;
    this.#tell = tell;
    root.innerHTML = skeleton;
    root.addEventListener('change', ({ target }) => this.#changed(target));
    root.addEventListener('click', ({ target }) => {
      const button = target instanceof Element ? target.closest<HTMLElement>('button[data-action]') : null;
      if (button) this.#act(button.dataset.action);
    });
    document.addEventListener('keydown', (event) => {
      if (event.key !== 'Enter' || !(event.ctrlKey || event.metaKey)) return;
      event.preventDefault();
      this.#act('write');
    });
  }

  show({ preview, decisions, place }: Extract<HostMessage, { type: 'preview' }>): void {
    const isFirst = this.#part('sheet').hidden;
    const focused = document.activeElement?.id ?? '';
    const scroller = this.#part('scroller');
    const markup = this.#part('markup');
    const kept = [scroller.scrollTop, scroller.scrollLeft, markup.scrollTop, markup.scrollLeft] as const;
    this.#part('empty').hidden = true;
    this.#part('sheet').hidden = false;
    this.#part('title').textContent =
      place.kind === 'new' ? 'Copied table, for a new instrument' : `Copied table, for ${place.name}`;
    this.#part('summary').textContent = summaryOf(preview, decisions);
    const problem = this.#part('problem');
    problem.hidden = preview.problem === undefined;
    problem.textContent = preview.problem ?? '';
    const byHand = new Set((decisions.columns ?? []).map(([column]) => column));
    this.#part('columns').innerHTML = columnsMarkup(preview.columns, byHand);
    this.#part('choices').innerHTML = choicesMarkup(preview, decisions, place);
    markup.textContent = shownText(preview.markup);
    this.#part('notes').innerHTML = otherNotesMarkup(preview);
    this.#part('rows').innerHTML = rowsMarkup(preview);
    this.#showActions(preview, decisions, place);
    [scroller.scrollTop, scroller.scrollLeft, markup.scrollTop, markup.scrollLeft] = kept;
    const again = focused === '' ? null : document.getElementById(focused);
    if (again) again.focus({ preventScroll: true });
    else if (isFirst) this.#button('write').focus({ preventScroll: true });
  }

  showNothing(reason: string): void {
    this.#part('empty').hidden = false;
    this.#part('empty').textContent = reason;
    this.#part('sheet').hidden = true;
  }

  #showActions(preview: PreviewTableResult, decisions: TableDecisions, place: ShownPlace): void {
    const write = this.#button('write');
    const isUpdate = decisions.update === true && preview.matchCount > 0 && place.kind === 'document';
    write.textContent = isUpdate ? 'Show the difference' : 'Write';
    write.disabled = preview.problem !== undefined || preview.regionCount === 0;
    this.#button('write-text').hidden = place.kind === 'new';
    const isCorrected = (decisions.columns ?? []).length > 0 || decisions.middleC !== undefined;
    this.#button('forget').hidden = !isCorrected;
  }

  #changed(target: EventTarget | null): void {
    if (target instanceof HTMLSelectElement) {
      const { column, sample } = target.dataset;
      const { value, id } = target;
      if (column !== undefined) {
        const meaning = value === '' ? null : (value as ColumnMeaning);
        this.#tell({ type: 'column', column: Number(column), meaning });
      } else if (sample !== undefined)
        this.#tell({ type: 'sample', name: sample, path: value === '' ? null : value });
      else if (id === 'middle-c') this.#tell({ type: 'middleC', middleC: value as MiddleCChoice });
      else if (id === 'format') this.#tell({ type: 'format', format: value === 'xml' ? 'xml' : 'sfz' });
    } else if (target instanceof HTMLInputElement) {
      const { grouping } = target.dataset;
      if (grouping !== undefined) this.#tell({ type: 'grouping', kind: grouping, isTaken: target.checked });
      else if (target.name === 'update') this.#tell({ type: 'update', isUpdate: target.value === 'yes' });
    }
  }

  #act(action: string | undefined): void {
    if (action === 'write' && !this.#part('sheet').hidden && !this.#button('write').disabled)
      this.#tell({ type: 'write' });
    else if (action === 'writeText') this.#tell({ type: 'writeText' });
    else if (action === 'forget') this.#tell({ type: 'forget' });
  }

  #button(id: string): HTMLButtonElement {
    return this.#root.querySelector(`#${id}`) as HTMLButtonElement;
  }

  #part(name: string): HTMLElement {
    return this.#root.querySelector(`[data-part="${name}"]`) as HTMLElement;
  }
}

function summaryOf(
  { regionCount, notes, matchCount, changedCount, unchangedCount, addedCount, problem }: PreviewTableResult,
  { update }: TableDecisions,
): string {
  if (problem !== undefined) return 'Nothing can be written yet.';
  const noted = notes.length === 0 ? 'no notes' : counted(notes.length, 'note');
  if (update && matchCount > 0)
    return `${counted(changedCount, 'region')} to change, ${unchangedCount} the same already, ${addedCount} to add; ${noted}.`;
  return `${counted(regionCount, 'region')}; ${noted}.`;
}

function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}
