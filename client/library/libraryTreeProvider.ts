import type { Event, TreeDataProvider } from 'vscode';
import { EventEmitter, l10n, ThemeColor, ThemeIcon, TreeItem, TreeItemCollapsibleState } from 'vscode';
import type { LibraryRow, RowState } from '../../server/library/report/libraryRow';
import type { LibraryView } from '../../server/protocol/requests/libraryRequests';
import type { Libraries } from './libraries';

/** A library, or an instrument of one. */
export type LibraryNode = { library: LibraryView; row?: LibraryRow };

/** The tree of libraries and their instruments with their states. */
export class LibraryTreeProvider implements TreeDataProvider<LibraryNode> {
  readonly #libraries: Libraries;
  readonly #changed = new EventEmitter<undefined>();
  readonly onDidChangeTreeData: Event<undefined> = this.#changed.event;

  constructor(libraries: Libraries) {
    this.#libraries = libraries;
    libraries.onDidChange(() => this.#changed.fire(undefined));
  }

  async getChildren(node?: LibraryNode): Promise<LibraryNode[]> {
    if (node?.row) return [];
    if (node) return node.library.rows.map((row) => ({ library: node.library, row }));
    return (await this.#libraries.views()).map((library) => ({ library }));
  }

  getTreeItem({ library, row }: LibraryNode): TreeItem {
    return row ? instrumentItem(library, row) : libraryItem(library);
  }
}

function libraryItem(library: LibraryView): TreeItem {
  const { title, rows, problems, uri } = library;
  const item = new TreeItem(title, TreeItemCollapsibleState.Expanded);
  const built = rows.filter(({ state }) => state === 'built').length;
  item.id = uri;
  item.contextValue = 'library';
  item.description = l10n.t('{0} of {1} built', built, rows.length);
  item.iconPath = new ThemeIcon(problems.length > 0 ? 'warning' : 'library');
  item.tooltip = problems.join('\n') || undefined;
  return item;
}

function instrumentItem(library: LibraryView, row: LibraryRow): TreeItem {
  const item = new TreeItem(row.name, TreeItemCollapsibleState.None);
  item.id = `${library.uri}#${row.fileName}`;
  item.contextValue = row.text === undefined ? 'instrument' : 'builtInstrument';
  item.description = descriptionOf(row);
  item.iconPath = iconOf(row);
  const lines = [
    stateText(row.state),
    row.message,
    proofText(row),
    row.proof?.where,
    ...row.doubts,
    row.source,
  ];
  item.tooltip = lines.filter(Boolean).join('\n');
  item.accessibilityInformation = { label: `${row.name}, ${stateText(row.state)}, ${descriptionOf(row)}` };
  item.command = {
    command: 'zonewright.openLibraryInstrument',
    title: l10n.t('Open'),
    arguments: [{ library, row }],
  };
  return item;
}

function stateText(state: RowState): string {
  const words: Readonly<Record<RowState, string>> = {
    built: l10n.t('built'),
    stale: l10n.t('changed since'),
    failed: l10n.t('failed'),
    missing: l10n.t('not built'),
  };
  return words[state];
}

/** How it sounds beside its source, where that was proved. */
function proofText({ proof }: LibraryRow): string | undefined {
  if (!proof) return undefined;
  const db = proof.worstDb === null ? '' : ` (${l10n.t('{0} dB', proof.worstDb)})`;
  switch (proof.verdict) {
    case 'alike':
      return l10n.t('sounds alike') + db;
    case 'noted':
      return l10n.t('differs where noted') + db;
    case 'differs':
      return l10n.t('sounds different') + db;
  }
}

function descriptionOf(row: LibraryRow): string {
  const { state, regions, missing = 0, errors, warnings, message, proof } = row;
  const parts = [];
  if (state !== 'built') parts.push(stateText(state));
  if (regions !== undefined) parts.push(regions === 1 ? l10n.t('1 region') : l10n.t('{0} regions', regions));
  if (missing > 0)
    parts.push(missing === 1 ? l10n.t('1 sample missing') : l10n.t('{0} samples missing', missing));
  if (errors > 0) parts.push(errors === 1 ? l10n.t('1 error') : l10n.t('{0} errors', errors));
  else if (warnings > 0) parts.push(warnings === 1 ? l10n.t('1 warning') : l10n.t('{0} warnings', warnings));
  if (state !== 'failed' && message !== undefined) parts.push(l10n.t('not in all targets'));
  if (proof) parts.push(proofText(row));
  return parts.join(' · ');
}

function iconOf({ state, errors, message, proof }: LibraryRow): ThemeIcon {
  if (state === 'failed') return new ThemeIcon('error', new ThemeColor('list.errorForeground'));
  if (state === 'missing') return new ThemeIcon('circle-outline');
  if (state === 'stale') return new ThemeIcon('history');
  return errors > 0 || message !== undefined || proof?.verdict === 'differs'
    ? new ThemeIcon('warning', new ThemeColor('list.warningForeground'))
    : new ThemeIcon('pass');
}
