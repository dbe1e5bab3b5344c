import { controllerCount } from '../player/playState';
import { controllerDefaults } from '../playingChoices';
import type { ValuesInForce } from './valuesInForce';

/** The values that controllers have before anything is played: `set_ccN` and `set_hdccN`, else the usual ones. */
export function readFirstControllers(values: ValuesInForce): Float64Array {
  const controllers = new Float64Array(controllerCount);
  for (const [number, value] of Object.entries(controllerDefaults)) controllers[Number(number)] = value;
  const { instrument } = values;
  const latest = new Map<number, number>();
  for (const name of values.namesUsed()) {
    const parts = /^set_(hd)?cc(\d+)$/.exec(instrument.names.text(name));
    if (!parts) continue;
    const controller = Number(parts[2]);
    for (const parameter of values.parametersNamed(name)) {
      const value = instrument.number(parameter) * (parts[1] ? 127 : 1);
      if (controller >= controllerCount || Number.isNaN(value)) continue;
      if (parameter > (latest.get(controller) ?? -1)) {
        latest.set(controller, parameter);
        controllers[controller] = Math.max(0, Math.min(127, value));
      }
      break;
    }
  }
  return controllers;
}
