import type { LibraryRow, RowProof, RowState } from '../../../server/library/report/libraryRow';
import { noteNamesText } from '../../../server/model/wording/rangeWords';
import { l10n } from '../../webview/page/l10n';

/** A column of the table. */
export interface LibraryColumn {
  id: string;
  title: () => string;
  /** What rows are sorted by; what is not known comes last. */
  value: (row: LibraryRow) => string | number | undefined;
  /** What is shown, where that is not the value. */
  shown?: (row: LibraryRow) => string;
  /** More about it, in a sentence. */
  hint?: (row: LibraryRow) => string | undefined;
  /** Left away where it is known of no instrument. */
  isOnRequest?: true;
}

/** The columns that have something to show for some rows. */
export function columnsFor(rows: readonly LibraryRow[]): LibraryColumn[] {
  return columns.filter(
    ({ isOnRequest, value }) => !isOnRequest || rows.some((row) => value(row) !== undefined),
  );
}

/** What a state is called. */
export function stateText(state: RowState): string {
  switch (state) {
    case 'built':
      return l10n.t('built');
    case 'stale':
      return l10n.t('changed since');
    case 'failed':
      return l10n.t('failed');
    case 'missing':
      return l10n.t('not built');
  }
}

/** How an instrument sounds beside its source. */
function verdictText(verdict: RowProof['verdict']): string {
  switch (verdict) {
    case 'alike':
      return l10n.t('sounds alike');
    case 'noted':
      return l10n.t('differs where noted');
    case 'differs':
      return l10n.t('differs');
  }
}

/** Counts of an instrument that was never read say nothing. */
function ifBuilt(value: (row: LibraryRow) => number): LibraryColumn['value'] {
  return (row) => (row.regions === undefined ? undefined : value(row));
}

/** The columns behind that of the name, from left to right. */
const columns: readonly LibraryColumn[] = [
  { id: 'state', title: () => l10n.t('State'), value: ({ state }) => stateText(state) },
  {
    id: 'proof',
    title: () => l10n.t('Proof'),
    isOnRequest: true,
    value: ({ proof }) => proof && verdictText(proof.verdict),
    hint: ({ proof }) => proof?.where,
  },
  {
    id: 'worst',
    title: () => l10n.t('Worst dB'),
    isOnRequest: true,
    value: ({ proof }) => (proof ? (proof.worstDb ?? Number.NEGATIVE_INFINITY) : undefined),
    shown: ({ proof }) => (proof ? (proof.worstDb === null ? l10n.t('none') : String(proof.worstDb)) : ''),
    hint: ({ proof }) => proof?.where,
  },
  { id: 'regions', title: () => l10n.t('Regions'), value: ({ regions }) => regions },
  {
    id: 'keys',
    title: () => l10n.t('Keys'),
    value: ({ keys }) => keys?.[0],
    shown: ({ keys }) => (keys ? noteNamesText(...keys) : ''),
  },
  { id: 'layers', title: () => l10n.t('Layers'), value: ({ layers }) => layers },
  { id: 'missing', title: () => l10n.t('Missing samples'), value: ({ missing }) => missing },
  { id: 'errors', title: () => l10n.t('Errors'), value: ifBuilt(({ errors }) => errors) },
  { id: 'warnings', title: () => l10n.t('Warnings'), value: ifBuilt(({ warnings }) => warnings) },
  { id: 'cents', title: () => l10n.t('Cents off'), value: ({ cents }) => cents, isOnRequest: true },
  { id: 'loudness', title: () => l10n.t('LUFS'), value: ({ loudness }) => loudness, isOnRequest: true },
  { id: 'assumed', title: () => l10n.t('Assumed'), value: ifBuilt(({ assumed }) => assumed) },
  {
    id: 'approximated',
    title: () => l10n.t('In another way'),
    value: ifBuilt(({ approximated }) => approximated),
  },
  { id: 'dropped', title: () => l10n.t('Left out'), value: ifBuilt(({ dropped }) => dropped) },
  { id: 'doubts', title: () => l10n.t('Doubts'), value: ({ doubts }) => doubts.length },
  { id: 'licence', title: () => l10n.t('Licence'), value: ({ licence }) => licence },
];

/** Rows in the order of a column; `name` is that of the names. Where values are equal the order stays. */
export function sorted(rows: readonly LibraryRow[], by: string, falls: boolean): LibraryRow[] {
  const value = columns.find(({ id }) => id === by)?.value ?? (({ name }: LibraryRow) => name);
  const collator = new Intl.Collator(undefined, { numeric: true });
  return [...rows].sort((a, b) => {
    const [one, other] = [value(a), value(b)];
    if (one === undefined || other === undefined)
      return (one === undefined ? 1 : 0) - (other === undefined ? 1 : 0);
    const order =
      typeof one === 'number' && typeof other === 'number'
        ? one - other
        : collator.compare(String(one), String(other));
    return falls ? -order : order;
  });
}

/** Whether all words of a filter stand somewhere in a row. */
export function isFoundIn(row: LibraryRow, filter: string): boolean {
  const text = [
    row.name,
    row.source,
    row.message ?? '',
    ...columns.map((one) => one.shown?.(row) ?? one.value(row) ?? ''),
  ]
    .join(' ')
    .toLowerCase();
  return filter
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word));
}
