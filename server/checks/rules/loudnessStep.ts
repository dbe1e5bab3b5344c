import type { Fix } from '../../model/finding';
import type { Instrument } from '../../model/instrument';
import { unknownConditions } from '../../model/overlaps/conditionSets';
import { conditionsOf } from '../../model/overlaps/conditions';
import { PairNumbers } from '../../model/overlaps/pairNumbers';
import { rectangleCodesOf } from '../../model/overlaps/rectangles';
import { nameOf } from '../../model/paths';
import { keysText } from '../../model/wording/rangeWords';
import { columnInForce } from '../facts/parameters/columnsInForce';
import { fixOf, ofKind } from '../facts/parameters/parameterFixes';
import { ValueAnswers } from '../facts/parameters/valueAnswers';
import { rectangleOfCode } from '../facts/regionNeighbours';
import { playedLoudnessesOf } from '../facts/samples/playedLoudness';
import type { PlayedSample } from '../facts/samples/playedSamples';
import { playedSamplesOf } from '../facts/samples/playedSamples';
import { placeInRegion } from '../facts/samples/samplePaths';
import type { CheckContext, Rule } from '../rule';

/** 10 dB are heard as twice or half as loud (the sone scale of ISO 532-1: 10 phon double the loudness). */
const leastDb = 10;
/** How many times what neighbours commonly differ by a sample has to stand out (our choice). */
const leastTimes = 4;
/** Layers whose neighbours commonly differ by more, in dB, are no row of notes but of different sounds (common practice). */
const mostCommonDb = 3;
const fewestKeys = 5;
/** The bounds of the opcode, in dB. */
const [leastVolume, mostVolume] = [-144, 6];
/** The velocities in a rectangle code; see `rectangleCode`. */
const allVelocities = 0x3fff;

/** A note of a layer. */
interface Note {
  /** Its position in `Instrument.regions`. */
  number: number;
  code: number;
  loudness: number;
}

/** Finds samples that are far louder or softer than those of the neighbouring keys. */
export const loudnessStep: Rule = {
  code: 'loudness-step',
  severity: 'information',
  finds:
    'A sample 10 dB or more louder or softer than its neighbours on the keyboard, which are alike in level.',
  check(context, report) {
    const { ofRegion } = playedSamplesOf(context);
    const seen = new Set<PlayedSample>();
    for (const layer of layersOf(context)) {
      const common = commonStep(layer);
      if (common > mostCommonDb) continue;
      for (let at = 1; at < layer.length - 1; at++) {
        const note = layer[at];
        const [below, above] = [layer[at - 1], layer[at + 1]];
        const excess = note.loudness - (below.loudness + above.loudness) / 2;
        const most = Math.abs(excess);
        if (most < leastDb || most < leastTimes * common) continue;
        if (Math.abs(below.loudness - above.loudness) > most / 2) continue;
        const sample = ofRegion[note.number] as PlayedSample;
        if (seen.has(sample)) continue;
        seen.add(sample);
        const region = context.instrument.regions[note.number];
        const nameAt = ({ number }: Note) => `"${nameOf((ofRegion[number] as PlayedSample).use.path)}"`;
        const neighbours =
          ofRegion[below.number] === ofRegion[above.number]
            ? `${nameAt(below)} on both sides of it`
            : `${nameAt(below)} and ${nameAt(above)} beside it`;
        const { lowKey, highKey } = rectangleOfCode(note.code);
        report({
          ...placeInRegion(context.instrument, region),
          message: `${nameAt(note)} on ${keysText(lowKey, highKey)} is ${most.toFixed(0)} dB ${excess > 0 ? 'louder' : 'softer'} than ${neighbours}, with volume and amplitude counted in. Check that this is the right sample, or even it out with volume.`,
          fixes: () => fixesOf(context, region, excess),
        });
      }
    }
  },
};

/**
 * Rows of notes in the order of the keys, each under the same conditions and velocities, without two on the same keys:
 * those in which some notes differ by enough.
 */
function layersOf(context: CheckContext): Note[][] {
  const { instrument } = context;
  const loudnesses = playedLoudnessesOf(context);
  if (!loudnesses) return [];
  const { loudness, isPending } = loudnesses;
  const conditions = conditionsOf(instrument);
  const codes = rectangleCodesOf(instrument);
  const notes = new NoteRegions(instrument);
  const count = codes.length;
  /** Conditions with velocities, and the layer of each region, −1 for none. */
  const layers = new PairNumbers(count);
  const layerOf = new Int32Array(count).fill(-1);
  const lowest = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
  const highest = new Float64Array(count).fill(Number.NEGATIVE_INFINITY);
  for (let number = 0; number < count; number++) {
    const level = loudness[number];
    const pending = isPending[number] === 1;
    if (!pending && Number.isNaN(level)) continue;
    const region = instrument.regions[number];
    const code = codes[number];
    const set = conditions.ofHeader[region];
    if (code < 0 || set === unknownConditions || !notes.includes(region, code)) continue;
    const layer = layers.numberOf(set, code & allVelocities);
    layerOf[number] = layer;
    // What is not known yet could be a neighbour, so the layer has to wait: NaN makes every comparison with it false.
    lowest[layer] = pending ? Number.NaN : Math.min(lowest[layer], level);
    highest[layer] = Math.max(highest[layer], level);
  }
  const rows = new Map<number, Note[]>();
  for (let number = 0; number < count; number++) {
    const layer = layerOf[number];
    if (layer < 0 || !(highest[layer] - lowest[layer] >= leastDb)) continue;
    const note = { number, code: codes[number], loudness: loudness[number] };
    const row = rows.get(layer);
    if (row) row.push(note);
    else rows.set(layer, [note]);
  }
  return [...rows.values()].flatMap((row) => {
    const { number } = row[0];
    const set = conditions.ofHeader[instrument.regions[number]];
    if (row.length < fewestKeys || conditions.set(set).onRelease) return [];
    if (isRow(row)) return [row];
    return byParent(context, row).filter((part) => part.length >= fewestKeys && isRow(part));
  });
}

/** Which regions play notes: drums lie side by side without being alike. */
class NoteRegions {
  readonly #instrument: Instrument;
  readonly #trackings: Int32Array | undefined;
  readonly #modes: Int32Array | undefined;
  readonly #isOneShot: ValueAnswers<boolean>;

  constructor(instrument: Instrument) {
    this.#instrument = instrument;
    this.#trackings = columnInForce(instrument, 'pitch_keytrack');
    this.#modes = columnInForce(instrument, 'loop_mode');
    this.#isOneShot = new ValueAnswers(instrument, (text) => text.toLowerCase() === 'one_shot');
  }

  includes(region: number, code: number): boolean {
    const tracking = this.#trackings ? this.#trackings[region] : -1;
    if (tracking >= 0 && this.#instrument.number(tracking) === 0) return false;
    const { lowKey, highKey } = rectangleOfCode(code);
    // A single key that plays its sample to the end whatever happens is percussion (common practice).
    return !(lowKey === highKey && this.#modes && this.#isOneShot.of(this.#modes[region]) === true);
  }
}

/** Sorts a layer by its keys; whether no two lie on the same. */
function isRow(layer: Note[]): boolean {
  layer.sort((a, b) => a.code - b.code);
  return layer.every(({ code }, at) => at === 0 || code !== layer[at - 1]?.code);
}

function byParent({ instrument }: CheckContext, layer: readonly Note[]): Note[][] {
  const parts = new Map<number, Note[]>();
  for (const note of layer) {
    const parent = instrument.parent(instrument.regions[note.number]);
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
    .map(({ loudness }, at) => Math.abs(loudness - layer[at].loudness))
    .sort((a, b) => a - b);
  return steps[(steps.length - 1) >> 1];
}

function fixesOf({ instrument, notation }: CheckContext, region: number, excess: number): Fix[] {
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
  return ofKind('Even out the volume', fixOf(`Set the volume to ${volume} dB`, edits, false));
}
