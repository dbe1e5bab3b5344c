/** Work in steps, so that its caller can let other work run between them, or end it. Each tells the share done, 0..1. */
export type Steps<Result> = Generator<number, Result>;

/** Pieces of work in a loop, such as regions looked at, after which a step ends: a small part of what a person would notice. */
export const piecesInStep = 4096;

/** Work that is a part of other work, whose share done goes from `from` to `to` with it. */
export function* inPart<Result>(steps: Steps<Result>, from: number, to: number): Steps<Result> {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
    yield from + value * (to - from);
  }
}

/** Does all steps at once. */
export function finish<Result>(steps: Steps<Result>): Result {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}
