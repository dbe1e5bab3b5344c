import type { Instrument } from '../../model/instrument';
import type { ResolvedOpcode } from '../../model/opcodes/opcode';
import { fillPattern } from '../../model/opcodes/resolve';
import { type MovePattern, movePattern } from './movePatterns';
import { opcodeHandlers } from './opcodeHandlers';
import { MoveSource } from './recipe';
import type { RecipeDraft } from './recipeDraft';
import { slotOf } from './slots';

/** Controllers beyond those of MIDI that are known: they say what a note is like. */
const furtherControllers: ReadonlySet<number> = new Set([128, 129, 130, 131, 132, 133, 134, 135, 137]);

/** Whether opcodes of a pattern say how a voice sounds, so that they go into its recipe. */
export function isForRecipe(pattern: string): boolean {
  return Object.hasOwn(opcodeHandlers, pattern) || movePattern(pattern) !== undefined || pattern === '*_mod';
}

/** Takes a value in force into a recipe; `false` where it is not rendered. */
export function takeOpcode(
  draft: RecipeDraft,
  opcode: ResolvedOpcode,
  instrument: Instrument,
  parameter: number,
): boolean {
  const { pattern, kind } = opcode.facts;
  const text = instrument.valueText(parameter).trim().toLowerCase();
  if (pattern === '*_mod') return takeMode(draft, opcode.canonical, text);
  const plain = kind === 'key' ? instrument.keyNumber(parameter) : instrument.number(parameter);
  const move = movePattern(pattern);
  if (move) return !Number.isNaN(plain) && takeMove(draft, opcode, move, plain);
  const value = text === 'on' ? 1 : text === 'off' ? 0 : plain;
  if (Number.isNaN(value) && kind !== 'option') return false;
  return opcodeHandlers[pattern](draft, value, opcode.indexes, text) !== false;
}

function takeMove(draft: RecipeDraft, opcode: ResolvedOpcode, pattern: MovePattern, value: number): boolean {
  const { target, part, pressure } = pattern;
  const { indexes } = opcode;
  const controller = indexes.at(-1) ?? 0;
  if (!pressure && controller > 127 && !furtherControllers.has(controller)) return false;
  const own = pressure === 'poly' ? MoveSource.polyPressure : MoveSource.channelPressure;
  const source = pressure ? own : controller;
  const name = slotOf(target) >= 0 ? target : fillPattern(target, indexes);
  bringIn(draft, target, name, indexes);
  // A pressure opcode and the controller of the same number are two moves.
  const move = draft.move(name, source, pressure ? 1 : 0);
  if (part === 'curve') move.curve = value;
  else if (part === 'smooth') move.smoothMs = value;
  else if (part === 'step') move.step = value;
  else move.depth = value;
  return true;
}

/** What is moved may not be set by itself: it is then moved from its default. */
function bringIn(draft: RecipeDraft, target: string, name: string, indexes: readonly number[]): void {
  if (draft.has(name)) return;
  if (target.startsWith('eqN_')) draft.band(indexes[0]);
  else opcodeHandlers[target](draft, 0, indexes.slice(0, -1), '');
}

/** `amplitude_mod` is `mult` and all others `add` where nothing is said. */
function takeMode(draft: RecipeDraft, canonical: string, text: string): boolean {
  if (canonical !== 'amplitude_mod') return text === 'add';
  if (text === 'add') draft.added.add('amplitude');
  return text === 'add' || text === 'mult';
}
