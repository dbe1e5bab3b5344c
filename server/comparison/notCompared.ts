import type { SoundProgram } from '../sound/program/program';

/** An opcode that was not rendered, with how often each side has it. */
export interface NotCompared {
  opcode: string;
  a: number;
  b: number;
}

/** The opcodes of two sides that the voice does not render. */
export function notComparedOf(a: SoundProgram, b: SoundProgram): NotCompared[] {
  const found = new Map<string, NotCompared>();
  for (const [side, { notRendered }] of [['a', a] as const, ['b', b] as const]) {
    for (const { opcode, count } of notRendered) {
      const one = found.get(opcode) ?? { opcode, a: 0, b: 0 };
      one[side] += count;
      found.set(opcode, one);
    }
  }
  return [...found.values()];
}
