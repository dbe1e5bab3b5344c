import { aquarium } from './aquarium';
import { atelier } from './atelier';
import { bindery } from './bindery';
import { dairy } from './dairy';
import { expedition } from './expedition';
import type { HeldOut } from './heldOut';
import { lighthouse } from './lighthouse';
import { mine } from './mine';
import { quarry } from './quarry';
import { tannery } from './tannery';

export type { HeldOut } from './heldOut';

/** Invented vocabularies that inference was not written by. */
export const heldOut: Readonly<Record<string, HeldOut>> = {
  aquarium: aquarium(),
  atelier: atelier(),
  expedition: expedition(),
  bindery: bindery(),
  quarry: quarry(),
  lighthouse: lighthouse(),
  tannery: tannery(),
  mine: mine(),
  dairy: dairy(),
};
