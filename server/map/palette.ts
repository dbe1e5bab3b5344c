/** Colours of a map that stands on its own. */
export interface Palette {
  paper: string;
  plot: string;
  ink: string;
  quiet: string;
  grid: string;
  natural: string;
  raised: string;
  /** Raised keys that nothing answers. */
  silent: string;
  tones: readonly string[];
}

/**
 * Ink and quiet ink have at least 4.5 : 1 and tones at least 3 : 1 against paper and plot (WCAG 2.2, success criteria
 * 1.4.3 and 1.4.11).
 */
export const palettes: { readonly light: Palette; readonly dark: Palette } = {
  light: {
    paper: '#fbfaf6',
    plot: '#ffffff',
    ink: '#22262c',
    quiet: '#5b6068',
    grid: '#e4e2da',
    natural: '#ffffff',
    raised: '#3a3f47',
    silent: '#c3c5c9',
    tones: ['#3a55a4', '#a4431a', '#0d6e6c', '#87317b', '#7b5a00', '#476b22'],
  },
  dark: {
    paper: '#1c1f24',
    plot: '#22262c',
    ink: '#eceae4',
    quiet: '#a9adb5',
    grid: '#363b43',
    natural: '#d8d6d0',
    raised: '#0f1114',
    silent: '#40454d',
    tones: ['#a3b5f5', '#f0a47f', '#74cdc8', '#e2a0d8', '#dfbf69', '#afd188'],
  },
};

/** The style sheet of a map on its own: one palette, or both with the reader's preference deciding. */
export function mapStyle(theme: 'auto' | 'light' | 'dark'): string {
  const first = colours(theme === 'dark' ? palettes.dark : palettes.light);
  const other = theme === 'auto' ? `@media (prefers-color-scheme:dark){${colours(palettes.dark)}}` : '';
  return fixed + first + other;
}

/**
 * The style sheet of maps in a page, which follows what the reader's system asks for or, in an editor, the class that names
 * its theme.
 */
export function pageMapStyle(): string {
  const { light, dark } = palettes;
  const strongLight = { ...light, paper: '#ffffff', ink: '#000000', quiet: '#000000', grid: '#8a8a8a' };
  const strongDark = {
    ...dark,
    paper: '#000000',
    plot: '#000000',
    ink: '#ffffff',
    quiet: '#ffffff',
    grid: '#6a6a6a',
  };
  return [
    mapStyle('auto'),
    `body.vscode-light{${colours(light)}}`,
    `body.vscode-dark{${colours(dark)}}`,
    `body.vscode-high-contrast{${colours(strongDark)}}`,
    `body.vscode-high-contrast-light{${colours(strongLight)}}`,
  ].join('\n');
}

const fixed = [
  '.keyboard-map text{font-family:"Segoe UI","Helvetica Neue",Helvetica,Arial,sans-serif;font-size:11px}',
  '.keyboard-map .title{font-size:17px;font-weight:600}',
  '.keyboard-map .summary,.keyboard-map .legend-name{font-size:12px}',
  '.keyboard-map .heading{font-weight:600}',
  '.keyboard-map .gap-name{font-style:italic}',
  '.keyboard-map .octave.middle{font-weight:600}',
  '.keyboard-map .label{paint-order:stroke;stroke-width:3px;stroke-linejoin:round}',
  '.keyboard-map .shape{stroke:currentColor;stroke-width:1.2}',
  '.keyboard-map .under{stroke:currentColor;stroke-width:1.2}',
  '.keyboard-map .edge{fill:none;stroke:currentColor;stroke-width:.8;stroke-opacity:.8}',
  '.keyboard-map .tint{fill:currentColor;fill-opacity:.1}',
  '.keyboard-map .texture-line{fill:none;stroke:currentColor;stroke-width:1;stroke-opacity:.5}',
  '.keyboard-map .texture-dot{fill:currentColor;fill-opacity:.6}',
  '.keyboard-map .root{fill:currentColor}',
  '.keyboard-map .grid,.keyboard-map .tick,.keyboard-map .octave-mark{fill:none;stroke-width:1}',
  '.keyboard-map .gap{fill:none;stroke-width:1.6;stroke-linecap:round;stroke-dasharray:.1 3.6}',
  '.keyboard-map .curve{fill:none;stroke:currentColor;stroke-width:2}',
  '.keyboard-map .curve.assumed{stroke-dasharray:2 4}',
  '.keyboard-map .curve-mark{stroke:currentColor;stroke-width:1.5}',
  '.keyboard-map .zero{fill:none;stroke-width:1}',
  '.keyboard-map .overlap{stroke-width:1.6}',
  '.keyboard-map .overlap-line{fill:none;stroke-width:1.3}',
].join('');

function colours({ paper, plot, ink, quiet, grid, natural, raised, silent, tones }: Palette): string {
  const key = `stroke:${quiet};stroke-width:.8`;
  return [
    `.keyboard-map .paper{fill:${paper}}`,
    `.keyboard-map .ground,.keyboard-map .under{fill:${plot}}`,
    `.keyboard-map .plot{fill:${plot};stroke:${quiet};stroke-width:.8}`,
    `.keyboard-map text{fill:${ink}}`,
    `.keyboard-map .label{stroke:${plot}}`,
    `.keyboard-map .quiet,.keyboard-map .gap-name,.keyboard-map .tick-name,.keyboard-map .axis-name,.keyboard-map .octave{fill:${quiet}}`,
    `.keyboard-map .octave.middle{fill:${ink}}`,
    `.keyboard-map .grid{stroke:${grid}}`,
    `.keyboard-map .tick,.keyboard-map .octave-mark{stroke:${quiet}}`,
    `.keyboard-map .gap{stroke:${quiet}}`,
    `.keyboard-map .curve-mark{fill:${plot}}`,
    `.keyboard-map .zero{stroke:${ink}}`,
    `.keyboard-map .overlap,.keyboard-map .overlap-line{stroke:${ink}}`,
    `.keyboard-map .natural{fill:${natural};${key}}`,
    `.keyboard-map .raised{fill:${raised};${key}}`,
    `.keyboard-map .natural.silent,.keyboard-map .natural.switching{fill:${paper}}`,
    `.keyboard-map .raised.silent,.keyboard-map .raised.switching{fill:${silent}}`,
    `.keyboard-map .switch{fill:${ink};stroke:${plot};stroke-width:1}`,
    ...tones.map((tone, number) => `.keyboard-map .tone-${number}{color:${tone}}`),
  ].join('');
}
