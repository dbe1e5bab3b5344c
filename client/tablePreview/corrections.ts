import type { Memento } from 'vscode';
import type { TableCorrections } from '../../server/protocol/requests/tableRequests';

const storageKey = 'tableCorrections';
/** So many rows of headings are remembered; the oldest are forgotten first. */
const most = 200;

type Stored = readonly (readonly [headings: string, corrections: TableCorrections])[];

/** What a person has corrected in copied tables, kept for later tables with the same headings. */
export class RememberedCorrections {
  readonly #memento: Memento;

  constructor(memento: Memento) {
    this.#memento = memento;
  }

  /** The corrections for a row of headings, as the server names it; a table without headings has none. */
  find(headings: string): TableCorrections | undefined {
    return headings === '' ? undefined : this.#all().get(headings);
  }

  async remember(headings: string, corrections: TableCorrections): Promise<void> {
    if (headings === '') return;
    const all = this.#all();
    all.delete(headings);
    const isNothing =
      (corrections.columns ?? []).length + (corrections.scales ?? []).length === 0 &&
      corrections.middleC === undefined;
    if (!isNothing) all.set(headings, corrections);
    await this.#memento.update(storageKey, [...all].slice(-most));
  }

  /** Forgets all corrections; answers for how many rows of headings there were some. */
  async forgetAll(): Promise<number> {
    const { size } = this.#all();
    await this.#memento.update(storageKey, undefined);
    return size;
  }

  #all(): Map<string, TableCorrections> {
    return new Map(this.#memento.get<Stored>(storageKey, []));
  }
}
