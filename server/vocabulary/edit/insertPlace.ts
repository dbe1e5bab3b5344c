import type { Vocabulary } from '../vocabulary';
import type { StyledElement } from './styleTree';

/** The elements of a text that are levels of a vocabulary, each list in the order of the text. */
export function elementsByLevel(root: StyledElement, { levels }: Vocabulary): StyledElement[][] {
  const found: StyledElement[][] = levels.map(() => []);
  const open: { element: StyledElement; level: number }[] = [{ element: root, level: -1 }];
  for (let next = open.pop(); next; next = open.pop()) {
    const { element, level } = next;
    for (let at = element.children.length - 1; at >= 0; at--) {
      const child = element.children[at];
      const own = levels.findIndex((one, position) => position > level && one.element === child.name);
      open.push({ element: child, level: own < 0 ? level : own });
    }
    if (levels[level]?.element === element.name && element !== root) found[level]?.push(element);
  }
  return found;
}

/** Where elements of a level can go. */
export interface InsertPlace {
  container: StyledElement;
  /** Names of elements that have to be made around them, from the outermost inwards. */
  missing: readonly string[];
  at: number;
}

/** The place nearest to an offset in which elements of the level `top` can stand; `undefined` in a text without elements. */
export function findInsertPlace(
  root: StyledElement,
  vocabulary: Vocabulary,
  byLevel: readonly StyledElement[][],
  top: number,
  offset: number,
): InsertPlace | undefined {
  const containers = new Map<StyledElement, readonly string[]>();
  for (const { parent } of byLevel[top] ?? []) if (parent && parent !== root) containers.set(parent, []);
  for (let level = top - 1; level >= 0; level--) {
    const around = byLevel[level];
    if (around.length === 0) continue;
    for (const element of around) {
      const { container, missing } = innermost(element, vocabulary, level, top);
      if (!containers.has(container)) containers.set(container, missing);
    }
    break;
  }
  const [outermost] = root.children;
  if (containers.size === 0 && outermost) containers.set(outermost, []);
  const inner = new Set(
    vocabulary.levels.slice(1).flatMap(({ element, inside = [] }) => [...inside, element]),
  );
  let best: InsertPlace | undefined;
  for (const [container, missing] of containers) {
    const at = positionIn(container, offset, inner);
    const nearer = !best || Math.abs(at - offset) - Math.abs(best.at - offset);
    // Of two places equally near the one further in, which comes later in the text, is meant.
    if (nearer === true || nearer < 0 || (nearer === 0 && best && container.start > best.container.start)) {
      best = { container, missing, at };
    }
  }
  return best;
}

/** Goes into what stands between a level and the next, as far as it is there. */
function innermost(
  element: StyledElement,
  { levels }: Vocabulary,
  level: number,
  top: number,
): { container: StyledElement; missing: string[] } {
  const missing: string[] = [];
  for (let next = level + 1; next <= top; next++) {
    missing.push(...(levels[next]?.inside ?? []));
    if (next < top) missing.push(levels[next]?.element);
  }
  let container = element;
  for (let name = missing[0]; name !== undefined; name = missing[0]) {
    const child = container.children.findLast((one) => one.name === name);
    if (!child) break;
    container = child;
    missing.shift();
  }
  return { container, missing };
}

/** The place in an element's content nearest to an offset, in no other element, comment or text, and behind its own values. */
function positionIn(container: StyledElement, offset: number, inner: ReadonlySet<string>): number {
  if (container.isEmpty) return container.openEnd;
  let at = Math.max(container.openEnd, Math.min(offset, container.closeStart));
  for (const child of container.children) {
    if (inner.has(child.name)) break;
    at = Math.max(at, child.end);
  }
  for (const list of [container.children, container.remarks, container.characters]) {
    for (const { start, end } of list) if (start < at && at < end) at = end;
  }
  return at;
}

/** Of a list in the order of the text, the element nearest to an offset. */
export function nearestElement(
  elements: readonly StyledElement[],
  offset: number,
): StyledElement | undefined {
  let best: StyledElement | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const element of elements) {
    const distance = offset < element.start ? element.start - offset : Math.max(0, offset - element.end);
    if (distance >= least) continue;
    least = distance;
    best = element;
  }
  return best;
}
