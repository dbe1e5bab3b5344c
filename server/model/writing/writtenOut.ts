import type { Directive } from '../instrumentParts';

/** Says that a variable or an include is not kept and that what it stands for is written instead. */
export function writtenOutText({ kind, name, value }: Directive): string {
  return kind === 'define'
    ? `${name} is written out: its value ${value} stands where it was used.`
    : `The text of "${name}" is written in the place of its include.`;
}
