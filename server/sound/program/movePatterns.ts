import { slotOf } from './slots';

/** How a controller or pressure takes part in a move: its depth, or what shapes it. */
export type MovePart = 'on' | 'curve' | 'smooth' | 'step';

/** An opcode that moves a value. */
export interface MovePattern {
  /** The pattern of the value that is moved, or its slot's name. */
  target: string;
  part: MovePart;
  /** Pressure instead of a controller. */
  pressure?: 'channel' | 'poly';
}

const byController = /^(.+?)_?(on|curve|smooth|step)?cc[NXYZ]$/;
const byPressure = /^(.+?)_?(chan|poly)aft$/;

/** Opcodes that are named otherwise than the value that they move. */
const otherNames: Readonly<Record<string, string>> = {
  gain: 'volume',
  pitch: 'tune',
  loop_length: 'loop_end',
};

const numbered =
  /^(eqN_(freq|bw|gain)|lfoN_(freq|delay|fade|phase)|egN_(time|level)X|(eg|lfo)N_(volume|amplitude|pan|width|pitch|cutoff2?|resonance2?|eqX(freq|bw|gain)|(freq|depth)_lfoX))$/;

const known = new Map<string, MovePattern | undefined>();

/** What an opcode of a pattern moves; `undefined` where it moves nothing, or nothing that this voice renders. */
export function movePattern(pattern: string): MovePattern | undefined {
  if (!known.has(pattern)) known.set(pattern, find(pattern));
  return known.get(pattern);
}

function find(pattern: string): MovePattern | undefined {
  const controller = byController.exec(pattern);
  const pressure = controller ? null : byPressure.exec(pattern);
  const base = (controller ?? pressure)?.[1];
  if (base === undefined) return undefined;
  const target = otherNames[base] ?? base;
  if (slotOf(target) < 0 && !numbered.test(target)) return undefined;
  if (pressure) return { target, part: 'on', pressure: pressure[2] === 'chan' ? 'channel' : 'poly' };
  return { target, part: (controller?.[2] ?? 'on') as MovePart };
}
