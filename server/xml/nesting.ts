import { HeaderKind } from '../model/headerKinds';
import type { InstrumentBuilder, Scope } from '../model/instrumentBuilder';
import { ElementKind } from './elements';

/** An element that is open, with what regions inherit around it. */
export interface Frame {
  kind: ElementKind;
  /** Its header, or −1 for an element that is none. */
  header: number;
  /** What a region would have inherited before it. */
  before: Scope;
  /** What a region that stands first in it inherits. */
  inside: Scope;
  hasElements: boolean;
  /** Its tag has no end, so that what follows need not be meant to stand in it. */
  broken: boolean;
  /** The outermost element of an included file, which is no element of its own where it is included. */
  transparent: boolean;
}

const nothing: Scope = { global: -1, master: -1, group: -1 };

/**
 * Keeps what regions inherit while elements open and close. The values of an element with elements inside reach these;
 * those of an empty global, master or group reach what follows on its level, up to another of its kind or to the end of
 * the element around.
 */
export class Nesting {
  readonly #builder: InstrumentBuilder;
  readonly #frames: Frame[] = [];
  readonly #around: Frame | undefined;

  /** `around` is the element in which an included file stands. */
  constructor(builder: InstrumentBuilder, around?: Frame) {
    this.#builder = builder;
    this.#around = around;
  }

  /** The innermost open element, which may be one around the include of this file. */
  get innermost(): Frame | undefined {
    return this.#frames[this.#frames.length - 1] ?? this.#around;
  }

  /** How many elements of this file are open. */
  get depth(): number {
    return this.#frames.length;
  }

  /** Goes into an element. `before` is the scope as it was before the element's own header was opened. */
  enter(kind: ElementKind, header: number, before: Scope, broken: boolean): void {
    const around = this.depth === 0 ? this.#around : undefined;
    const transparent = around !== undefined && kind === ElementKind.instrument;
    this.#frames.push({
      kind: transparent ? around.kind : kind,
      header,
      before,
      inside: transparent ? around.inside : this.#builder.scope(),
      hasElements: false,
      broken: broken || (transparent && around.broken),
      transparent,
    });
  }

  /** Goes out of the innermost element, which is answered. */
  leave(): Frame | undefined {
    const frame = this.#frames.pop();
    if (!frame || frame.transparent) return frame;
    if (frame.hasElements) this.#builder.restore(this.#scopeBehind(frame));
    return frame;
  }

  /** An element with elements inside ends what empty ones of its kind, and of kinds further in, have set on its level. */
  #scopeBehind({ kind, before }: Frame): Scope {
    const outside = this.innermost?.inside ?? nothing;
    switch (kind) {
      case HeaderKind.global:
        return outside;
      case HeaderKind.master:
        return { ...outside, global: before.global };
      case HeaderKind.group:
        return { ...before, group: outside.group };
      default:
        return before;
    }
  }
}
