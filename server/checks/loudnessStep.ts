import { unknownConditions } from '../model/conditionSets';
import { conditionsOf } from '../model/conditions';
import type { Fix } from '../model/finding';
import { rectangleCodesOf } from '../model/overlaps';
import { nameOf } from '../model/paths';
import { FewInForce } from './fewInForce';
import { fixOf } from './parameterFixes';
import { playedLoudnessesOf } from './playedLoudness';
import type { PlayedSample } from './playedSamples';
import { keysText } from './regionText';
import type { CheckContext, Rule } from './rule';
import { placeInRegion } from './samplePaths';
import { rectangleOfCode } from './turns';

/** 10 dB are heard as twice or half as loud (the sone scale of ISO 532-1: 10 phon double the loudness). */
const leastDb = 10;
/** How many times what neighbours commonly differ by a sample has to stand out. */
const leastTimes = 4;
/** Layers whose neighbours commonly differ by more, in dB, are no row of notes but of different sounds (common practice). */
const mostCommonDb = 3;
const fewestKeys = 5;
/** The bounds of the opcode, in dB. */
const [leastVolume, mostVolume] = [-144, 6];

/** A note of a layer. */
interface Note {
  region: number;
  code: number;
  sample: PlayedSample;
  loudness: number;
}

/** Finds samples that are far louder or softer than those of the neighbouring keys. */
export const loudnessStep: Rule = {
  code: 'loudness-step',
  severity: 'information',
  finds: 'A sample 10 dB or more louder or softer than its neighbours on the keyboard, which are alike.',
  check(context, report) {
    const seen = new Set<PlayedSample>();
    for (const layer of layersOf(context)) {
      const common = commonStep(layer);
      if (common > mostCommonDb) continue;
      for (let at = 1; at < layer.length - 1; at++) {
        const note = layer[at] as Note;
        const [below, above] = [layer[at - 1] as Note, layer[at + 1] as Note];
        const excess = note.loudness - (below.loudness + above.loudness) / 2;
        const most = Math.abs(excess);
        if (most < leastDb || most < leastTimes * common || seen.has(note.sample)) continue;
        if (Math.abs(below.loudness - above.loudness) > most / 2) continue;
        seen.add(note.sample);
        const { lowKey, highKey } = rectangleOfCode(note.code);
        const neighbours =
          below.sample === above.sample
            ? `"${nameOf(below.sample.use.path)}" on both sides of it`
            : `"${nameOf(below.sample.use.path)}" and "${nameOf(above.sample.use.path)}" beside it`;
        report({
          ...placeInRegion(context.instrument, note.region),
          message: `"${nameOf(note.sample.use.path)}" on ${keysText(lowKey, highKey)} is ${most.toFixed(0)} dB ${excess > 0 ? 'louder' : 'softer'} than ${neighbours}, volume and amplitude counted in. Even it out with volume, or check that the right sample is here.`,
          fixes: () => fixesOf(context, note, excess),
        });
      }
    }
  },
};

/** Rows of notes in the order of the keys, each under the same conditions and velocities, without two on the same keys. */
function layersOf(context: CheckContext): Note[][] {
  const { instrument } = context;
  const loudnesses = playedLoudnessesOf(context);
  if (loudnesses.length === 0) return [];
  const conditions = conditionsOf(instrument);
  const codes = rectangleCodesOf(instrument);
  const few = new FewInForce(instrument, ['pitch_keytrack', 'loop_mode']);
  const layers = new Map<string, Note[] | undefined>();
  for (const [number, played] of loudnesses.entries()) {
    const region = instrument.regions[number] as number;
    const code = codes[number] as number;
    const set = conditions.ofHeader[region] as number;
    if (played === null || code < 0 || set === unknownConditions || conditions.set(set).onRelease) continue;
    if (!isNote(context, few, region, code)) continue;
    const key = `${set} ${code & 0x3fff}`;
    // What is not known yet could be a neighbour.
    if (!played) layers.set(key, undefined);
    else if (!layers.has(key)) layers.set(key, [{ region, code, ...played }]);
    else layers.get(key)?.push({ region, code, ...played });
  }
  const rows: Note[][] = [];
  for (const layer of layers.values()) {
    if (!layer || layer.length < fewestKeys) continue;
    if (isRow(layer)) rows.push(layer);
    else rows.push(...byParent(context, layer).filter((part) => part.length >= fewestKeys && isRow(part)));
  }
  return rows;
}

/** Whether a region plays notes: drums lie side by side without being alike. */
function isNote(
  { instrument }: CheckContext,
  few: FewInForce<'pitch_keytrack' | 'loop_mode'>,
  region: number,
  code: number,
): boolean {
  const tracking = few.of(region, 'pitch_keytrack');
  if (tracking >= 0 && instrument.number(tracking) === 0) return false;
  const { lowKey, highKey } = rectangleOfCode(code);
  const mode = few.of(region, 'loop_mode');
  // A single key that plays its sample to the end whatever happens is percussion (common practice).
  return !(lowKey === highKey && mode >= 0 && instrument.valueText(mode).toLowerCase() === 'one_shot');
}

/** Sorts a layer by its keys; whether no two lie on the same. */
function isRow(layer: Note[]): boolean {
  layer.sort((a, b) => a.code - b.code);
  return layer.every(({ code }, at) => at === 0 || code !== layer[at - 1]?.code);
}

function byParent({ instrument }: CheckContext, layer: readonly Note[]): Note[][] {
  const parts = new Map<number, Note[]>();
  for (const note of layer) {
    const parent = instrument.parent(note.region);
    const part = parts.get(parent);
    if (part) part.push(note);
    else parts.set(parent, [note]);
  }
  return [...parts.values()];
}

/** What neighbours commonly differ by: the median, in dB. */
function commonStep(layer: readonly Note[]): number {
  const steps = layer
    .slice(1)
    .map(({ loudness }, at) => Math.abs(loudness - (layer[at] as Note).loudness))
    .sort((a, b) => a - b);
  return steps[(steps.length - 1) >> 1] as number;
}

function fixesOf({ instrument, notation }: CheckContext, { region }: Note, excess: number): Fix[] {
  const name = instrument.names.canonical(instrument.names.idOf('volume'));
  const parameter = instrument.effective(region, name);
  const volume = Number(((parameter < 0 ? 0 : instrument.number(parameter)) - excess).toFixed(1));
  if (!(volume >= leastVolume && volume <= mostVolume)) return [];
  const { edits } = notation.edit(instrument, {
    kind: 'set',
    header: region,
    name: 'volume',
    value: String(volume),
  });
  return fixOf(`Set the volume to ${volume} dB`, edits, false);
}
