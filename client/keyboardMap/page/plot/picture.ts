import { drawMapSvg } from '../../../../server/map/svg';
import type { ViewChart } from '../../../../server/map/views/viewChart';
import type { ShownMap } from '../shown/shownMap';

/** Pixels of a picture for each of the drawing, fewer where it would be larger than browsers paint. */
const density = 2;
const mostPixels = 8192;

/** A map as it is shown, as files that stand on their own. */
export interface MapPicture {
  /** A drawing that follows what its reader prefers, light or dark. */
  svg: string;
  /** A picture in base 64, light or dark as the editor is; absent where the browser cannot paint it. */
  png?: string;
}

/** Draws what is shown of a map, its curve where there is one, with title and legend. */
export async function pictureOf({ scene, hiddenLayers }: ShownMap, chart?: ViewChart): Promise<MapPicture> {
  const { classList } = document.body;
  const isLight = classList.contains('vscode-light') || classList.contains('vscode-high-contrast-light');
  const part = { hiddenLayers, chart };
  const svg = drawMapSvg(scene, 'auto', part);
  const png = await painted(drawMapSvg(scene, isLight ? 'light' : 'dark', part)).catch(() => undefined);
  return png === undefined ? { svg } : { svg, png };
}

async function painted(svg: string): Promise<string | undefined> {
  const image = new Image();
  image.src = `data:image/svg+xml,${encodeURIComponent(svg)}`;
  await image.decode();
  const { naturalWidth: width, naturalHeight: height } = image;
  const scale = Math.min(density, mostPixels / width, mostPixels / height);
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(width * scale);
  canvas.height = Math.round(height * scale);
  canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height);
  return /^data:image\/png;base64,(.+)$/.exec(canvas.toDataURL('image/png'))?.[1];
}
