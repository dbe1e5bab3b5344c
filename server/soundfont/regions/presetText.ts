import type { ConversionNote } from '../../model/notes';
import { mainSpan } from '../../model/text/span';
import { identityOf, velocityToCutoff } from '../defaultModulators';
import type { SoundFont } from '../font';
import type { FontRegion } from './fontRegions';
import type { OpcodeList, Remark } from './opcodeList';
import type { PlacedRegions } from './playedRegions';
import type { AttenuationScale } from './regionOpcodes';
import { regionOpcodes } from './regionOpcodes';
import type { SampleFile } from './sampleFiles';

/** How a preset is written as text. */
export interface PresetTextOptions {
  /** The path of a sample as it is to stand in the text. */
  samplePath(file: SampleFile): string;
  attenuation: AttenuationScale;
}

/** A preset as SFZ text, and what that says in another way or not at all. */
export interface PresetText {
  text: string;
  notes: ConversionNote[];
}

/** What a preset is called, and what it is called by: `bank:program`. */
export interface PresetTitle {
  name: string;
  bank: number;
  program: number;
  /** The name of the font's file. */
  file: string;
}

type Opcode = readonly [name: string, value: string];

/** What stays with regions, where people look for it. */
const staysWithRegion: ReadonlySet<string> = new Set(['sample', 'lokey', 'hikey']);

/**
 * Writes the regions of a preset as SFZ text: a group for each zone of the preset; what all regions of a group have in
 * common stands in it once, what all groups have in common before them. Notes are about the lines that they stand for.
 */
export function presetText(
  font: SoundFont,
  title: PresetTitle,
  placed: PlacedRegions,
  files: ReadonlyMap<string, SampleFile>,
  options: PresetTextOptions,
): PresetText {
  const lines = new NotedLines();
  lines.add(
    `// ${safeText(title.name) || 'Preset'}, preset ${title.bank}:${title.program} of ${safeText(title.file)}`,
  );
  for (const message of new Set(font.problems)) lines.note('ignored', message);
  for (const message of new Set(placed.leftOut)) lines.note('dropped', message);
  const groups = groupsOf(placed, files, options);
  const isAlone = placed.regions.length === 1;
  const shared = isAlone ? [] : commonTo(groups.map(({ common }) => common));
  const global: Opcode[] = [...labelOf('global_label', title.name), ...shared];
  if (global.length > 0) lines.add(line('global', global));
  if (placed.regions.some(({ region }) => !saysVelocityToCutoff(region))) noteCutoff(lines);
  for (const { label, common, regions } of groups) {
    const inGroup = regions.length > 1 ? without(common, shared) : [];
    lines.add(line('group', [...label, ...inGroup]));
    for (const { list, opcodes } of regions) {
      lines.add(line('region', without(opcodes, [...shared, ...inGroup])));
      for (const { kind, message } of list.remarks) lines.note(kind, message);
    }
  }
  return { text: lines.text, notes: lines.notes };

  function groupsOf(
    { regions }: PlacedRegions,
    known: ReadonlyMap<string, SampleFile>,
    { samplePath, attenuation }: PresetTextOptions,
  ): Group[] {
    const byLayer = new Map<number, Group>();
    for (const one of regions) {
      const { layer, instrument } = one.region;
      const sample = samplePath(known.get(one.use.key) as SampleFile);
      const list = regionOpcodes({ ...one, sample }, attenuation);
      const name = font.instruments[instrument]?.name ?? '';
      const group = byLayer.get(layer) ?? { label: labelOf('group_label', name), common: [], regions: [] };
      byLayer.set(layer, group);
      group.regions.push({ list, opcodes: list.entries() });
    }
    for (const group of byLayer.values())
      group.common = commonTo(group.regions.map(({ opcodes }) => opcodes)).filter(
        ([name]) => !staysWithRegion.has(name),
      );
    return [...byLayer.values()];
  }
}

interface Group {
  label: Opcode[];
  /** What all its regions say. */
  common: readonly Opcode[];
  regions: { list: OpcodeList; opcodes: Opcode[] }[];
}

function commonTo(lists: readonly (readonly Opcode[])[]): Opcode[] {
  const [first, ...others] = lists;
  if (!first) return [];
  const maps = others.map((list) => new Map(list));
  return first.filter(([name, value]) => maps.every((map) => map.get(name) === value));
}

function without(opcodes: readonly Opcode[], shared: readonly Opcode[]): Opcode[] {
  const names = new Set(shared.map(([name]) => name));
  return opcodes.filter(([name]) => !names.has(name));
}

function line(header: string, opcodes: readonly Opcode[]): string {
  return [`<${header}>`, ...opcodes.map(([name, value]) => `${name}=${value}`)].join(' ');
}

function labelOf(opcode: string, name: string): Opcode[] {
  const safe = safeText(name);
  return safe === '' ? [] : [[opcode, safe]];
}

/** A name without what SFZ text would take for a header, an opcode, a variable, a directive or a comment. */
function safeText(name: string): string {
  return name
    .replace(/[<>=$#/\\"\r\n]/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
}

function saysVelocityToCutoff({ modulators }: FontRegion): boolean {
  return modulators.some((one) => velocityToCutoff.some((known) => identityOf(known) === identityOf(one)));
}

function noteCutoff(lines: NotedLines): void {
  lines.note(
    'assumed',
    'The SoundFont does not say whether velocity moves the filter, and versions of the format differ. Here it does not.',
  );
}

/** Lines with notes on the one added last. */
class NotedLines {
  readonly #lines: string[] = [];
  #start = 0;
  #end = 0;
  readonly notes: ConversionNote[] = [];

  add(text: string): void {
    this.#start = this.#lines.length === 0 ? 0 : this.#end + 1;
    this.#end = this.#start + text.length;
    this.#lines.push(text);
  }

  note(kind: Remark['kind'], message: string): void {
    this.notes.push({ kind, message, ...mainSpan(this.#start, this.#end) });
  }

  get text(): string {
    return `${this.#lines.join('\n')}\n`;
  }
}
