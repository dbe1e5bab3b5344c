import { nearestWords } from '../model/text/nearest';
import type { JsonNode, JsonProblem } from '../vocabulary/jsonTree';
import type { ObjectShape, ValueShape } from './shape';

/** More of a text than this is not quoted. */
const mostQuoted = 60;

/**
 * The plain value of a JSON value that is to have a shape; `undefined` where it has another. What does not fit is left out
 * and told in `problems` with its place. A member `$schema` is passed over.
 */
export function readShape(node: JsonNode, shape: ValueShape, problems: JsonProblem[]): unknown {
  switch (shape.kind) {
    case 'object':
      return readObject(node, shape, problems);
    case 'list':
      return readList(node, shape.of, problems);
    case 'textOr':
      return node.kind === 'object'
        ? readObject(node, shape.object, problems)
        : readText(node, 'a text that is not empty, or an object', problems);
    case 'text':
      return readText(node, 'a text that is not empty', problems);
    case 'choice':
      return readChoice(node, shape.choices, problems);
    case 'flag':
      return node.kind === 'boolean' ? node.value : tell(problems, node, 'Write true or false here.');
    case 'share':
      if (node.kind === 'number' && node.value >= 0 && node.value <= 1) return node.value;
      return tell(problems, node, 'Write a number from 0 to 1 here.');
  }
}

function readObject(
  node: JsonNode,
  { called, fields, required = [] }: ObjectShape,
  problems: JsonProblem[],
): Record<string, unknown> | undefined {
  if (node.kind !== 'object') return tell(problems, node, `${called} is an object: { … }.`);
  const values = new Map<string, unknown>();
  const seen = new Set<string>();
  for (const { name, nameStart, nameEnd, value } of node.members) {
    const place = { start: nameStart, end: nameEnd };
    const shape = Object.hasOwn(fields, name) ? fields[name] : undefined;
    if (!shape) {
      tell(problems, place, `${called} has no "${quoted(name)}". ${meantOf(name, Object.keys(fields))}`);
      continue;
    }
    if (seen.has(name)) tell(problems, place, `"${name}" stands here twice; the last one counts.`);
    seen.add(name);
    const read = readShape(value, shape, problems);
    if (read !== undefined && name !== '$schema') values.set(name, read);
  }
  const missing = required.filter((name) => !values.has(name));
  for (const name of missing)
    if (!seen.has(name))
      tell(problems, { start: node.start, end: node.start + 1 }, `${called} needs "${name}".`);
  return missing.length > 0 ? undefined : Object.fromEntries(values);
}

function readList(node: JsonNode, of: ValueShape, problems: JsonProblem[]): unknown[] | undefined {
  // One alone is a list too.
  if (node.kind !== 'array' && of.kind === 'text' && node.kind === 'string') {
    const one = readShape(node, of, problems);
    return one === undefined ? undefined : [one];
  }
  if (node.kind !== 'array') return tell(problems, node, 'Write a list here: [ … ].');
  return node.items.map((item) => readShape(item, of, problems)).filter((one) => one !== undefined);
}

function readText(node: JsonNode, wanted: string, problems: JsonProblem[]): string | undefined {
  if (node.kind === 'string' && node.value.trim() !== '') return node.value;
  return tell(problems, node, `Write ${wanted} here.`);
}

function readChoice(node: JsonNode, choices: readonly string[], problems: JsonProblem[]): string | undefined {
  if (node.kind === 'string' && choices.includes(node.value)) return node.value;
  const written = node.kind === 'string' ? `, not "${quoted(node.value)}"` : '';
  const last = choices.at(-1);
  return tell(problems, node, `Write ${choices.slice(0, -1).join(', ')} or ${last} here${written}.`);
}

function meantOf(name: string, known: readonly string[]): string {
  const near = nearestWords(name, known, 1)[0];
  if (near !== undefined) return `Did you mean "${near}"?`;
  return `It knows ${known.filter((one) => one !== '$schema').join(', ')}.`;
}

function quoted(text: string): string {
  return text.length > mostQuoted ? `${text.slice(0, mostQuoted)}…` : text;
}

function tell(
  problems: JsonProblem[],
  { start, end }: { start: number; end: number },
  message: string,
): undefined {
  problems.push({ message, start, end });
  return undefined;
}
