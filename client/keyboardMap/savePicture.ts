import { l10n, Uri, window, workspace } from 'vscode';
import { base64Bytes } from '../../server/protocol/conversion/base64';

/** Asks where a picture of a document's map is to go, as a drawing or as pixels, and writes it there. */
export async function savePicture(
  document: Uri | undefined,
  { svg, png }: { svg: string; png?: string },
): Promise<void> {
  if (!document) return;
  const name = document.path.slice(document.path.lastIndexOf('/') + 1).replace(/(\.instrument)?\.\w+$/, '');
  const target = await window.showSaveDialog({
    defaultUri: Uri.joinPath(document, '..', `${name} map.svg`),
    filters: { SVG: ['svg'], ...(png !== undefined && { PNG: ['png'] }) },
    saveLabel: l10n.t('Save Picture'),
  });
  if (!target) return;
  const isPixels = png !== undefined && target.path.toLowerCase().endsWith('.png');
  await workspace.fs.writeFile(target, isPixels ? base64Bytes(png) : new TextEncoder().encode(svg));
}
