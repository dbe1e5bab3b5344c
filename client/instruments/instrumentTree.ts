import type { Event, TreeDataProvider } from 'vscode';
import { l10n, ThemeColor, ThemeIcon, TreeItem, TreeItemCollapsibleState, workspace } from 'vscode';
import type { InstrumentStates, KnownInstrument } from './instrumentStates';

/** The tree of the instruments in the open folders, with what the last check found in each. */
export class InstrumentTree implements TreeDataProvider<KnownInstrument> {
  readonly #states: InstrumentStates;
  readonly onDidChangeTreeData: Event<void>;

  constructor(states: InstrumentStates) {
    this.#states = states;
    this.onDidChangeTreeData = states.onDidChange;
  }

  getChildren(node?: KnownInstrument): KnownInstrument[] {
    return node ? [] : this.#states.all();
  }

  getTreeItem(instrument: KnownInstrument): TreeItem {
    const { uri } = instrument;
    const path = workspace.asRelativePath(uri);
    const name = path.slice(path.lastIndexOf('/') + 1);
    const folder = path.slice(0, Math.max(0, path.length - name.length - 1));
    const item = new TreeItem(name, TreeItemCollapsibleState.None);
    const state = stateText(instrument);
    item.id = uri.toString();
    item.resourceUri = uri;
    item.contextValue = 'instrument';
    item.description = [state, folder].filter((part) => part !== '').join(' · ');
    item.iconPath = iconOf(instrument);
    item.tooltip = [path, state, whenText(instrument)].join('\n');
    item.accessibilityInformation = { label: [name, state, folder].join(', ') };
    item.command = { command: 'vscode.open', title: l10n.t('Open'), arguments: [uri] };
    return item;
  }
}

function stateText({ state }: KnownInstrument): string {
  if (!state) return l10n.t('not checked');
  const { errors, warnings, others: remarks, missingSamples } = state;
  const parts: string[] = [];
  if (missingSamples > 0)
    parts.push(
      missingSamples === 1 ? l10n.t('1 sample missing') : l10n.t('{0} samples missing', missingSamples),
    );
  const others = errors - missingSamples;
  if (others > 0) parts.push(others === 1 ? l10n.t('1 error') : l10n.t('{0} errors', others));
  if (warnings > 0) parts.push(warnings === 1 ? l10n.t('1 warning') : l10n.t('{0} warnings', warnings));
  if (parts.length === 0 && remarks > 0)
    return remarks === 1 ? l10n.t('1 remark') : l10n.t('{0} remarks', remarks);
  return parts.length === 0 ? l10n.t('nothing wrong') : parts.join(', ');
}

function whenText({ checked }: KnownInstrument): string {
  return checked
    ? l10n.t('Last checked: {0}', checked.toLocaleString())
    : l10n.t('Not checked since the folder was opened.');
}

function iconOf({ state }: KnownInstrument): ThemeIcon {
  if (!state) return new ThemeIcon('circle-outline');
  if (state.errors > 0) return new ThemeIcon('error', new ThemeColor('list.errorForeground'));
  return state.warnings > 0
    ? new ThemeIcon('warning', new ThemeColor('list.warningForeground'))
    : new ThemeIcon('pass');
}
