import type { PolyphonyScope } from './playableInstrument';
import type { ValuesInForce } from './valuesInForce';

/** Which voices `polyphony` counts together; see `PlayableInstrument`. */
export interface RegionPolyphony {
  polyphony: Int32Array;
  polyphonyScope: Int32Array;
  polyphonyScopes: PolyphonyScope[];
}

/** Reads the bounds of voices: they hold in the group where the region has a number, else below the header that sets them. */
export function readPolyphony(values: ValuesInForce, group: Int32Array): RegionPolyphony {
  const { instrument } = values;
  const count = instrument.regions.length;
  const polyphony = values.numbers('polyphony', new Int32Array(count), 0);
  const polyphonyScope = new Int32Array(count).fill(-1);
  const polyphonyScopes: PolyphonyScope[] = [];
  const parameters = values.parametersOf('polyphony');
  const known = new Map<string, number>();
  for (let region = 0; parameters && region < count; region++) {
    const parameter = parameters[region];
    if (parameter < 0 || polyphony[region] <= 0) continue;
    const number = group[region];
    const scope: PolyphonyScope =
      number !== 0
        ? { regions: 'group', number }
        : { regions: 'header', number: instrument.headerOfParameter(parameter) };
    const key = `${scope.regions} ${scope.number}`;
    let at = known.get(key);
    if (at === undefined) {
      at = polyphonyScopes.length;
      polyphonyScopes.push(scope);
      known.set(key, at);
    }
    polyphonyScope[region] = at;
  }
  return { polyphony, polyphonyScope, polyphonyScopes };
}
