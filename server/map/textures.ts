/**
 * Fills in the manner of a geological section: each layer has a texture and a tone, so that layers differ without
 * colour too. Slanted lines are kept for overlaps.
 */
export interface Texture {
  width: number;
  height: number;
  /** Lines, as a path. */
  lines?: string;
  /** Filled dots, as a path. */
  dots?: string;
}

const dot = (x: number, y: number, radius: number): string =>
  `M${x - radius} ${y}a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0`;

const textures: readonly Texture[] = [
  { width: 10, height: 10, dots: dot(2.5, 2.5, 0.9) + dot(7.5, 7.5, 0.9) },
  { width: 12, height: 7, lines: 'M0 3.5h12' },
  { width: 7, height: 12, lines: 'M3.5 0v12' },
  { width: 12, height: 12, lines: 'M1 3h4M3 1v4M7 9h4M9 7v4' },
  { width: 14, height: 12, lines: 'M0 .5h14M0 6.5h14M3.5 .5v6M10.5 6.5v6' },
  { width: 12, height: 12, lines: dot(3, 3, 1.7) + dot(9, 9, 1.7) },
  { width: 12, height: 8, lines: 'M0 4q3 -4 6 0t6 0' },
  { width: 12, height: 8, lines: 'M1 5h4M7 1h4' },
];

const toneCount = 6;

/** How many combinations of tone and texture there are; layers beyond them begin anew. */
export const fillCount = 24;

/** The combination that a layer is drawn with. */
export function fillOf(layer: number): number {
  return layer % fillCount;
}

/** The class that gives a layer's tone as `color`: `tone-0` to `tone-5`. */
export function toneClass(layer: number): string {
  return `tone-${fillOf(layer) % toneCount}`;
}

/** What a combination looks like. */
export function textureOf(fill: number): Texture {
  return textures[fill % textures.length];
}

/** The lines of overlaps: the texture that no layer has. */
export const overlapTexture: Texture = { width: 7, height: 7, lines: 'M-1 1l2 -2M0 7l7 -7M6 8l2 -2' };

/** The patterns of so many layers, and those of overlaps, as the content of a `defs` element. Ids start with `prefix`. */
export function patternDefinitions(layerCount: number, prefix = ''): string {
  let text = '';
  for (let fill = 0; fill < Math.min(layerCount, fillCount); fill++) {
    const { width, height, lines, dots } = textureOf(fill);
    text += `<pattern id="${prefix}fill-${fill}" class="${toneClass(fill)}" width="${width}" height="${height}" patternUnits="userSpaceOnUse">`;
    text += `<rect class="ground" width="${width}" height="${height}"/><rect class="tint" width="${width}" height="${height}"/>`;
    if (lines) text += `<path class="texture-line" d="${lines}"/>`;
    if (dots) text += `<path class="texture-dot" d="${dots}"/>`;
    text += '</pattern>';
  }
  const { width, height, lines } = overlapTexture;
  text += `<pattern id="${prefix}overlap" width="${width}" height="${height}" patternUnits="userSpaceOnUse"><path class="overlap-line" d="${lines}"/></pattern>`;
  return text;
}
