import { formFields } from './forms/formFields';
import type { Vocabulary, VocabularyParameter } from './vocabulary';

/** The vocabulary as JSON: one parameter a line, members always in the same order. */
export function writeVocabulary({
  name,
  namespaces,
  levels,
  steps,
  loops,
  backwards,
  keysInOrder,
  keysByRoots,
  off,
  takes,
  chances,
  unsettled,
}: Vocabulary): string {
  const lines = ['{', `  "name": ${JSON.stringify(name)},`];
  if (namespaces && Object.keys(namespaces).length > 0) lines.push(`  "namespaces": ${inLine(namespaces)},`);
  lines.push('  "levels": [');
  levels.forEach((level, at) => {
    lines.push('    {', `      "element": ${JSON.stringify(level.element)},`, `      "is": "${level.is}",`);
    if (level.inside && level.inside.length > 0) lines.push(`      "inside": ${inLine(level.inside)},`);
    if (level.also) lines.push(`      "also": ${inLine(level.also)},`);
    if (level.rate !== undefined) lines.push(`      "rate": ${JSON.stringify(level.rate)},`);
    if (level.turns) lines.push('      "turns": true,');
    if (level.sets) lines.push(`      "sets": ${inLine(level.sets)},`);
    const parameters = level.parameters.map((one) => `        ${inLine(inOrder(one))}`);
    lines.push(
      parameters.length > 0
        ? `      "parameters": [\n${parameters.join(',\n')}\n      ]`
        : '      "parameters": []',
    );
    lines.push(at < levels.length - 1 ? '    },' : '    }');
  });
  const last = ['  ]'];
  if (steps && steps.length > 0) last.push(`  "steps": ${inLine(steps)}`);
  if (loops) last.push(`  "loops": ${JSON.stringify(loops)}`);
  if (backwards) last.push('  "backwards": true');
  if (keysInOrder) last.push('  "keysInOrder": true');
  if (keysByRoots) last.push('  "keysByRoots": true');
  if (off && off.length > 0)
    last.push(`  "off": [\n${off.map((one) => `    ${inLine(one)}`).join(',\n')}\n  ]`);
  if (takes && takes.length > 0)
    last.push(`  "takes": [\n${takes.map((one) => `    ${inLine(one)}`).join(',\n')}\n  ]`);
  if (chances) last.push(`  "chances": ${inLine(chances)}`);
  if (unsettled && unsettled.length > 0) last.push(`  "unsettled": ${inLine(unsettled)}`);
  lines.push(last.join(',\n'), '}');
  return `${lines.join('\n')}\n`;
}

function inOrder({ parameter, at, part, between, listed, form }: VocabularyParameter): object {
  const fields = Object.keys(formFields[form.kind]);
  const values = new Map<string, unknown>(Object.entries(form));
  const ordered = ['kind', ...fields].filter((field) => values.get(field) !== undefined);
  return {
    parameter,
    at,
    ...(part !== undefined && { part }),
    ...(between !== undefined && { between }),
    ...(listed && { listed }),
    form: Object.fromEntries(ordered.map((field) => [field, values.get(field)])),
  };
}

/** JSON on one line with blanks, as `{ "a": [1, 2] }`. */
function inLine(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(inLine).join(', ')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const members = Object.entries(value).map(([name, one]) => `${JSON.stringify(name)}: ${inLine(one)}`);
  return members.length > 0 ? `{ ${members.join(', ')} }` : '{}';
}
