import type { Unplain } from '../../playing/plain/unplain';
import {
  askedControllers,
  asksForBend,
  asksForController,
  asksForKeys,
  bendRanges,
  controllerRange,
  startsOtherwise,
} from '../../playing/plain/unplain';
import type { Modulator } from '../font';
import { Generator } from '../generators';
import { mayModulate, sourceBits } from '../modulatorSource';
import type { RegionParameters } from './regionParameters';

/** A switch that takes this much away leaves nothing to hear. */
const silentCentibels = 1440;
/** The value at which a switch turns over (SoundFont Technical Specification 2.04, section 9.5.3). */
const middle = 64;
const most = 127;

/**
 * Whether a region comes into a SoundFont. Conditions that the format knows become modulators; of others, what holds while
 * no controller is moved decides. What is left out or no longer asked is noted.
 */
export function admit(
  values: RegionParameters,
  firstControllers: Float64Array,
  modulators: Modulator[],
): boolean {
  return (
    holds(values, startsOtherwise(values)) &&
    holds(values, asksForKeys(values)) &&
    holdsControllers(values, firstControllers, modulators) &&
    holdsRanges(values)
  );
}

function leaveOut(values: RegionParameters, name: string, why: string): false {
  const { account, region } = values;
  const message = `Left out: a region that sounds ${why}; a SoundFont cannot say that.`;
  const parameter = values.parameter(name);
  if (parameter < 0) account.tellRegion(region, 'dropped', message);
  else account.tell(parameter, 'dropped', message);
  return false;
}

function holds(values: RegionParameters, reason: Unplain | undefined): boolean {
  return reason === undefined || leaveOut(values, reason.name, reason.why);
}

function holdsRanges(values: RegionParameters): boolean {
  if (!holds(values, asksForBend(values))) return false;
  for (const [low, high, , lowest, highest] of bendRanges) {
    for (const one of [low, high])
      if (values.has(one) && values.number(one, 0) !== (one === low ? lowest : highest))
        values.tell(one, 'dropped', 'Left out: this condition; a SoundFont cannot ask for it.');
  }
  return true;
}

function holdsControllers(
  values: RegionParameters,
  firstControllers: Float64Array,
  modulators: Modulator[],
): boolean {
  for (const controller of askedControllers(values)) {
    const [low, high] = controllerRange(values, controller);
    if (low <= 0 && high >= most) continue;
    const isSwitch =
      mayModulate(controller) && ((low === middle && high >= most) || (low <= 0 && high === middle - 1));
    if (isSwitch) {
      const source = sourceBits({
        mover: { kind: 'controller', number: controller },
        isFalling: low === middle,
        isBipolar: false,
        curve: 'switch',
      });
      modulators.push({
        source,
        destination: Generator.attenuation,
        amount: silentCentibels,
        amountSource: 0,
        transform: 0,
      });
      continue;
    }
    const names = ['locc', 'hicc', 'lohdcc', 'hihdcc'].map((start) => `${start}${controller}`);
    if (!holds(values, asksForController(values, controller, firstControllers))) return false;
    for (const one of names)
      values.tell(
        one,
        'dropped',
        `Left out: this condition; a SoundFont can only ask whether a controller is in its upper or lower half.`,
      );
  }
  return true;
}
