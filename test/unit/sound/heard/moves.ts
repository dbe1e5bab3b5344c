import { listOpcodes } from '../../../../server/model/opcodes/resolve';
import type { Act } from '../playing';
import type { Heard, HeardTable } from './ears';
import type { Target } from './targets';
import { targets } from './targets';

/** A controller that means nothing else. */
const controller = 20;
const half = 64 / 127;

/** What a text says once the value of a target is moved from its base: for those whose base sets the value too. */
function withoutOwn({ base, name }: Target): number {
  const own = new RegExp(`(?:^| )${name}=(-?[\\d.]+)`).exec(base);
  return own ? Number(own[1]) : 0;
}

/** The test of the opcode that sets a value. */
function ofSetting(target: Target): Heard {
  const { base, name, amount, hear, value, within, at = 0.1, options, setting } = target;
  if (setting) return { base, ...setting, hear: hear(at), within };
  const set = withoutOwn(target) + amount;
  return {
    base,
    opcode: `${name}=${set}`,
    hear: hear(at),
    is: value(amount),
    within,
    ...(options && { options }),
  };
}

type Form = 'on' | 'curve' | 'smooth' | 'step' | 'chanaft' | 'polyaft' | 'vel2';

/** The test of an opcode that moves a value. */
function ofMove(target: Target, form: Form, opcodeName: (form: string) => string): Heard | Heard[] {
  const { base, amount, hear, value, within, at = 0.1, options = {} } = target;
  const on = `${opcodeName('on')}=${amount}`;
  const one = (opcode: string, moved: number, more: Partial<Heard> = {}): Heard => ({
    base,
    opcode,
    hear: hear(at),
    is: value(moved),
    within,
    options,
    ...more,
  });
  const set = (number: number) => ({ options: { ...options, controllers: { [controller]: number } } });
  switch (form) {
    case 'on':
      return [one(on, amount, set(127)), one(on, amount * half, set(64))];
    case 'curve':
      // Curve 4 is documented as concave: the square.
      return { ...one(`${opcodeName('curve')}=4`, amount * half ** 2, set(64)), base: `${base} ${on}` };
    case 'smooth': {
      const acts: Act[] = [[0.1, (engine) => engine.controller(controller, 127)]];
      const smooth = one(`${opcodeName('smooth')}=100`, amount * (1 - Math.exp(-0.5)), {
        options: { ...options, acts },
      });
      return {
        ...smooth,
        base: `${base} ${on}`,
        hear: hear(0.15),
        within: Math.max(within, Math.abs(value(amount) - value(0)) / 100),
      };
    }
    case 'step':
      return {
        ...one(`${opcodeName('step')}=${Math.abs(amount) / 4}`, amount / 2, set(70)),
        base: `${base} ${on}`,
      };
    case 'chanaft':
      return one(
        `${opcodeName('chanaft')}=${amount}`,
        amount,
        before(options, (engine) => engine.channelPressure(127)),
      );
    case 'polyaft':
      return one(
        `${opcodeName('polyaft')}=${amount}`,
        amount,
        before(options, (engine) => engine.polyPressure(60, 127)),
      );
    default:
      return one(`${opcodeName('vel2')}=${amount}`, amount);
  }
}

/** Something that is done before the note. */
function before(options: Heard['options'], act: Act[1]): Partial<Heard> {
  return { options: { ...options, acts: [[-1, act], ...(options?.acts ?? [])] } };
}

/** Opcodes that are named otherwise than the value that they move. */
const otherNames: Readonly<Record<string, string>> = {
  gain: 'volume',
  pitch: 'tune',
  loop_length: 'loop_end',
};

/** The tests of all opcodes of the catalogue that set a target or move it. */
export function heardMoves(): HeardTable {
  const table: Record<string, Heard | Heard[]> = {};
  for (const [pattern, target] of Object.entries(targets)) table[pattern] = ofSetting(target);
  for (const { pattern } of listOpcodes()) {
    const parts =
      /^(.+?)_?(on|curve|smooth|step)?cc[NXYZ]$/.exec(pattern) ?? /^(.+?)_?(chanaft|polyaft)$/.exec(pattern);
    if (!parts) continue;
    const [, base, form = 'on'] = parts;
    const target = targets[base] ?? targets[otherNames[base]];
    if (!target) continue;
    const word = target === targets[base] ? target.name : base;
    table[pattern] = ofMove(target, form as Form, (one) =>
      one.endsWith('aft')
        ? pattern.replace('eqN', 'eq1').replace('lfoN', 'lfo1')
        : `${one === 'on' ? word : target.name}_${one}cc${controller}`,
    );
  }
  for (const { pattern } of listOpcodes()) {
    const parts = /^(ampeg|fileg|pitcheg|eqN)_vel2([a-z]+)$/.exec(pattern);
    const target = parts && targets[`${parts[1]}_${parts[2]}`];
    if (!target) continue;
    table[pattern] = ofMove(target, 'vel2', () => pattern.replace('eqN', 'eq1'));
  }
  return table;
}
