import { HeaderKind } from '../model/headerKinds';
import type { Instrument } from '../model/instrument';
import type { Span } from '../model/text/span';
import { mainSpan } from '../model/text/span';
import { ReadBefore } from '../model/writing/readBefore';

/**
 * Where headers can be put into the main file so that all that is there keeps its meaning: at the wanted offset or at the
 * first place behind it that is in the midst of nothing, where no opcodes of the header before follow, in this file or in
 * an included one, and where no region loses the group around it to a group that is put in.
 */
export function insertPlace(instrument: Instrument, wanted: number, inserted: Instrument): Span {
  const finder = new InsertPlaceFinder(instrument, outermostKind(inserted));
  return finder.from(wanted);
}

/** The kind of header, of those inserted, that most others would inherit from. */
function outermostKind(inserted: Instrument): HeaderKind {
  let outermost: HeaderKind = HeaderKind.region;
  for (let header = 0; header < inserted.headers.count; header++) {
    const kind = inserted.kind(header);
    if (kind >= HeaderKind.global && kind < outermost) outermost = kind;
  }
  return outermost;
}

class InsertPlaceFinder {
  readonly #instrument: Instrument;
  readonly #kind: HeaderKind;
  readonly #readBefore: ReadBefore;
  readonly #length: number;

  constructor(instrument: Instrument, kind: HeaderKind) {
    this.#instrument = instrument;
    this.#kind = kind;
    this.#length = instrument.sources[0]?.text.length ?? 0;
    this.#readBefore = new ReadBefore(instrument);
  }

  from(wanted: number): Span {
    let at = this.#behindToken(wanted);
    for (let next: number | undefined = at; next !== undefined; next = this.#furtherThan(at)) at = next;
    return mainSpan(at, at);
  }

  /** The end of a tag, an opcode, a directive or a comment that an offset is in the midst of, else the offset. */
  #behindToken(offset: number): number {
    const instrument = this.#instrument;
    const header = instrument.headerAt(0, offset - 1);
    const parameter = instrument.parameterAt(0, offset - 1);
    const directive = instrument.directives.find(
      ({ source, start, end }) => source === 0 && start < offset && offset < end,
    );
    return Math.max(
      offset,
      header < 0 ? 0 : instrument.headerSpan(header).end,
      parameter < 0 ? 0 : instrument.parameterSpan(parameter).end,
      directive?.end ?? 0,
    );
  }

  /** The next place to try where headers cannot stand at an offset; `undefined` where they can. */
  #furtherThan(at: number): number | undefined {
    if (at >= this.#length) return undefined;
    const instrument = this.#instrument;
    const { header, parameter } = this.#readBefore.at(at);
    if (parameter < instrument.parameters.count) {
      const owner = instrument.headerOfParameter(parameter);
      const tag = instrument.headerSpan(owner);
      // Opcodes before any header would become those of what is put before them.
      if (owner < header || tag.start === tag.end) return this.#behindParameter(parameter, at);
    }
    return this.#kind < HeaderKind.region ? this.#behindScope(header) : undefined;
  }

  #behindParameter(parameter: number, at: number): number {
    const instrument = this.#instrument;
    if (instrument.parameterSource(parameter) === 0) return instrument.parameterSpan(parameter).end;
    return this.#readBefore.includes.find(({ start }) => start >= at)?.end ?? this.#length;
  }

  /** Where the scope ends that the next regions, from a header on, share with those before; `undefined` where none follow. */
  #behindScope(from: number): number | undefined {
    const instrument = this.#instrument;
    const { count } = instrument.headers;
    const endsScope = (header: number) => {
      const kind = instrument.kind(header);
      return kind >= HeaderKind.global && kind <= this.#kind;
    };
    let header = from;
    let hasRegions = false;
    for (; header < count && !endsScope(header); header++)
      if (instrument.kind(header) === HeaderKind.region) hasRegions = true;
    if (!hasRegions) return undefined;
    if (header >= count) return this.#length;
    if (instrument.headerSource(header) === 0) return instrument.headerSpan(header).start;
    return this.#readBefore.includes.find(({ endHeader }) => endHeader > header)?.end ?? this.#length;
  }
}
