import type { Instrument } from '../../model/instrument';
import { ValuesInForce } from '../../playing/playable/valuesInForce';
import { curvesOf } from './curves';
import { finishRecipe } from './finishRecipe';
import { notRenderedIn, type RefusedValues } from './notRendered';
import type { SoundProgram } from './program';
import type { VoiceRecipe } from './recipe';
import { RecipeDraft } from './recipeDraft';
import { regionColumns, type SoundOptions } from './regionColumns';
import { isForRecipe, takeOpcode } from './takeOpcode';

/**
 * Works out how the regions of an instrument sound, once, from the values in force. Never throws; what it does not render
 * is in the program's list.
 */
export function soundOf(instrument: Instrument, options: SoundOptions = {}): SoundProgram {
  const values = new ValuesInForce(instrument);
  const names = [...values.namesUsed()].filter((name) => {
    const pattern = instrument.names.opcode(name)?.facts.pattern;
    return pattern !== undefined && isForRecipe(pattern);
  });
  const columns = names.map((name) => values.parameters(name) as Int32Array);
  const { recipe, first } = regionsThatSayTheSame(instrument, columns);
  const refused: RefusedValues = new Map();
  const recipes = first.map((region) => recipeOf(instrument, names, columns, region, refused));
  return {
    regionCount: instrument.regions.length,
    recipe,
    recipes,
    ...regionColumns(values, recipes, recipe, options),
    curves: curvesOf(instrument),
    slotCount: Math.max(1, ...recipes.map(({ base }) => base.length)),
    notRendered: notRenderedIn(values, refused),
  };
}

/** Regions that say the same share a recipe: its number by region, and the first region of each. */
function regionsThatSayTheSame(
  instrument: Instrument,
  columns: readonly Int32Array[],
): { recipe: Int32Array; first: number[] } {
  const count = instrument.regions.length;
  let recipe = new Int32Array(count);
  const texts = new Map<string, number>();
  for (const column of columns) {
    const pairs = new Map<number, number>();
    const next = new Int32Array(count);
    let last = -1;
    let text = 0;
    for (let region = 0; region < count; region++) {
      const parameter = column[region];
      if (parameter !== last) {
        last = parameter;
        text = parameter < 0 ? 0 : numberOf(texts, instrument.valueText(parameter)) + 1;
      }
      next[region] = numberOf(pairs, recipe[region] * 0x4000000 + text);
    }
    recipe = next;
  }
  const first: number[] = [];
  for (let region = count - 1; region >= 0; region--) first[recipe[region]] = region;
  return { recipe, first };
}

/** Numbers from 0 for what was not met before. */
function numberOf<T>(numbers: Map<T, number>, value: T): number {
  let number = numbers.get(value);
  if (number === undefined) {
    number = numbers.size;
    numbers.set(value, number);
  }
  return number;
}

function recipeOf(
  instrument: Instrument,
  names: readonly number[],
  columns: readonly Int32Array[],
  region: number,
  refused: RefusedValues,
): VoiceRecipe {
  const draft = new RecipeDraft();
  for (const [at, name] of names.entries()) {
    const parameter = columns[at][region];
    const opcode = parameter < 0 ? undefined : instrument.names.opcode(name);
    if (!opcode || takeOpcode(draft, opcode, instrument, parameter)) continue;
    const texts = refused.get(name) ?? new Set();
    refused.set(name, texts.add(instrument.valueText(parameter)));
  }
  return finishRecipe(draft);
}
