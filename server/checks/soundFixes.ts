import { keepsRegions } from '../model/editing/editReach';
import type { Fix } from '../model/finding';
import type { CheckContext } from './rule';

/** Fixes of a faulty text that are tried by reading it again with them, in one check. */
const mostTried = 60;

/**
 * Gives fixes that change nothing but what they are about. Where a text has faults of syntax, what stands in it may be read
 * in another way once it is changed, so there each fix is tried, and offered only where it leaves all else as it was.
 */
export function soundFixes({ instrument, notation }: CheckContext): (fixes: () => Fix[]) => () => Fix[] {
  if (!instrument.findings.some(({ code }) => code === 'syntax-error')) return (fixes) => fixes;
  let tried = 0;
  const isSound = ({ edits, saves }: Fix) =>
    saves !== undefined ||
    (tried++ < mostTried && keepsRegions(notation, instrument, edits, 'what it does not touch'));
  return (fixes) => {
    let sound: Fix[] | undefined;
    return () => {
      sound ??= fixes().filter(isSound);
      return sound;
    };
  };
}
