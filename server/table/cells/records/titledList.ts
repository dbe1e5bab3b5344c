import { namesAudioFileIn } from '../../../model/fileNames';
import type { Stretch } from '../../../model/text/stretch';
import { endsFromLimits } from '../../../trade/layerLimits';
import { saysOf } from '../../../trade/phrases/toldWords';
import { limitIn } from '../../../trade/readings/limits';
import type { TableCells } from '../cells';
import type { PlacedValue } from './clauseReader';
import { clausesIn } from './clauseReader';
import { keyTitle } from './keyTitle';
import { namesOneFile, toldIn, toldLineIn } from './toldLine';
import { linesOfText, toldRows } from './toldLines';

/** So many lines may stand above the first title. */
const mostAbove = 100;
/** No list by hand is longer. */
const longestText = 500_000;
const loudest = 127;
/** Nothing but the bullet or the number of an entry. */
const entryLead = /^[\s*\u2022\u2013\u2014>+-]*(?:\d{1,3}[.)]\s*)?["'\u201c\u201e\x60]?$/u;

/** A file below a title, and the end of its velocities. */
interface Entry {
  line: Stretch;
  file: Stretch;
  values: readonly PlacedValue[];
  limit: Stretch;
  velocity: number;
  end: 'least' | 'most';
}

interface Block {
  title: Stretch;
  values: readonly PlacedValue[];
  entries: Entry[];
}

/**
 * The cells of a list whose titles give keys, and whose files below them one end of their velocities: `A3 (57) keys 55-58`, and below
 * it `a.wav up to 40`. The text has to speak of velocities, or all of them have to rise to the loudest. `undefined` for any other text.
 */
export function titledCells(text: string): TableCells | undefined {
  if (text.length > longestText || !namesAudioFileIn(text)) return undefined;
  const lines = linesOfText(text).filter(({ start, end }) => text.slice(start, end).trim() !== '');
  const first = lines.slice(0, mostAbove).findIndex((line) => keyTitle(text, line));
  const last = lines.findLastIndex(({ start, end }) => namesOneFile(text.slice(start, end)));
  const prose = [...lines.slice(0, Math.max(0, first)), ...lines.slice(last + 1)];
  const areOutside = prose.every(({ start, end }) => !namesAudioFileIn(text.slice(start, end)));
  const blocks = first < 0 || !areOutside ? undefined : blocksIn(text, lines.slice(first, last + 1));
  if (!blocks || !haveLayers(text, blocks, prose)) return undefined;
  const rows = blocks.flatMap((block) => {
    const are = block.entries[0].end === 'most' ? 'upper' : 'lower';
    const ends = endsFromLimits(
      block.entries.map(({ velocity }) => velocity),
      are,
    );
    return block.entries.map(({ line, file, values, limit }, at) => {
      const written = `${ends[at]?.low}\u2013${ends[at]?.high}`;
      const layer = { ...limit, meaning: 'velocity_range' as const, text: written, isNamed: true };
      return {
        ...line,
        told: { lead: undefined, file, values: [...block.values, layer, ...values], rest: [] },
      };
    });
  });
  const outside = prose.map((line) => ({ ...line, told: undefined }));
  const { title, entries } = blocks[0];
  const said = (one: Stretch) => text.slice(one.start, one.end).trim().slice(0, 60);
  const bound = entries[0].end === 'most' ? 'upper' : 'lower';
  return toldRows(
    text,
    [...outside, ...rows].sort((one, other) => one.start - other.start),
    [
      { ...title, text: `Titles such as "${said(title)}" give the keys of the files below them.` },
      {
        ...entries[0].limit,
        text: `"${said(entries[0].limit)}" and the like are the ${bound} ends of velocities; each layer reaches to the next one of its title.`,
      },
    ],
  );
}

/** The titles with their files; `undefined` where another line stands between them, or a title is not used. */
function blocksIn(text: string, lines: readonly Stretch[]): Block[] | undefined {
  const blocks: Block[] = [];
  for (const line of lines) {
    const values = keyTitle(text, line);
    if (values) blocks.push({ title: line, values, entries: [] });
    else {
      const entry = entryIn(text, line);
      const block = blocks.at(-1);
      if (!entry || !block) return undefined;
      block.entries.push(entry);
    }
  }
  return blocks.length > 1 && blocks.every(({ entries }) => entries.length > 0) ? blocks : undefined;
}

function entryIn(text: string, line: Stretch): Entry | undefined {
  const written = text.slice(line.start, line.end);
  if (!namesOneFile(written)) return undefined;
  const { file } = toldLineIn(text, line, () => undefined);
  if (!file || !entryLead.test(text.slice(line.start, file.start))) return undefined;
  const values: PlacedValue[] = [];
  const limits: Pick<Entry, 'limit' | 'velocity' | 'end'>[] = [];
  for (const { start, end } of clausesIn(written, file.end - line.start, written.length)) {
    const clause = { start: line.start + start, end: line.start + end };
    const told = toldIn(text, clause);
    const [only, ...more] = told.values;
    const isLayer = more.length === 0 && only?.meaning === 'velocity_range';
    const limit = limitIn(isLayer ? only.text : text.slice(clause.start, clause.end));
    const velocity = limit && /^\d{1,3}$/.test(limit.value) ? Number(limit.value) : Number.NaN;
    if (limit && velocity >= 0 && velocity <= loudest) {
      const step = limit.excluded ? (limit.end === 'most' ? -1 : 1) : 0;
      limits.push({ limit: clause, velocity: velocity + step, end: limit.end });
    } else if (told.rest.length > 0 || told.values.some(({ isNamed }) => !isNamed)) return undefined;
    else values.push(...told.values);
  }
  return limits.length === 1 ? { line, file, values, ...limits[0] } : undefined;
}

/** Whether all numbers are ends of layers of one kind: as the text says, or since they reach the last velocity below each title. */
function haveLayers(text: string, blocks: readonly Block[], prose: readonly Stretch[]): boolean {
  const { end } = blocks[0].entries[0];
  const entries = blocks.flatMap((block) => block.entries);
  if (entries.some((one) => one.end !== end)) return false;
  const isSaid =
    prose.some((line) => saysOf(text.slice(line.start, line.end), 'velocities')) ||
    entries.every(({ limit }) => saysOf(text.slice(limit.start, limit.end), 'velocities'));
  if (isSaid) return true;
  const isWhole = ({ entries: some }: Block) => {
    const numbers = some.map(({ velocity }) => velocity);
    return end === 'most' ? Math.max(...numbers) === loudest : Math.min(...numbers) <= 1;
  };
  return blocks.every(isWhole) && blocks.some((block) => block.entries.length > 1);
}
