import { commands, languages, workspace } from 'vscode';
import { showFilled } from './showFilled';
import { showBeside } from './sideGroup';

/**
 * Shows a text beside the document that a person works on, unsaved, so that it can be saved as any other. Markdown is shown as it
 * reads, where the editor's own preview is there.
 */
export async function showPage(language: 'markdown' | 'csv', content: string): Promise<void> {
  const known = await languages.getLanguages();
  const page = await workspace.openTextDocument({
    language: known.includes(language) ? language : 'plaintext',
  });
  await showFilled(page, content, showBeside);
  if (language !== 'markdown') return;
  try {
    await commands.executeCommand('markdown.showPreview', page.uri);
  } catch {
    // There is no such command; the text is shown already.
  }
}
