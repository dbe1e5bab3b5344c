/** Work in steps, so that its caller can let other work run between them, or end it. Each tells the share done, 0..1. */
export type Steps<Result> = Generator<number, Result>;

/** Pieces of work in a loop, such as regions looked at, after which a step ends: a small part of what a person would notice. */
export const piecesInStep = 4096;

/** Does all steps at once. */
export function finish<Result>(steps: Steps<Result>): Result {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}
