import { roughlyBefore, roughlyBehind } from '../languages/roughlyWords';
import { readKeyRange } from './keyReading';

/** The key of a cell that says besides that it is not certain, as `about 45`, `~60`, `C3 (?)`; `undefined` for any other cell. */
export function roughKeyIn(text: string): string | undefined {
  if (text.length > 40) return undefined;
  const key = text.replace(roughlyBefore, '').replace(roughlyBehind, '').trim();
  return key !== text.trim() && readKeyRange(key)?.single ? key : undefined;
}
