import type { SampleOutline } from '../../model/samples';

/** Frames of a sample that a region plays and loops. */
export interface PlayedPart {
  /** First and last frame that are played. */
  start: number;
  end: number;
  /** First and last frame of the loop, where there is one. */
  loop?: { start: number; end: number };
}

const width = 288;
const height = 56;

/**
 * A sample's outline as SVG: what is played drawn strongly, what is left out faintly, the loop on a tinted ground between
 * two lines. Its greys and tint can be told from light and from dark grounds.
 */
export function waveformPicture({ frames, lowest, highest }: SampleOutline, played: PlayedPart): string {
  const steps = lowest.length;
  const x = (frame: number) => round((Math.max(0, Math.min(frames, frame)) / frames) * width);
  const peak = Math.max(0.001, ...highest, ...lowest.map((low) => -low));
  const y = (value: number) => round(height / 2 - (value / peak) * (height / 2 - 2));
  const shapes: string[] = [];
  const { loop } = played;
  if (loop) {
    const from = x(loop.start);
    const to = x(loop.end + 1);
    shapes.push(
      `<rect x="${from}" y="0" width="${round(Math.max(1, to - from))}" height="${height}" fill="#d08a2e" fill-opacity="0.25"/>`,
      line(from, '#d08a2e'),
      line(to, '#d08a2e'),
    );
  }
  const inside: string[] = [];
  const outside: string[] = [];
  for (let step = 0; step < steps; step++) {
    const middle = ((step + 0.5) * frames) / steps;
    const at = round(((step + 0.5) * width) / steps);
    const low = y(lowest[step]);
    const high = y(highest[step]);
    const bar = `M${at} ${high}V${round(Math.max(low, high + 1))}`;
    (middle >= played.start && middle <= played.end + 1 ? inside : outside).push(bar);
  }
  const stroke = round((width / steps) * 0.7);
  if (outside.length > 0) shapes.push(path(outside, '#808890', 0.4, stroke));
  if (inside.length > 0) shapes.push(path(inside, '#3f8fa8', 1, stroke));
  if (played.start > 0) shapes.push(line(x(played.start), '#808890'));
  if (played.end < frames - 1) shapes.push(line(x(played.end + 1), '#808890'));
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}">${shapes.join('')}</svg>`;
}

/** A picture in Markdown, its data in the address. */
export function pictureMarkdown(svg: string, words: string): string {
  return `![${words.replace(/[[\]\\]/g, '')}](data:image/svg+xml;base64,${btoa(svg)}|width=${width},height=${height})`;
}

function line(x: number, colour: string): string {
  return `<path d="M${x} 0V${height}" stroke="${colour}" stroke-width="1.5" fill="none"/>`;
}

function path(bars: readonly string[], colour: string, opacity: number, stroke: number): string {
  return `<path d="${bars.join('')}" stroke="${colour}" stroke-opacity="${opacity}" stroke-width="${stroke}" fill="none"/>`;
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
