import type { EntityPlace, EntityReader, EntityText } from '../scan/references';
import { readReference } from '../scan/references';
import type { DeclaredEntity, DoctypeEntities } from './doctypeEntities';

/** An entity that is being looked into, with how far that has come. */
interface Visit {
  entity: DeclaredEntity;
  place: EntityPlace;
  text: EntityText;
  next: number;
}

/** Stands for "is being looked into". */
const open = Symbol();

/**
 * Says whether entities may be referred to: XML 1.0 (fifth edition), section 4.1, well-formedness constraints "Entity
 * Declared", "Parsed Entity" and "No Recursion"; section 3.1, "No External Entity References" and "No < in Attribute
 * Values"; section 4.3.2. Each entity is read once for each kind of place, however often it is referred to, and is
 * never put in: so the time grows with the length of the declarations alone.
 */
export class EntityChecks {
  readonly #entities: DoctypeEntities;
  readonly #readEntity: EntityReader;
  readonly #faults: Record<EntityPlace, Map<DeclaredEntity, string | undefined | typeof open>> = {
    text: new Map(),
    attribute: new Map(),
  };

  constructor(entities: DoctypeEntities, readEntity: EntityReader) {
    this.#entities = entities;
    this.#readEntity = readEntity;
  }

  /** Why an entity cannot be referred to in a place, as the end of a sentence; `undefined` where it can. */
  faultOf(entity: DeclaredEntity, place: EntityPlace): string | undefined {
    const stack: Visit[] = [];
    let fault = this.#enter(stack, entity, place);
    while (stack.length > 0) {
      const visit = stack[stack.length - 1];
      const reference = fault === undefined ? visit.text.references[visit.next++] : undefined;
      if (reference) {
        const inner = this.#entities.general.get(reference.name);
        if (inner) fault = this.#enter(stack, inner, reference.place);
        else if (this.#entities.isComplete) {
          fault = `"${shorten(visit.entity.name)}" refers to &${shorten(reference.name)};, which is not declared`;
        }
      } else {
        this.#faults[visit.place].set(visit.entity, fault);
        stack.pop();
      }
    }
    return fault;
  }

  /** The fault of an entity if that is known; else it is put on the stack. */
  #enter(stack: Visit[], entity: DeclaredEntity, place: EntityPlace): string | undefined {
    const faults = this.#faults[place];
    const known = faults.get(entity);
    const name = shorten(entity.name);
    if (known === open) return `"${name}" refers to itself`;
    if (known !== undefined || faults.has(entity)) return known;
    if (entity.kind === 'unparsed') return `"${name}" stands for data other than XML`;
    if (entity.kind === 'external') {
      return place === 'attribute'
        ? `"${name}" stands for another file, which a value cannot refer to`
        : undefined;
    }
    const text =
      place === 'text' ? this.#readEntity(entity.replacement) : readAttributeText(entity.replacement);
    if (text.fault !== undefined) {
      const fault = `"${name}" stands for ${excerpt(entity.replacement)}, ${text.fault}`;
      faults.set(entity, fault);
      return fault;
    }
    faults.set(entity, open);
    stack.push({ entity, place, text, next: 0 });
    return undefined;
  }
}

function readAttributeText(text: string): EntityText {
  const references: EntityText['references'] = [];
  if (text.includes('<')) return { fault: 'and a value cannot hold "<"', references };
  for (let at = text.indexOf('&'); at >= 0; ) {
    const { name, problem, end } = readReference(text, at);
    if (name !== undefined) references.push({ name, place: 'attribute' });
    else if (problem !== undefined) return { fault: 'in which a "&" is not written &#38;#38;', references };
    at = text.indexOf('&', end);
  }
  return { references };
}

function excerpt(text: string): string {
  return `"${shorten(text.slice(0, 100).replace(/\s+/g, ' '))}"`;
}

function shorten(name: string): string {
  return name.length > 40 ? `${name.slice(0, 39)}…` : name;
}
