import type { EntityPlace, EntityReader, NamedReferences } from '../scan/references';
import type { Doctype } from './doctype';
import type { DeclaredEntity } from './doctypeEntities';
import { EntityChecks } from './doctypeEntityChecks';
import type { DoctypeReport } from './doctypeSubset';

const mostRemarks = 100;

/** What a document says by the names of entities: each is looked up in its document type, and nothing is put in. */
export class DoctypeReferences implements NamedReferences {
  readonly #report: DoctypeReport;
  readonly #readEntity: EntityReader;
  #doctype: Doctype | undefined;
  #checks: EntityChecks | undefined;
  /** Those that have been remarked on. */
  readonly #remarked = new Set<DeclaredEntity>();

  constructor(report: DoctypeReport, readEntity: EntityReader) {
    this.#report = report;
    this.#readEntity = readEntity;
  }

  /** Takes what a document type declares, and looks into the default values in it. */
  declare(doctype: Doctype): void {
    this.#doctype = doctype;
    this.#checks = new EntityChecks(doctype.entities, this.#readEntity);
    for (const { name, start, end } of doctype.defaults) this.#check(name, start, end, 'attribute');
  }

  found(name: string, start: number, end: number, place: EntityPlace): void {
    const entity = this.#check(name, start, end, place);
    if (!entity || this.#remarked.has(entity) || this.#remarked.size >= mostRemarks) return;
    this.#remarked.add(entity);
    const what =
      entity.kind === 'internal'
        ? 'what it stands for is not put in'
        : 'it stands for a file, which is not read';
    this.#report.remark(start, end, `&${shorten(name)}; has no effect: ${what}. Write it out here.`);
  }

  /** Reports what is wrong with a reference; answers the entity if nothing is. */
  #check(name: string, start: number, end: number, place: EntityPlace): DeclaredEntity | undefined {
    const entities = this.#doctype?.entities;
    const entity = entities?.general.get(name);
    const shown = `&${shorten(name)};`;
    if (entity) {
      const fault = this.#checks?.faultOf(entity, place);
      if (fault === undefined) return entity;
      this.#report.problem(start, end, `${shown} cannot stand here: ${fault}.`, {
        start: entity.start,
        end: entity.end,
        message: `"${shorten(name)}" is declared here.`,
      });
    } else if (entities && !entities.isComplete) {
      if (this.#unknown++ < mostRemarks)
        this.#report.remark(
          start,
          end,
          `${shown} has no effect: if it is declared, then in a file that is not read. Write out what it stands for.`,
        );
    } else {
      this.#report.problem(
        start,
        end,
        `${shown} is not known. The references are &amp;, &lt;, &gt;, &quot;, &apos; and numbers such as &#233;.`,
      );
    }
    return undefined;
  }

  #unknown = 0;
}

function shorten(name: string): string {
  return name.length > 40 ? `${name.slice(0, 39)}…` : name;
}
