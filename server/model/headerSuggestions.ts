import type { Finding } from './finding';
import { headerNames } from './headerKinds';
import { nearestWords } from './text/nearest';
import type { InSomeFile } from './text/span';

/** A reader's finding of a header that the format does not know, with the nearest name offered. `show` writes a name as the notation does. */
export function unknownHeaderFinding(
  name: string,
  span: { start: number; end: number },
  show: (name: string) => string,
): InSomeFile<Finding> {
  const nearest = nearestWords(name, headerNames, 1)[0];
  return {
    code: 'header-unknown',
    severity: 'warning',
    ...span,
    message: `${show(name)} is not a header of the format.${nearest ? ` Did you mean ${show(nearest)}?` : ' What follows it has no effect.'}`,
  };
}
