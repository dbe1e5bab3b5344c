import type { Instrument } from '../../model/instrument';
import type { Directive } from '../../model/instrumentParts';
import { directiveName } from '../../model/instrumentParts';
import { longestBeginning } from '../../model/variables/variableUses';
import type { Rule } from '../rule';

/**
 * Finds variables whose name starts with the name of another, which players read differently: `$KEYS` can be the one
 * or `$KEY` followed by S (varies, as the public documentation of the open SFZ format says). Names that are used count.
 */
export const definePrefix: Rule = {
  code: 'define-prefix',
  severity: 'warning',
  finds: 'A variable whose name starts with the name of another. Players differ in how they read it.',
  check({ instrument }, report) {
    const defines = new Map<string, Directive>();
    for (const directive of instrument.directives) {
      if (directive.kind === 'define' && directive.name.length > 1 && !defines.has(directive.name)) {
        defines.set(directive.name, directive);
      }
    }
    let used: ReadonlySet<string> | undefined;
    for (const [name, define] of defines) {
      const shorter = prefixOf(name, defines);
      if (!shorter) continue;
      used ??= usedNames(instrument, defines);
      if (!used.has(name)) continue;
      report({
        ...directiveName(define),
        message: `${name} starts with ${shorter.name}, which is a variable too. Some players read ${name} as ${shorter.name} followed by "${name.slice(shorter.name.length)}". Rename one of the two.`,
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
  for (let length = Math.min(name.length - 1, longestBeginning); length > 1; length--) {
    const found = defines.get(name.slice(0, length));
    if (found) return found;
  }
  return undefined;
}

/** A `$` with the letters, digits and underscores after it. */
const use = /\$\w+/g;

/** The variables that are written anywhere but where they are defined, also as the beginning of a longer word. */
function usedNames(instrument: Instrument, defines: ReadonlyMap<string, Directive>): Set<string> {
  const defined = instrument.sources.map(() => new Set<number>());
  for (const { kind, source, nameStart } of instrument.directives)
    if (kind === 'define') defined[source]?.add(nameStart);
  const used = new Set<string>();
  for (const [source, { text }] of instrument.sources.entries()) {
    for (const { 0: word, index } of text.matchAll(use)) {
      if (defined[source]?.has(index)) continue;
      if (defines.has(word)) used.add(word);
      for (let length = Math.min(word.length - 1, longestBeginning); length > 1; length--) {
        const name = word.slice(0, length);
        if (defines.has(name)) used.add(name);
      }
    }
  }
  return used;
}
