import { listOpcodes } from '../../model/opcodes/resolve';
import { columnOpcodes } from './opcodeHandlers';
import { isForRecipe } from './takeOpcode';

/**
 * The patterns of all opcodes of the catalogue that say how a voice sounds and that are rendered, in its order. What else moves a
 * value of these by a controller is rendered too.
 */
export function renderedOpcodes(): string[] {
  return listOpcodes()
    .map(({ pattern }) => pattern)
    .filter((pattern) => columnOpcodes.has(pattern) || isForRecipe(pattern));
}
