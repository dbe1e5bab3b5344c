import { escapeMarkup } from '../../map/escape';
import { noteNameOf } from '../../model/keys';

/** A difference on the map: the keys and velocities of the region, the note that shows it, and how great it is. */
export interface MappedDifference {
  lowKey: number;
  highKey: number;
  lowVelocity: number;
  highVelocity: number;
  key: number;
  velocity: number;
  peakDb: number;
  words: string;
}

const width = 1000;
const height = 300;
const left = 40;
const top = 8;
const bottom = 28;
/** What the name of a key takes at the most. */
const nameWidth = 28;
/** Differences that are numbered on the map, as they are below it. */
const numbered = 10;
/** Levels between which areas go from faint to strong. */
const faintDb = -90;
const strongDb = -10;
const leastOpacity = 0.15;
const mostOpacity = 0.75;

/** Differences over keys and velocities, the stronger the greater; the first ones are numbered and lead to their sounds. */
export function differenceMap(differences: readonly MappedDifference[]): string {
  const [low, high] = keysShown(differences);
  const keyWidth = (width - left) / (high - low + 1);
  const x = (key: number) => round(left + (key - low) * keyWidth);
  const y = (velocity: number) => round(top + ((127 - velocity) / 127) * (height - top - bottom));
  const areas = differences.map((one) => {
    const opacity =
      leastOpacity +
      (mostOpacity - leastOpacity) * Math.max(0, Math.min(1, (one.peakDb - faintDb) / (strongDb - faintDb)));
    const [from, to] = [Math.max(low, one.lowKey), Math.min(high, one.highKey)];
    const [x0, y0] = [x(from), y(one.highVelocity)];
    return `<rect class="area" x="${x0}" y="${y0}" width="${round(x(to + 1) - x0)}" height="${round(Math.max(2, y(one.lowVelocity - 1) - y0))}" fill-opacity="${round(opacity)}" stroke-opacity="0.9"><title>${escapeMarkup(one.words)}</title></rect>`;
  });
  // No links of the drawing itself: editors that show the page open these as addresses.
  const marks = differences.slice(0, numbered).map((one, at) => {
    const [cx, cy] = [x(one.key) + keyWidth / 2, y(one.velocity)];
    const words = `${at + 1}: ${one.words} To its sounds.`;
    return `<a class="mark" href="#${differenceId(at)}" style="left:${round((100 * cx) / width)}%;top:${round((100 * cy) / height)}%" aria-label="${escapeMarkup(words)}" title="${escapeMarkup(words)}">${at + 1}</a>`;
  });
  return `<div class="marked"><svg viewBox="0 0 ${width} ${height}" role="img" aria-label="Where the instruments differ, over keys and velocities; the table below says the same">${grid(low, high, x, y)}${areas.join('')}</svg>${marks.join('')}</div>`;
}

/** The name of the section in which one of the numbered differences is heard, by its place in the list. */
export function differenceId(at: number): string {
  return `difference-${at + 1}`;
}

/** Whole octaves around all differences. */
function keysShown(differences: readonly MappedDifference[]): [low: number, high: number] {
  const keys = differences.flatMap((one) => [one.lowKey, one.highKey, one.key]).filter((key) => key >= 0);
  const low = Math.max(0, 12 * Math.floor((Math.min(127, ...keys) - 1) / 12));
  const high = Math.min(127, 12 * Math.ceil((Math.max(0, ...keys) + 2) / 12));
  return low < high ? [low, high] : [24, 108];
}

function grid(
  low: number,
  high: number,
  x: (key: number) => number,
  y: (velocity: number) => number,
): string {
  const lines: string[] = [];
  for (let key = 12 * Math.ceil(low / 12); key <= high; key += 12) {
    const name = `<text x="${x(key) + 3}" y="${height - 12}">${noteNameOf(key)}</text>`;
    lines.push(
      `<line class="grid" x1="${x(key)}" y1="${y(127)}" x2="${x(key)}" y2="${y(0)}"/>${x(key) + nameWidth < width ? name : ''}`,
    );
  }
  for (const velocity of [1, 32, 64, 96, 127])
    lines.push(
      `<line class="grid" x1="${left}" y1="${y(velocity)}" x2="${width}" y2="${y(velocity)}"/><text x="${left - 6}" y="${y(velocity) + 4}" text-anchor="end">${velocity}</text>`,
    );
  return lines.join('');
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
