import type { Tab, TextDocument, TextEditor } from 'vscode';
import { TabInputText, TabInputWebview, ViewColumn, window } from 'vscode';

/** Documents that were shown beside another one, as texts of their URIs. */
const shown = new Set<string>();

/**
 * The group of editors for what belongs beside the document that a person works on: the one that holds such things already,
 * else another one that is there, else a new one. So no further column opens with each result.
 */
export function sideColumn(): ViewColumn {
  const { activeTabGroup, all } = window.tabGroups;
  if (activeTabGroup.activeTab && isBeside(activeTabGroup.activeTab)) return activeTabGroup.viewColumn;
  const others = all.filter((group) => group !== activeTabGroup);
  const used =
    others.find(({ tabs }) => tabs.some(isBeside)) ??
    others.find(({ viewColumn }) => viewColumn > activeTabGroup.viewColumn) ??
    others[0];
  return used?.viewColumn ?? ViewColumn.Beside;
}

/** Shows a document beside the one that a person works on. */
export async function showBeside(
  document: TextDocument,
  how: { preserveFocus?: boolean; preview?: boolean } = {},
): Promise<TextEditor> {
  const viewColumn = sideColumn();
  shown.add(document.uri.toString());
  return window.showTextDocument(document, { viewColumn, ...how });
}

/** Shows a document in the group in which it is open already, else in the one that a person works in. */
export async function showWhereOpen(document: TextDocument): Promise<TextEditor> {
  const uri = document.uri.toString();
  const open = window.tabGroups.all.find(({ tabs }) =>
    tabs.some(({ input }) => input instanceof TabInputText && input.uri.toString() === uri),
  );
  return window.showTextDocument(document, open && { viewColumn: open.viewColumn });
}

function isBeside({ input }: Tab): boolean {
  if (input instanceof TabInputText) return shown.has(input.uri.toString());
  return input instanceof TabInputWebview && input.viewType.includes('zonewright');
}
