/** An entity that a document type declares: XML 1.0 (fifth edition), section 4.2. */
export interface DeclaredEntity {
  name: string;
  /** Text of its own, another file in XML, or data of another kind. */
  kind: 'internal' | 'external' | 'unparsed';
  /** What it stands for, with characters put in for their numbers and nothing else: section 4.5. */
  replacement: string;
  /** Where its name stands in the document; for one declared in an entity, where that is referred to. */
  start: number;
  end: number;
}

/** The entities of a document, by name. */
export class DoctypeEntities {
  readonly general = new Map<string, DeclaredEntity>();
  readonly parameter = new Map<string, DeclaredEntity>();
  /**
   * Whether all declarations that count have been read, so that a name not among them is a fault: section 4.1,
   * well-formedness constraint "Entity Declared".
   */
  isComplete = true;
}
