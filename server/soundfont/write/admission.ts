import type { Modulator } from '../font';
import { Generator } from '../generators';
import { mayModulate, sourceBits } from '../modulatorSource';
import type { RegionParameters } from './regionParameters';

/** A switch that takes this much away leaves nothing to hear. */
const silentCentibels = 1440;
/** The value at which a switch turns over (SoundFont Technical Specification 2.04, section 9.5.3). */
const middle = 64;
const most = 127;

/** Triggers that a SoundFont has no word for, by what they are. */
const otherTriggers: Readonly<Record<string, string>> = {
  release: 'when a key is let go',
  release_key: 'when a key is let go',
  first: 'for the first key alone',
  legato: 'for later keys alone',
};

/** Ranges of what is played that a region can ask for, with what holds while nothing is moved. */
const otherRanges: readonly [low: string, high: string, rest: number, lowest: number, highest: number][] = [
  ['lobend', 'hibend', 0, -8192, 8191],
  ['lochanaft', 'hichanaft', 0, 0, 127],
  ['lopolyaft', 'hipolyaft', 0, 0, 127],
];

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
    hasTrigger(values) &&
    holdsKeys(values) &&
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

function hasTrigger(values: RegionParameters): boolean {
  const trigger = values.word('trigger');
  const other = trigger === undefined ? undefined : otherTriggers[trigger];
  if (other !== undefined) return leaveOut(values, 'trigger', other);
  const [started] = values.matching(/^(?:on|start)_(?:lo|hi)(?:hd)?cc\d+$/);
  return started === undefined || leaveOut(values, started.name, 'when a controller is moved');
}

function holdsKeys(values: RegionParameters): boolean {
  for (const [name, why] of [
    ['sw_down', 'while another key is held'],
    ['sw_previous', 'after a certain key'],
  ] as const)
    if (values.has(name)) return leaveOut(values, name, why);
  return true;
}

function holdsRanges(values: RegionParameters): boolean {
  for (const [low, high, rest, lowest, highest] of otherRanges) {
    const holds = values.number(low, lowest) <= rest && rest <= values.number(high, highest);
    const name = values.has(low) ? low : high;
    if (!holds) return leaveOut(values, name, 'only while the channel is bent or pressed');
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
  const asked = new Set(values.matching(/^(?:lo|hi)(?:hd)?cc(\d+)$/).map(({ found }) => Number(found[1])));
  for (const controller of asked) {
    const [low, high] = rangeOf(values, controller);
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
    const name = names.find((one) => values.has(one)) ?? '';
    const first = firstControllers[controller] ?? 0;
    if (first < low || first > high)
      return leaveOut(values, name, `only where controller ${controller} is moved`);
    for (const one of names)
      values.tell(
        one,
        'dropped',
        `Left out: this condition; a SoundFont can only ask whether a controller is in its upper or lower half.`,
      );
  }
  return true;
}

function rangeOf(values: RegionParameters, controller: number): [low: number, high: number] {
  const fine = (name: string, without: number) =>
    most * values.number(`${name}${controller}`, without / most);
  return [
    values.number(`locc${controller}`, Math.round(fine('lohdcc', 0))),
    values.number(`hicc${controller}`, Math.round(fine('hihdcc', most))),
  ];
}
