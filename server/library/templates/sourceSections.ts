import { playedKey } from '../../model/effectiveValues';
import { HeaderKind } from '../../model/headerKinds';
import type { Instrument } from '../../model/instrument';
import type { Notation } from '../../model/notation';
import { Parameter } from '../../model/parameterNames';
import type { MergedValues } from './mergedValues';
import { mergeValues } from './mergedValues';

/** A region to be written, with the values in force in it. */
export interface SourceRegion {
  header: number;
  /** By canonical name, as they are to be written: keys as numbers, the sample as its path from the target's `default_path`. */
  values: ReadonlyMap<string, string>;
  /** The parameter of the source that each of them comes from. */
  parameters: ReadonlyMap<string, number>;
  /** The values that a header around it sets. */
  inherited: ReadonlySet<string>;
  /** By the name of a value, the parameter that is written in it for want of a place of its own, such as a transposition in the tuning. */
  merged: ReadonlyMap<string, number>;
}

/** Regions that stand together in the source. */
export interface SourceSection {
  label: string | undefined;
  regions: SourceRegion[];
}

/** Where values go. */
export interface SourceTarget {
  /** The sample's value for the path of a region's sample in the source. */
  samplePath(path: string): string;
  /** Semitones that the target adds to every key. */
  keyOffset: number;
  /** Values that others say there. */
  merged: MergedValues;
  /** Whether it has no place that says whether a region loops, so that points of a loop mean that it does. */
  loopsByPoints?: boolean;
  /** Whether it has a place for the name of a group and none for that of a keyswitch, so that one stands for the other. */
  namesGroupsAlone?: boolean;
}

/** Labels of headers, which are carried by the section and not by each of its regions. */
const groupLabels: ReadonlySet<number> = new Set([
  Parameter.group_label,
  Parameter.master_label,
  Parameter.global_label,
]);

/** The regions of an instrument by the header that they stand in, in the order of the text. */
export function sourceSections(instrument: Instrument, target: SourceTarget): SourceSection[] {
  const sections = new Map<number, SourceSection>();
  for (const header of instrument.regions) {
    const parent = instrument.parent(header);
    let section = sections.get(parent);
    if (!section) {
      section = { label: labelOf(instrument, header, target), regions: [] };
      sections.set(parent, section);
    }
    section.regions.push(sourceRegion(instrument, header, target));
  }
  return [...sections.values()];
}

function labelOf(
  instrument: Instrument,
  header: number,
  { namesGroupsAlone }: SourceTarget,
): string | undefined {
  const label = instrument.groupLabel(header)?.trim();
  if (label || !namesGroupsAlone) return label || undefined;
  const parameter = instrument.effective(header, Parameter.sw_label);
  return parameter < 0 ? undefined : instrument.valueText(parameter).trim() || undefined;
}

function sourceRegion(instrument: Instrument, header: number, target: SourceTarget): SourceRegion {
  const values = new Map<string, string>();
  const parameters = new Map<string, number>();
  const inherited = new Set<string>();
  const shift = instrument.control(header).keyOffset - target.keyOffset;
  for (const { name: id, parameter, header: from } of instrument.effectiveParameters(header)) {
    if (groupLabels.has(id)) continue;
    const name = instrument.names.text(id);
    values.set(name, valueToWrite(instrument, header, parameter, id, shift, target));
    parameters.set(name, parameter);
    if (from !== header) inherited.add(name);
  }
  const merged = mergeValues(target.merged, values, parameters);
  if (target.loopsByPoints && unlooped.has(values.get('loop_mode') ?? ''))
    for (const name of loopPoints) values.delete(name);
  return { header, values, parameters, inherited, merged };
}

/** Modes in which points of a loop mean nothing, and the names of those. */
const unlooped: ReadonlySet<string> = new Set(['no_loop', 'one_shot']);
const loopPoints = ['loop_start', 'loop_end'];

/** Whether a notation has places for values, and none that says whether a region loops. */
export function loopsByPoints({ parameters }: Notation): boolean {
  return parameters !== undefined && !parameters(HeaderKind.unknown).includes('loop_mode');
}

/** Whether a notation has a place for the name of a group and none for that of a keyswitch. */
export function namesGroupsAlone({ parameters }: Notation): boolean {
  const places = parameters?.(HeaderKind.unknown) ?? [];
  return places.includes('group_label') && !places.includes('sw_label');
}

function valueToWrite(
  instrument: Instrument,
  header: number,
  parameter: number,
  id: number,
  shift: number,
  target: SourceTarget,
): string {
  const text = instrument.valueText(parameter);
  if (id === Parameter.sample) return target.samplePath(instrument.samplePath(header) ?? text);
  if (instrument.names.opcode(id)?.facts.kind !== 'key') return text;
  const key = instrument.keyNumber(parameter);
  if (Number.isNaN(key)) return text;
  if (key < 0 || !playedKey.test(instrument.names.text(id))) return String(key);
  // A range that the target's own offset moves out of the keyboard ends with it; the account says so.
  return String(Math.max(0, Math.min(127, key + shift)));
}
