import type { Instrument } from '../../model/instrument';
import type { Directive } from '../../model/instrumentParts';
import { directiveName } from '../../model/instrumentParts';
import type { Rule } from '../rule';

/**
 * Finds variables whose name starts with the name of another, which players read differently: `$KEYS` can be the one
 * or `$KEY` followed by S (varies, as the public documentation of the open SFZ format says). Names that are used count.
 */
export const definePrefix: Rule = {
  code: 'define-prefix',
  severity: 'warning',
  finds: 'A variable whose name starts with the name of another, which players read differently.',
  check({ instrument }, report) {
    const defines = new Map<string, Directive>();
    for (const directive of instrument.directives) {
      if (directive.kind === 'define' && directive.name.length > 1 && !defines.has(directive.name)) {
        defines.set(directive.name, directive);
      }
    }
    for (const [name, define] of defines) {
      const shorter = prefixOf(name, defines);
      if (!shorter || !isUsed(instrument, name)) continue;
      report({
        ...directiveName(define),
        message: `${name} starts with ${shorter.name}, which is a variable too: some players take ${name} for ${shorter.name} followed by "${name.slice(shorter.name.length)}". Rename one of the two.`,
        related: [
          {
            ...directiveName(shorter),
            message: `${shorter.name} is defined here.`,
          },
        ],
      });
    }
  },
};

function prefixOf(name: string, defines: ReadonlyMap<string, Directive>): Directive | undefined {
  for (let length = name.length - 1; length > 1; length--) {
    const found = defines.get(name.slice(0, length));
    if (found) return found;
  }
  return undefined;
}

/** Whether a variable is written anywhere but where it is defined. */
function isUsed(instrument: Instrument, name: string): boolean {
  return instrument.sources.some(({ text }, source) => {
    for (let at = text.indexOf(name); at >= 0; at = text.indexOf(name, at + 1)) {
      const isDefinition = instrument.directives.some(
        (one) => one.kind === 'define' && one.source === source && one.nameStart <= at && at < one.nameEnd,
      );
      if (!isDefinition) return true;
    }
    return false;
  });
}
